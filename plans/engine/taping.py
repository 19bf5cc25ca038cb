"""The tape measure against the plan: her real rounds, and what is still to be knitted planned anew by them.

Rounds that are knitted stay as they are, in the new plan too: only plain rounds of the foot, the leg and the cuff
that are still ahead become more or fewer, so that foot and leg come to the lengths that were aimed at.
"""

from fractions import Fraction
from typing import NamedTuple

from plans.conversation import Asked, Decision, Progress, Replanned, Reply, Standing, TapeSays, Value
from plans.engine.apart import sock_ahead
from plans.engine.calling import call
from plans.engine.courses import Course, course
from plans.engine.naming import round_number, stage_name
from plans.engine.places import in_hand, standing_at
from plans.engine.tape_rounds import measure, part_name, real_rounds
from plans.engine.wished import wishes_of
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.pattern import Calf, Plan, StageName
from plans.quantities import Length, plain_number
from plans.wishes import Swatch, Wishes


class _New(NamedTuple):
    """The plan anew.

    Attributes:
        rounds: over 10 cm, as she really knits them.
        changes: stages of the part that was measured whose rounds change, each with how many they were and will be.
    """

    plan: Plan
    rounds: Fraction
    changes: tuple[Reply, ...]


def tape_says(plan: Plan, progress: Progress, command: TapeSays) -> Decision:
    """Offer the plan anew, or say that it stays as it is, or why it cannot be made."""
    found = _anew(plan, progress, command)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    reply = Reply.of(
        "ask-replan", rounds=plain_number(found.rounds, 1), planned=plain_number(plan.gauge.rounds_per_10cm, 1),
        changes=found.changes, part=part_name(command), length=measure(_length(found.plan, command)),
    )  # fmt: skip
    return Decision(events=(Asked(wish=command),), reply=reply)


def replan(plan: Plan, progress: Progress, command: TapeSays) -> Decision:
    """Go over to the plan anew; both socks stay where they are, and undo goes back to the old plan."""
    found = _anew(plan, progress, command)
    if isinstance(found, Reply):
        return Decision(events=(), reply=found)
    the_course = course(found.plan)
    now = _carried_over(the_course, plan, progress)
    row = the_course.row(in_hand(the_course, now))
    number, of = round_number(the_course, row.index)
    said = call(found.plan, now, progress.grain)
    reply = Reply.of("replan-taken", stage=stage_name(row.stage), round=number, of=of, call=said)
    return Decision(events=(Replanned(now=now, why="measured"),), reply=reply, plan=found.plan)


def _anew(plan: Plan, progress: Progress, command: TapeSays) -> _New | Reply:
    the_course, wishes = course(plan), wishes_of(plan)
    if wishes is None or wishes.practice:
        return Reply.of("tape-no-plan")
    at = in_hand(the_course, progress.now)
    if at >= the_course.end:
        return Reply.of("finished-already")
    if the_course.one_sock and the_course.row(at).sock == 2:
        return Reply.of("tape-second-sock", part=part_name(command))
    rounds = real_rounds(the_course, at, command)
    if isinstance(rounds, Reply):
        return rounds
    made = make_plan(_wishes_anew(the_course, at, wishes, rounds, command))
    if not isinstance(made, Made) or not _same_so_far(plan, made.plan, progress):
        return Reply.of("tape-no-plan")
    return _compared(plan, made.plan, rounds, command)


def _wishes_anew(the_course: Course, at: int, wishes: Wishes, rounds: Fraction, command: TapeSays) -> Wishes:
    """The same sock in her real rounds: all that is knitted fixed, what is ahead left to be worked out."""
    plan, begun = the_course.plan, _begun(the_course, at)
    swatch = Swatch(stitches=plan.gauge.stitches_per_10cm, rounds=rounds)
    fixed = {
        "swatch": swatch, "counts": (), "around": plan.around, "gusset": plan.gusset or None,
        "cast_on": None if plan.cuff_down else plan.cast_on,
        "foot_rounds": wishes.foot_rounds if plan.cuff_down and command.part == "leg" else None,
        "leg_rounds": None, "cuff_rounds": None,
        "leg": wishes.leg or Length.of_cm(plan.finished.leg_cm),
        "calf_shape": plan.calf if plan.cuff_down or _widens(plan, begun) else wishes.calf_shape,
    }  # fmt: skip
    wished = wishes.model_copy(update=fixed)
    if command.part == "foot":
        return _foot_anew(plan, wished, begun)
    wished = wished.model_copy(update=_leg_anew(plan, wished, rounds, begun))
    return _narrowed_anew(plan, wished, begun) if plan.cuff_down else _calf_anew(wished, begun)


def _foot_anew(plan: Plan, wished: Wishes, begun: dict[StageName, int]) -> Wishes:
    """Plain rounds of the foot that make it as long as aimed at; from the cuff down the leg is knitted already."""
    if plan.cuff_down:
        upper = {"leg_rounds": _rounds_of(plan, StageName.LEG), "cuff_rounds": _rounds_of(plan, StageName.CUFF)}
        wished = wished.model_copy(update=upper)
    made = make_plan(wished)
    even = _rounds_of(made.plan, StageName.FOOT) if isinstance(made, Made) else 0
    return wished.model_copy(update={"foot_rounds": max(even, begun[StageName.FOOT])})


def _widens(plan: Plan, begun: dict[StageName, int]) -> bool:
    """Whether the leg has begun to widen, or to narrow: then its shaping stays where it is."""
    return plan.calf is not None and begun[StageName.LEG] >= plan.calf.first_round


def _calf_anew(wished: Wishes, begun: dict[StageName, int]) -> Wishes:
    """Increases that would stand in rounds that are knitted begin in the next one, and come closer."""
    made = make_plan(wished)
    calf, begins = made.plan.calf if isinstance(made, Made) else None, begun[StageName.LEG] + 1
    if wished.calf_shape is not None or calf is None or calf.first_round >= begins:
        return wished
    most = wished.leg_rounds or calf.last_round
    last = max(calf.last_round, min(most, begins + 2 * (calf.pairs - 1)))
    pairs = min(calf.pairs, ((last - begins) // 2 + 1) // 2 * 2)
    if pairs < 1:
        return wished
    shape = Calf(pairs=pairs, first_round=begins, every=max(2, (last - begins + 1) // pairs))
    return wished.model_copy(update={"calf_shape": shape})


def _narrowed_anew(plan: Plan, wished: Wishes, begun: dict[StageName, int]) -> Wishes:
    """From the cuff down a leg is cast on for its calf: the decreases ahead stay as far above the heel as they were."""
    calf, rounds = plan.calf, wished.leg_rounds or 0
    if calf is None or _widens(plan, begun):
        return wished
    first = max(calf.first_round + rounds - _rounds_of(plan, StageName.LEG), begun[StageName.LEG] + 1, 2)
    every = min(calf.every, max(2, (rounds - first) // max(1, calf.pairs - 1)))
    shape = Calf(pairs=calf.pairs, first_round=first, every=every)
    return wished.model_copy(update={"calf_shape": shape, "leg_rounds": max(rounds, shape.last_round)})


def _leg_anew(plan: Plan, wished: Wishes, rounds: Fraction, begun: dict[StageName, int]) -> dict[str, int]:
    """Rounds of leg and cuff that make the height aimed at and are no fewer than those begun.

    The part that is knitted first is as it is, once the other is begun; that one takes what is left.
    """
    leg_mm = wished.leg.mm if wished.leg else plan.finished.leg_cm * 10
    total = round(leg_mm * rounds / 100)
    leg, cuff = _rounds_of(plan, StageName.LEG), _rounds_of(plan, StageName.CUFF)
    as_deep = max(1, round(cuff * rounds / plan.gauge.rounds_per_10cm))
    if plan.cuff_down:
        cuff = cuff if begun[StageName.LEG] else max(as_deep, begun[StageName.CUFF])
        last = plan.calf.last_round if plan.calf and _widens(plan, begun) else 1
        return {"leg_rounds": max(total - cuff, begun[StageName.LEG], last), "cuff_rounds": cuff}
    fixed = {"foot_rounds": _rounds_of(plan, StageName.FOOT)}
    if begun[StageName.CUFF]:
        return {**fixed, "leg_rounds": leg, "cuff_rounds": max(total - leg, begun[StageName.CUFF])}
    last = wished.calf_shape.last_round if wished.calf_shape else 1
    return {**fixed, "leg_rounds": max(total - as_deep, begun[StageName.LEG], last), "cuff_rounds": as_deep}


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
    """Whether every row up to the further of both places is the same in both plans.

    Of two socks knitted in turn the second is not begun; one that is set further on already hinders a new plan.
    """
    the_course, first, second = course(old), progress.now.first.row_index, progress.now.second.row_index
    if the_course.one_sock and sock_ahead(the_course, progress.now) is not None:
        return False
    done = 1 + (first if the_course.one_sock else max(first, second))
    return done <= len(new.rows) and old.rows[:done] == new.rows[:done]


def _carried_over(the_course: Course, old: Plan, progress: Progress) -> Standing:
    """The same places in the new plan; a second sock that is begun when the first is done begins elsewhere there."""
    if the_course.one_sock:
        return standing_at(the_course, plan_id(the_course.plan), in_hand(course(old), progress.now))
    return progress.now.model_copy(update={"plan": plan_id(the_course.plan)})


def _compared(old: Plan, new: Plan, rounds: Fraction, command: TapeSays) -> _New | Reply:
    """All that changes of the part that was measured, in the order of knitting."""
    upper = (StageName.CUFF, StageName.LEG) if old.cuff_down else (StageName.LEG, StageName.CUFF)
    stages = (StageName.FOOT,) if command.part == "foot" else upper
    counts = ((stage, _rounds_of(old, stage), _rounds_of(new, stage)) for stage in stages)
    changes = tuple(
        Reply.of("replan-change", stage=stage_name(stage), before=before, after=after)
        for stage, before, after in counts if before != after
    )  # fmt: skip
    return _New(new, rounds, changes) if changes else _same(old, new, rounds, command)


def _same(old: Plan, new: Plan, rounds: Fraction, command: TapeSays) -> Reply:
    """No round is to be added or left out: because it comes out right, or because too many are knitted already."""
    made, aimed = (_length(plan, command) for plan in (new, old))
    values: dict[str, Value] = {"rounds": plain_number(rounds, 1), "part": part_name(command)}
    if made.mm - aimed.mm <= 100 / rounds:
        return Reply.of("tape-same", **values)
    return Reply.of("tape-passed", length=measure(made), aimed=measure(aimed), **values)


def _length(plan: Plan, command: TapeSays) -> Length:
    finished = plan.finished
    return Length.of_cm(finished.foot_length_cm if command.part == "foot" else finished.leg_cm)
