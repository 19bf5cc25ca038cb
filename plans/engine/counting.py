"""A count made with the fingers, compared with the plan."""

from plans.conversation import Counted, Decision, IHave, Progress, Reply
from plans.engine.courses import course
from plans.engine.naming import half_of, is_whole
from plans.engine.places import after, in_hand, is_finished, loops_on
from plans.pattern import Half, Plan, Row, Sock, StageName

_MOST_CAUSES = 2

_FEW: dict[StageName, tuple[str, ...]] = {
    StageName.CAST_ON: ("cause-first-loop-lost", "cause-cast-on-miscounted"),
    StageName.TOE: ("cause-increase-missed", "cause-dropped-stitch"),
    StageName.HEEL_FLAP: ("cause-two-eaten", "cause-dropped-stitch"),
    StageName.BIND_OFF: ("cause-bound-off-early", "cause-dropped-stitch"),
}
_MANY: dict[StageName, tuple[str, ...]] = {
    StageName.CAST_ON: ("cause-cast-on-miscounted",),
    StageName.TOE: ("cause-increase-round-twice", "cause-yarn-over-or-split"),
    StageName.HEEL_FLAP: ("cause-join-forgotten", "cause-yarn-over-or-split"),
    StageName.LEG: ("cause-corner-not-joined", "cause-yarn-over-or-split"),
}
_GUSSET = {
    (Half.BACK, False): ("cause-increase-missed", "cause-dropped-stitch"),
    (Half.BACK, True): ("cause-increase-round-twice", "cause-yarn-over-or-split"),
    (Half.FRONT, False): ("cause-dropped-stitch",),
    (Half.FRONT, True): ("cause-increased-on-front", "cause-yarn-over-or-split"),
}


_NARROWED = frozenset({StageName.TOE, StageName.GUSSET, StageName.HEEL_TURN})


def causes(
    stage: StageName, half: Half, *, many: bool, widens: bool = False, down: bool = False
) -> tuple[str, ...]:
    """What usually makes a count too high or too low in a stage (common practice); the back of a leg may be shaped."""
    if down:
        narrowed = ("cause-decrease-missed",) if many else ("cause-decreased-twice",)
        usual = "cause-yarn-over-or-split" if many else "cause-dropped-stitch"
        shaped = stage in _NARROWED or (widens and stage is StageName.LEG and half is Half.BACK)
        return (*(narrowed if shaped else ()), usual)
    if stage is StageName.GUSSET or (widens and stage is StageName.LEG and half is Half.BACK):
        return _GUSSET[half, many]
    if many:
        return _MANY.get(stage, ("cause-yarn-over-or-split",))
    return _FEW.get(stage, ("cause-dropped-stitch",))


def _meant(plan: Plan, command: IHave, row: Row) -> tuple[Sock, Half]:
    """Sock and half that were counted; a single piece is the first, and all of it is front where it has no halves."""
    sock = command.sock or row.sock
    half = command.half or row.half
    return sock if len(plan.socks) == 2 else 1, Half.FRONT if is_whole(plan) else half


def i_have(plan: Plan, progress: Progress, command: IHave) -> Decision:
    """Right where it equals the count before or after the step in hand; else the difference and causes."""
    the_course = course(plan)
    row = the_course.row(in_hand(the_course, progress.now))
    sock, half = _meant(plan, command, row)
    following = after(plan, progress.now, progress.grain)
    expected = tuple(dict.fromkeys(loops_on(plan, at, sock, half) for at in (progress.now, following)))
    right = command.stitches in expected
    event = Counted(sock=sock, half=half, stitches=command.stitches, expected=expected, right=right)
    where = half_of(plan, sock, half)
    if right:
        reply = Reply.of("count-right", stitches=command.stitches, where=where)
        return Decision(events=(event,), reply=reply)
    nearest = min(expected, key=lambda count: abs(count - command.stitches))
    many = command.stitches > nearest
    found = causes(row.stage, half, many=many, widens=plan.calf is not None, down=plan.cuff_down)
    if not is_finished(plan, following):
        later = loops_on(plan, after(plan, following, progress.grain), sock, half)
        found = ("cause-worked-too-far", *found) if later == command.stitches else found
    reply = Reply.of(
        "count-too-many" if many else "count-too-few",
        stitches=command.stitches,
        where=where,
        expected=nearest,
        difference=abs(command.stitches - nearest),
        causes=tuple(Reply.of(cause) for cause in found[:_MOST_CAUSES]),
    )
    return Decision(events=(event,), reply=reply)
