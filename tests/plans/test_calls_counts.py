"""Every count that is said equals a count made from the operations alone."""

from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st

from plans.conversation import Grain, HowMany, IHave, Next, Reply, WhereAmI
from plans.engine.courses import course
from plans.engine.places import span
from plans.pattern import Half, Plan, StageName
from plans.stitches import TAKES_MAKES, Op
from tests.plans.knitter import Knitter
from tests.strategies import Pair, pairs, practice

grains: st.SearchStrategy[Grain] = st.sampled_from(("group", "half", "side", "round", "follow"))
Loops = dict[tuple[int, Half], int]


class NaivePair:
    """Loops on four halves, worked one operation after the other, knowing nothing of steps."""

    def __init__(self, plan: Plan) -> None:
        self.now: Loops = {(sock, half): 0 for sock in (1, 2) for half in Half}
        groups = [(row, group) for row in plan.rows for group in row.ops]
        self._single = [(row.sock, row.half, group.op) for row, group in groups for _ in range(group.times)]
        self._at = 0

    def work(self, operations: int) -> Loops:
        """Work so many operations on."""
        for sock, half, op in self._single[self._at : self._at + operations]:
            takes, makes = TAKES_MAKES[op]
            other = Half.BACK if half is Half.FRONT else Half.FRONT
            if op in {Op.GRAFT, Op.THREE_NEEDLE, Op.FASTEN}:
                takes -= 1
                self.now[sock, other] -= 1
            self.now[sock, half] += makes - takes
        self._at += operations
        return self.now


def makes_said(said: Reply) -> list[tuple[set[tuple[int, Half]] | None, int]]:
    """(halves, count) of each count that a call ends with; None stands for the half in hand."""
    found: list[tuple[set[tuple[int, Half]] | None, int]] = []
    both = {(1, half) for half in Half} | {(2, half) for half in Half}
    for part in said.walk():
        values = dict(part.values)
        match part.key:
            case "makes":
                found.append((None, values["count"]))
            case "makes-each-half":
                found.append((both, values["count"]))
            case "makes-front-back":
                found.append(({(1, Half.FRONT), (2, Half.FRONT)}, values["front"]))
                found.append(({(1, Half.BACK), (2, Half.BACK)}, values["back"]))
            case "makes-on":
                found.append(({half_meant(values["where"])}, values["count"]))
    return found


def half_meant(where: Reply) -> tuple[int, Half]:
    values = dict(where.values)
    return (
        1 if values["sock"].key == "sock-first" else 2,
        Half.FRONT if values["half"].key in {"half-front", "half-sole"} else Half.BACK,
    )


def walk(plan: Plan, grain: Grain) -> Iterator[tuple[Knitter, Loops, Loops]]:
    """Every step with the naive loops before and after it."""
    knitter, naive = Knitter(plan, grain), NaivePair(plan)
    prepared = [step.loops_worked for step in course(plan).steps]
    while not knitter.finished:
        before = dict(naive.now)
        worked = sum(prepared[at] for at in span(plan, knitter.progress.now, grain).positions)
        yield knitter, before, naive.work(worked)
        knitter.say(Next())


def in_hand_half(knitter: Knitter) -> tuple[int, Half]:
    where = dict(knitter.say(HowMany()).values)["where"]
    return half_meant(where)


@settings(max_examples=20)
@given(pairs(), grains)
def test_calls_end_with_the_counts_they_make(pair: Pair, grain: Grain):
    plan = pair.plan
    told = 0
    for knitter, _, after in walk(plan, grain):
        for halves, count in makes_said(knitter.call):
            told += 1
            if _bound_off(plan, knitter):
                continue
            for half in halves or {in_hand_half(knitter)}:
                assert count == after[half]
    assert told > 10


@settings(max_examples=20)
@given(pairs(), grains)
def test_both_socks_told_in_one_count_both_have_it(pair: Pair, grain: Grain):
    plan = pair.plan
    for knitter, _, after in walk(plan, grain):
        for part in knitter.call.walk():
            if part.key == "makes-each" and not _bound_off(plan, knitter):
                names = {Half.FRONT: ("half-front", "half-sole"), Half.BACK: ("half-back", "half-leg")}
                (half,) = {half for half in Half if any(name in str(knitter.call) for name in names[half])}
                assert {dict(part.values)["count"]} == {after[1, half], after[2, half]}


@settings(max_examples=20)
@given(pairs(), grains)
def test_how_many_tells_now_after_and_to_go(pair: Pair, grain: Grain):
    plan = pair.plan
    for knitter, before, after in walk(plan, grain):
        if _bound_off(plan, knitter):
            continue
        values = dict(knitter.say(HowMany()).values)
        half = half_meant(values["where"])
        assert (before[half], after[half]) == (values["now"], values["after"])
        assert 0 <= values["to_go"] <= before[half]


@settings(max_examples=20)
@given(pairs(), grains, st.data())
def test_a_count_is_right_as_before_or_as_after_the_step_only(pair: Pair, grain: Grain, data: st.DataObject):
    plan = pair.plan
    sock, half = data.draw(st.sampled_from((1, 2))), data.draw(st.sampled_from(list(Half)))
    for knitter, before, after in walk(plan, grain):
        if _bound_off(plan, knitter):
            continue
        for count in {each + more for each in (before[sock, half], after[sock, half]) for more in (-1, 0, 1)}:
            said = knitter.say(IHave(stitches=count, sock=sock, half=half))
            expected = {before[sock, half], after[sock, half]}
            assert (count in expected) == (said.key == "count-right")


@settings(max_examples=20)
@given(pairs(), grains)
def test_where_am_i_tells_the_counts_of_the_halves_in_hand(pair: Pair, grain: Grain):
    plan = pair.plan
    for knitter, before, after in walk(plan, grain):
        if _bound_off(plan, knitter):
            continue
        for part in dict(knitter.say(WhereAmI()).values)["counts"]:
            values = dict(part.values)
            halves = [half_meant(values["where"])] if values["where"].key == "where-half" else [
                (sock, half) for sock in (1, 2) for half in Half if f"half-{half}" in str(values["where"])
            ]  # fmt: skip
            for half in halves:
                assert (before[half], after[half]) == (values["before"], values["after"])


def _bound_off(plan: Plan, knitter: Knitter) -> bool:
    """In the bind-off a loop waits beside the gap and changes halves: told in its own test."""
    return course(plan).row(knitter.at).stage is StageName.BIND_OFF


def test_in_the_bind_off_one_loop_waits_and_is_the_first_to_go():
    knitter = Knitter(practice(), "group").knits_to(StageName.BIND_OFF)
    said = []
    while not knitter.finished:
        values = dict(knitter.say(HowMany()).values)
        said.append((half_meant(values["where"]), values["now"], values["after"]))
        knitter.say(Next())

    front, back = Half.FRONT, Half.BACK
    assert said[:6] == [
        ((1, front), 12, 12), ((1, front), 12, 1), ((2, front), 12, 12), ((2, front), 12, 1),
        ((2, back), 12, 1), ((2, back), 1, 0),
    ]  # fmt: skip
