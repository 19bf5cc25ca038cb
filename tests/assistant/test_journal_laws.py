"""What is always true of a journal, whatever happens."""

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from assistant.journal import Entry, Journal, is_knitting
from assistant.journal_errors import JournalMoved
from tests.assistant.journalling import events, knitting_events, new_journal, surrounding_events, words

times = st.integers(-(2**40), 2**42)


@settings(max_examples=40, deadline=None)
@given(events)
def test_every_event_reads_back_as_it_was_written(event: object) -> None:
    with tempfile.TemporaryDirectory() as folder, new_journal(Path(folder) / "j.sqlite") as journal:
        journal.append([event], after=0, at_ms=0)

        assert event == journal.entries()[0].event


@settings(max_examples=30, deadline=None)
@given(st.lists(events, max_size=4), st.lists(events, max_size=4))
def test_progress_is_folded_from_the_engines_events_alone(knitted: list, around: list) -> None:
    with tempfile.TemporaryDirectory() as folder, new_journal(Path(folder) / "j.sqlite") as journal:
        journal.append([*knitted, *around], after=0, at_ms=0)

        assert tuple(event for event in knitted + around if is_knitting(event)) == journal.events()


@given(knitting_events, surrounding_events)
def test_knitting_is_told_from_what_happens_around_it(knitting: object, around: object) -> None:
    assert is_knitting(knitting)
    assert not is_knitting(around)


class Twice(RuleBasedStateMachine):
    """A journal and a plain list, compared after every step; closing and opening may come anywhere."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / "socks.sqlite"
        self.written: list[Entry] = []
        self.journal = new_journal(self.path)

    @rule(
        batch=st.lists(events, min_size=1, max_size=3),
        when=st.tuples(times, st.none() | times),
        spoken=st.tuples(words, words),
        pair=st.sampled_from(["socks", "gift", "Ölsocken"]),
    )
    def append(self, batch: list, when: tuple, spoken: tuple, pair: str) -> None:
        (at, stream), (heard, said) = when, spoken
        last = self.journal.append(
            batch, after=len(self.written), at_ms=at, stream_ms=stream, heard=heard, said=said, pair=pair
        )
        spoken_of = max(range(len(batch)), key=lambda number: (is_knitting(batch[number]), number))
        for number, event in enumerate(batch):
            beside = (heard, said) if number == spoken_of else (None, None)
            self.written.append(Entry(len(self.written) + 1, pair, at, stream, event, *beside))

        assert len(self.written) == last

    @rule(event=events)
    def append_to_the_pair_worked_last(self, event: object) -> None:
        pair = self.written[-1].pair if self.written else "socks"
        self.journal.append([event], after=len(self.written), at_ms=0)
        self.written.append(Entry(len(self.written) + 1, pair, 0, None, event, None, None))

    @rule(event=events, off=st.sampled_from([-3, -1, 1, 2]))
    def append_with_an_old_number(self, event: object, off: int) -> None:
        try:
            self.journal.append([event], after=len(self.written) + off, at_ms=0)
        except JournalMoved as moved:
            assert {
                "file": str(self.path.resolve()),
                "expected": len(self.written) + off,
                "found": len(self.written),
            } == moved.values
        else:
            raise AssertionError("it was written")

    @rule()
    def restart(self) -> None:
        self.journal.close()
        self.journal = Journal.open(self.path)

    @invariant()
    def holds_what_was_written(self) -> None:
        assert tuple(self.written) == self.journal.entries()
        assert len(self.written) == self.journal.last_seq
        names = [entry.pair for entry in self.written]
        assert sorted(set(names), key=names[::-1].index) == list(self.journal.pairs())
        for name in set(names):
            assert tuple(entry for entry in self.written if entry.pair == name) == self.journal.entries(name)

    def teardown(self) -> None:
        self.journal.close()
        self.folder.cleanup()


TestTwice = Twice.TestCase
TestTwice.settings = settings(max_examples=20, stateful_step_count=15, deadline=None)
