"""The usual abbreviations, and what each of them means.

After the list of the Craft Yarn Council ("Knitting abbreviations master list", craftyarncouncil.com) as far as a
piece in rounds needs it; what is not in it, such as w&t, DS or lli, is common practice.
"""

from plans.pattern import Act, StageName
from plans.stitches import Op

OPS: dict[str, Op] = {
    "co": Op.CO, "k": Op.K, "knit": Op.K, "p": Op.P, "purl": Op.P,
    "ktbl": Op.KTBL, "ptbl": Op.PTBL, "sl": Op.SL_WYIB, "slip": Op.SL_WYIB,
    "kfb": Op.KFB, "kf&b": Op.KFB, "pfb": Op.PFB, "pf&b": Op.PFB,
    "m1l": Op.M1L, "m1": Op.M1L, "m1r": Op.M1R, "lli": Op.LIFTED_L, "rli": Op.LIFTED_R, "yo": Op.YO,
    "k2tog": Op.K2TOG, "ssk": Op.SSK, "p2tog": Op.P2TOG, "ssp": Op.SSP, "skp": Op.SKP,
    "k3tog": Op.K3TOG, "sssk": Op.SSSK, "s2kp2": Op.S2KP2, "s2kp": Op.S2KP2, "sk2p": Op.SK2P, "p3tog": Op.P3TOG,
    "w&t": Op.WRAP_TURN, "ds": Op.DS, "twin": Op.TWIN,
    "bo": Op.BO, "graft": Op.GRAFT, "gather": Op.GATHER, "sew-off": Op.SEW_BO,
    "keep-waste": Op.WASTE, "keep-thread": Op.THREAD, "free": Op.FREE, "pick-up": Op.PICK_UP,
    "graft-rib": Op.GRAFT_RIB, "co-waste": Op.CO_WASTE, "pick-up-k": Op.PICK_UP_K,
    "three-needle": Op.THREE_NEEDLE,
    "pm": Op.PLACE_MARKER, "sm": Op.SLIP_MARKER, "rm": Op.REMOVE_MARKER,
}  # fmt: skip

PHRASES: dict[tuple[str, ...], Op] = {
    ("cast", "on"): Op.CO,
    ("bind", "off"): Op.BO,
    ("sew", "off"): Op.SEW_BO,
    ("three-needle", "bind", "off"): Op.THREE_NEEDLE,
    ("pick", "up", "and", "knit"): Op.PICK_UP_K,
    ("yarn", "over"): Op.YO,
    ("fasten", "off"): Op.FASTEN,
    ("wrap", "&", "turn"): Op.WRAP_TURN,
    ("wrap", "and", "turn"): Op.WRAP_TURN,
    ("place", "marker"): Op.PLACE_MARKER,
    ("slip", "marker"): Op.SLIP_MARKER,
    ("remove", "marker"): Op.REMOVE_MARKER,
}

TAILS: dict[tuple[str, ...], dict[Op, Op]] = {
    ("tbl",): {Op.K: Op.KTBL, Op.P: Op.PTBL, Op.K2TOG: Op.SSK, Op.P2TOG: Op.SSP},
    ("wyib",): {Op.SL_WYIB: Op.SL_WYIB},
    ("wyif",): {Op.SL_WYIB: Op.SL_WYIF},
    ("with", "strand"): {Op.K2TOG: Op.K2TOG_STRAND, Op.SSK: Op.SSK_STRAND},
    ("with", "yo"): {Op.BO: Op.YO_BO},
}
"""What may stand after a stitch and makes another of it: "k2tog with strand" is knitted with the strand lifted."""

COUNTED = frozenset({Op.K, Op.P, Op.KTBL, Op.PTBL, Op.SL_WYIB, Op.SL_WYIF, Op.CO, Op.BO, Op.YO_BO, Op.SEW_BO,
                     Op.GRAFT, Op.GATHER, Op.WASTE, Op.THREAD, Op.FREE, Op.PICK_UP, Op.GRAFT_RIB,
                     Op.CO_WASTE, Op.PICK_UP_K, Op.THREE_NEEDLE})  # fmt: skip
"""What is written with its number behind it, "k12"; the others come so many times, "k2tog twice"."""

BEGINNINGS = frozenset({"co", "cast", "bo", "bind", "sew", "gather", "draw", "thread"})
"""What at the start of a line begins something new, though it could be worked in a round."""

ACTS: dict[tuple[str, ...], Act] = {
    **{tuple(act.value.split()): act for act in Act},
    ("join",): Act.JOIN,
    ("place", "marker", "for", "beginning", "of", "round"): Act.MARKER,
    ("thread", "a", "lifeline"): Act.LIFELINE,
    ("cut", "yarn"): Act.CUT,
    ("cut", "the", "yarn"): Act.CUT,
    ("break", "yarn"): Act.CUT,
    ("weave", "in", "ends"): Act.WEAVE_IN,
    ("block",): Act.WASH,
}

STAGES: dict[tuple[str, ...], StageName] = {
    **{tuple(stage.value.split("-")): stage for stage in StageName},
    **{(stage.value,): stage for stage in StageName},
}

COLOURS = {"mc": "main", "cc": "contrast"}

NUMBERS = {
    word: number
    for number, word in enumerate((
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
        "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
    ))
} | {"once": 1, "twice": 2}  # fmt: skip

STITCHES = frozenset({"st", "sts", "stitch", "stitches", "loop", "loops"})
ROUNDS = frozenset({"rnd", "rnds", "round", "rounds", "row", "rows"})
