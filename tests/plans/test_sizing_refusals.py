"""What is refused: each refusal truly impossible by an arithmetic of its own, and each cure a cure."""

from collections import Counter
from fractions import Fraction
from itertools import pairwise, product
from math import ceil

import pytest
from hypothesis import event, given

from plans.conversation import Problem, Reply
from plans.pattern import BindOff, Calf, Chart, Cuff, Direction, Heel, Leg, StageName, Toe
from plans.quantities import Length
from plans.rows.cuffs import cuff
from plans.sizing import size_sock
from plans.sizing.sayings import PROBLEM_SAYINGS
from plans.sizing.tape import read_tape
from plans.stitches import Op
from plans.wishes import Count, SockSize, Swatch, Wishes
from tests.plans import heel_numbers
from tests.plans.made_up_wishes import wishes
from tests.plans.test_sizing import HERS, cm, wished

DOWN = {"direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft")}
LACE = Chart(name="lace", rows=("||O/",), on="front", stages=(StageName.LEG,))

# --- an arithmetic of its own, by plain counting ---


def gauge(wish):
    """Stitches and rounds to the millimetre."""
    return wish.swatch.stitches / wish.swatch.over.mm, wish.swatch.rounds / wish.swatch.over.mm


def ball_mm(wish):
    """As measured, else by a measured ankle too, else 45.8 + 0.754 L, never below 210 mm by the line itself."""
    foot = wish.foot_length.mm
    if wish.ball is not None:
        return wish.ball.mm
    if wish.ankle or wish.heel_diagonal or wish.calf:
        return read_tape(wish).ball.mm  # the regression has an arithmetic of its own in test_feet.py
    line = Fraction("45.8") + Fraction("0.754") * max(foot, Fraction(210))
    return Fraction(round(line * min(foot / 210, Fraction(1)) * 10), 10)


def exact_stitches(wish):
    ease = Fraction(10) if wish.ease_percent is None else wish.ease_percent
    return ball_mm(wish) * (100 - ease) / 100 * gauge(wish)[0]


def rounds_there(wish):
    """Whole rounds that lie within one round of the finished foot, the most of them."""
    foot = wish.foot_length.mm
    exact = (foot - min(Fraction(10), foot / 20)) * gauge(wish)[1]
    return max(rounds for rounds in range(int(exact) + 3) if abs(rounds - exact) <= 1)


def toe_rounds(toe, cast_on, around):
    """Counted round by round from the printed schedules; of short rows, twice those marked on one side."""
    if toe in heel_numbers.SHORT_ROW_TOES:
        return heel_numbers.short_rows(toe, around // 2)
    increases = (around - cast_on) // 4
    if increases == 0:
        return 1
    if toe is not Toe.ROUNDED:
        return 2 * increases
    slow = [3, 3, 4][-increases:]
    return sum(slow) + (1 + increases - 3 if increases > 3 else 0)


def rounds_needed(wish, cast_on, around, *, toe=None, gusset=None):
    half, wished = around // 2, wish.gusset if gusset is None else gusset
    heel = 2 * heel_numbers.gusset(wish.heel, half, wished) + heel_numbers.depth(wish.heel, half, cast_on // 2)
    return toe_rounds(toe or wish.toe, cast_on, around) + heel


def refusals(wish):
    """Problems by key; none for a sock."""
    size = size_sock(wish)
    return {} if isinstance(size, SockSize) else {each.key: dict(each.values) for each in size}


# --- each refusal, for any wishes ---


def prove_foot_too_short(wish, values):
    cast_on, around = stitches_of(wish)
    needed = rounds_needed(wish, cast_on, around)
    assert rounds_there(wish) < needed
    assert (needed, rounds_there(wish)) == (values["needed"], values["there"])
    assert needed == values["toe"] + values["gusset"] + values["turn"]
    prove_cure(wish, values["cure"], around, cast_on)


def prove_cure(wish, cure, around, cast_on):
    """The cure works; and where it asks for more than another toe, no toe helps."""
    given_values, cured = dict(cure.values), None
    match cure.key:
        case "cure-cast-on":
            cured = changed(wish, around=around, cast_on=given_values["loops"])
        case "cure-rounded-toe":
            cured = changed(wish, toe=Toe.ROUNDED)
        case "cure-gusset":
            cured = changed(wish, gusset=given_values["stitches"])
        case "cure-rounded-toe-cast-on":
            cured = changed(wish, toe=Toe.ROUNDED, around=around, cast_on=given_values["loops"])
        case "cure-around":
            cured = changed(wish, around=given_values["stitches"])
        case "cure-gauge":
            rounds = Fraction(given_values["rounds"]) * wish.swatch.over.mm / 100
            cured = changed(wish, swatch=dict(wish.swatch) | {"rounds": rounds})
        case "cure-foot":
            cured = changed(wish, foot_length=Length(Fraction(given_values["length"].tenths_mm, 10)))
    assert cured is None or "foot-too-short" not in refusals(cured)
    if cure.key in {"cure-gusset", "cure-around", "cure-gauge", "cure-foot", "cure-measure-again"}:
        cup = wish.toe in heel_numbers.SHORT_ROW_TOES
        toes = [Toe.ROUNDED] if wish.toe is Toe.ROUNDED or cup else set(Toe) - heel_numbers.SHORT_ROW_TOES
        begins = stitches_of(changed(wish, toe=Toe.ROUNDED))[0] if cup else cast_on
        tried = () if cup and wish.cast_on is not None else product(toes, range(begins, around // 2 + 1, 4))
        assert all(rounds_there(wish) < rounds_needed(wish, loops, around, toe=toe) for toe, loops in tried)
    if cure.key in {"cure-around", "cure-gauge", "cure-foot", "cure-measure-again"}:
        least = ceil(Fraction(8, 30) * (around // 2))
        assert wish.gusset is not None or rounds_there(wish) < rounds_needed(wish, cast_on, around, gusset=least)


def test_a_rounded_toe_in_place_of_a_wide_one_begins_with_its_own_stitches():
    """The usual cast-on of a wide toe is wider: kept, it would take fewer rounds than the cure does."""
    wish = Wishes(
        foot_length=Length(Fraction(294)), ball=Length(Fraction(17_787, 50)), ease_percent=Fraction(0), toe=Toe.WIDE,
        swatch=Swatch(stitches=Fraction(209, 25), rounds=Fraction(23_617, 2_500), over=Length(Fraction(40))),
    )  # fmt: skip
    cure = refusals(wish)["foot-too-short"]["cure"]
    assert cure.key != "cure-rounded-toe"
    assert "foot-too-short" not in refusals(changed(wish, toe=Toe.ROUNDED, cast_on=dict(cure.values)["loops"]))


def changed(wish, **changes):
    return Wishes(**{**dict(wish), **changes})


def stitches_of(wish):
    """Cast-on and stitches around, by trying every multiple of 4."""
    around = wish.around
    if around is None:
        exact = exact_stitches(wish)
        around = min(range(0, 2000, 4), key=lambda each: (abs(each - exact), each % 8))
    half = around // 2
    if wish.toe in heel_numbers.SHORT_ROW_TOES:
        return (half if wish.cast_on is None else wish.cast_on), around
    eighths = 4 if wish.toe is Toe("wide") else 3
    tip = max(each for each in range(2, half + 1, 2) if each == 2 or each * 8 <= eighths * half)
    if wish.bind_off is BindOff("gathered"):
        return min(8, 2 * tip), around
    return (2 * tip if wish.cast_on is None else wish.cast_on), around


def prove_too_few_stitches(wish, values):
    """On four stitches a half has two: marking one on each side leaves none for the heel to turn on."""
    assert exact_stitches(wish) < heel_numbers.fewest_around(wish.heel, wish.toe) - 2
    enough = Fraction(values["gauge"]) * wish.swatch.over.mm / 100
    assert "too-few-stitches" not in refusals(changed(wish, swatch=dict(wish.swatch) | {"stitches": enough}))


def prove_around_uneven(wish, values):
    assert wish.around % 2 == 1 or wish.around // 2 % 2 == 1
    for key in ("below", "above"):
        assert not {"around-uneven", "around-too-few"} & refusals(changed(wish, around=values[key])).keys()


def prove_around_too_few(wish, values):
    assert wish.around < heel_numbers.fewest_around(wish.heel, wish.toe) == values["least"]
    assert "around-too-few" not in refusals(changed(wish, around=values["least"]))


def prove_cast_on_unfit(wish, values):
    """Unequal tips, or tips that grow by two past an even half."""
    assert wish.cast_on % 2 == 1 or (values["stitches"] // 2 - wish.cast_on // 2) % 2 == 1
    for key in ("below", "above"):
        assert not {key for key in refusals(changed(wish, cast_on=values[key])) if key.startswith("cast-on")}


def prove_cast_on_not_half(wish, values):
    assert wish.cast_on != values["half"] == stitches_of(wish)[1] // 2
    assert not {key for key in refusals(changed(wish, cast_on=values["half"])) if key.startswith("cast-on")}


def prove_cast_on_too_few(wish, values):
    assert wish.cast_on < 4
    assert "cast-on-too-few" not in refusals(changed(wish, cast_on=values["least"]))


def prove_cast_on_too_many(wish, values):
    assert wish.cast_on > stitches_of(wish)[1] == values["most"]
    assert not {key for key in refusals(changed(wish, cast_on=values["most"])) if key.startswith("cast-on")}


def prove_leg_too_short(wish, values):
    """No round fits below a cuff of at least one round, nor does one a millimetre below the cure."""
    def rounds_of_leg(leg):
        cuff = wish.cuff.mm if wish.cuff else min(Fraction(40), leg / 3)
        return round(leg * gauge(wish)[1]) - max(1, round(cuff * gauge(wish)[1]))

    least = Fraction(values["least"].tenths_mm, 10)
    assert rounds_of_leg(wish.leg.mm) < 1
    assert rounds_of_leg(least - 1) < 1 <= rounds_of_leg(least)
    assert "leg-too-short" not in refusals(changed(wish, leg=Length(least)))


def prove_cuff_too_short(wish, values):
    assert 2 * wish.cuff.mm * gauge(wish)[1] <= 1
    enough = Length(Fraction(ceil(Fraction(values["least"].tenths_mm, 10))))
    assert "cuff-too-short" not in refusals(changed(wish, cuff=enough))


def prove_bind_off_needs_rib(wish, values):
    """The cuff's knits and purls do not stand by turns, so that none could be grafted to its neighbour."""
    ops = [group for group in cuff(wish.cuff_style).ops(1, 1, 0, 24) for _ in range(group.times)]
    knits = [group.op in {Op.K, Op.KTBL} for group in ops]
    assert any(one == other for one, other in pairwise(knits))
    assert "bind-off-needs-rib" not in refusals(changed(wish, bind_off=BindOff(values["better"])))
    assert "bind-off-needs-rib" not in refusals(changed(wish, cuff_style=Cuff("rib-1x1")))


PROOFS = {
    "bind-off-needs-rib": prove_bind_off_needs_rib,
    "foot-too-short": prove_foot_too_short,
    "too-few-stitches": prove_too_few_stitches,
    "around-uneven": prove_around_uneven,
    "around-too-few": prove_around_too_few,
    "cast-on-not-half": prove_cast_on_not_half,
    "cast-on-unfit": prove_cast_on_unfit,
    "cast-on-too-few": prove_cast_on_too_few,
    "cast-on-too-many": prove_cast_on_too_many,
    "leg-too-short": prove_leg_too_short,
    "cuff-too-short": prove_cuff_too_short,
}


@given(wishes())
def test_every_refusal_is_impossible_and_its_cure_works(wish):
    for key, values in refusals(wish).items():
        event(key)
        PROOFS[key](wish, values)


@given(wishes())
def test_a_foot_long_enough_for_its_heel_is_not_refused_for_its_length(wish):
    size = size_sock(wish)
    if isinstance(size, SockSize) and not wish.practice:
        cast_on, around = stitches_of(wish)
        assert (cast_on, around) == (size.cast_on, size.around)
        assert rounds_there(wish) >= rounds_needed(wish, cast_on, around)


def test_ordinary_feet_in_ordinary_yarn_are_hardly_ever_refused():
    """EU 15 to 50, lace to bulky, usual round gauges and eases: printed by cause, each proven impossible."""
    causes = Counter()
    for size, stitches, ratio, ease in product(
        range(15, 51), (12, 16, 20, 24, 28, 32, 36, 40), ("1.35", "1.4", "1.45"), (5, 10)
    ):
        foot = Length(Fraction(20 * (size - 2), 3))
        swatch = Swatch(stitches=stitches, rounds=stitches * Fraction(ratio))
        wish = Wishes(swatch=swatch, foot_length=foot, ease_percent=ease)
        found = refusals(wish)
        for key, values in found.items():
            PROOFS[key](wish, values)
        causes.update(found.keys() or ["sized"])
    print("\n", dict(causes))

    assert dict(causes) == {"sized": 1728}


# --- each refusal by example ---

HIGH, ODD = Calf(pairs=4, first_round=400, every=2), Calf(pairs=3, first_round=4, every=2)

OUT_OF_RANGE = "length-out-of-range"


@pytest.mark.parametrize(
    ("changes", "key", "where"),
    [
        ({"foot_length": None, "ball": None, "ankle": None, "heel_diagonal": None}, "foot-missing", "foot_length"),
        ({"foot_length": "4.9cm"}, OUT_OF_RANGE, "foot_length"),
        ({"foot_length": "2450mm"}, OUT_OF_RANGE, "foot_length"),
        ({"ball": "46cm"}, OUT_OF_RANGE, "ball"),
        ({"ball": "0mm"}, OUT_OF_RANGE, "ball"),
        ({"ankle": "3cm"}, OUT_OF_RANGE, "ankle"),
        ({"heel_diagonal": "3cm"}, OUT_OF_RANGE, "heel_diagonal"),
        ({"calf": "90cm"}, OUT_OF_RANGE, "calf"),
        ({"gusset": 0}, "number-out-of-range", "gusset"),
        ({"foot_rounds": -1}, "number-out-of-range", "foot_rounds"),
        ({"leg_rounds": 0}, "number-out-of-range", "leg_rounds"),
        ({"cuff_rounds": 0}, "number-out-of-range", "cuff_rounds"),
        ({"skeins": 0}, "number-out-of-range", "skeins"),
        ({"needle": "3cm"}, "needle-out-of-range", "needle"),
        ({"skein": "3kg"}, "skein-out-of-range", "skein"),
        ({"skein_length": "0m"}, "skein-out-of-range", "skein_length"),
        ({"counts": (Count(stitches=0),)}, "gauge-zero", "counts"),
        ({"counts": (Count(rounds=300),)}, "gauge-out-of-range", "counts"),
        ({"counts": (Count(rounds=30, over="5mm"),)}, OUT_OF_RANGE, "counts"),
        ({"leg": "90cm"}, OUT_OF_RANGE, "leg"),
        ({"cuff": "0cm"}, OUT_OF_RANGE, "cuff"),
        ({"ease_percent": 41}, "ease-out-of-range", "ease_percent"),
        ({"ease_percent": -1}, "ease-out-of-range", "ease_percent"),
        ({"around": 66}, "around-uneven", "around"),
        ({"around": 63}, "around-uneven", "around"),
        ({"around": 4}, "around-too-few", "around"),
        ({"around": 640}, "around-too-many", "around"),
        ({"heel": Heel("french")}, "not-toe-up", "heel"),
        (DOWN | {"heel": Heel("wrapped")}, "not-cuff-down", "heel"),
        (DOWN | {"cast_on": 24}, "cast-on-not-cuff-down", "cast_on"),
        (DOWN | {"chart": LACE}, "chart-not-cuff-down", "chart"),
        ({"cast_on": 24, "toe": Toe("short-row-german")}, "cast-on-not-half", "cast_on"),
        ({"cast_on": 26}, "cast-on-unfit", "cast_on"),
        ({"cast_on": 0}, "cast-on-too-few", "cast_on"),
        ({"cast_on": 68}, "cast-on-too-many", "cast_on"),
        ({"leg": "4cm"}, "leg-too-short", "leg"),
        ({"foot_length": "14cm"}, "foot-too-short", "foot_length"),
        ({"foot_length": None, "shoe": "EU 23"}, "foot-too-short", "shoe"),
        ({"foot_length": None, "shoe": "39"}, "shoe-no-system", "shoe"),
        ({"foot_length": None, "shoe": ""}, "shoe-unreadable", "shoe"),
        ({"foot_length": None, "shoe": "US 8"}, "shoe-men-or-women", "shoe"),
        ({"foot_length": None, "shoe": "EU 3"}, "shoe-out-of-range", "shoe"),
        ({"swatch": Swatch(stitches=0, rounds=42)}, "gauge-zero", "swatch.stitches"),
        ({"swatch": Swatch(stitches=30, rounds=0)}, "gauge-zero", "swatch.rounds"),
        ({"swatch": Swatch(stitches=81, rounds=100)}, "gauge-out-of-range", "swatch.stitches"),
        ({"swatch": Swatch(stitches=3, rounds=5)}, "gauge-out-of-range", "swatch.stitches"),
        ({"swatch": Swatch(stitches=30, rounds=-42)}, "gauge-out-of-range", "swatch.rounds"),
        ({"swatch": Swatch(stitches=30, rounds=42, over="0cm")}, OUT_OF_RANGE, "swatch.over"),
        ({"swatch": Swatch(stitches=4, rounds=7), "ball": "14cm"}, "too-few-stitches", "swatch.stitches"),
        ({"cuff": "2mm", "swatch": Swatch(stitches=14, rounds=20)}, "cuff-too-short", "cuff"),
        ({"socks": ("left one", "Left one ")}, "names-alike", "socks"),
        ({"socks": ("first", " ")}, "text-empty", "socks"),
        ({"name": ""}, "text-empty", "name"),
        ({"bind_off": BindOff("tubular"), "cuff_style": Cuff("rib-2x2")}, "bind-off-needs-rib", "bind_off"),
        ({"bind_off": BindOff("tubular"), "cuff_style": Cuff("picot")}, "bind-off-needs-rib", "bind_off"),
        ({"leg_style": Leg("calf-shaped"), "calf_shape": HIGH}, "calf-shape-too-high", "calf_shape"),
        ({"leg_style": Leg("calf-shaped"), "calf_shape": ODD}, "calf-shape-uneven", "calf_shape"),
    ],
)
def test_refuses_one_thing_and_names_the_field(changes, key, where):
    [problem] = size_sock(wished(**changes))

    assert (key, where) == (problem.key, problem.where)


def test_every_kind_of_refusal_is_shown_here():
    shown = {mark.args[1][n][1] for mark in test_refuses_one_thing_and_names_the_field.pytestmark
             for n in range(len(mark.args[1]))}  # fmt: skip

    assert PROBLEM_SAYINGS.keys() <= shown


def test_says_all_that_is_wrong_at_once():
    problems = size_sock(
        wished(swatch=Swatch(stitches=0, rounds=999), foot_length=None, shoe="US 8", ball="2cm", around=63)
    )

    expected = ["gauge-zero", "gauge-out-of-range", OUT_OF_RANGE, "around-uneven", "shoe-men-or-women"]
    assert expected == [each.key for each in problems]


def test_an_impossible_foot_says_what_it_needs_what_is_there_and_a_cure():
    [problem] = size_sock(wished(foot_length="15.2cm"))

    cure = Reply.of("cure-cast-on", loops=28)
    expected = {"needed": 62, "there": 61, "toe": 20, "gusset": 32, "turn": 10, "cure": cure}
    assert expected == dict(problem.values)
    assert isinstance(size_sock(wished(foot_length="15.3cm")), SockSize)


@pytest.mark.parametrize(
    ("foot", "gusset", "toe", "cure"),
    [
        ("14.6cm", None, Toe.WEDGE, Reply.of("cure-cast-on", loops=32)),
        ("14.2cm", None, Toe.WEDGE, Reply.of("cure-gusset", stitches=13)),
        ("14.2cm", None, Toe.ROUNDED, Reply.of("cure-gusset", stitches=14)),
        ("11.4cm", 9, Toe.WEDGE, Reply.of("cure-cast-on", loops=28)),
        ("10.6cm", 9, Toe.WEDGE, Reply.of("cure-gauge", rounds="46.7")),
        ("9cm", None, Toe.WEDGE, Reply.of("cure-foot", length=cm("15.3"))),
    ],
)
def test_the_cure_changes_the_toe_then_gusset_and_stitches_then_the_gauge_then_the_foot(foot, gusset, toe, cure):
    [problem] = size_sock(wished(foot_length=foot, toe=toe, gusset=gusset))

    assert cure == dict(problem.values)["cure"]


def test_with_toe_and_gusset_as_small_as_they_get_fewer_stitches_are_the_cure():
    [problem] = size_sock(wished(foot_length="10.6cm", gusset=9, toe=Toe.ROUNDED, cast_on=32))

    assert Reply.of("cure-around", stitches=60) == dict(problem.values)["cure"]


@pytest.mark.parametrize("percent", [0, 40])
def test_the_bounds_themselves_are_allowed(percent):
    assert isinstance(size_sock(wished(ease_percent=percent)), SockSize)


def test_bounds_stand_with_the_measure_that_is_beyond_them():
    [problem] = size_sock(wished(foot_length="41cm"))

    assert {"length": cm("41"), "least": cm("5"), "most": cm("40")}.items() <= dict(problem.values).items()


def test_practice_refuses_only_its_gauge_and_names():
    assert isinstance(size_sock(wished(practice=True, foot_length="1cm", around=7, shoe="?")), SockSize)
    [problem] = size_sock(wished(practice=True, swatch=Swatch(stitches=0, rounds=42)))
    assert problem.key == "gauge-zero"
    assert isinstance(problem, Problem)
    assert isinstance(size_sock(HERS), SockSize)
