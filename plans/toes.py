"""How the toe widens: from the cast-on loops to the full width of each half."""

from plans.pattern import Toe

_ROUNDED_END = (2, 2, 3)
"""Plain rounds before each of the last increases of a rounded toe."""


def toe_schedule(toe: Toe, cast_on_half: int, half: int) -> tuple[bool, ...]:
    """Tell of each toe round whether it increases; every increase round adds 2 stitches to each half.

    There are k = (half - cast_on_half) / 2 increase rounds. A wedge is plain, increase, plain, increase:
    2k rounds (common practice). A rounded toe is one plain round, increases in every round, and the last
    three increases after 2, 2 and 3 plain rounds: the schedule printed for 56, 60 and 64 stitches in
    "Making a rounded toe", alpacadirect.com; with fewer than four increases it keeps the end of that
    schedule. The first round is always plain, so a cast-on of the full width is followed by one plain round.

    Args:
        toe: the kind.
        cast_on_half: loops cast on to each needle tip.
        half: stitches each half ends with.

    Raises:
        ValueError: the half cannot be reached by twos.
    """
    wanted, odd = divmod(half - cast_on_half, 2)
    if odd or wanted < 0 or cast_on_half < 1:
        raise ValueError(f"{cast_on_half} loops a tip never grow to {half} a half by twos")
    if wanted == 0:
        return (False,)
    if toe is Toe.WEDGE:
        return (False, True) * wanted
    slow = _ROUNDED_END[-wanted:]
    fast = (False,) + (True,) * (wanted - len(slow)) if wanted > len(slow) else ()
    return fast + tuple(step for plain in slow for step in (False,) * plain + (True,))
