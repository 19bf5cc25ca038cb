"""The cue sheet is a WebVTT file in which every step, chapter and retake stands at its time."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.cue_sheet import LAST_CUE_MS, Cue, Take, chapters, cues, takes, webvtt
from assistant.journal import Entry
from assistant.journal_events import SessionBegan, SessionEnded, Told
from plans.conversation import Advanced, Begun, Marked, Undone
from tests.assistant.journalling import PLAN, events
from tests.assistant.small_plan import END, SMALL, at_row, entry
from tests.assistant.webvtt_reading import Shown, read

PLANS = {PLAN: SMALL}
SESSION = (
    entry(SessionBegan(), 0, seq=1, stream_ms=0),
    entry(Begun(now=at_row(10)), 0, seq=2, stream_ms=1_000, said="Back of the second: knit & increase."),
    entry(Told(command="where_am_i"), 0, seq=3, stream_ms=9_000, said="you are here"),
    entry(Advanced(now=at_row(11)), 0, seq=4, stream_ms=75_500, heard="next", said="Back --> of <first>."),
    entry(Marked(at=at_row(11)), 0, seq=5, stream_ms=80_000, heard="mark", said="Mark one."),
    entry(Advanced(now=at_row(12)), 0, seq=6, stream_ms=3_600_000, heard="next", said="Foot."),
    entry(Undone(now=at_row(11)), 0, seq=7, stream_ms=3_601_000, heard="undo", said="Back."),
    entry(Advanced(now=at_row(END)), 0, seq=8, stream_ms=3_605_000, said="Finished."),
    entry(SessionEnded(), 0, seq=9, stream_ms=3_610_000),
)


def test_every_step_stands_at_its_time_with_sock_half_row_and_count() -> None:
    steps = [cue for cue in read(webvtt(cues(Take(SESSION), PLANS))) if cue.name.startswith("step")]

    assert steps == [
        Shown(
            "step 2", 1_000, 75_500,
            "Back of the second: knit & increase.\ntoe 2\nsock 2 back, row 10, group 0, makes 6",
        ),
        Shown(
            "step 4", 75_500, 3_600_000,
            "Back --> of <first>.\ntoe 2\nsock 1 back, row 11, group 0, makes 6",
        ),
        Shown("step 6", 3_600_000, 3_601_000, "Foot.\nfoot 1\nsock 1 front, row 12, group 0, makes 6"),
        Shown("step 7", 3_601_000, 3_605_000, "Back.\ntoe 2\nsock 1 back, row 11, group 0, makes 6"),
    ]  # fmt: skip


def test_chapters_follow_the_stages_without_a_gap() -> None:
    assert read(webvtt(chapters(Take(SESSION), PLANS))) == [
        Shown("chapter 2", 1_000, 3_600_000, "toe"),
        Shown("chapter 6", 3_600_000, 3_601_000, "foot"),
        Shown("chapter 7", 3_601_000, 3_605_000, "toe"),
    ]


def test_a_mark_tells_where_the_retake_begins() -> None:
    retakes = [cue for cue in read(webvtt(cues(Take(SESSION), PLANS))) if cue.name.startswith("retake")]

    assert retakes == [Shown("retake 5", 75_500, 80_000, "retake\nmark")]


@pytest.mark.parametrize(
    ("ms", "written"),
    [(0, "00:00.000"), (75_500, "01:15.500"), (3_599_999, "59:59.999"), (3_600_000, "01:00:00.000"),
     (360_000_000, "100:00:00.000")],
)  # fmt: skip
def test_times_are_written_as_the_w3c_wants_them(ms: int, written: str) -> None:
    assert f"\n{written} --> " in webvtt([Cue("step 1", ms, ms + 1, ("knit",))])


def test_a_session_without_steps_gives_a_file_without_cues() -> None:
    assert webvtt(cues(Take(()), PLANS)) == "WEBVTT\n"
    assert read(webvtt(cues(Take(()), PLANS))) == []


def test_the_last_step_stands_for_a_while_when_nothing_comes_after_it() -> None:
    assert cues(Take(SESSION[:2]), PLANS)[-1].ended_ms == 1_000 + LAST_CUE_MS


def test_sessions_are_told_apart_by_their_beginning_or_by_time_that_starts_anew() -> None:
    again = tuple(entry(Told(command="help"), 0, seq=seq, stream_ms=seq) for seq in (10, 11))
    later = (entry(SessionBegan(), 0, seq=12, stream_ms=11), *again)
    unheard = (entry(Told(command="help"), 0, seq=13),)

    found = takes((*SESSION, *again, *unheard, *later))
    assert [take.entries for take in found] == [SESSION, again, later[:1], later[1:]]
    assert [take.opens_at for take in found] == [None, *3 * [at_row(END)]]


def test_a_take_that_goes_on_with_a_pair_opens_with_the_step_in_hand() -> None:
    """A video's chapters begin at nought, and the first step can be retaken like any other."""
    told = tuple(
        entry(Told(command="greeting"), 0, seq=seq, stream_ms=ms, said=said)
        for seq, ms, said in ((21, 0, "Your hands."), (22, 2_000, "Toe: back of the first."))
    )
    second = (
        entry(SessionBegan(), 0, seq=20, stream_ms=0, said="Practice."), *told,
        entry(Marked(at=at_row(11)), 0, seq=23, stream_ms=9_000, heard="mark", said="Mark one."),
        entry(Advanced(now=at_row(12)), 0, seq=24, stream_ms=20_000, heard="next", said="Foot."),
        entry(SessionEnded(), 0, seq=25, stream_ms=30_000),
    )
    take = takes((*SESSION[:5], *second))[-1]

    assert read(webvtt(chapters(take, PLANS))) == [
        Shown("chapter 20", 0, 20_000, "toe"), Shown("chapter 24", 20_000, 30_000, "foot"),
    ]  # fmt: skip
    steps = read(webvtt(cues(take, PLANS)))
    assert Shown("step 20", 0, 20_000, "Toe: back of the first.\ntoe 2\nsock 1 back, row 11, group 0, makes 6") in steps
    assert Shown("retake 23", 0, 9_000, "retake\nmark") in steps


def test_a_pair_that_is_begun_opens_with_what_its_greeting_ends_with() -> None:
    greeted = (
        *SESSION[:2], entry(Told(command="greeting"), 0, seq=3, stream_ms=5_000, said="Hold the tips."), *SESSION[3:],
    )  # fmt: skip

    assert read(webvtt(cues(Take(greeted), PLANS)))[1].text.startswith("Hold the tips.")


def test_a_plan_that_is_not_known_gives_no_cue() -> None:
    assert webvtt(cues(Take(SESSION), {})).count("step") == 0


rows_of_time = st.lists(
    st.tuples(events, st.integers(0, 10_000), st.none() | st.text(), st.none() | st.text()), max_size=8
)


@given(rows_of_time)
def test_whatever_happened_and_was_said_the_file_conforms(happened: list) -> None:
    now, entries = 0, []
    for seq, (event, pause, heard, said) in enumerate(happened, start=1):
        now += pause
        entries.append(Entry(seq, "socks", 0, now, event, heard, said))

    for take in takes(entries):
        shown = read(webvtt(cues(take, PLANS)))
        assert [cue.name for cue in shown] == [cue.name for cue in cues(take, PLANS)]


@pytest.mark.parametrize(
    "wrong",
    [
        "WEBVTT\n00:00.000 --> 00:01.000\nknit\n", "WEBVT\n", "WEBVTT\n\n00:00,000 --> 00:01.000\nknit",
        "WEBVTT\n\n0:00.000 --> 00:01.000\nknit", "WEBVTT\n\n00:01.000 --> 00:01.000\nknit",
        "WEBVTT\n\n00:00.000 --> 00:60.000\nknit", "WEBVTT\n\n00:00.000 --> 00:01.000\na <b",
        "WEBVTT\n\n00:00.000 --> 00:01.000\na & b", "WEBVTT\n\n00:00.000 --> 00:01.000\na\n00:02.000 --> b",
        "WEBVTT\n\n00:02.000 --> 00:03.000\na\n\n00:01.000 --> 00:03.000\nb", "WEBVTT\n\nknit",
        "WEBVTT\n\n00:00.000 --> 00:01.000",
    ],
)  # fmt: skip
def test_the_reader_refuses_what_does_not_conform(wrong: str) -> None:
    with pytest.raises(ValueError):
        read(wrong)
