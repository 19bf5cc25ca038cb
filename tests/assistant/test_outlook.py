"""What the journal so far tells about the time ahead: her pace, a rest when it is due, not sooner, not twice."""

from assistant.journal import Entry
from assistant.journal_events import JournalEvent, Rested, RestsSet, RestSuggested, SessionBegan
from assistant.outlook import Outlook
from assistant.pace import DEFAULT_PACE
from plans.conversation import Advanced, Begun, Standing
from plans.engine import begin
from plans.engine.courses import course
from plans.engine.places import after, standing_at
from plans.json_form import plan_id
from plans.pattern import StageName
from tests.assistant.sitting import practice

MINUTE = 60_000
PLAN = practice().plan
ID = plan_id(PLAN)
BEGUN = begin(PLAN).events


def outlook(*entries: Entry) -> Outlook:
    return Outlook(PLAN, ID, entries)


def entry(event: JournalEvent, minute: float, seq: int = 1) -> Entry:
    return Entry(seq, "practice", round(minute * MINUTE), None, event, None, None)


def start() -> Begun:
    (event,) = [event for event in BEGUN if isinstance(event, Begun)]
    return event


def knitted(minutes: int, each_minutes: float = 1.0) -> list[Entry]:
    """Rounds of the pair, done one after the other."""
    entries, now, at = [entry(start(), 0)], start().now, 0.0
    while at < minutes:
        now, at = after(PLAN, now, "round"), at + each_minutes
        entries.append(entry(Advanced(now=now), at, len(entries) + 1))
    return entries


def test_with_nothing_knitted_the_usual_pace_is_assumed() -> None:
    assert DEFAULT_PACE == outlook().pace()


def test_her_own_pace_is_learnt_from_what_she_knits() -> None:
    quick, slow = (outlook(*knitted(20, each)).pace() for each in (0.5, 2.0))

    assert quick.slow > slow.slow


def test_time_to_go_becomes_less() -> None:
    looking = outlook(entry(start(), 0))
    first = looking.time_to_go(start().now)
    far = start().now
    for _ in range(20):
        far = after(PLAN, far, "round")

    assert first.key == looking.time_to_go(far).key == "time-to-go"
    assert first != looking.time_to_go(far)


def round_begin() -> Standing:
    """Where the second round of the foot begins: front of the first sock."""
    row = next(row for row in PLAN.rows if (row.stage, row.round) == (StageName.FOOT, 2))
    return standing_at(course(PLAN), ID, course(PLAN).starts[row.index])


def test_a_rest_is_due_after_fifty_minutes_of_knitting_and_not_before() -> None:
    for minutes, expected in ((20, False), (49, False), (52, True)):
        looking = outlook(*knitted(minutes, 0.75))
        now = round_begin()

        assert expected == (looking.rest_due(now, minutes * MINUTE) is not None), minutes


def test_what_is_noted_counts_as_what_was_there() -> None:
    entries = knitted(52, 0.75)
    told, read = outlook(), outlook(*entries)
    for each in entries:
        told.note(each)
    now = round_begin()

    assert read.pace() == told.pace()
    assert read.rest_due(now, 52 * MINUTE) == told.rest_due(now, 52 * MINUTE)


def test_once_offered_it_is_offered_again_only_later() -> None:
    for minutes, expected in ((60, False), (73, True)):
        looking = outlook(*knitted(minutes, 0.75))
        looking.note(entry(RestSuggested(), 52, 999))

        assert expected == (looking.rest_due(round_begin(), (minutes + 1) * MINUTE) is not None), minutes


def test_a_pause_is_a_rest_without_a_word_said() -> None:
    looking = outlook(*knitted(52, 0.75))

    assert looking.rest_due(round_begin(), 53 * MINUTE) is not None
    assert looking.rest_due(round_begin(), 62 * MINUTE) is None


def test_after_a_rest_none_is_due_and_switched_off_never() -> None:
    rested, off = outlook(*knitted(52, 0.75)), outlook(*knitted(52, 0.75))
    now = round_begin()
    rested.note(entry(Rested(), 52, 99))
    off.note(entry(RestsSet(on=False), 52, 99))

    assert rested.rest_due(now, 53 * MINUTE) is None
    assert off.rest_due(now, 200 * MINUTE) is None


def test_a_session_of_another_day_is_no_knitting_without_rest() -> None:
    entries = [*knitted(30, 0.75), entry(SessionBegan(), 600, 98)]
    looking = outlook(*entries)

    assert looking.rest_due(round_begin(), 601 * MINUTE) is None
