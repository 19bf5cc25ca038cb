"""What sizing and the plan file say is what is registered: no key without a sayer, no sayer without a key."""

import ast
from pathlib import Path

import plans
from plans.sayings import SAYINGS
from plans.sizing.sayings import (
    CURE_SAYINGS,
    FIELD_SAYINGS,
    FILE_SAYINGS,
    NOTE_SAYINGS,
    PROBLEM_SAYINGS,
    SIZING_SAYINGS,
)

HOME = Path(plans.__file__).parent
FILES = (*HOME.glob("sizing/*.py"), *HOME.glob("files/*.py"), HOME / "making.py")
MODULES = [file for file in FILES if file.name != "sayings.py"]


def _texts():
    """Every text written in those modules, docstrings apart."""
    for file in MODULES:
        tree = ast.parse(file.read_text("utf-8"))
        yield from (node.value for node in ast.walk(tree)
                    if isinstance(node, ast.Constant) and isinstance(node.value, str))  # fmt: skip


def _uttered():
    """The first argument of each `Reply.of` and `Problem.of`, where it is written out."""
    for file in MODULES:
        tree = ast.parse(file.read_text("utf-8"))
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "of":
                first = node.args[0] if node.args else None
                if isinstance(first, ast.Constant):
                    yield first.value


def test_every_key_is_said_somewhere():
    assert SIZING_SAYINGS.keys() - FIELD_SAYINGS.keys() <= set(_texts())


def test_nothing_is_said_that_is_not_registered():
    assert set(_uttered()) <= SAYINGS.keys()


def test_no_key_means_two_things():
    parts = (FIELD_SAYINGS, CURE_SAYINGS, NOTE_SAYINGS, PROBLEM_SAYINGS, FILE_SAYINGS)

    assert sum(map(len, parts)) == len(SIZING_SAYINGS)


def test_keys_are_in_kebab_case_and_values_are_names():
    for key, values in SIZING_SAYINGS.items():
        assert key.replace("-", "").isalpha(), key
        assert key == key.lower()
        assert all(value.isidentifier() for value in values)
