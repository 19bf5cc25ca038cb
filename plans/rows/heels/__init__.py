"""Heels of toe-up socks: gusset rounds before, then turn and flap of one sock after the other."""

from plans.pattern import Heel, StageName
from plans.rows.heels.flap_and_gusset import flap, gusset_rounds
from plans.rows.heels.short_rows import turn
from plans.rows.rounds import Pass, Round, plain

__all__ = ["gusset_rounds", "heel_round"]


def heel_round(heel: Heel, half: int, gusset: int, turned: int) -> Round:
    """The round in which the heel stands: the front plain, then on the back the whole turn and flap.

    Args:
        heel: how the short rows are closed.
        half: h, stitches of the front, and of the back without its gussets.
        gusset: g, gusset stitches on each side of the back.
        turned: w, stitches marked on each side; h - 2w stay unmarked in the middle.
    """
    front = Pass(StageName.HEEL_TURN, 1, plain(half), half)
    return Round(front, (*turn(heel, half, gusset, turned), *flap(heel, half, gusset, turned)))
