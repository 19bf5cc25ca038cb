"""A plan as JSON: the agreed names, a schema it fits, an identity, and the way back."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from plans.json_form import as_json, canonical, from_json, plan_id, schema
from plans.pattern import BindOff, Heel, Plan, Toe
from plans.proof import prove
from tests.strategies import UP_BIND_OFFS, UP_HEELS, adult, practice

TOP = {
    "schema_version", "name", "socks", "construction", "gauge", "finished", "around", "multiple", "stages", "rows",
}  # fmt: skip
ROW = ["index", "stage", "round", "sock", "half", "facing", "yarn", "ops", "turn_after", "stitches_after", "acts"]
VALIDATOR = Draft202012Validator(schema())


def test_the_agreed_names_are_there():
    form = as_json(practice())

    assert set(form) >= TOP
    assert set(form["construction"]) >= {"toe", "heel", "bind_off", "direction", "needles"}
    assert set(form["gauge"]) == {"stitches_per_10cm", "rounds_per_10cm"}
    assert set(form["finished"]) == set(form["give_or_take"]) == {"circumference_cm", "foot_length_cm", "leg_cm"}
    assert form["stages"][1] == {"name": "toe", "first_row": 4, "last_row": 35}


def test_a_row_reads_as_agreed():
    form = as_json(practice())

    assert all(list(row) == ROW for row in form["rows"])
    assert form["rows"][9] == {
        "index": 9, "stage": "toe", "round": 2, "sock": 2, "half": "front", "facing": "RS", "yarn": 2,
        "ops": [{"op": "k", "times": 1}, {"op": "m1r", "times": 1}, {"op": "k", "times": 2},
                {"op": "m1l", "times": 1}, {"op": "k", "times": 1}],
        "turn_after": True, "stitches_after": 6, "acts": ["change yarn", "snug", "turn clockwise"],
    }  # fmt: skip


@pytest.mark.parametrize(("heel", "mark", "other"), [(Heel.WRAPPED, "wrap", "double"), (Heel.GERMAN, "double", "wrap")])
def test_wraps_and_doubles_are_told_only_where_they_are(heel, mark, other):
    groups = [group for row in as_json(practice(heel))["rows"] for group in row["ops"]]

    assert {group[mark] for group in groups if mark in group} == {True}
    assert not any(other in group for group in groups)
    assert sum(mark in group for group in groups) == 2 * 4


@pytest.mark.parametrize(
    ("bind_off", "own"), [(BindOff.DECREASE, set()), (BindOff.SEWN, {"sew_bo"}), (BindOff.YARN_OVER, {"yo_bo"})]
)
def test_operations_of_our_own_naming_say_what_they_take_and_make(bind_off, own):
    extra = as_json(practice(Heel.WRAPPED, bind_off))["extra_ops"]

    assert set(extra) == {"k2tog_strand", "ssk_strand"} | own
    assert extra["ssk_strand"] == {"takes": 1, "makes": 1}
    assert all(extra[name] == {"takes": 1, "makes": 0} for name in own)


def test_the_schema_is_one():
    Draft202012Validator.check_schema(schema())


@given(st.sampled_from(UP_HEELS), st.sampled_from(UP_BIND_OFFS), st.sampled_from(Toe))
@settings(max_examples=12)
def test_every_plan_fits_the_schema_and_comes_back_the_same(heel, bind_off, toe):
    plan = practice(heel, bind_off, toe)
    form = as_json(plan)
    text = json.dumps(form)

    VALIDATOR.validate(json.loads(text))
    assert as_json(from_json(text)) == form
    assert plan_id(from_json(text)) == plan_id(plan)
    assert not prove(from_json(text))


def test_an_adult_plan_comes_back_proven():
    plan = from_json(json.dumps(as_json(adult())))

    assert isinstance(plan, Plan)
    assert not prove(plan)
    assert plan_id(plan) == plan_id(adult())


def _with_row(changes):
    form = as_json(practice())
    form["rows"][4] |= changes
    return form


@pytest.mark.parametrize(
    "form",
    [
        {"rows": []},
        {**as_json(practice()), "colour": "red"},
        _with_row({"half": "middle"}),
        _with_row({"sock": 3}),
        _with_row({"ops": [{"op": "k", "times": 0}]}),
        _with_row({"stitches_after": -1}),
        _with_row({"acts": ["sing"]}),
    ],
)
def test_what_is_no_plan_is_refused_by_schema_and_reader_alike(form):
    assert not VALIDATOR.is_valid(form)
    with pytest.raises(ValueError, match="validation error"):
        from_json(json.dumps(form))


def test_text_that_is_no_json_is_refused():
    with pytest.raises(ValueError, match="Expecting"):
        from_json("k 12, turn")


def test_the_identity_is_of_the_content():
    plan = practice()
    renamed = plan.model_copy(update={"name": "other socks"})

    assert len(plan_id(plan)) == 64
    assert plan_id(plan) == plan_id(Plan.model_validate(plan.model_dump()))
    assert plan_id(plan) != plan_id(renamed)
    assert plan_id(plan) != plan_id(practice(Heel.GERMAN))


def test_a_plan_from_before_there_was_a_choice_is_read_and_keeps_its_identity():
    plan = practice(Heel.GERMAN)
    form = json.loads(canonical(plan))
    before = {"toe", "heel", "bind_off", "direction", "needles", "pairing", "second_tip"}

    assert form["construction"].keys() == before
    assert "heel_depth" not in form
    assert as_json(from_json(json.dumps(form))) == as_json(plan)
    assert plan_id(from_json(json.dumps(form))) == plan_id(plan)
    assert not prove(from_json(json.dumps(form)))


@pytest.mark.parametrize("heel", [Heel("shadow"), Heel("short-row-german"), Heel("forethought")])
def test_a_plan_of_any_heel_comes_back_from_its_canonical_form(heel):
    assert as_json(from_json(canonical(practice(heel)))) == as_json(practice(heel))
