"""A plan as JSON, for other programs and for the journal; its identity; its JSON Schema."""

import hashlib
import json
from typing import Any

from plans.pattern import Colour, Construction, Group, Plan, Row
from plans.stitches import EXTRA_OPS, TAKES_MAKES, Op

Json = dict[str, Any]


def as_json(plan: Plan) -> Json:
    """The plan as plain values; `extra_ops` says what operations of our own naming take and make."""
    form: Json = plan.model_dump(mode="json", exclude={"rows", *_unused(plan)})
    if plan.finished.height_cm is None:
        del form["finished"]["height_cm"]
    used = {group.op for row in plan.rows for group in row.ops} & EXTRA_OPS
    form["extra_ops"] = {str(op): _takes_makes(op) for op in sorted(used)}
    form["rows"] = [_row(row) for row in plan.rows]
    return form


def _unused(plan: Plan) -> set[str]:
    """What most plans have not, and then do not name."""
    return {name for name in _OPTIONAL if not getattr(plan, name)}


_OF_SOME_ROWS = ("needles", "slipped", "chart")
_OPTIONAL = ("charts", "calf", "give_or_take", "wishes", "written", "closing")


def canonical(plan: Plan) -> str:
    """The plan's canonical JSON: sorted keys, no spaces, ASCII.

    What the first plans did not name yet is left out where it is as it was in them: they keep their identity.
    """
    form = as_json(plan)
    usual = {name: field.default for name, field in Construction.model_fields.items() if not field.is_required()}
    usual.pop("second_tip")
    for name, default in usual.items():
        if form["construction"][name] == default:
            del form["construction"][name]
    if plan.heel_depth == plan.turned:
        del form["heel_depth"]
    return json.dumps(form, sort_keys=True, separators=(",", ":"))


def plan_id(plan: Plan) -> str:
    """SHA-256, in hex, of the plan's canonical JSON."""
    return text_id(canonical(plan))


def text_id(text: str) -> str:
    """SHA-256, in hex, of a plan's canonical JSON."""
    return hashlib.sha256(text.encode()).hexdigest()


def from_json(text: str) -> Plan:
    """Read a plan back; nothing is proven.

    Raises:
        ValueError: it is no plan in JSON; the message says where.
    """
    form = json.loads(text)
    if isinstance(form, dict):
        form.pop("extra_ops", None)
        form.setdefault("heel_depth", form.get("turned"))  # older plans have turned heels only, as deep as these turn
    return Plan.model_validate_json(json.dumps(form))


def schema() -> Json:
    """The JSON Schema (draft 2020-12) of `as_json`."""
    form: Json = Plan.model_json_schema(mode="serialization")
    count = {"type": "integer", "minimum": 0}
    form["$defs"]["ExtraOp"] = {
        "title": "ExtraOp",
        "description": "Loops an operation takes from one needle tip and leaves on the other.",
        "type": "object",
        "properties": {"takes": count, "makes": count},
        "required": ["takes", "makes"],
        "additionalProperties": False,
    }
    form["properties"]["extra_ops"] = {
        "title": "Extra Ops",
        "type": "object",
        "propertyNames": {"enum": sorted(str(op) for op in EXTRA_OPS)},
        "additionalProperties": {"$ref": "#/$defs/ExtraOp"},
    }
    form["required"] = [name for name in form["properties"] if name not in _OPTIONAL]
    row = form["$defs"]["Row"]
    row["required"] = [name for name in row["properties"] if name not in _OF_SOME_ROWS]
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **form}


def _takes_makes(op: Op) -> dict[str, int]:
    takes, makes = TAKES_MAKES[op]
    return {"takes": takes, "makes": makes}


def _row(row: Row) -> Json:
    some: Json = {"chart": row.chart.model_dump(mode="json")} if row.chart else {}
    some |= {"needles": list(row.needles)} if row.needles else {}
    some |= {"slipped": row.slipped} if row.slipped else {}
    return {
        "index": row.index,
        "stage": row.stage.value,
        "round": row.round,
        "sock": row.sock,
        "half": row.half.value,
        "facing": row.facing.value,
        "yarn": row.yarn,
        "ops": [_group(group) for group in row.ops],
        "turn_after": row.turn_after,
        "stitches_after": row.stitches_after,
        "acts": [act.value for act in row.acts],
        **some,
    }


def _group(group: Group) -> Json:
    form: Json = {"op": group.op.value, "times": group.times}
    if group.wrap:
        form["wrap"] = True
    if group.double:
        form["double"] = True
    if group.colour is not Colour.MAIN:
        form["colour"] = group.colour.value
    return form
