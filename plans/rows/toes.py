"""Cast-on, toe and the even foot: from the first loops to the full width of each half."""

from collections.abc import Iterator

from plans.pattern import StageName, Toe
from plans.rows.rounds import Round, even_round, groups, plain, widened
from plans.stitches import Op

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


def cast_on(cast_on_half: int) -> Round:
    """The closed-toe cast-on: loops lie on both tips at once, the same number on each."""
    loops = groups((Op.CO, cast_on_half))
    return even_round(StageName.CAST_ON, 1, loops, loops, (cast_on_half, cast_on_half))


def toe_rounds(schedule: tuple[bool, ...], cast_on_half: int, second_tip: Op) -> Iterator[Round]:
    """The rounds of the toe, both halves alike.

    Args:
        schedule: see toe_schedule.
        cast_on_half: loops on each tip before.
        second_tip: how the back's loops are worked in the first round, `k` or `ktbl`: in some ways of winding
            they sit back to front.
    """
    stitches = cast_on_half
    for number, increases in enumerate(schedule, start=1):
        front = widened(stitches) if increases else plain(stitches)
        back = groups((second_tip, stitches)) if number == 1 else front
        stitches += 2 * increases
        yield even_round(StageName.TOE, number, front, back, (stitches, stitches))


def foot_rounds(rounds: int, half: int) -> Iterator[Round]:
    """The even foot: plain rounds."""
    for number in range(1, rounds + 1):
        yield even_round(StageName.FOOT, number, plain(half), plain(half), (half, half))
