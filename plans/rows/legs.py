"""Leg, ribbed cuff, and the stretchy ways to end it."""

from collections.abc import Iterator

from plans.pattern import BindOff, StageName
from plans.rows.rounds import Ops, Round, even_round, groups, plain
from plans.stitches import Op

_BIND_OFF: dict[BindOff, tuple[Op, Op]] = {
    BindOff.DECREASE: (Op.K, Op.BO),
    BindOff.YARN_OVER: (Op.K, Op.YO_BO),
    BindOff.SEWN: (Op.SL_WYIB, Op.SEW_BO),
}
"""How the first loop is brought to wait, and how each further one replaces it."""


def leg_rounds(rounds: int, half: int) -> Iterator[Round]:
    """The even leg. In its first round the corners are closed.

    At each corner of the front the strand between the halves is lifted and worked together with its
    neighbour, so that no hole stays and no stitch is added (common practice).
    """
    corners = groups((Op.K2TOG_STRAND, 1), (Op.K, half - 2), (Op.SSK_STRAND, 1))
    for number in range(1, rounds + 1):
        front = corners if number == 1 else plain(half)
        yield even_round(StageName.LEG, number, front, plain(half), (half, half))


def cuff_rounds(rounds: int, half: int) -> Iterator[Round]:
    """The cuff, knit one purl one: it fits every even half, so the columns run on across the sides."""
    rib = groups(*((Op.K, 1), (Op.P, 1)) * (half // 2))
    for number in range(1, rounds + 1):
        yield even_round(StageName.CUFF, number, rib, rib, (half, half))


def bind_off(kind: BindOff, half: int) -> Round:
    """The bind-off of one sock, in an order that the needle allows (derived).

    Front: one loop waits on the working tip, each further one is worked and the waiting one passed over it
    or dropped; of n loops one waits when the front is done. Back: that loop is the first one passed over,
    so all n go, and the last loop is fastened. Decrease: the two are knitted together through the back loop
    ("Stretchy sock bind-off", rhyflowerknits.com). Yarn-over: a yarn over before each stitch is passed over
    with it. Sewn: the threaded tail goes through both as if to purl, back through the waiting one as if to
    knit, and that one drops ("Binding off", kristinbelle.com).
    """
    first, then = _BIND_OFF[kind]
    front: Ops = groups((first, 1), (then, half - 1))
    back: Ops = groups((then, half), (Op.FASTEN, 1))
    return even_round(StageName.BIND_OFF, 1, front, back, (1, 0))
