"""The yarn a pair takes: every stitch counted once, and where what there is runs out."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.files import read_wishes
from plans.making import Made, make_plan
from plans.pattern import BindOff, Colour, StageName
from plans.sayings import SAYINGS
from plans.stitches import TAKES_MAKES, Op
from plans.wishes import Swatch, Wishes
from plans.yarn.ball import ball_of
from plans.yarn.enough import TO_BE_SURE, leg_allowed, runs_out
from plans.yarn.geometry import Stitch, loop_mm, take
from plans.yarn.use import TAIL_MM, bind_off_rows, use_of
from tests.strategies import UP_HEELS, adult, practice

HERS = {"swatch": Swatch(stitches=30, rounds=42), "foot_length": "24.5cm", "ball": "23cm", "leg": "14cm"}


def made(**changes) -> Made:
    found = make_plan(Wishes(**{**HERS, **changes}))
    assert isinstance(found, Made), found
    return found


def notes(**changes) -> dict:
    return {note.key: dict(note.values) for note in made(**changes).notes}


def test_a_plain_row_takes_a_loop_a_stitch():
    plan = adult()
    use = use_of(plan)
    row = next(row for row in plan.rows if row.stage is StageName.FOOT)

    assert use.of([row.index]) == 32 * use.one.loop


def test_slipped_stitches_take_a_strand_and_no_loop():
    plan = adult()
    use = use_of(plan)
    row = next(row for row in plan.rows if any(group.op is Op.SL_WYIB for group in row.ops))
    slipped = sum(group.times for group in row.ops if group.op is Op.SL_WYIB)
    worked = sum(TAKES_MAKES[group.op][1] * group.times for group in row.ops) - slipped

    assert slipped > 5
    assert use.of([row.index]) == worked * use.one.loop + slipped * use.one.width


def test_each_sock_has_a_tail_at_both_ends():
    plan = practice()
    use, own = use_of(plan), [row.index for row in practice().rows if row.sock == 1]
    bare = sum(each.half_loops * group.times * use.one.loop / 2 + each.widths * group.times * use.one.width
               for index in own for group in plan.rows[index].ops
               for each in [take(group.op, plan.construction.bind_off)])  # fmt: skip

    assert use.of(own) == bare + 2 * TAIL_MM


@pytest.mark.parametrize("heel", UP_HEELS)
def test_both_socks_take_the_same(heel):
    plan = practice(heel)
    use = use_of(plan)
    own = [use.of(row.index for row in plan.rows if row.sock == sock) for sock in (1, 2)]

    assert own[0] == own[1]
    assert sum(own) == use.total()
    assert use.total(Colour.CONTRAST) == 0


@pytest.mark.parametrize(
    ("bind_off", "mm"),
    [
        (BindOff.DECREASE, lambda one: one.loop * (1 + 2 * 23)),
        (BindOff.YARN_OVER, lambda one: one.loop * (1 + Fraction(5, 2) * 23)),
        (BindOff.SEWN, lambda one: one.width * (1 + 4 * 23)),
    ],
)
def test_a_bind_off_takes_what_its_kind_takes(bind_off, mm):
    plan = practice(bind_off=bind_off)
    use = use_of(plan)

    assert use.of(bind_off_rows(plan, 1)) == mm(use.one) + TAIL_MM


@given(st.integers(10, 50), st.integers(10, 70))
def test_the_loop_is_the_constant_over_the_density(stitches, rounds):
    loop = loop_mm(Fraction(stitches), Fraction(rounds))

    assert float(loop) ** 2 * stitches * rounds / 10_000 == pytest.approx(21.6, rel=1e-3)


def test_an_unwashed_swatch_has_shorter_loops_for_the_same_gauge():
    assert use_of(adult(), washed=False).total() < use_of(adult()).total()


def test_every_operation_takes_something_or_is_known_to_take_nothing():
    nothing = {op for op in Op if take(op, BindOff.DECREASE) == (0, 0)}

    markers, kept = {Op.PLACE_MARKER, Op.SLIP_MARKER, Op.REMOVE_MARKER}, {Op.WASTE, Op.THREAD, Op.FREE, Op.PICK_UP}
    assert nothing == {Op.DS, Op.FASTEN, *markers, *kept}


def test_the_plan_says_what_it_takes_and_what_to_have():
    said = notes(skein="50g", skein_length="200m")
    mm = use_of(made().plan).total()

    assert said["yarn-needed"]["metres"] == -(-mm // 1000)
    assert said["yarn-needed"]["grams"] == -(-mm // 4000)
    assert said["yarn-needed"]["buy_metres"] == -(-mm * 115 // 100_000)
    assert "yarn-assumed" not in said
    assert notes()["yarn-assumed"] == {"metres": 400}


def test_a_weight_alone_or_a_length_alone_is_filled_in_by_the_class():
    by_weight = ball_of(Wishes(**HERS, skein="50g"), Fraction(30))
    by_length = ball_of(Wishes(**HERS, skein_length="200m"), Fraction(30))

    assert (by_weight.grams, by_weight.mm, by_weight.is_known) == (50, 200_000, False)
    assert (by_length.grams, by_length.mm, by_length.is_known) == (50, 200_000, False)


@given(metres=st.integers(40, 260), skeins=st.integers(1, 4))
@settings(max_examples=40)
def test_whether_it_will_do_is_true_of_the_plan_itself(metres, skeins):
    found = made(skein="50g", skein_length=f"{metres}m", skeins=skeins)
    said = {note.key: dict(note.values) for note in found.notes}
    needed, there = use_of(found.plan).total(), metres * skeins * 1000

    assert ("yarn-enough" in said) == (needed * TO_BE_SURE <= there)
    assert bool({"yarn-short", "yarn-short-foot"} & said.keys()) == (needed > there)
    assert ("yarn-halves" in said) == (skeins % 2 == 1)
    assert all(SAYINGS[key] == values.keys() for key, values in said.items())


@given(st.integers(60, 160))
@settings(max_examples=30)
def test_the_leg_that_a_ball_allows_can_be_knitted_from_it_and_one_round_more_cannot(metres):
    mm, plan = Fraction(metres * 1000), made().plan
    leg = leg_allowed(plan, use_of(plan), mm)
    if leg is None:
        return
    cuff = len({row.round for row in plan.rows if row.stage is StageName.CUFF})
    rounds = round(Fraction(leg.tenths_mm, 100) * plan.gauge.rounds_per_10cm / 10) - cuff

    def taken(leg_rounds):
        other = made(leg_rounds=leg_rounds, cuff_rounds=cuff).plan
        return use_of(other).of(row.index for row in other.rows if row.sock == 1)

    assert taken(rounds) <= mm < taken(rounds + 1)


def test_where_a_sock_runs_out_the_rows_before_and_its_bind_off_can_still_be_knitted():
    plan = made().plan
    use = use_of(plan)
    for metres in (20, 60, 100, 120):
        row = runs_out(plan, use, 2, Fraction(metres * 1000))
        before = [each.index for each in plan.rows if each.sock == 2 and each.index < row.index]
        kept = [*before, *bind_off_rows(plan, 2)]

        assert use.of(kept) <= metres * 1000 < use.of([*kept, row.index])
    assert runs_out(plan, use, 2, use.total()) is None


def test_two_colours_each_float_behind_the_other():
    plan = practice()
    row = next(row for row in plan.rows if row.stage is StageName.FOOT)
    first = row.ops[0].model_copy(update={"times": 5})
    second = row.ops[0].model_copy(update={"times": 7, "colour": Colour.CONTRAST})
    rows = tuple(each.model_copy(update={"ops": (first, second)}) if each is row else each for each in plan.rows)
    use = use_of(plan.model_copy(update={"rows": rows}))
    one: Stitch = use.one

    assert use.of([row.index]) == 5 * one.loop + 7 * one.width
    assert use.of([row.index], Colour.CONTRAST) == 7 * one.loop + 5 * one.width


def test_the_plan_holds_the_wishes_it_was_made_from():
    wishes = Wishes(**HERS, skein="50g", skeins=2)
    found = make_plan(wishes)

    assert isinstance(found, Made)
    assert read_wishes(found.plan.wishes) == wishes
