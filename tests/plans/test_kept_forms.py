"""What is kept on disk is read for years: by the same names, and nothing that was read can be changed."""

import json
from dataclasses import is_dataclass
from fractions import Fraction
from importlib import import_module
from pkgutil import walk_packages

import pytest
from pydantic import BaseModel, TypeAdapter, ValidationError

import plans
from plans.amounts import Thread, Weight
from plans.conversation import Command, Event
from tests.strategies import practice

NOW = {"plan": "x", "first": {"row_index": 3}, "second": {"row_index": 1}}
EVENTS: list[dict] = [
    {"kind": "begun", "now": NOW},
    {"kind": "advanced", "now": NOW},
    *({"kind": "place_set", "now": NOW, "why": why} for why in ("back", "forward", "at_round", "ripped_back")),
    *({"kind": "grain_set", "grain": grain} for grain in ("follow", "group", "half", "side", "round")),
    {"kind": "stopped"},
]
COMMANDS = [
    "next", "back", "forward", "at_round", "ripped_back", "where_am_i", "undo", "redo", "again", "how_many", "how_far",
    "what_next", "explain", "finer", "coarser", "mark", "marks", "i_have", "tape_says", "yarn_left", "new_ball", "yes",
    "no", "stop",
]  # fmt: skip

@pytest.mark.parametrize("event", EVENTS, ids=lambda event: " ".join(map(str, event.values()))[:40])
def test_an_event_is_kept_under_the_name_it_always_had(event):
    adapter: TypeAdapter[Event] = TypeAdapter(Event)
    kept = json.loads(adapter.dump_json(adapter.validate_json(json.dumps(event))))

    def within(part, whole):
        return whole == part if not isinstance(part, dict) else all(within(part[name], whole[name]) for name in part)

    assert within(event, kept)


def test_commands_are_kept_under_the_names_they_always_had():
    schema = TypeAdapter(Command).json_schema()

    assert sorted(COMMANDS) == sorted(schema["discriminator"]["mapping"])


def test_a_plan_of_another_version_is_refused():
    kept = json.loads(practice().model_dump_json())

    assert kept["schema_version"] == 1
    with pytest.raises(ValidationError):
        type(practice()).model_validate_json(json.dumps(kept | {"schema_version": 2}))


def everything() -> list[type]:
    """All classes that plans/ holds."""
    modules = [import_module(each.name) for each in walk_packages(plans.__path__, "plans.")]
    classes = {each for module in modules for each in vars(module).values() if isinstance(each, type)}
    return [each for each in classes if each.__module__.startswith("plans.")]


def test_records_cannot_be_changed_and_take_nothing_unknown():
    records = [each for each in everything() if issubclass(each, BaseModel)]

    assert len(records) > 50
    for each in records:
        config = each.model_config
        assert (config["frozen"], config["extra"], config["strict"], config["allow_inf_nan"]) == (
            True, "forbid", True, False,
        ), each  # fmt: skip


def test_what_holds_several_values_cannot_be_changed_but_where_a_pattern_is_read():
    mutable = {each.__module__ for each in everything() if is_dataclass(each) and not each.__dataclass_params__.frozen}

    assert {module for module in mutable if not module.startswith("plans.written.reading.")} == set()


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        (Weight, "50g", 50), (Weight, "1 gram", 1), (Weight, "2 grams", 2), (Weight, "0.1 kg", 100),
        (Weight, "1 oz", Fraction("28.349523125")), (Weight, "1 ounce", Fraction("28.349523125")),
        (Weight, "2 ounces", Fraction("56.69904625")), (Thread, "210m", 210), (Thread, "1 metre", 1),
        (Thread, "2 metres", 2), (Thread, "1 meter", 1), (Thread, "2 meters", 2), (Thread, "1 yd", Fraction("0.9144")),
        (Thread, "1 yds", Fraction("0.9144")), (Thread, "1 yard", Fraction("0.9144")),
        (Thread, "10 yards", Fraction("9.144")),
    ],
)  # fmt: skip
def test_yarn_is_weighed_and_measured_in_the_international_units(kind, text, value):
    """International yard and pound agreement of 1959: 0.9144 m, 0.45359237 kg."""
    assert value == kind.parse(text).value


@pytest.mark.parametrize("text", ["50", "g", "50 stone", "50gg", "ten g", "", "-5g"])
def test_what_is_no_weight_is_refused(text):
    with pytest.raises(ValueError, match=r"\S"):
        Weight.parse(text)
