"""What may be worked where: stockinette, mirrored increases, corner strands, rib and bind-off."""

from collections.abc import Iterator

from plans.pattern import BindOff, Facing, Group, Half, Row, StageName
from plans.proof.findings import Case, Finding, found
from plans.stitches import INCREASES, Op

_PLAIN = {Op.K}
_WIDER = {Op.K, Op.M1R, Op.M1L}
_STRANDS = {Op.K2TOG_STRAND, Op.SSK_STRAND}
_BIND_OFF_OPS: dict[BindOff | None, set[Op]] = {
    BindOff.DECREASE: {Op.K, Op.BO, Op.FASTEN},
    BindOff.YARN_OVER: {Op.K, Op.YO_BO, Op.FASTEN},
    BindOff.SEWN: {Op.SL_WYIB, Op.SEW_BO, Op.FASTEN},
}
_ALLOWED: dict[tuple[StageName, Facing], set[Op]] = {
    (StageName.CAST_ON, Facing.RS): {Op.CO},
    (StageName.TOE, Facing.RS): _WIDER,
    (StageName.FOOT, Facing.RS): _PLAIN,
    (StageName.GUSSET, Facing.RS): _WIDER,
    (StageName.HEEL_TURN, Facing.RS): {Op.K, Op.WRAP_TURN, Op.DS},
    (StageName.HEEL_TURN, Facing.WS): {Op.P, Op.WRAP_TURN, Op.DS},
    (StageName.HEEL_FLAP, Facing.RS): {Op.K, Op.SL_WYIB, Op.SSK, Op.DS},
    (StageName.HEEL_FLAP, Facing.WS): {Op.P, Op.SL_WYIF, Op.P2TOG},
    (StageName.LEG, Facing.RS): _PLAIN | _STRANDS,
    (StageName.CUFF, Facing.RS): {Op.K, Op.P},
}


def check_shape(case: Case) -> Iterator[Finding]:
    """Every operation belongs where it stands, and increases and strands lie in pairs."""
    for place, row in enumerate(case.plan.rows):
        if row.chart is not None:
            continue
        allowed = _allowed(case, place, row)
        if allowed is not None:
            for op in sorted({group.op for group in row.ops} - allowed):
                yield found(place, "op-out-of-place", op=str(op), stage=str(row.stage))
        if not _mirrored(row):
            yield found(place, "increases-not-mirrored")
        if row.stage is StageName.LEG and not _corners_closed(case, place, row):
            yield found(place, "corner-strands-wrong")
        if row.stage is StageName.CUFF and not _ribbed(row.ops):
            yield found(place, "rib-broken")


def _allowed(case: Case, place: int, row: Row) -> set[Op] | None:
    """None where the label of the stage or the side is wrong, which is said elsewhere."""
    stage, construction = case.owners[place], case.plan.construction
    if stage is None or stage.name is not row.stage:
        return None
    if row.stage is StageName.BIND_OFF:
        return _BIND_OFF_OPS.get(construction.bind_off, set())
    if row.stage is StageName.TOE and row.half is Half.BACK and place < stage.first_row + 4:
        return {Op(construction.second_tip)}
    if row.stage is StageName.GUSSET and row.half is Half.FRONT:
        return _PLAIN
    return _ALLOWED.get((row.stage, row.facing))


def _mirrored(row: Row) -> bool:
    """Increases come as k1, m1r, k …, m1l, k1, or not at all; of two stitches none lies between."""
    if not any(group.op in INCREASES for group in row.ops):
        return True
    ops = [_short(group) for group in row.ops]
    edges, between = [*ops[:2], *ops[-2:]], ops[2:-2]
    knitted = not between or (len(between) == 1 and between[0][0] is Op.K)
    return knitted and edges == [(Op.K, 1), (Op.M1R, 1), (Op.M1L, 1), (Op.K, 1)]


def _corners_closed(case: Case, place: int, row: Row) -> bool:
    """Both strands of each front in the first round of the leg, none elsewhere."""
    strands = [_short(group) for group in row.ops if group.op in _STRANDS]
    stage = case.owners[place]
    if stage is None or place >= stage.first_row + 4 or row.half is Half.BACK:
        return not strands
    edges = [_short(row.ops[0]), _short(row.ops[-1])] if row.ops else []
    return strands == edges == [(Op.K2TOG_STRAND, 1), (Op.SSK_STRAND, 1)]


def _ribbed(ops: tuple[Group, ...]) -> bool:
    """Knit one, purl one, over an even half, so that the columns run on round after round."""
    knits, purls = ops[::2], ops[1::2]
    return (
        len(knits) == len(purls) > 0
        and all(group.op is Op.K and group.times == 1 for group in knits)
        and all(group.op is Op.P and group.times == 1 for group in purls)
    )


def _short(group: Group) -> tuple[Op, int]:
    return group.op, group.times
