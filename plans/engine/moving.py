"""Places set by the knitter: back, forward, "I am at round", ripped back."""

from typing import Literal

from plans.conversation import (
    Asked,
    AtRound,
    Back,
    Decision,
    Forward,
    PlaceSet,
    Progress,
    Reply,
    RippedBack,
    Standing,
    Value,
)
from plans.engine.apart import sock_ahead
from plans.engine.calling import call
from plans.engine.courses import Course, Run, course
from plans.engine.naming import round_number, sock_name, stage_name
from plans.engine.places import in_hand, place, position, standing_at
from plans.engine.ripping import named, pulled_back_to
from plans.pattern import Act, Plan, Sock, StageName


def shift(plan: Plan, progress: Progress, command: Back | Forward) -> Decision:
    """Go whole rounds back or forward, as many as there are, to the start of one; in a heel its rows."""
    the_course = course(plan)
    way = command.kind
    if command.rounds < 1:
        return Decision(events=(), reply=Reply.of("no-rounds"))
    here = _round_in_hand(the_course, progress.now)
    step = -command.rounds if way == "back" else command.rounds
    target = max(0, min(here + step, len(the_course.rounds) - 1))
    moved = here - target if way == "back" else target - here
    if moved < 1:
        return Decision(events=(), reply=Reply.of(f"cannot-go-{way}"))
    now = _moved(the_course, progress.now, the_course.starts[the_course.rounds[target].first])
    said = call(plan, now, progress.grain)
    if moved < command.rounds:
        reply = Reply.of(f"went-{way}-fewer", asked=command.rounds, rounds=moved, call=said)
    else:
        reply = Reply.of(f"went-{way}", rounds=moved, call=said)
    return Decision(events=(PlaceSet(now=now, why=way),), reply=reply)


def _round_in_hand(the_course: Course, standing: Standing) -> int:
    at = in_hand(the_course, standing)
    return len(the_course.rounds) if at >= the_course.end else the_course.round_of[the_course.row_of[at]]


def _moved(the_course: Course, standing: Standing, at: int) -> Standing:
    """Both socks at a position; one that is ahead of it, and was ahead before, stays where it is."""
    ahead = sock_ahead(the_course, standing)
    now = standing_at(the_course, standing.plan, at)
    if ahead == 1 and position(the_course, standing.first) > position(the_course, now.first):
        return now.model_copy(update={"first": standing.first})
    if ahead == 2 and position(the_course, standing.second) > position(the_course, now.second):
        return now.model_copy(update={"second": standing.second})
    return now


def ask_to_set(plan: Plan, progress: Progress, wish: AtRound | RippedBack) -> Decision:
    """Ask before a place is set; or say why it cannot be."""
    the_course = course(plan)
    found = _targets(the_course, progress.now, wish)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    number, of = named(the_course, found[0])
    stage = stage_name(the_course.plan.rows[found[0]].stage)
    key = "ask-at-round" if isinstance(wish, AtRound) else "ask-ripped-back"
    reply = _of_sock(plan, wish, key, stage=stage, round=number, of=of)
    return Decision(events=(Asked(wish=wish),), reply=reply)


def _of_sock(plan: Plan, wish: AtRound | RippedBack, key: str, **values: Value) -> Reply:
    """What is said of both socks, or of the one that a wish is about."""
    sock = _alone(plan, wish)
    return Reply.of(key, **values) if sock is None else Reply.of(f"{key}-on", sock=sock_name(plan, sock), **values)


def _alone(plan: Plan, wish: AtRound | RippedBack) -> Sock | None:
    """The one sock that a wish is about; None for both, and for what is one piece."""
    return wish.sock if len(plan.socks) == 2 else None


def set_place(plan: Plan, progress: Progress, wish: AtRound | RippedBack) -> Decision:
    """Set the place that was asked for, at the first stitches: a lifeline there is in already."""
    the_course = course(plan)
    found = _targets(the_course, progress.now, wish)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    now = _set(the_course, progress.now, found, wish)
    number, of = named(the_course, found[0])
    reply = _of_sock(
        plan,
        wish,
        "place-set",
        stage=stage_name(the_course.plan.rows[found[0]].stage),
        round=number,
        of=of,
        call=call(plan, now, progress.grain),
    )
    return Decision(events=(PlaceSet(now=now, why=wish.kind),), reply=reply)


def _set(the_course: Course, standing: Standing, rows: tuple[int, ...], wish: AtRound | RippedBack) -> Standing:
    """Both socks at a row and what follows it, or each at its own; or one sock, whose own stitches are there."""
    pulled, sock = isinstance(wish, RippedBack), _alone(the_course.plan, wish)
    now = standing_at(the_course, standing.plan, _first_stitches(the_course, rows[0], pulled=pulled))
    if sock is not None:
        return now.model_copy(update={"second": standing.second} if sock == 1 else {"first": standing.first})
    for row in rows[1:]:
        name: Literal["first", "second"] = "first" if the_course.plan.rows[row].sock == 1 else "second"
        if getattr(now, name).row_index != row:
            now = now.model_copy(update={name: place(the_course, _first_stitches(the_course, row, pulled=pulled))})
    return now


def _first_stitches(the_course: Course, row_index: int, *, pulled: bool) -> int:
    """Past what a lifeline and a fitting have had already; pulled out, what was joined in the round is joined again."""
    start, end = the_course.starts[row_index : row_index + 2]
    if the_course.plan.rows[row_index].stage is StageName.CAST_ON:
        return start
    steps = ((at, the_course.steps[at]) for at in range(start, end))
    return next((at for at, step in steps if step.groups or (pulled and Act.JOIN in step.acts)), start)


def wish_reply(plan: Plan, progress: Progress, wish: AtRound | RippedBack) -> Reply:
    """What a question was about, to be said when it is dropped."""
    the_course = course(plan)
    found = _targets(the_course, progress.now, wish)
    key = "wish-at-round" if isinstance(wish, AtRound) else "wish-ripped-back"
    row = the_course.row(in_hand(the_course, progress.now)) if isinstance(found, Reply) else plan.rows[found[0]]
    number, _ = round_number(the_course, row.index)
    return _of_sock(plan, wish, key, stage=stage_name(row.stage), round=number)


def _targets(the_course: Course, standing: Standing, wish: AtRound | RippedBack) -> tuple[int, ...] | Reply:
    """The rows a wish names, or why there is none; of one sock, by where that sock is."""
    if isinstance(wish, RippedBack) and wish.stage is not None:
        return pulled_back_to(the_course, standing, wish, wish.stage)
    if isinstance(wish, RippedBack) and wish.round is None:
        return Reply.of("ripped-back-to-where")
    sock = _alone(the_course.plan, wish)
    at = in_hand(the_course, standing) if sock is None else _own_position(the_course, standing, sock)
    run, number = the_course.stages[the_course.stage_of[the_course.row(at).index]], wish.round or 0
    row_index = _row_of_round(the_course, run, number, sock)
    name = stage_name(the_course.plan.rows[run.first].stage)
    if row_index is None:
        _, of = round_number(the_course, run.first)
        return Reply.of("no-such-round", stage=name, round=number, of=of)
    if isinstance(wish, RippedBack) and the_course.starts[row_index] > at:
        return Reply.of("not-knitted-yet", stage=name, round=number)
    return (row_index,)


def _own_position(the_course: Course, standing: Standing, sock: Sock) -> int:
    return position(the_course, standing.first if sock == 1 else standing.second)


def _row_of_round(the_course: Course, run: Run, number: int, sock: Sock | None) -> int | None:
    rows = (index for index in range(run.first, run.end) if sock in {None, the_course.plan.rows[index].sock})
    return next((index for index in rows if round_number(the_course, index)[0] == number), None)
