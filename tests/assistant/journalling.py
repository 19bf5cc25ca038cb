"""Journals for tests: a plan's hash, standings, events, and a strategy for all kinds of them."""

from pathlib import Path

from hypothesis import strategies as st

from assistant.journal import Journal
from assistant.journal_events import (
    AskedBack,
    CutShort,
    JournalEvent,
    NotUnderstood,
    Paused,
    RestSnoozed,
    SessionBegan,
    SessionEnded,
    Spoke,
    Told,
    VolumeSet,
)
from plans.conversation import (
    Advanced,
    Answered,
    Asked,
    AtRound,
    Begun,
    Counted,
    GrainSet,
    Marked,
    Place,
    PlaceSet,
    Redone,
    Replanned,
    RippedBack,
    Standing,
    Stop,
    Stopped,
    Undone,
)
from plans.pattern import Half

PLAN = "ab" * 32
OTHER_PLAN = "cd" * 32


def standing(first: int, second: int, *, step: int = 0, plan: str = PLAN) -> Standing:
    """Both socks' rows; the first one's step."""
    return Standing(plan=plan, first=Place(row_index=first, step_index=step), second=Place(row_index=second))


def new_journal(path: Path) -> Journal:
    """An empty journal that knows both plans."""
    journal = Journal.open(path)
    journal.keep_plan(PLAN, '{"plan": 1}')
    journal.keep_plan(OTHER_PLAN, '{"plan": 2}')
    return journal


def advance(journal: Journal, row: int, **more: object) -> int:
    """Append one step to a row; returns its number."""
    return journal.append(
        [Advanced(now=standing(row, row))], after=journal.last_seq, at_ms=row * 1000, **more
    )


_ints = st.integers(0, 400)
_places = st.builds(Place, row_index=_ints, step_index=st.integers(0, 9))
standings = st.builds(Standing, plan=st.sampled_from([PLAN, OTHER_PLAN]), first=_places, second=_places)
words = st.none() | st.text(max_size=40)
_wishes = st.one_of(
    st.builds(AtRound, round=_ints),
    st.builds(RippedBack, stage=words, round=st.none() | _ints),
    st.just(Stop()),
)
knitting_events: st.SearchStrategy[JournalEvent] = st.one_of(
    st.builds(Begun, now=standings), st.builds(Advanced, now=standings), st.builds(Undone, now=standings),
    st.builds(Redone, now=standings), st.builds(Replanned, now=standings), st.builds(Marked, at=standings),
    st.builds(PlaceSet, now=standings, why=st.sampled_from(["back", "forward", "at_round", "ripped_back"])),
    st.builds(Counted, sock=st.sampled_from([1, 2]), half=st.sampled_from(list(Half)), stitches=_ints,
              expected=st.lists(_ints, max_size=3).map(tuple), right=st.booleans()),
    st.builds(GrainSet, grain=st.sampled_from(["follow", "group", "half", "side", "round"])),
    st.builds(Asked, wish=_wishes), st.builds(Answered, yes=st.booleans()), st.just(Stopped()),
)  # fmt: skip
surrounding_events: st.SearchStrategy[JournalEvent] = st.one_of(
    st.builds(SessionBegan), st.builds(SessionEnded), st.builds(Told, command=st.text(max_size=9)),
    st.builds(AskedBack), st.just(NotUnderstood()),
    st.builds(Spoke, of_seq=_ints, began_ms=_ints, ended_ms=_ints),
    st.builds(CutShort), st.just(Paused()), st.builds(VolumeSet, percent=_ints),
    st.builds(RestSnoozed, minutes=_ints),
)  # fmt: skip
events = knitting_events | surrounding_events
