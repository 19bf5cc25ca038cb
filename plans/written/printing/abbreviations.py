"""How each stitch and each act is written, in the usual abbreviations.

After the list of the Craft Yarn Council ("Knitting abbreviations master list", craftyarncouncil.com); what is not
in it (w&t, DS, LLI, RLI, gather) is common practice.
"""

from plans.pattern import Colour, Group, StageName
from plans.stitches import Op

_NUMBERED: dict[Op, tuple[str, str]] = {
    Op.K: ("k", ""), Op.P: ("p", ""), Op.KTBL: ("k", " tbl"), Op.PTBL: ("p", " tbl"),
    Op.SL_WYIB: ("sl", " wyib"), Op.SL_WYIF: ("sl", " wyif"),
    Op.CO: ("CO ", ""), Op.BO: ("BO ", ""), Op.YO_BO: ("BO ", " with yo"), Op.SEW_BO: ("sew off ", ""),
    Op.GRAFT: ("graft ", ""), Op.GATHER: ("gather ", ""),
    Op.WASTE: ("keep-waste ", ""), Op.THREAD: ("keep-thread ", ""), Op.FREE: ("free ", ""),
    Op.PICK_UP: ("pick-up ", ""), Op.GRAFT_RIB: ("graft-rib ", ""),
    Op.CO_WASTE: ("co-waste ", ""), Op.PICK_UP_K: ("pick up and knit ", ""),
    Op.THREE_NEEDLE: ("three-needle bind off ", ""),
}  # fmt: skip
_NAMED: dict[Op, str] = {
    Op.KFB: "kfb", Op.PFB: "pfb", Op.M1L: "m1l", Op.M1R: "m1r", Op.LIFTED_L: "LLI", Op.LIFTED_R: "RLI", Op.YO: "yo",
    Op.K2TOG: "k2tog", Op.SSK: "ssk", Op.P2TOG: "p2tog", Op.SSP: "ssp", Op.SKP: "skp",
    Op.K3TOG: "k3tog", Op.SSSK: "sssk", Op.S2KP2: "s2kp2", Op.SK2P: "sk2p", Op.P3TOG: "p3tog",
    Op.WRAP_TURN: "w&t", Op.DS: "DS", Op.TWIN: "twin", Op.FASTEN: "fasten off",
    Op.K2TOG_STRAND: "k2tog with strand", Op.SSK_STRAND: "ssk with strand",
    Op.PLACE_MARKER: "pm", Op.SLIP_MARKER: "sm", Op.REMOVE_MARKER: "rm",
}  # fmt: skip

BARE = {Op.K: "k", Op.P: "p"}
"""What is written without a number where it goes on."""

ALL = {Op.K: "knit", Op.P: "purl"}
"""What is written where a whole round or half is nothing else."""


def written(group: Group, *, two_colours: bool = False) -> str:
    """One group: "k12", "k2tog twice", "p3 with wraps"."""
    marks = " with wraps" if group.wrap else ""
    marks += " with doubles" if group.double else ""
    if two_colours:
        marks += " MC" if group.colour is Colour.MAIN else " CC"
    if group.op in _NUMBERED:
        before, after = _NUMBERED[group.op]
        return f"{before}{group.times}{after}{marks}"
    return f"{_NAMED[group.op]}{marks}{often(group.times)}"


def often(times: int) -> str:
    """Nothing for once, " twice", " 3 times"."""
    return {1: "", 2: " twice"}.get(times, f" {times} times")


def stitches(number: int) -> str:
    """"1 st", "3 sts"."""
    return f"{number} st" if number == 1 else f"{number} sts"


def heading(stage: StageName) -> str:
    """A part's name above its rounds."""
    return stage.value.replace("-", " ").capitalize()
