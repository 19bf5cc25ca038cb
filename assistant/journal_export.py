"""The journal as JSON lines: one object a line, made of what stands in the file and in the plans it names."""

import json
from collections.abc import Iterable, Iterator, Mapping

from assistant.journal import Entry, standing_of
from assistant.journal_events import EVENTS
from plans.conversation import Counted, PlanId, Standing
from plans.engine.courses import course
from plans.engine.places import in_hand
from plans.pattern import Plan

Where = dict[str, int | str | None]
_NOWHERE: Where = dict.fromkeys(("sock", "half", "stage", "round", "row", "group"))


def json_lines(entries: Iterable[Entry], plans: Mapping[PlanId, Plan]) -> Iterator[str]:
    """Each entry as one line of JSON; the names are those of `described`."""
    return (json.dumps(line, ensure_ascii=False) for line in described(entries, plans))


def described(entries: Iterable[Entry], plans: Mapping[PlanId, Plan]) -> Iterator[dict[str, object]]:
    """Each entry with seq, at_ms, stream_ms, kind, pair, where the step in hand begins, heard, said, event.

    `row` and `group` are indices (a row of the plan, a step in it), `round` counts from 1 in its stage. They
    tell where the knitting stood when the event was written down; a count tells the sock and half that it was
    made on. All are null before a pair is begun, once it is finished, and where its plan is not known.
    """
    standings: dict[str, Standing] = {}
    for entry in entries:
        standing = standing_of(entry.event)
        if standing is not None and entry.event.kind != "marked":
            standings[entry.pair] = standing
        yield {
            "seq": entry.seq,
            "at_ms": entry.at_ms,
            "stream_ms": entry.stream_ms,
            "kind": entry.event.kind,
            "pair": entry.pair,
            **_place_of(entry, standing or standings.get(entry.pair), plans),
            "heard": entry.heard,
            "said": entry.said,
            "event": EVENTS.dump_python(entry.event, mode="json", exclude={"kind"}),
        }


def _place_of(entry: Entry, standing: Standing | None, plans: Mapping[PlanId, Plan]) -> Where:
    here = where(standing, plans)
    event = entry.event
    if not isinstance(event, Counted) or (here["sock"], here["half"]) == (event.sock, event.half):
        return here
    return _NOWHERE | {"sock": event.sock, "half": event.half.value}


def where(standing: Standing | None, plans: Mapping[PlanId, Plan]) -> Where:
    """Sock, half, stage, round, row and group of the step in hand."""
    plan = plans.get(standing.plan) if standing is not None else None
    if plan is None or standing is None:
        return dict(_NOWHERE)
    the_course = course(plan)
    at = in_hand(the_course, standing)
    if at >= the_course.end:
        return dict(_NOWHERE)
    row = the_course.row(at)
    return {
        "sock": row.sock,
        "half": row.half.value,
        "stage": row.stage.value,
        "round": row.round,
        "row": row.index,
        "group": at - the_course.starts[row.index],
    }
