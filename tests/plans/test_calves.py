"""A leg that widens towards the calf: where its increases stand, that it fits, and what a straight leg is told."""

from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.charts import rows_of
from plans.conversation import IHave, Next, PlaceSet, Reply, TapeSays, Yes
from plans.engine import decide
from plans.engine.courses import course, identity
from plans.engine.places import standing_at
from plans.engine.wished import wishes_of
from plans.files import read_wishes, write_wishes
from plans.json_form import as_json, plan_id
from plans.making import Made, make_plan
from plans.opening import made_of
from plans.pattern import (
    BindOff,
    Calf,
    Chart,
    Cuff,
    Direction,
    Half,
    Heel,
    Increase,
    Leg,
    Plan,
    Row,
    StageName,
)
from plans.proof import prove
from plans.quantities import Length
from plans.rows.increases import increase
from plans.rows.legs import leg
from plans.sizing import size_sock
from plans.sizing.calves import girth_at
from plans.sizing.tape import read_tape
from plans.stitches import Op
from plans.wishes import Height, SockSize, Swatch, Wishes
from plans.written.printing import print_pattern
from tests.plans.damages import all_damages
from tests.plans.graph_oracle import Oracle
from tests.plans.knitter import Knitter, shown
from tests.plans.made_up_wishes import feet as feet_of_any_build
from tests.plans.made_up_wishes import swatches
from tests.plans.test_surveyed_feet import FEET, feet, wished
from tests.strategies import varied

SHAPED = Leg("calf-shaped")
DOWN = {"direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft")}


def knee_high(**changes: object) -> Wishes:
    measures = {"foot_length": "24.5cm", "ball": "23cm", "calf": "37cm", "leg_height": Height.KNEE}
    swatch = {"stitches": 30, "rounds": 42}
    return Wishes.model_validate({"swatch": swatch, "leg_style": SHAPED, **measures, **changes})


def sized(**changes: object) -> SockSize:
    size = size_sock(knee_high(**changes))
    assert isinstance(size, SockSize), size
    return size


def made(wish: Wishes) -> Plan:
    found = make_plan(wish)
    assert isinstance(found, Made), found
    return found.plan


def said(size: SockSize) -> dict[str, dict[str, object]]:
    return {note.key: dict(note.values) for note in size.notes}


def backs(plan: Plan) -> list[int]:
    """Stitches on the back of the first sock after each round of its leg."""
    rows = (row for row in plan.rows if row.stage is StageName.LEG and row.sock == 1 and row.half is Half.BACK)
    return [row.stitches_after for row in rows]


def test_a_knee_high_leg_widens_at_even_intervals_from_where_legs_do():
    """37 cm less a fifth are 88.8 stitches: 92 from 64, 14 pairs in the 55 rounds from 15 cm to the cuff at 28."""
    size = sized()

    assert size.calf == Calf(pairs=14, first_round=64, every=3)
    assert (size.leg_rounds, size.cuff_rounds) == (117, 17)
    assert said(size)["calf-shaped"]["stitches"] == 92


def test_each_pair_is_knitted_where_it_was_told_and_the_cuff_is_as_wide():
    plan = made(knee_high())

    assert backs(plan) == [32 + 2 * min(14, max(0, (number - 64) // 3 + 1)) for number in range(1, 118)]
    assert {row.stitches_after for row in plan.rows if row.stage is StageName.CUFF} == {32, 60}


def test_increases_closer_together_begin_lower():
    size = sized(swatch={"stitches": 30, "rounds": 30}, calf="52cm", leg="22cm")

    assert size.calf is not None
    assert size.calf.every == 2
    assert size.calf.first_round < 45


def test_a_leg_below_the_calf_stays_straight_and_says_so():
    size = sized(leg_height=Height.CREW)

    assert size.calf is None
    assert "calf-straight" in said(size)
    assert backs(made(knee_high(leg_height=Height.CREW))) == [32] * size.leg_rounds


@pytest.mark.parametrize("examples", [12, pytest.param(1000, marks=pytest.mark.nightly)])
def test_the_increases_have_room_and_any_rib_fits_above_them(examples):
    shaped = []

    @given(swatches(), feet_of_any_build(), st.sampled_from(Cuff))
    @settings(max_examples=examples)
    def widen(swatch, foot, cuff):
        chosen = {"leg": None, "leg_height": Height.KNEE, "leg_style": SHAPED, "cuff_style": cuff}
        found = make_plan(Wishes(swatch=swatch, **{**foot, **chosen}))
        if isinstance(found, Made) and found.plan.calf is not None:
            calf, rounds = found.plan.calf, len(backs(found.plan))
            shaped.append(calf)
            assert calf.first_round + calf.every * (calf.pairs - 1) <= rounds
            assert (found.plan.around + 2 * calf.pairs) % 4 == 0

    widen()

    assert len(shaped) > examples // 4


@pytest.mark.parametrize("who", ["men", "women"])
def test_every_surveyed_foot_that_finds_a_straight_knee_high_too_tight_is_cured_by_the_calf_shaped(who):
    """Their calves measured too."""
    tight = 0
    for number, foot in enumerate(feet(who)[: FEET // 8]):
        wish = wished(foot, 28 + number % 7, only=5).model_copy(update={"leg_height": Height.KNEE})
        straight = said(size_sock(wish))
        cured = said(size_sock(wish.model_copy(update={"leg_style": SHAPED})))
        if "calf-tight" in straight:
            tight += 1
            assert straight["calf-tight"]["cure"] == Reply.of("cure-calf-shaped", name="calf-shaped")
        assert "calf-tight" not in cured
    print(f"\n{who}: {tight} of {FEET // 8} straight legs too tight")

    assert tight > FEET // 16


def test_where_the_leg_cannot_widen_a_lower_one_is_named_and_fits():
    around = Chart(name="zigzag", rows=rows_of("MMMC\nMMCC"), on="around", stages=(StageName.LEG,))
    cure = said(sized(leg_style=Leg("straight"), chart=around))["calf-tight"]["cure"]
    lower = dict(cure.values)["length"]

    assert cure.key == "cure-leg"
    assert "calf-tight" not in said(sized(leg_style=Leg("straight"), chart=around, leg=f"{lower.tenths_mm / 10}mm"))


@pytest.mark.parametrize("way", [{}, DOWN])
@pytest.mark.parametrize(("style", "better"), [("straight", "calf-shaped"), ("ribbed", "ribbed-calf-shaped")])
def test_a_leg_is_told_to_take_the_shape_that_keeps_its_stitch(style, better, way):
    tight = said(sized(leg_style=Leg(style), **way))["calf-tight"]["cure"]

    assert tight == Reply.of("cure-calf-shaped", name=better)
    assert "calf-tight" not in said(sized(leg_style=Leg(better), **way))


def test_from_the_cuff_down_a_leg_narrows_in_the_rounds_in_which_from_the_toe_up_it_widens():
    """The sock is the same turned over: what has 60 stitches below its cuff has 60 above its last decrease."""
    up, down = (made(knee_high(**way)) for way in ({}, DOWN))

    assert down.cast_on == 92 == up.around + 2 * up.calf.pairs
    assert down.calf == Calf(pairs=14, first_round=118 - up.calf.last_round, every=3)
    assert backs(down)[:-1] == backs(up)[::-1][1:]
    assert {row.stitches_after for row in down.rows if row.stage is StageName.CUFF} == {32, 60}


def test_the_highest_leg_from_the_cuff_down_keeps_a_round_below_its_cuff_as_wide():
    plan = made(knee_high(leg="22cm", calf="52cm", swatch={"stitches": 30, "rounds": 30}, **DOWN))

    assert plan.calf.first_round >= 2
    assert plan.calf.every == 2
    assert backs(plan)[0] == plan.half + 2 * plan.calf.pairs
    assert backs(plan)[-1] == plan.half


@pytest.mark.parametrize("way", [{}, DOWN])
def test_the_columns_of_a_rib_run_on_beside_what_is_made_or_taken_in(way):
    """On either side of the two middle stitches the columns are those of the edge, but in the round after a heel."""
    plan = made(knee_high(leg_style=Leg("ribbed-calf-shaped"), **way))
    rows = [row for row in plan.rows if row.stage is StageName.LEG and row.sock == 1 and row.half is Half.BACK]
    rows = [row for row in rows if way or row.round > 1]
    even = [columns(row) for row in rows if len(columns(row)) == row.stitches_after and "m" not in columns(row)]

    assert {len(row) for row in even} == {32 + 2 * pairs for pairs in range(15)}
    for row in even:
        side = len(row) // 2 - 1
        assert row[:side] == ("kkkp" * 20)[:side]
        assert row[-side:] == ("kkkp" * 20)[-side:]
        assert row[side : side + 2] == "kk" or len(row) == 32


def columns(row: Row) -> str:
    """A letter for every stitch that is taken or made: one that is made is an m, of two together each a d."""
    letters = {Op.K: "k", Op.P: "p", Op.M1R: "m", Op.M1L: "m", Op.K2TOG: "dm", Op.SSK: "dm"}
    return "".join(letters.get(group.op, "k") * group.times for group in row.ops)


@pytest.mark.parametrize("increase_by", Increase)
@pytest.mark.parametrize("way", [{}, DOWN])
@pytest.mark.parametrize("style", ["calf-shaped", "ribbed-calf-shaped"])
def test_a_shaped_leg_is_knitted_printed_and_read_back(style, way, increase_by):
    plan = made(knee_high(leg_style=Leg(style), increase=increase_by, practice=True, **way))
    oracle = Oracle(as_json(plan)).knit()
    back = made_of(print_pattern(plan))

    assert [row.stitches_after for row in plan.rows] == oracle.counts
    assert not oracle.worked_not_once()
    assert isinstance(back, Made)
    assert plan_id(back.plan) == plan_id(plan)


@pytest.mark.parametrize("every", [23, pytest.param(1, marks=pytest.mark.nightly)])
@pytest.mark.parametrize("way", [{}, DOWN])
@pytest.mark.parametrize("style", ["calf-shaped", "ribbed-calf-shaped"])
def test_every_damage_to_a_shaped_leg_is_refused_and_named(style, way, every):
    plan, missed = made(knee_high(leg_style=Leg(style), practice=True, **way)), []
    leg_rows = {row.index for row in plan.rows if row.stage is StageName.LEG}
    damages = [each for each in all_damages(plan) if leg_rows & set(each.rows)]
    for damage in damages[Random(style).randrange(every) :: every]:
        problems = prove(damage.plan)
        if not problems or problems[0].where not in {f"row {place}" for place in damage.rows}:
            missed.append((damage.kind, sorted(damage.rows), [(each.key, each.where) for each in problems[:1]]))

    assert len(damages) > 100
    assert not missed


def test_a_decrease_at_the_centre_is_read_out_and_a_count_that_is_high_is_told_why():
    knitter = Knitter(made(knee_high(practice=True, **DOWN))).knits_to(StageName.LEG, 2)
    while course(knitter.plan).row(knitter.at).half is Half.FRONT:
        knitter.say(Next())
    called = shown(knitter.call)
    counted = shown(knitter.say(IHave(stitches=17)))

    assert "work op-k(times 5) op-k2tog(times 1) op-k(times 2) op-ssk(times 1) op-k(times 5)" in called
    assert "makes(count 14)" in called
    assert "cause-decrease-missed" in counted


def test_by_the_round_a_decrease_at_the_centre_is_told_with_both_counts():
    called = shown(Knitter(made(knee_high(practice=True, **DOWN)), "round").knits_to(StageName.LEG, 2).call)

    assert "work-decrease-centre" in called
    assert "makes-front-back(front 12; back 14)" in called


def test_a_chart_around_a_leg_that_widens_is_refused():
    around = Chart(name="zigzag", rows=rows_of("MMMC\nMMCC"), on="around", stages=(StageName.LEG,))
    front = around.model_copy(update={"on": "front"})

    assert [problem.key for problem in make_plan(knee_high(chart=around))] == ["chart-on-calf"]
    assert made(knee_high(chart=front)).calf


def test_twice_the_ease_of_the_foot_is_taken_at_the_calf_and_a_fifth_at_the_most():
    tops = [said(sized(around=64, ease_percent=ease))["calf-shaped"]["stitches"] for ease in (0, 5, 10, 15)]

    assert tops == [112, 100, 92, 92]


@pytest.mark.parametrize("name", Increase)
@pytest.mark.parametrize("loops", [4, 6, 32, 58])
def test_a_pair_at_the_centre_is_symmetrical_whatever_the_way_to_increase(name, loops):
    """By what shows: a made stitch, or of knit front and back its bump, which lies left of the knit."""
    shown = []
    for group in increase(name).centre(loops):
        shown += {"k": [0], "kfb": [0, 1]}.get(group.op, [1]) * group.times

    assert len(shown) == loops + 2
    assert shown == shown[::-1]


def test_the_calf_is_measured_in_a_straight_line_from_the_ankle():
    tape = read_tape(knee_high(ankle="21cm", calf="37cm"))

    assert girth_at(tape, Length.of_cm(Fraction(45, 2)))[0] == Length.of_cm(29)


@pytest.mark.parametrize(("height", "cm"), [(Height.ANKLE, 5), (Height.CREW, Fraction(29, 2)), (Height.KNEE, 32)])
def test_a_leg_is_as_high_as_its_name_says(height, cm):
    assert sized(leg_height=height).target_leg == Length.of_cm(cm)
    assert "leg-chosen" in said(sized(leg_height=height))


def test_a_length_goes_before_a_name_and_that_is_said():
    size = sized(leg="20cm")

    assert size.target_leg == Length.of_cm(20)
    assert "leg-height-unused" in said(size)


def test_a_plan_whose_leg_is_straight_does_not_name_a_calf_and_is_found_out_if_it_does():
    plan = varied("leg_style", "straight")

    assert plan.calf is None
    assert not leg("straight").widens
    assert prove(plan.model_copy(update={"calf": Calf(pairs=2, first_round=2, every=2)}))


def test_the_practice_pair_shows_two_pairs():
    assert backs(varied("leg_style", "calf-shaped")) == [12, 14, 14, 16]


def test_the_increases_are_read_out_and_a_count_that_is_short_is_told_why():
    knitter = Knitter(varied("leg_style", "calf-shaped")).knits_to(StageName.LEG, 2)
    while course(knitter.plan).row(knitter.at).half is Half.FRONT:
        knitter.say(Next())
    called = shown(knitter.call)
    counted = shown(knitter.say(IHave(stitches=11)))

    assert "work op-k(times 5) op-m1r(times 1) op-k(times 2) op-m1l(times 1) op-k(times 5)" in called
    assert "makes(count 14)" in called
    assert "cause-increase-missed" in counted


def test_by_the_round_an_increase_is_told_with_both_counts():
    called = shown(Knitter(varied("leg_style", "calf-shaped"), "round").knits_to(StageName.LEG, 2).call)

    assert "work-increase-centre" in called
    assert "makes-front-back(front 12; back 14)" in called


def test_a_swatch_alone_makes_a_knee_high_pair_of_a_shoe_size():
    plan = made(Wishes(swatch=Swatch(stitches=30, rounds=42), shoe="EU 39", leg_height=Height.KNEE, leg_style=SHAPED))

    assert plan.calf is not None


def test_increases_of_her_own_are_knitted_where_she_wants_them():
    shape = Calf(pairs=4, first_round=40, every=6)
    plan = made(knee_high(calf_shape=shape))

    assert plan.calf == shape
    assert [number for number, (one, other) in enumerate(pairwise(backs(plan)), start=2) if one < other] == [
        40, 46, 52, 58,
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("shape", "key"),
    [
        (Calf(pairs=4, first_round=100, every=6), "calf-shape-too-high"),
        (Calf(pairs=3, first_round=40, every=6), "calf-shape-uneven"),
    ],
)
def test_increases_that_do_not_come_out_are_refused(shape, key):
    [problem] = size_sock(knee_high(calf_shape=shape))

    assert (problem.key, problem.where) == (key, "calf_shape")
    assert size_sock(knee_high(calf_shape=shape, leg_style=Leg("straight"))).calf is None


@pytest.mark.parametrize(
    "text",
    ["8", "{ pairs = 2 }", "{ pairs = 2, first_round = 1, every = 2 }", "{ pairs = true, first_round = 4, every = 2 }"],
)
def test_increases_that_cannot_be_read_are_told_of(text):
    [problem] = read_wishes(f"calf_shape = {text}\n[swatch]\nstitches = 30\nrounds = 42\n")

    assert (problem.key, problem.where) == ("calf-shape-unreadable", "line 1, column 14")


def test_a_plan_file_with_increases_of_her_own_comes_back_the_same():
    wish = knee_high(calf_shape=Calf(pairs=4, first_round=40, every=6))

    assert read_wishes(write_wishes(wish)) == wish


def test_a_leg_that_has_begun_to_widen_keeps_its_increases_when_it_is_measured():
    """117 rounds at 42; by the tape 90 rounds are 20 cm, 45 to ten centimetres: 32 cm take ten rounds more."""
    knitter = Knitter(made(knee_high()))
    at = next(run.first for run in course(knitter.plan).rounds if _is_leg(knitter.plan, run.first, 91))
    knitter.happens(PlaceSet(now=standing_at(course(knitter.plan), identity(knitter.plan), _start(knitter.plan, at)),
                             why="forward"))  # fmt: skip
    asked = shown(knitter.say(TapeSays(part="leg", length=Length.of_cm(20))))
    decision = decide(knitter.plan, knitter.progress, Yes())

    assert "changes replan-change(stage stage-leg; before 117; after 126)" in asked
    assert decision.plan is not None
    assert decision.plan.calf == knitter.plan.calf
    assert wishes_of(decision.plan).calf_shape == knitter.plan.calf


def _is_leg(plan: Plan, row: int, number: int) -> bool:
    return (plan.rows[row].stage, plan.rows[row].round) == (StageName.LEG, number)


def _start(plan: Plan, row: int) -> int:
    return course(plan).starts[row]


@pytest.mark.parametrize("percent", [70, 90, 120])
@pytest.mark.parametrize("before", [2, 1, 0])
def test_measured_before_it_begins_to_widen_a_leg_widens_in_rounds_that_are_still_to_come(before, percent):
    """In fewer rounds to ten centimetres the increases would begin lower: where she has passed by, they begin next."""
    plan = made(knee_high())
    at = plan.calf.first_round - before
    knitter = Knitter(plan)
    here = _start(plan, next(run.first for run in course(plan).rounds if _is_leg(plan, run.first, at)))
    knitter.happens(PlaceSet(now=standing_at(course(plan), identity(plan), here), why="forward"))
    asked = knitter.say(TapeSays(part="leg", length=Length.of_cm(Fraction((at - 1) * 1000, 42 * percent))))
    new = decide(plan, knitter.progress, Yes()).plan

    assert asked.key == "ask-replan"
    assert prove(new) == ()
    room = max(row.round for row in new.rows if row.stage is StageName.LEG) - new.calf.first_round
    assert new.calf.pairs == min(plan.calf.pairs, (room // 2 + 1) // 2 * 2)
    assert new.calf.first_round > at or new.calf == plan.calf
