"""The demonstration's script takes the invented pair from cast-on to bind-off, and touches what can be said."""

from pathlib import Path

import numpy as np
import pytest

from assistant.rehearsal import INVENTED, PAUSE_S, recording, script
from plans.engine import begin, decide, evolve, replay
from plans.engine.places import is_finished
from plans.making import Made, make_plan
from plans.pattern import Plan, StageName
from tests.assistant.sitting import sitting_down
from tests.fakes import ToneVoice
from tests.languages_under_test import ENGLISH


@pytest.fixture(scope="module")
def plan() -> Plan:
    made = make_plan(INVENTED)
    assert isinstance(made, Made)
    return made.plan


def test_the_invented_pair_has_a_size_of_its_own_and_every_stage(plan: Plan) -> None:
    assert 24 != plan.around
    stages = {stage.name for stage in plan.stages}
    needed = {"cast-on", "toe", "foot", "gusset", "heel-turn", "heel-flap", "leg", "cuff", "bind-off"}
    assert {StageName(name) for name in needed} <= stages


def test_every_word_of_the_script_is_a_command(plan: Plan) -> None:
    assert [] == [words for words in set(script(plan)) if ENGLISH.phrases.match(words) is None]


def test_the_script_is_the_same_every_time(plan: Plan) -> None:
    assert tuple(script(plan)) == tuple(script(plan))


def test_the_script_asks_undoes_and_goes_on_to_the_end(plan: Plan, tmp_path: Path) -> None:
    words = tuple(script(plan))
    with sitting_down(tmp_path / "j.sqlite", made=Made(plan=plan)) as table:
        answers = [table.hear(said) for said in words]

        assert all(len(lines) == 1 for lines in answers)
        assert is_finished(plan, table.session.sitting.progress.now)
    assert ["That was the last of it: both socks are done."] == answers[-1]
    names = {match.name for said in words if (match := ENGLISH.phrases.match(said)) is not None}
    assert {"where_am_i", "how_many", "undo", "redo", "how_far", "again", "what_next", "next"} == names


def test_only_next_moves_the_pair_but_for_undo_and_redo(plan: Plan) -> None:
    progress = replay(begin(plan).events)
    for words in script(plan):
        match = ENGLISH.phrases.match(words)
        assert match is not None
        if match.name == "next":
            from plans.conversation import Next

            for event in decide(plan, progress, Next()).events:
                progress = evolve(progress, event)

    assert is_finished(plan, progress.now)


def test_each_command_stands_alone_between_pauses() -> None:
    """Sound, then silence of the pause's length, and silence at both ends."""
    sound = recording(("next", "undo", "next"), ToneVoice())
    pause = int(PAUSE_S * sound.rate_hz)
    runs = _silences(sound.samples, sound.rate_hz // 10)

    assert 4 == len(runs)
    assert all(length >= pause for length in runs)


def _silences(samples: np.ndarray, least: int) -> list[int]:
    """Lengths of the stretches without sound, of so many samples or more."""
    edges = np.flatnonzero(np.diff(np.concatenate(([1], (samples == 0).astype(int) == 0, [1])).astype(int)))
    lengths = np.diff(edges.reshape(-1, 2), axis=1).ravel() if len(edges) % 2 == 0 else np.array([])
    return [int(length) for length in lengths if length >= least]


def test_each_word_is_rendered_once() -> None:
    voice = ToneVoice()
    recording(("next", "undo", "next", "next"), voice)

    assert ["next", "undo"] == voice.texts
