"""Undo and redo against two plain lists, with other commands, restarts, and eyes on what is said."""

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from plans.conversation import (
    Advanced,
    Command,
    Mark,
    Next,
    PlaceSet,
    Redo,
    Replanned,
    Reply,
    Standing,
    Stop,
    Undo,
    Yes,
)  # fmt: skip
from plans.engine import ask_next, replay
from plans.engine.calling import call
from plans.engine.courses import course
from plans.engine.places import place, position
from tests.plans.knitter import Knitter
from tests.strategies import Pair, other_moves, pairs, questions


class Undoing(RuleBasedStateMachine):
    """The engine beside a list of what is behind and a list of what was taken back."""

    @initialize(pair=pairs(), steps=st.integers(0, 70))
    def begin(self, pair: Pair, steps: int) -> None:
        """Some way into a pair."""
        self.knitter = Knitter(pair.plan)
        self.behind: list[Standing] = []
        self.taken_back: list[Standing] = []
        self.marks = 0
        for _ in range(steps):
            self.go_on()

    @rule()
    def go_on(self) -> None:
        """Next moves on and says the step it comes to."""
        before = self.knitter.progress.now
        finished = self.knitter.finished
        said = self.knitter.say(Next())
        if finished:
            assert said.key == "finished-already"
            assert before == self.knitter.progress.now
            return
        self.behind.append(before)
        self.taken_back.clear()
        assert said == self._called()
        assert self._counts_said(said) <= self._counts_on_the_needle()

    @rule(command=other_moves())
    def command(self, command: Command) -> None:
        """Anything else that may move: only places set and steps lengthen the past."""
        before, seen = self.knitter.progress.now, len(self.knitter.events)
        said = self.knitter.say(command)
        happened = self.knitter.events[seen:]
        moved = [event for event in happened if isinstance(event, Advanced | PlaceSet | Replanned)]
        if moved:
            self.behind.append(before)
            self.taken_back.clear()
        assert len(moved) <= 1
        assert bool(moved) or before == self.knitter.progress.now
        self.marks += isinstance(command, Mark)
        if dict(said.values).get("call") is not None:
            assert dict(said.values)["call"] == self._called()

    @rule(command=questions())
    def ask(self, command: Command) -> None:
        """A question moves nothing."""
        before = self.knitter.progress
        self.knitter.say(command)
        after = self.knitter.progress
        assert (before.now, before.past, before.undone) == (after.now, after.past, after.undone)

    @rule()
    def next_too_early(self) -> None:
        """Asked back; a yes is a next."""
        if not self.knitter.finished:
            self.knitter.hears(ask_next(self.knitter.plan, self.knitter.progress))
            self.behind.append(self.knitter.progress.now)
            self.taken_back.clear()
            assert self.knitter.say(Yes()) == self._called()

    @rule()
    def undo(self) -> None:
        """The last place comes back, and its call is said."""
        before = self.knitter.progress.now
        said = self.knitter.say(Undo())
        if not self.behind:
            assert said.key == "nothing-to-undo"
            return
        expected = self.behind.pop()
        self.taken_back.append(before)
        assert self.knitter.progress.now == expected
        assert said == Reply.of("undone", call=self._called())

    @rule()
    def redo(self) -> None:
        """What was taken back comes again."""
        before = self.knitter.progress.now
        said = self.knitter.say(Redo())
        if not self.taken_back:
            assert said.key == "nothing-to-redo"
            return
        self.behind.append(before)
        assert self.knitter.progress.now == self.taken_back.pop()
        assert said == Reply.of("redone", call=self._called())

    @precondition(lambda self: bool(self.behind))
    @rule()
    def undo_then_redo(self) -> None:
        """Both together change nothing."""
        question = self.knitter.progress.question
        before = self.knitter.progress.model_copy(update={"question": None})
        self.knitter.say(Undo())
        self.knitter.say(Redo())
        assert before == self.knitter.progress, question

    @rule()
    def restart(self) -> None:
        """Only the events survive."""
        live = self.knitter.progress
        self.knitter.progress = replay(self.knitter.events)
        assert live == self.knitter.progress

    @rule()
    def stop(self) -> None:
        """Stopping never moves."""
        before = self.knitter.progress.now
        self.knitter.say(Stop())
        assert before == self.knitter.progress.now

    @invariant()
    def the_lists_agree(self) -> None:
        """The past and what was taken back are the two lists."""
        if hasattr(self, "knitter"):
            progress = self.knitter.progress
            assert (tuple(self.behind), tuple(self.taken_back)) == (progress.past, progress.undone)
            assert self.marks == len(progress.marks)

    @invariant()
    def places_are_in_their_own_rows(self) -> None:
        """Each sock stands at a step of its own."""
        if hasattr(self, "knitter"):
            prepared, now = course(self.knitter.plan), self.knitter.progress.now
            for sock, own in ((1, now.first), (2, now.second)):
                at = position(prepared, own)
                assert own == place(prepared, at)
                assert at == prepared.end or prepared.row(at).sock == sock

    def _called(self) -> Reply:
        return call(self.knitter.plan, self.knitter.progress.now, self.knitter.progress.grain)

    def _counts_said(self, said: Reply) -> set[int]:
        names = ("count", "front", "back")
        made = [part for part in said.walk() if part.key.startswith("makes")]
        return {int(str(value)) for part in made for name, value in part.values if name in names}

    def _counts_on_the_needle(self) -> set[int]:
        """Counts that the plan states for rows from here to the end of the round, or within this row."""
        prepared = course(self.knitter.plan)
        at = self.knitter.at
        row = prepared.row(at)
        round_end = prepared.rounds[prepared.round_of[row.index]].end
        ahead = {each.stitches_after for each in self.knitter.plan.rows[row.index : round_end]}
        inside = prepared.counts[at : prepared.starts[row.index + 1] + 1]
        return ahead | {count for counts in inside for count in counts}


TestUndoing = Undoing.TestCase
TestUndoing.settings = settings(max_examples=60, stateful_step_count=50)
