"""What socks, halves, stages and places are called in replies."""

from plans.conversation import Grain, Reply
from plans.engine.courses import Course, heel_stages
from plans.pattern import Half, Needles, Plan, Row, StageName
from plans.sayings import stage_key

_PLAIN_NAMES = {"first": "sock-first", "second": "sock-second"}


_PLAIN_PIECES = {"first": "piece-first", "second": "piece-second"}


def sock_name(plan: Plan, sock: int) -> Reply:
    """The sock by its name in the plan; the plain names "first" and "second" have keys of their own."""
    name = plan.socks[min(sock, len(plan.socks)) - 1]
    key = (_PLAIN_NAMES if plan.written is None else _PLAIN_PIECES).get(name)
    return Reply.of(key) if key is not None else Reply.of("sock-named", name=name)


def is_whole(plan: Plan) -> bool:
    """Whether it is one piece whose rounds lie on the needle whole, not in halves."""
    return plan.construction.needles is Needles.ONE_CIRCULAR


def said(plan: Plan, key: str) -> str:
    """The key by which something is said of socks, or of a piece written by hand."""
    return key if plan.written is None else f"{key}-written"


def grain_name(plan: Plan, grain: Grain) -> Reply:
    """How large the steps are; a half lies on two double-pointed needles, and is a side of the one sock on them."""
    by_needle = {"half": "needle", "side": "half"} if plan.construction.needles.pointed else {}
    return Reply.of(f"grain-{by_needle.get(grain, grain)}")


def half_name(half: Half) -> Reply:
    """Front or back."""
    return Reply.of(f"half-{half.value}")


def stage_name(stage: StageName) -> Reply:
    """The stage by its name."""
    return Reply.of(stage_key(stage))


def half_in(the_course: Course, row: Row) -> Reply:
    """The half of a row; a heel made last has a sole side and a leg side."""
    if row.stage is StageName.HEEL and StageName.HEEL not in heel_stages(the_course.plan):
        return Reply.of("half-leg" if row.half is Half.BACK else "half-sole")
    return half_name(row.half)


def half_of(plan: Plan, sock: int, half: Half) -> Reply:
    """One half of one sock: "front of the first sock"; of a single piece the half, or all of it."""
    if is_whole(plan):
        return Reply.of("where-piece", sock=sock_name(plan, sock))
    if len(plan.socks) == 1:
        return Reply.of("where-one-half", half=half_name(half))
    return Reply.of("where-half", half=half_name(half), sock=sock_name(plan, sock))


def half_of_row(the_course: Course, row: Row) -> Reply:
    """The half a row is worked on."""
    half = half_in(the_course, row)
    if half.key in {"half-front", "half-back"}:
        return half_of(the_course.plan, row.sock, row.half)
    return Reply.of("where-half", half=half, sock=sock_name(the_course.plan, row.sock))


def row_name(the_course: Course, row: Row) -> Reply:
    """One half of one sock, or in a heel the row of that sock, counted within its stage."""
    if is_whole(the_course.plan):
        number, of = round_number(the_course, row.index)
        return Reply.of("where-round", round=number, of=of)
    if not the_course.is_row(row.index):
        return half_of_row(the_course, row)
    number, of = round_number(the_course, row.index)
    return Reply.of("where-heel-row", sock=sock_name(the_course.plan, row.sock), row=number, of=of)


def round_number(the_course: Course, row_index: int) -> tuple[int, int]:
    """The round within its stage and how many that stage has; in a heel the row, counted within its stage."""
    return the_course.plan.rows[row_index].round, the_course.longest[the_course.stage_of[row_index]]
