"""Rounds that need no stitches read out: plain ones, and those worked like the one before."""

from plans.conversation import Grain
from plans.engine.courses import Course
from plans.pattern import Colour, Needles, Row, StageName
from plans.stitches import INCREASES, Op

_SLIPS = {Op.SL_WYIB, Op.SL_WYIF}
_KNIT, _PURL = {Op.K, Op.KTBL}, {Op.P, Op.PTBL}
_PLAIN = {*_KNIT, *_PURL, *_SLIPS}
_DECREASES = {Op.K2TOG, Op.SSK}
_BY_HALVES = {Op.WASTE, Op.THREAD, Op.FREE, Op.PICK_UP, Op.GRAFT, Op.GRAFT_RIB, Op.CO_WASTE, Op.PICK_UP_K,
              Op.THREE_NEEDLE}  # fmt: skip


def is_plain(row: Row) -> bool:
    """Whether a row only knits or purls what is there, rib included."""
    return bool(row.ops) and all(
        group.op in _PLAIN and not group.wrap and not group.double for group in row.ops
    )


def is_read_out(the_course: Course, row_index: int) -> bool:
    """Whether the stitches of a round are read.

    They are in one that follows a chart, keeps loops, puts them on the needle or grafts them off, is not the same on
    both socks, is ribbed otherwise than knit one, purl one, increases at the centre or decreases otherwise than at both
    edges, and in all that is written by hand.
    """
    rows = _round(the_course, row_index)
    if the_course.plan.written is not None or any(
        row.chart or _is_other_rib(row) or _is_other_decrease(row) or is_centred(row) for row in rows
    ):
        return True
    return any(group.op in _BY_HALVES for row in rows for group in row.ops) or _socks_differ(rows)


def _is_other_rib(row: Row) -> bool:
    """Whether a row knits and purls by turns, and not each once: "rib" alone would not say how."""
    ops = {group.op for group in row.ops}
    ribbed = bool(ops & _KNIT) and bool(ops & _PURL) and ops <= _KNIT | _PURL
    return ribbed and (ops != {Op.K, Op.P} or any(group.times > 1 for group in row.ops))


def is_narrowed(row: Row) -> bool:
    """Whether a row is knitted with one decrease at each edge, each leaning inwards."""
    decreases = [(group.op, group.times) for group in row.ops if group.op is not Op.K]
    return decreases == [(Op.SSK, 1), (Op.K2TOG, 1)]


def is_centred(row: Row) -> bool:
    """Whether a row of a leg is increased or decreased at its centre, as a calf wants it."""
    if row.stage is not StageName.LEG:
        return False
    shaped = [(group.op, group.times) for group in row.ops if group.op in INCREASES | _DECREASES]
    return any(op in INCREASES for op, _ in shaped) or shaped == [(Op.K2TOG, 1), (Op.SSK, 1)]


def _is_other_decrease(row: Row) -> bool:
    decreases = {group.op for group in row.ops} & _DECREASES
    return bool(decreases) and all(group.op in _DECREASES | {Op.K} for group in row.ops) and not is_narrowed(row)


def _socks_differ(rows: tuple[Row, ...]) -> bool:
    """Whether a half is worked otherwise on one sock than on the other, as in the toes of a mirrored pair."""
    first = {row.half: row.ops for row in rows if row.sock == 1}
    return any(row.ops != first.get(row.half, row.ops) for row in rows)


def is_told_by_number(the_course: Course, row_index: int) -> bool:
    """Whether its number says all there is to say of a round."""
    rows = _round(the_course, row_index)
    if not all(is_plain(row) for row in rows):
        return False
    if not is_read_out(the_course, row_index):
        return not any(group.op in _SLIPS for row in rows for group in row.ops)
    before = _before(the_course, row_index)
    return [_work(row) for row in before] == [_work(row) for row in rows]


def is_knitted_throughout(the_course: Course, row_index: int) -> bool:
    """Whether a round is all knit in one colour, by no chart: it is called in one, and said to be plain."""
    rows = _round(the_course, row_index)
    return not any(row.chart for row in rows) and all(
        group.op is Op.K and group.colour is Colour.MAIN for row in rows for group in row.ops
    )


def is_told_whole(the_course: Course, span_start: int, span_end: int, grain: Grain) -> bool:
    """Whether a span is a whole round of a single piece, in one row, that its number tells."""
    if the_course.plan.construction.needles is not Needles.ONE_CIRCULAR or grain not in ("follow", "round"):
        return False
    if span_start >= the_course.end:
        return False
    row_index = the_course.row_of[span_start]
    whole = (span_start, span_end) == tuple(the_course.starts[row_index : row_index + 2])
    begins = the_course.stages[the_course.stage_of[row_index]].first == row_index
    if not whole or begins or the_course.plan.rows[row_index].acts:
        return False
    return is_told_by_number(the_course, row_index)


def _round(the_course: Course, row_index: int) -> tuple[Row, ...]:
    run = the_course.rounds[the_course.round_of[row_index]]
    return the_course.plan.rows[run.first : run.end]


def _before(the_course: Course, row_index: int) -> tuple[Row, ...]:
    """The round before, where it belongs to the same part."""
    this = the_course.round_of[row_index]
    stage = the_course.stages[the_course.stage_of[row_index]]
    if this == 0 or the_course.rounds[this - 1].first < stage.first:
        return ()
    run = the_course.rounds[this - 1]
    return the_course.plan.rows[run.first : run.end]


def _work(row: Row) -> tuple[object, ...]:
    return row.sock, row.half, row.ops, row.chart
