"""The operations of hand knitting: how many loops each takes from one needle tip and leaves on the other.

Names follow the abbreviations usual in print; takes and makes as in any stitch dictionary (common practice).
"""

from enum import StrEnum


class Op(StrEnum):
    """One operation, by its usual abbreviation."""

    CO = "co"
    K = "k"
    P = "p"
    KTBL = "ktbl"
    PTBL = "ptbl"
    SL_WYIB = "sl_wyib"
    SL_WYIF = "sl_wyif"
    KFB = "kfb"
    PFB = "pfb"
    M1L = "m1l"
    M1R = "m1r"
    LIFTED_L = "lifted_l"
    LIFTED_R = "lifted_r"
    YO = "yo"
    K2TOG = "k2tog"
    SSK = "ssk"
    P2TOG = "p2tog"
    SSP = "ssp"
    K3TOG = "k3tog"
    SSSK = "sssk"
    S2KP2 = "s2kp2"
    WRAP_TURN = "wrap_turn"
    DS = "ds"
    TWIN = "twin"
    BO = "bo"
    FASTEN = "fasten"
    GRAFT = "graft"
    K2TOG_STRAND = "k2tog_strand"
    SSK_STRAND = "ssk_strand"
    YO_BO = "yo_bo"
    SEW_BO = "sew_bo"
    SKP = "skp"
    SK2P = "sk2p"
    P3TOG = "p3tog"
    PLACE_MARKER = "place_marker"
    SLIP_MARKER = "slip_marker"
    REMOVE_MARKER = "remove_marker"
    GATHER = "gather"
    WASTE = "waste"
    THREAD = "thread"
    FREE = "free"
    PICK_UP = "pick_up"
    GRAFT_RIB = "graft_rib"
    CO_WASTE = "co_waste"
    PICK_UP_K = "pick_up_k"
    THREE_NEEDLE = "three_needle"


TAKES_MAKES: dict[Op, tuple[int, int]] = {
    Op.CO: (0, 1),
    Op.K: (1, 1),
    Op.P: (1, 1),
    Op.KTBL: (1, 1),
    Op.PTBL: (1, 1),
    Op.SL_WYIB: (1, 1),
    Op.SL_WYIF: (1, 1),
    Op.KFB: (1, 2),
    Op.PFB: (1, 2),
    Op.M1L: (0, 1),
    Op.M1R: (0, 1),
    Op.LIFTED_L: (0, 1),
    Op.LIFTED_R: (0, 1),
    Op.YO: (0, 1),
    Op.K2TOG: (2, 1),
    Op.SSK: (2, 1),
    Op.P2TOG: (2, 1),
    Op.SSP: (2, 1),
    Op.K3TOG: (3, 1),
    Op.SSSK: (3, 1),
    Op.S2KP2: (3, 1),
    Op.WRAP_TURN: (0, 0),
    Op.DS: (1, 1),
    Op.TWIN: (0, 0),
    Op.BO: (1, 0),
    Op.FASTEN: (1, 0),
    Op.GRAFT: (2, 0),
    Op.K2TOG_STRAND: (1, 1),
    Op.SSK_STRAND: (1, 1),
    Op.YO_BO: (1, 0),
    Op.SEW_BO: (1, 0),
    Op.SKP: (2, 1),
    Op.SK2P: (3, 1),
    Op.P3TOG: (3, 1),
    Op.PLACE_MARKER: (0, 0),
    Op.SLIP_MARKER: (0, 0),
    Op.REMOVE_MARKER: (0, 0),
    Op.GATHER: (1, 0),
    Op.WASTE: (0, 0),
    Op.THREAD: (0, 0),
    Op.FREE: (0, 1),
    Op.PICK_UP: (0, 1),
    Op.GRAFT_RIB: (2, 0),
    Op.CO_WASTE: (0, 1),
    Op.PICK_UP_K: (0, 1),
    Op.THREE_NEEDLE: (2, 0),
}

MARKERS: frozenset[Op] = frozenset({Op.PLACE_MARKER, Op.SLIP_MARKER, Op.REMOVE_MARKER})
"""What is done to a marker that hangs between two loops."""

EXTRA_OPS: frozenset[Op] = frozenset({
    Op.K2TOG_STRAND, Op.SSK_STRAND, Op.YO_BO, Op.SEW_BO, Op.SKP, Op.SK2P, Op.P3TOG, Op.GATHER,
    Op.WASTE, Op.THREAD, Op.FREE, Op.PICK_UP, Op.GRAFT_RIB, Op.CO_WASTE, Op.PICK_UP_K, Op.THREE_NEEDLE,
    *MARKERS,
})  # fmt: skip
"""Operations of our own naming.

`k2tog_strand`, `ssk_strand`: a strand lifted between two needle halves is worked together with its neighbour.
`yo_bo`: a yarn over, one stitch worked, then the waiting loop and the yarn over are both passed over it.
`sew_bo`: the threaded tail goes through the waiting loop and the next, then back through the waiting one,
which drops off; the next one waits.
`skp`, `sk2p`: slip one, knit one (or two together), pass the slipped stitch over. `gather`: the cut and threaded
tail is drawn through the loop, which comes off the needle; at the end it is pulled tight.
`waste`: the next loops are knitted with waste yarn and slid back. `thread`: a thread is run through the next loops,
which stay. `free`: a loop kept so is put on the needle again, from the one side of the opening or the other.
`pick_up`: a strand is lifted onto the needle. `graft_rib`: a knit and its purl neighbour are grafted together.
`co_waste`: a loop is cast on provisionally, over a strand of waste yarn; with the strand pulled out its foot is
free, to be worked the other way. `pick_up_k`: the yarn is drawn through an edge stitch as a new loop.
`three_needle`: a loop of each half is knitted together onto a third needle, and the one before passed over it; the
last is fastened.
"""

INCREASES: frozenset[Op] = frozenset({Op.KFB, Op.PFB, Op.M1L, Op.M1R, Op.LIFTED_L, Op.LIFTED_R, Op.YO})
"""Operations that leave more loops than they take."""

JOINS: frozenset[Op] = frozenset({Op.GRAFT, Op.THREE_NEEDLE})
"""Operations that take a loop of either half of a sock."""

BIND_OFFS: frozenset[Op] = frozenset({Op.BO, Op.YO_BO, Op.SEW_BO})
"""Operations that take the next loop and let go the one that waits on the working tip."""


def takes(op: Op) -> int:
    """Loops taken from the tip that is worked off."""
    return TAKES_MAKES[op][0]


def makes(op: Op) -> int:
    """Loops left on the tip that works."""
    return TAKES_MAKES[op][1]
