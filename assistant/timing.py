"""How fast knitting can be at all."""

RECORD_LOOPS_A_MINUTE = 118
"""Most stitches knitted by hand in one minute: a record of 2006, reported by two blogs of 2009 and 2013."""


def least_plausible_ms(loops: int) -> int:
    """The least time for so many loops, at twice the record's speed, so that nobody is doubted wrongly."""
    return -(-loops * 60_000 // (2 * RECORD_LOOPS_A_MINUTE))


def is_too_soon(loops: int, elapsed_ms: int) -> bool:
    """Whether a step of so many loops cannot be done yet, so that a second "next" is to be asked back."""
    return 0 <= elapsed_ms < least_plausible_ms(loops)
