"""Each line of the journal as JSON tells what happened, when, and where on the needle."""

import json

from hypothesis import given
from hypothesis import strategies as st

from assistant.journal import Entry
from assistant.journal_events import Told
from assistant.journal_export import described, json_lines
from plans.conversation import Advanced, Begun, Counted, Marked, Undone
from plans.pattern import Half
from tests.assistant.journalling import PLAN, events
from tests.assistant.small_plan import END, ROWS, SMALL, at_row, entry

PLANS = {PLAN: SMALL}
CONTRACT = ("seq", "at_ms", "stream_ms", "kind", "sock", "row", "group", "heard", "said")


def places(*happened: object) -> list[tuple]:
    lines = described((entry(event, 0) for event in happened), PLANS)
    return [
        tuple(line[name] for name in ("kind", "sock", "half", "stage", "round", "row", "group"))
        for line in lines
    ]


def test_a_step_tells_the_row_and_group_arrived_at() -> None:
    assert places(Begun(now=at_row(0)), Advanced(now=at_row(8, step=3)), Undone(now=at_row(0))) == [
        ("begun", 2, "front", "cast-on", 1, 0, 0),
        ("advanced", 1, "front", "toe", 2, 8, 3),
        ("undone", 2, "front", "cast-on", 1, 0, 0),
    ]


@given(st.integers(0, END - 1))
def test_the_place_is_the_earlier_of_both_socks(index: int) -> None:
    ((_, sock, half, stage, number, row, group),) = places(Advanced(now=at_row(index)))
    expected = ROWS[index]

    assert (expected.sock, expected.half, expected.stage, expected.round) == (sock, half, stage, number)
    assert (index, 0) == (row, group)


def test_what_moves_nothing_tells_where_the_knitting_stands() -> None:
    nowhere, at_eight, again = places(Told(command="help"), Advanced(now=at_row(8)), Told(command="how_far"))

    assert nowhere == ("told", None, None, None, None, None, None)
    assert again[1:] == at_eight[1:]


def test_a_mark_stands_where_it_was_made_and_moves_nothing() -> None:
    lines = places(Advanced(now=at_row(8)), Marked(at=at_row(9)), Told(command="marks"))

    assert [line[5] for line in lines] == [8, 9, 8]


def test_a_count_tells_the_sock_and_half_it_was_made_on() -> None:
    count = Counted(sock=2, half=Half.BACK, stitches=5, expected=(4,), right=False)
    same = Counted(sock=1, half=Half.FRONT, stitches=4, expected=(4,), right=True)

    assert places(Advanced(now=at_row(4)), count, same)[1:] == [
        ("counted", 2, "back", None, None, None, None),
        ("counted", 1, "front", "toe", 1, 4, 0),
    ]


def test_a_finished_pair_is_nowhere() -> None:
    assert places(Advanced(now=at_row(END))) == [("advanced", None, None, None, None, None, None)]


def test_pairs_do_not_mix() -> None:
    lines = described(
        [
            entry(Begun(now=at_row(0)), 0, pair="one"),
            entry(Begun(now=at_row(8)), 0, pair="two"),
            entry(Told(command="help"), 0, pair="one"),
        ],
        PLANS,
    )

    assert [(line["pair"], line["row"]) for line in lines] == [("one", 0), ("two", 8), ("one", 0)]


def test_the_rest_of_an_event_stands_in_its_own_field() -> None:
    count = Counted(sock=2, half=Half.BACK, stitches=5, expected=(4, 3), right=False)
    (line,) = described([entry(count, 9, stream_ms=7, heard="I have five", said="One too many.")], PLANS)

    assert line["event"] == {"sock": 2, "half": "back", "stitches": 5, "expected": [4, 3], "right": False}
    assert [line[name] for name in ("seq", "at_ms", "stream_ms", "heard", "said")] == [
        1, 9, 7, "I have five", "One too many.",
    ]  # fmt: skip


@given(st.lists(events), st.text())
def test_every_line_is_one_line_of_json_with_the_names_agreed(happened: list, said: str) -> None:
    entries = [Entry(seq, "socks", 0, None, event, None, said) for seq, event in enumerate(happened, start=1)]

    for text, entry_ in zip(json_lines(entries, PLANS), entries, strict=True):
        line = json.loads(text)
        assert "\n" not in text
        assert set(CONTRACT) <= set(line)
        assert (line["kind"], line["said"]) == (entry_.event.kind, said)
