"""What the engine did live, and what the journal replays, is the same wherever the program was restarted."""

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.journal import Journal
from assistant.journal_checking import check
from assistant.journal_plans import keep, kept_plan
from plans.conversation import (
    AtRound,
    Back,
    Coarser,
    Finer,
    Forward,
    IHave,
    Mark,
    Next,
    No,
    Redo,
    RippedBack,
    Stop,
    Undo,
    Yes,
)
from plans.engine import begin, decide, evolve, replay
from tests.assistant.small_plan import SMALL

numbers = st.integers(0, 4)
commands = st.one_of(
    st.just(Next()),
    st.just(Next()),
    st.sampled_from([Undo(), Redo(), Finer(), Coarser(), Mark(), Yes(), No(), Stop()]),
    st.builds(Back, rounds=numbers),
    st.builds(Forward, rounds=numbers),
    st.builds(AtRound, round=numbers),
    st.builds(RippedBack, stage=st.sampled_from([None, "toe", "leg"]), round=st.none() | numbers),
    st.builds(IHave, stitches=st.integers(0, 8)),
)
restart = "restart"


@settings(max_examples=40, deadline=None)
@given(st.lists(st.one_of(commands, commands, st.just(restart)), max_size=40))
def test_replay_is_what_was_live_and_a_restart_anywhere_changes_nothing(happened: list) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "socks.sqlite"
        journal = Journal.open(path)
        plan_id = keep(journal, SMALL)
        begun = begin(SMALL)
        last = journal.append(begun.events, after=0, at_ms=0)
        live = replay(begun.events)
        for each in happened:
            if each == restart:
                journal.close()
                journal = Journal.open(path)
                assert replay(journal.events()) == live
            else:
                decision = decide(SMALL, live, each)
                last = journal.append(decision.events, after=last, at_ms=0, said=decision.reply.key)
                for event in decision.events:
                    live = evolve(live, event)
        assert replay(journal.events()) == live
        assert kept_plan(journal, plan_id) == SMALL
        journal.close()

        assert check(path) == ()
