"""The tape measure against the plan: her real rounds, and what is still to be knitted planned anew by them.

Rounds that are knitted stay as they are, in the new plan too: only plain rounds of the foot, the leg and the cuff
that are still ahead become more or fewer, so that foot and leg come to the lengths that were aimed at.
"""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Asked, Decision, Measure, Progress, Replanned, Reply, TapeSays, Value
from plans.engine.calling import call
from plans.engine.courses import Course, course
from plans.engine.naming import round_number, stage_name
from plans.engine.places import in_hand
from plans.engine.wished import wishes_of
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.pattern import Direction, Plan, StageName
from plans.quantities import Length, plain_number
from plans.wishes import Swatch, Wishes

_STAGES = {
    "foot": (StageName.TOE, StageName.FOOT, StageName.GUSSET),
    "leg": (StageName.LEG, StageName.CUFF),
}
_OPEN = {"foot": (StageName.TOE, StageName.FOOT), "leg": (StageName.LEG, StageName.CUFF)}
"""Where something is still to be changed."""
_SHORTEST = Length(Fraction(30))
"""Under this a tape's millimetre or two are too much of the length (our own bound)."""
_LIKELY = (Fraction(2, 3), Fraction(3, 2))
"""Her rounds over the planned ones; beyond this the tape, or what was heard, is wrong (our own bound)."""


class _New(NamedTuple):
    """The plan anew.

    Attributes:
        rounds: over 10 cm, as she really knits them.
        stage: whose rounds change.
        before, after: how many they are in the old plan and the new.
    """

    plan: Plan
    rounds: Fraction
    stage: StageName
    before: int
    after: int


def tape_says(plan: Plan, progress: Progress, command: TapeSays) -> Decision:
    """Offer the plan anew, or say that it stays as it is, or why it cannot be made."""
    found = _anew(plan, progress, command)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    reply = Reply.of(
        "ask-replan", rounds=plain_number(found.rounds, 1), planned=plain_number(plan.gauge.rounds_per_10cm, 1),
        stage=stage_name(found.stage), before=found.before, after=found.after, part=_part(command),
        length=_measure(_length(found.plan, command)),
    )  # fmt: skip
    return Decision(events=(Asked(wish=command),), reply=reply)


def replan(plan: Plan, progress: Progress, command: TapeSays) -> Decision:
    """Go over to the plan anew; both socks stay where they are, and undo goes back to the old plan."""
    found = _anew(plan, progress, command)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    now = progress.now.model_copy(update={"plan": plan_id(found.plan)})
    the_course = course(found.plan)
    row = the_course.row(in_hand(the_course, now))
    number, of = round_number(the_course, row.index)
    said = call(found.plan, now, progress.grain)
    reply = Reply.of("replan-taken", stage=stage_name(row.stage), round=number, of=of, call=said)
    return Decision(events=(Replanned(now=now),), reply=reply, plan=found.plan)


def _anew(plan: Plan, progress: Progress, command: TapeSays) -> _New | Reply:
    the_course, wishes = course(plan), wishes_of(plan)
    if plan.cuff_down:
        return Reply.of("tape-cuff-down")
    if wishes is None or wishes.practice or plan.construction.direction is not Direction.TOE_UP:
        return Reply.of("tape-no-plan")
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Reply.of("finished-already")
    rounds = _measured(the_course, at, command)
    if isinstance(rounds, Reply):
        return rounds
    wished = _wishes_anew(the_course, at, wishes, rounds, command)
    made = make_plan(wished)
    if not isinstance(made, Made):
        return Reply.of("tape-no-plan")
    if not _same_so_far(plan, made.plan, progress):
        return Reply.of("tape-no-plan")
    return _compared(plan, made.plan, rounds, the_course.row(at).stage, command)


def _measured(the_course: Course, at: int, command: TapeSays) -> Fraction | Reply:
    """Rounds over 10 cm from those that are whole so far; or why they tell nothing."""
    row = the_course.row(at)
    if row.stage not in _OPEN[command.part]:
        key = "tape-too-late" if _is_past(row.stage, command) else "tape-too-early"
        return Reply.of(key, part=_part(command))
    if the_course.is_cup(row.index):
        return Reply.of("tape-too-early", part=_part(command))
    stages, rows = _STAGES[command.part], the_course.plan.rows
    done = the_course.cup if command.part == "foot" else 0
    done += sum(
        1 for run in the_course.rounds
        if run.end <= row.index and rows[run.first].stage in stages and not the_course.is_cup(run.first)
    )  # fmt: skip
    if command.length < _SHORTEST or done == 0:
        return Reply.of("tape-too-early", part=_part(command))
    rounds, planned = done * 100 / command.length.mm, the_course.plan.gauge.rounds_per_10cm
    if not _LIKELY[0] <= rounds / planned <= _LIKELY[1]:
        lengths = {"length": _measure(command.length), "planned": _measure(Length(done * 100 / planned))}
        return Reply.of("tape-unlikely", part=_part(command), **lengths)
    return Fraction(round(rounds * 10), 10)


def _is_past(stage: StageName, command: TapeSays) -> bool:
    order = list(StageName)
    return order.index(stage) > order.index(_OPEN[command.part][-1])


def _wishes_anew(the_course: Course, at: int, wishes: Wishes, rounds: Fraction, command: TapeSays) -> Wishes:
    """The same sock in her real rounds: all that is knitted fixed, what is ahead left to be worked out."""
    plan = the_course.plan
    swatch = Swatch(stitches=plan.gauge.stitches_per_10cm, rounds=rounds)
    fixed = {
        "swatch": swatch, "counts": (), "around": plan.around, "cast_on": plan.cast_on, "gusset": plan.gusset,
        "foot_rounds": None, "leg_rounds": None, "cuff_rounds": None,
        "leg": wishes.leg or Length.of_cm(plan.finished.leg_cm),
        "calf_shape": plan.calf if plan.calf and _widens_by(the_course, at) else wishes.calf_shape,
    }  # fmt: skip
    wished = wishes.model_copy(update=fixed)
    begun = _begun(the_course, at)
    if command.part == "foot":
        made = make_plan(wished)
        even = _rounds_of(made.plan, StageName.FOOT) if isinstance(made, Made) else 0
        return wished.model_copy(update={"foot_rounds": max(even, begun[StageName.FOOT])})
    return wished.model_copy(update=_leg_anew(plan, wished, rounds, begun))


def _widens_by(the_course: Course, at: int) -> bool:
    """Whether the leg has begun to widen: then its increases stay where they are."""
    calf, begun = the_course.plan.calf, _begun(the_course, at)[StageName.LEG]
    return calf is not None and begun >= calf.first_round


def _leg_anew(
    plan: Plan, wished: Wishes, rounds: Fraction, begun: dict[StageName, int]
) -> dict[str, int]:
    """Rounds of the leg, then of the cuff, that make the height aimed at and are no fewer than those begun."""
    leg_mm = wished.leg.mm if wished.leg else plan.finished.leg_cm * 10
    total = round(leg_mm * rounds / 100)
    cuff = _rounds_of(plan, StageName.CUFF)
    if begun[StageName.CUFF]:
        leg = _rounds_of(plan, StageName.LEG)
        cuff = max(total - leg, begun[StageName.CUFF])
    else:
        cuff = max(1, round(cuff * rounds / plan.gauge.rounds_per_10cm))
        last = plan.calf.last_round if plan.calf and begun[StageName.LEG] >= plan.calf.first_round else 1
        leg = max(total - cuff, begun[StageName.LEG], last)
    return {"foot_rounds": _rounds_of(plan, StageName.FOOT), "leg_rounds": leg, "cuff_rounds": cuff}


def _begun(the_course: Course, at: int) -> dict[StageName, int]:
    """How many rounds of each stage are knitted or begun."""
    row = the_course.row(at)
    rows = the_course.plan.rows[: row.index + 1]
    return {
        stage: max((each.round for each in rows if each.stage is stage), default=0)
        for stage in (StageName.FOOT, StageName.LEG, StageName.CUFF)
    }


def _rounds_of(plan: Plan, stage: StageName) -> int:
    return max((row.round for row in plan.rows if row.stage is stage), default=0)


def _same_so_far(old: Plan, new: Plan, progress: Progress) -> bool:
    """Whether every row up to the further of both places is the same in both plans."""
    done = max(progress.now.first.row_index, progress.now.second.row_index) + 1
    return done <= len(new.rows) and old.rows[:done] == new.rows[:done]


def _compared(old: Plan, new: Plan, rounds: Fraction, stage: StageName, command: TapeSays) -> _New | Reply:
    stages = (StageName.FOOT,) if command.part == "foot" else (stage, StageName.CUFF)
    for each in stages:
        before, after = _rounds_of(old, each), _rounds_of(new, each)
        if before != after:
            return _New(new, rounds, each, before, after)
    return _same(old, new, rounds, command)


def _same(old: Plan, new: Plan, rounds: Fraction, command: TapeSays) -> Reply:
    """No round is to be added or left out: because it comes out right, or because too many are knitted already."""
    made, aimed = (_length(plan, command) for plan in (new, old))
    values: dict[str, Value] = {"rounds": plain_number(rounds, 1), "part": _part(command)}
    if made.mm - aimed.mm <= 100 / rounds:
        return Reply.of("tape-same", **values)
    return Reply.of("tape-passed", length=_measure(made), aimed=_measure(aimed), **values)


def _length(plan: Plan, command: TapeSays) -> Length:
    finished = plan.finished
    return Length.of_cm(finished.foot_length_cm if command.part == "foot" else finished.leg_cm)


def _part(command: TapeSays) -> Reply:
    return stage_name(StageName.FOOT if command.part == "foot" else StageName.LEG)


def _measure(length: Length) -> Measure:
    return Measure(tenths_mm=round(length.mm * 10))
