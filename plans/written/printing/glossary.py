"""What stands above a printed pattern, as comments: how the pieces lie, the gauge, the measures, what is meant by what.

The words for stitches are those of the Craft Yarn Council's list ("Knitting abbreviations master list",
craftyarncouncil.com) where it has them, else common practice.
"""

from collections.abc import Iterator
from fractions import Fraction

from plans.pattern import Act, Direction, Half, Needles, Order, Plan, Row, StageName
from plans.rows.toes import cup_depth
from plans.stitches import Op

MEANINGS: dict[Op, tuple[str, str]] = {
    Op.K: ("k", "knit; of a whole round or half, all of it"),
    Op.P: ("p", "purl"),
    Op.KTBL: ("k tbl", "knit through the back loop"),
    Op.PTBL: ("p tbl", "purl through the back loop"),
    Op.CO: ("CO", "cast on so many"),
    Op.BO: ("BO", "bind off so many"),
    Op.SL_WYIB: ("sl1 wyib", "slip one as if to purl, the yarn behind"),
    Op.SL_WYIF: ("sl1 wyif", "slip one as if to purl, the yarn in front"),
    Op.KFB: ("kfb", "knit the front and then the back of one stitch"),
    Op.PFB: ("pfb", "purl the front and then the back of one stitch"),
    Op.M1L: ("m1l", "make one left: lift the bar from front to back, knit its back leg"),
    Op.M1R: ("m1r", "make one right: lift the bar from back to front, knit its front leg"),
    Op.LIFTED_L: ("LLI", "left lifted increase: knit the loop two below the stitch just worked"),
    Op.LIFTED_R: ("RLI", "right lifted increase: knit the loop below the next stitch"),
    Op.YO: ("yo", "yarn over"),
    Op.K2TOG: ("k2tog", "knit two together; leans right"),
    Op.SSK: ("ssk", "slip two knitwise one by one, knit them together through their backs; leans left"),
    Op.P2TOG: ("p2tog", "purl two together"),
    Op.SSP: ("ssp", "slip two knitwise one by one, purl them together through their backs"),
    Op.SKP: ("skp", "slip one, knit one, pass the slipped one over"),
    Op.K3TOG: ("k3tog", "knit three together"),
    Op.SSSK: ("sssk", "slip three knitwise one by one, knit them together through their backs"),
    Op.S2KP2: ("s2kp2", "slip two together knitwise, knit one, pass the two over"),
    Op.SK2P: ("sk2p", "slip one, knit two together, pass the slipped one over"),
    Op.P3TOG: ("p3tog", "purl three together"),
    Op.WRAP_TURN: ("w&t", "wrap and turn: carry the yarn round the next stitch, put it back, turn"),
    Op.DS: ("DS", "double stitch: slip the first one with the yarn in front, pull it over to two legs; counts as one"),
    Op.TWIN: ("twin", "knit the loop below the next stitch, leave both on the needle, turn; the two count as one"),
    Op.K2TOG_STRAND: ("with strand", "lift the strand at the corner and work it together with the stitch"),
    Op.GRAFT: ("graft", "so many stitches of the front with as many of the back"),
    Op.GRAFT_RIB: ("graft-rib", "graft the knits of one needle with the purls of the other"),
    Op.GATHER: ("gather", "thread the tail through so many stitches and draw them together"),
    Op.SEW_BO: ("sew off", "through two stitches purlwise, back through the first knitwise, drop it"),
    Op.YO_BO: ("BO with yo", "bind off with a yarn over before each stitch, passed over with it"),
    Op.WASTE: ("keep-waste", "knit so many with waste yarn, slip them back, to be freed for the heel"),
    Op.THREAD: ("keep-thread", "run a thread through so many, to be freed for the heel"),
    Op.FREE: ("free", "put so many loops that were kept back on the needle"),
    Op.PICK_UP: ("pick-up", "lift a strand on to the needle as a loop"),
    Op.PICK_UP_K: ("pick up and knit", "along the edge, so many new stitches"),
    Op.CO_WASTE: ("co-waste", "cast on so many over waste yarn, to be pulled out later"),
    Op.THREE_NEEDLE: ("three-needle bind off", "one of each needle together, passed over as in any other"),
    Op.PLACE_MARKER: ("pm", "place a marker"),
    Op.SLIP_MARKER: ("sm", "slip the marker"),
    Op.REMOVE_MARKER: ("rm", "remove the marker"),
}  # fmt: skip
"""How a stitch is written, and what is done."""

_WITH = (("with wraps", "lift the wrap of each and work it together with its stitch", "wrap"),
         ("with doubles", "both legs of each worked as one stitch", "double"))  # fmt: skip
_LIES = {
    Needles.ONE_LONG_CIRCULAR: "on one long circular needle",
    Needles.TWO_CIRCULARS: "on two circular needles, the fronts on one, the backs on the other",
    Needles.DOUBLE_POINTED: "on five double-pointed needles, a quarter of the stitches on each of four",
    Needles.FOUR_DOUBLE_POINTED: "on four double-pointed needles, the front on one, the back on two",
    Needles.ONE_CIRCULAR: "in the round",
}
_WAYS = {Direction.TOE_UP: ", from the toe up", Direction.CUFF_DOWN: ", from the cuff down"}
_LEG = {StageName.LEG, StageName.CUFF}
_FOOT = {StageName.TOE, StageName.FOOT, StageName.GUSSET}


def above(plan: Plan) -> Iterator[str]:
    """The lines, without the signs that make them comments."""
    yield f"{_lie(plan)}{_WAYS.get(plan.construction.direction, '')}."
    yield from _round_of(plan)
    gauge = plan.gauge
    yield f"Gauge: {_number(gauge.stitches_per_10cm)} stitches and {_number(gauge.rounds_per_10cm)} rounds to 10 cm."
    yield _finished(plan)
    yield from _lengths(plan)
    used = {group.op for row in plan.rows for group in row.ops}
    used |= {Op.K2TOG_STRAND} if Op.SSK_STRAND in used else set()
    yield from (f"{short}: {meaning}." for op, (short, meaning) in MEANINGS.items() if op in used)
    for short, meaning, mark in _WITH:
        if any(getattr(group, mark) for row in plan.rows for group in row.ops):
            yield f"{short}: {meaning}."


def _lie(plan: Plan) -> str:
    if len(plan.socks) == 1:
        return f"One piece, {_LIES[plan.construction.needles]}"
    order = "one after the other" if plan.construction.order is Order.ONE_AFTER_THE_OTHER else "both at once"
    pieces = "Two socks" if plan.written is None else "Two pieces"
    return f"{pieces}, {order}, {_LIES[plan.construction.needles]}"


def _round_of(plan: Plan) -> Iterator[str]:
    """What front and back are, and how a round goes."""
    if plan.written is None:
        yield "Front: instep and front of the leg. Back: sole, heel and back of the leg."
    if len(plan.socks) == 2 and plan.construction.order is Order.BOTH_AT_ONCE:
        yield (
            "A round: front of the first, front of the second, turn, back of the second, back of the first, turn; "
            "each with its own yarn."
        )


def _finished(plan: Plan) -> str:
    size = plan.finished
    around = f"Finished: {_number(size.circumference_cm)} cm around"
    if size.height_cm is not None:
        return f"{around}, {_number(size.height_cm)} cm high."
    calf = plan.calf.pairs * 2 if plan.calf else 0
    top = _number(10 * (plan.around + calf) / plan.gauge.stitches_per_10cm)
    high = f"leg {_number(size.leg_cm)} cm" + (f", {top} cm around at its top" if calf else "")
    return f"{around}, foot {_number(size.foot_length_cm)} cm, {high}."


def _lengths(plan: Plan) -> Iterator[str]:
    """How long foot and leg are where a sock is to be measured."""
    if plan.written is not None:
        return
    toe = plan.construction.toe
    cup = cup_depth(toe, plan.half) if toe is not None else 0
    found = []
    for row in plan.rows:
        if Act.MEASURE in row.acts and row.sock == 1 and row.half is Half.FRONT:
            part, rounds = _so_far(plan, row, cup)
            length = _number(10 * rounds / plan.gauge.rounds_per_10cm)
            found.append(f"before the {row.stage.value.replace('-', ' ')}, {part} {length} cm")
    if found:
        yield f"Where it says measure: {'; '.join(found)}."


def _so_far(plan: Plan, at: Row, cup: int) -> tuple[str, Fraction]:
    """The part that is knitted before a row, and its rounds."""
    done = {(row.stage, row.round) for row in plan.rows[: at.index] if row.sock == 1}
    leg = sum(stage in _LEG for stage, _ in done)
    foot = sum(stage in _FOOT and not (cup and stage is StageName.TOE) for stage, _ in done)
    heel = any(stage not in {*_LEG, *_FOOT, StageName.CAST_ON} for stage, _ in done)
    if plan.cuff_down:
        picks = any(stage is StageName.GUSSET for stage, _ in done)
        return ("foot", Fraction(foot + plan.heel_depth - picks)) if heel else ("leg", Fraction(leg))
    return ("leg", Fraction(leg)) if leg else ("foot", Fraction(foot + cup + (plan.heel_depth if heel else 0)))


def _number(value: Fraction) -> str:
    """To a tenth."""
    return f"{float(round(value, 1)):g}"
