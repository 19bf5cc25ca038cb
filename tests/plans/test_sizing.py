"""One sock's numbers: the table of whole socks, ties, and what each wish does."""

from fractions import Fraction

import pytest
from hypothesis import example, given

from plans.conversation import Measure, Problem, Reply
from plans.pattern import BindOff, Cuff, Toe
from plans.quantities import Length
from plans.rows.toes import toe, toe_steps
from plans.sizing import gauge_of, measured, size_sock
from plans.sizing.proportions import default_cast_on, nearest_around
from plans.sizing.sayings import NOTE_SAYINGS, SIZING_SAYINGS
from plans.wishes import SockSize, Swatch, Wishes
from tests.plans import heel_numbers
from tests.plans.made_up_wishes import absurd_wishes, wishes

SWATCH = Swatch(stitches=30, rounds=42)
HERS = Wishes(
    swatch=SWATCH, foot_length="24.5cm", ball="23.7cm", ankle="21cm", heel_diagonal="32cm", leg="15cm", cuff="4cm",
    ease_percent=10,
)


def wished(**changes) -> Wishes:
    """Her wishes, but for these."""
    return Wishes(**{**dict(HERS), **changes})


def sized(**changes) -> SockSize:
    """What her wishes come to, but for these changes."""
    size = size_sock(wished(**changes))
    assert isinstance(size, SockSize), size
    return size


def notes(size: SockSize) -> dict:
    return {note.key: dict(note.values) for note in size.notes}


def cm(text: str) -> Measure:
    return Measure(tenths_mm=int(Fraction(text) * 100))


def test_a_whole_sock_of_64():
    size = sized()

    expected = {"around": 64, "multiple": 4, "cast_on": 24, "toe_rounds": 20, "even_rounds": 37, "gusset": 16,
                "turned": 10, "leg_rounds": 46, "cuff_rounds": 17}  # fmt: skip
    assert expected == {name: getattr(size, name) for name in expected}
    assert Length.parse("21.33cm") == size.target_circumference
    assert Length.parse("23.5cm") == size.target_foot
    assert Length.parse("15cm") == size.target_leg


def test_measured_all_over_only_what_is_rounded_or_shortened_is_noted():
    expected = {
        "stitches-rounded": {"exact": "63.99", "stitches": 64, "multiple": 4},
        "foot-shortened": {"foot": cm("24.5"), "finished": cm("23.5"), "shorter": cm("1")},
        "foot-rounded": {"wanted": cm("23.5"), "made": cm("23.57"), "rounds": 99},
        "fit-checked": {"ball": "11", "heel": "0", "leg": "0", "edge": "50", "gives": "57"},
    }
    assert expected == notes(sized())


@pytest.mark.parametrize(
    ("exact", "around"),
    [("62", 64), ("58", 56), ("66", 64), ("61.99", 60), ("62.01", 64), ("60.75", 60), ("64", 64), ("14", 16)],
)
def test_stitches_go_to_the_nearest_multiple_of_4_and_ties_to_the_even_one(exact, around):
    assert around == nearest_around(Fraction(exact))


@pytest.mark.parametrize(
    ("around", "loops"), [(8, 4), (12, 4), (16, 4), (20, 4), (24, 8), (48, 16), (56, 20), (60, 20), (64, 24), (72, 24)]
)
def test_the_cast_on_follows_from_the_half(around, loops):
    assert loops == default_cast_on(around)


def test_a_tie_of_rounds_goes_to_the_even_number():
    size = sized(around=60, foot_length="23.5cm")

    assert size.toe_rounds + size.even_rounds + 2 * size.gusset + size.turned == 94
    assert size.even_rounds == 34


@pytest.mark.parametrize("swatch", [Swatch(stitches=22, rounds=30), Swatch(stitches=7, rounds=9, over="3in")])
def test_practice_is_the_same_in_any_yarn_and_needs_no_measures(swatch):
    size = size_sock(Wishes(swatch=swatch, practice=True))

    expected = {"around": 24, "cast_on": 8, "toe_rounds": 8, "even_rounds": 4, "gusset": 6, "turned": 4,
                "leg_rounds": 4, "cuff_rounds": 4}  # fmt: skip
    assert expected == {name: getattr(size, name) for name in expected}
    gauge = gauge_of(swatch)
    assert gauge.width(24) == size.target_circumference
    assert gauge.height(8 + 4 + 12 + 4) == size.target_foot
    assert gauge.height(8) == size.target_leg


def test_practice_says_what_it_leaves_aside():
    ignored = [note for note in sized(practice=True).notes if note.key == "practice-ignores"]

    expected = ["foot-length", "ball", "ankle", "heel-diagonal", "leg", "cuff", "ease-percent"]
    assert [f"field-{name}" for name in expected] == [dict(note.values)["field"].key for note in ignored]


def test_what_was_not_measured_is_estimated_and_said():
    said = notes(size_sock(Wishes(swatch=SWATCH, foot_length="25cm")))

    assert {"length": cm("23.43"), "give_or_take": cm("2.12")} == said["ball-estimated"]
    assert {"length": cm("21.78"), "give_or_take": cm("2.6")} == said["ankle-estimated"]
    assert {"length": cm("31.75"), "give_or_take": cm("2.04")} == said["heel-estimated"]
    assert "calf-estimated" not in said
    assert {"length": cm("15")} == said["leg-chosen"]
    assert {"length": cm("4")} == said["cuff-chosen"]
    assert said["ease-chosen"] == {"percent": "10"}


def test_a_childs_foot_is_estimated_by_its_own_rule_and_said():
    said = notes(size_sock(Wishes(swatch=SWATCH, foot_length="15cm")))

    assert "child-estimated" in said
    assert cm("1.46") == said["ball-estimated"]["give_or_take"]
    assert {"foot": cm("15"), "finished": cm("14.25"), "shorter": cm("0.75")} == said["foot-shortened"]


def test_a_shoe_stands_in_for_the_foot_and_is_said():
    by_shoe = size_sock(Wishes(swatch=SWATCH, shoe="EU 38"))
    by_foot = size_sock(Wishes(swatch=SWATCH, foot_length="24cm"))

    assert by_foot.around == by_shoe.around
    assert by_foot.even_rounds == by_shoe.even_rounds
    expected = {"shoe": "EU 38", "length": cm("24"), "give_or_take": Measure(tenths_mm=33)}
    assert expected == notes(by_shoe)["foot-from-shoe"]


def test_a_measured_foot_goes_before_a_shoe():
    assert sized() == sized(shoe="EU 50")


def test_an_ankle_narrower_than_the_leg_is_said_where_four_stitches_in_sixty_do_not_explain_it():
    cure = Reply.of("cure-around", stitches=60)
    assert "leg-wide" not in notes(sized(ankle="21cm"))
    assert "leg-wide" not in notes(sized(ankle="20cm"))
    assert {"circumference": cm("21.33"), "ankle": cm("19"), "cure": cure} == notes(sized(ankle="19cm"))["leg-wide"]
    assert "leg-wide" not in notes(sized(ankle="19cm", around=60))


def test_an_ankle_that_stretches_the_leg_beyond_comfort_is_said():
    assert "leg-tight" not in notes(sized(ankle="26.6cm"))
    expected = {"circumference": cm("21.33"), "ankle": cm("26.7"), "percent": "25",
                "cure": Reply.of("cure-around", stitches=68)}  # fmt: skip
    assert expected == notes(sized(ankle="26.7cm"))["leg-tight"]
    assert "leg-tight" not in notes(sized(ankle="26.7cm", around=68))


def test_where_no_stitch_count_fits_both_ball_and_leg_another_needle_is_named():
    told = [notes(sized(ankle="32cm", needle=needle))["leg-tight"]["cure"] for needle in (None, "2.5mm", "25mm")]

    assert told == [Reply.of("cure-needle-up"), Reply.of("cure-needle-up-to", millimetres="2.75"),
                    Reply.of("cure-needle-up")]  # fmt: skip


def test_an_estimated_ankle_raises_no_alarm_within_its_own_uncertainty():
    assert "leg-wide" not in notes(sized(ankle=None, ease_percent=0))
    assert "leg-tight" not in notes(sized(ankle=None, ease_percent=25))


def test_a_heel_is_tight_where_the_gusset_is_too_narrow_for_it_and_wider_by_the_cure():
    said = notes(sized(gusset=4, heel_diagonal="37cm"))["heel-tight"]

    assert {"heel": cm("37"), "most": cm("36"), "cure": Reply.of("cure-gusset", stitches=5)} == said
    assert "heel-tight" not in notes(sized(gusset=5, heel_diagonal="37cm"))


def test_a_heel_that_cannot_go_through_the_leg_wants_more_stitches():
    said = notes(sized(around=44, heel_diagonal="32cm"))["heel-tight"]

    assert said["cure"] == Reply.of("cure-around", stitches=56)
    assert "heel-tight" not in notes(sized(around=56, heel_diagonal="32cm"))


def test_a_wide_gusset_round_a_small_heel_is_loose():
    said = notes(sized(heel_diagonal="28cm"))["heel-loose"]

    assert {"heel": cm("28"), "circumference": cm("32"), "cure": Reply.of("cure-gusset", stitches=12)} == said
    assert "heel-loose" not in notes(sized(heel_diagonal="28cm", gusset=12))


@pytest.mark.parametrize(
    ("girth", "bind_off", "cure"),
    [
        ("33cm", "decrease", None),
        ("34cm", "decrease", Reply.of("cure-bind-off", name="sewn")),
        ("34cm", "sewn", None),
        ("38cm", "decrease", Reply.of("cure-bind-off", name="yarn-over")),
        ("41cm", "yarn-over", Reply.of("cure-bind-off", name="tubular")),
        ("44cm", "decrease", Reply.of("cure-bind-off-needle")),
    ],
)
def test_an_edge_that_the_heel_cannot_pass_wants_a_stretchier_bind_off(girth, bind_off, cure):
    said = notes(sized(heel_diagonal=girth, bind_off=BindOff(bind_off))).get("edge-tight")

    assert (said and said["cure"]) == cure


def test_a_bind_off_that_cannot_end_the_cuff_is_no_cure():
    said = notes(sized(heel_diagonal="41cm", bind_off=BindOff("yarn-over"), cuff_style=Cuff("rib-2x2")))

    assert said["edge-tight"]["cure"] == Reply.of("cure-bind-off-needle")
    folded = sized(heel_diagonal="41cm", bind_off=BindOff("tubular"), cuff_style=Cuff("folded"))
    assert "edge-tight" not in notes(folded)


def test_a_leg_up_to_the_calf_is_held_against_it():
    said = notes(sized(leg="35cm", calf="36cm"))

    assert said["calf-tight"] == {
        "leg": cm("35"), "circumference": cm("21.33"), "girth": cm("36"), "percent": "69",
        "cure": Reply.of("cure-calf-shaped", name="calf-shaped"),
    }  # fmt: skip
    assert "calf-tight" not in notes(sized(leg="16cm", calf="36cm"))
    assert "calf-estimated" in notes(sized(leg="16cm"))
    assert "calf-estimated" not in notes(sized(leg="15cm"))


def test_halfway_up_to_the_calf_the_leg_is_halfway_between_ankle_and_calf():
    assert notes(sized(leg="22.5cm", calf="39cm"))["calf-tight"]["girth"] == cm("30")


def test_stitches_of_her_own_are_held_against_the_foot():
    expected = {"stitches": 60, "circumference": cm("20"), "percent": "16"}
    assert expected == notes(sized(around=60))["around-yours"]
    assert notes(sized(around=72))["around-larger-than-foot"]["better"] == 64
    assert "around-larger-than-foot" not in notes(sized(ball="21.5cm", around=64))
    assert notes(sized(around=52))["around-tight"]["better"] == 64
    assert "around-tight" not in notes(sized(around=56))


def test_rounds_of_her_own_are_knitted_and_their_lengths_told():
    size = sized(foot_rounds=30, leg_rounds=20, cuff_rounds=9, gusset=12)

    assert (30, 20, 9, 12) == (size.even_rounds, size.leg_rounds, size.cuff_rounds, size.gusset)
    said = notes(size)
    assert said["foot-yours"] == {"foot": cm("24.5"), "made": Measure(tenths_mm=2000), "rounds": 30}
    assert not {"foot-shortened", "foot-rounded", "leg-rounded", "cuff-rounded"} & said.keys()
    assert not {"cuff-chosen", "leg-chosen"} & said.keys()
    assert size.target_leg == Length(Fraction(29 * 1000, 420))


def test_an_unusual_cast_on_is_said():
    assert "cast-on-unusual" not in notes(sized(cast_on=28))
    assert notes(sized(cast_on=32))["cast-on-unusual"] == {"loops": 32, "least": 22, "most": 28}


def test_a_swatch_that_looks_wrong_is_said():
    small = Swatch(stitches=9, rounds=13, over="3cm")
    exchanged = Swatch(stitches=42, rounds=40)

    assert {"length": cm("3"), "least": cm("5")} == notes(sized(swatch=small))["swatch-small"]
    said = notes(sized(swatch=exchanged, ball="20cm"))
    assert said["gauge-more-stitches-than-rounds"] == {"stitches": "42", "rounds": "40"}


def test_a_wished_cuff_makes_a_leg_that_was_not_wished_tall_enough():
    size = sized(leg=None, cuff="12cm")

    assert Length.parse("24cm") == size.target_leg
    assert size.leg_rounds > 0


def test_the_coarsest_yarn_on_the_smallest_foot_still_has_a_cuff_and_a_leg():
    size = sized(swatch=Swatch(stitches=14, rounds=4), foot_length="40cm", ball="12cm", leg=None, cuff=None)

    assert size.cuff_rounds >= 1
    assert size.leg_rounds >= 1


@given(wishes() | absurd_wishes())
@example(HERS)
def test_a_size_keeps_every_promise(wish):
    size = size_sock(wish)
    if not isinstance(size, SockSize):
        return
    gauge, half = measured(wish).gauge, size.around // 2
    cup = toe(wish.toe).cup
    steps = () if cup else toe_steps(wish.toe, size.cast_on // 2, half)
    assert size.around % 4 == half % 2 == 0
    assert size.around >= 8
    if cup is None:
        assert size.cast_on % 4 == 0
        assert half == size.cast_on // 2 + sum(step.outer + step.inner for step in steps)
        assert len(steps) == size.toe_rounds
    else:
        assert half == size.cast_on
        assert size.toe_rounds == heel_numbers.short_rows(wish.toe, half)
    tip = size.cast_on // 2
    assert size.gusset == heel_numbers.gusset(wish.heel, half, None if wish.practice else wish.gusset)
    assert size.turned == heel_numbers.turned(wish.heel, half, tip) <= half // 2 - 1
    assert min(size.even_rounds, size.leg_rounds - 1, size.cuff_rounds - 1) >= 0
    assert abs(gauge.width(size.around).mm - size.target_circumference.mm) <= gauge.width(2).mm
    heel = 2 * size.gusset + heel_numbers.depth(wish.heel, half, tip)
    foot = gauge.height(size.toe_rounds + size.even_rounds + heel)
    assert (1 if size.even_rounds == 0 else 2) * abs(foot.mm - size.target_foot.mm) <= gauge.height(1).mm
    leg = gauge.height(size.leg_rounds + size.cuff_rounds)
    assert 2 * abs(leg.mm - size.target_leg.mm) <= gauge.height(1).mm


@given(wishes())
def test_nothing_is_estimated_in_silence(wish):
    size = size_sock(wish)
    if not isinstance(size, SockSize) or wish.practice:
        return
    said = notes(size)
    chosen = {"ball-estimated": wish.ball, "ankle-estimated": wish.ankle, "heel-estimated": wish.heel_diagonal,
              "foot-estimated": wish.foot_length or wish.shoe, "leg-chosen": wish.leg,
              "cuff-chosen": wish.cuff, "ease-chosen": wish.around or wish.ease_percent}  # fmt: skip
    assert {key: given is None for key, given in chosen.items()} == {key: key in said for key in chosen}


@given(wishes() | absurd_wishes())
def test_everything_said_is_registered_with_its_values(wish):
    size = size_sock(wish)
    said = size.notes if isinstance(size, SockSize) else size
    for each in said:
        assert SIZING_SAYINGS[each.key] == {name for name, _ in each.values}
        for _, value in each.values:
            plain = isinstance(value, (int, str, Measure))
            assert plain or SIZING_SAYINGS[value.key] == dict(value.values).keys()
    assert not isinstance(size, SockSize) or all(note.key in NOTE_SAYINGS for note in size.notes)


@given(absurd_wishes())
def test_whatever_is_wished_comes_to_a_sock_or_to_problems(wish):
    size = size_sock(wish)

    assert isinstance(size, SockSize) or (size and all(isinstance(each, Problem) for each in size))


def test_a_rounded_toe_is_shorter_and_leaves_more_even_rounds():
    wedge, rounded = sized(toe=Toe.WEDGE), sized(toe=Toe.ROUNDED)

    assert wedge.toe_rounds == 20
    assert rounded.toe_rounds == 18
    assert rounded.even_rounds == wedge.even_rounds + 2


@given(wishes() | absurd_wishes())
def test_no_note_compares_a_length_with_one_that_is_said_alike(wish):
    """Lengths are said in whole millimetres: "fourteen point five instead of fourteen point five" says nothing."""
    size = size_sock(wish)
    compared = {
        "foot-rounded": ("made", "wanted"), "leg-rounded": ("made", "wanted"), "cuff-rounded": ("made", "wanted"),
        "leg-wide": ("circumference", "ankle"), "around-larger-than-foot": ("circumference", "ball"),
        "heel-tight": ("heel", "most"), "edge-tight": ("girth", "gives"), "heel-loose": ("heel", "circumference"),
        "calf-tight": ("girth", "circumference"), "swatch-small": ("length", "least"),
    }  # fmt: skip
    said = notes(size) if isinstance(size, SockSize) else {}
    alike = [key for key, names in compared.items() if key in said and len({_mm(said[key][n]) for n in names}) == 1]
    assert alike == []


def _mm(length: Measure) -> int:
    return round(length.tenths_mm / 10)
