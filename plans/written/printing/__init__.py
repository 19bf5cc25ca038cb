"""Any plan printed as a pattern in the usual abbreviations, in a file that can be read again."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from plans.files.toml_values import toml_value
from plans.json_form import as_json
from plans.pattern import Needles, Plan
from plans.written.printing.blocks import Blocks
from plans.written.printing.glossary import above

_HEAD = "A pattern in the usual abbreviations. Its rounds may be changed: every stitch is counted and proven anew."
_ROWS = ("rows", "stages", "extra_ops", "schema_version", "written")


def pattern_text(plan: Plan) -> str:
    """The rounds alone."""
    halves = plan.construction.needles is not Needles.ONE_CIRCULAR
    turned = not plan.construction.needles.pointed
    lines = Blocks(plan.rows, pieces=len(plan.socks), halves=halves, turned=turned).lines()
    return "\n".join(lines).strip("\n") + "\n"


def print_pattern(plan: Plan) -> str:
    """A whole pattern file: a piece written by hand as it would be written, any other with what the plan says."""
    comments = [f"# {line}" for line in (_HEAD, *above(plan))]
    lines = [*comments, f"schema_version = {plan.schema_version}"]
    if plan.written is None:
        return "\n".join([*lines, *_pattern(plan), *_table("plan", _described(plan))]) + "\n"
    gauge = plan.gauge
    return "\n".join([
        *lines,
        f"name = {toml_value(plan.name)}",
        f"pieces = {_pieces(plan)}",
        f"needles = {toml_value(plan.construction.needles.value)}",
        f"multiple = {plan.multiple}",
        *_pattern(plan),
        "[swatch]",
        f"stitches = {toml_value(Fraction(gauge.stitches_per_10cm))}",
        f"rounds = {toml_value(Fraction(gauge.rounds_per_10cm))}",
        *_yarns(plan),
    ]) + "\n"  # fmt: skip


def _pieces(plan: Plan) -> str:
    if plan.socks == ("first", "second"):
        return "2"
    return "1" if plan.socks == (plan.name,) else toml_value(plan.socks)


def _pattern(plan: Plan) -> Iterator[str]:
    yield from ("", "pattern = '''", pattern_text(plan).rstrip("\n"), "'''", "")


def _yarns(plan: Plan) -> Iterator[str]:
    if plan.written is not None and plan.written.yarns is not None:
        main, contrast = plan.written.yarns
        yield from ("", "[yarns]", f"main = {toml_value(main)}", f"contrast = {toml_value(contrast)}")


def _described(plan: Plan) -> dict[str, Any]:
    return {name: value for name, value in as_json(plan).items() if name not in _ROWS}


def _table(name: str, holds: dict[str, Any]) -> Iterator[str]:
    """A table, its plain values first, then the tables inside it."""
    yield f"[{name}]"
    inner = {key: value for key, value in holds.items() if isinstance(value, dict)}
    for key, value in holds.items():
        if key not in inner and value is not None:
            yield f"{key} = {_value(value)}"
    for key, value in inner.items():
        yield ""
        yield from _table(f"{name}.{key}", value)


def _value(value: object) -> str:
    """Any value of JSON, in one line."""
    match value:
        case dict():
            return "{ " + ", ".join(f"{key} = {_value(each)}" for key, each in value.items() if each is not None) + " }"
        case list():
            return f"[{', '.join(map(_value, value))}]"
        case float():
            return repr(value)
        case _:
            return toml_value(value)
