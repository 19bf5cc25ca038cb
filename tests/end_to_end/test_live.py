"""The whole way in real time: she speaks into a microphone, the program answers from a loudspeaker.

What was heard is compared with what was said, and wrong ones are counted; nothing is said twice. What was answered is
read back by another recogniser, which chooses among all the sentences that the program can say.
"""

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.journal import Entry, Journal
from assistant.languages import load
from assistant.rehearsal import script
from assistant.speaking.wording import word
from plans.conversation import Next
from plans.engine import begin, decide, evolve, replay
from plans.engine.places import is_finished
from plans.files import write_wishes
from plans.pattern import Plan
from tests.assistant.sitting import PRACTICE, practice
from tests.benchmarks.spoken import save
from tests.end_to_end.driving import Line, Program, misheard
from tests.end_to_end.reading_back import BySearch, ByWhisper, carrying
from tests.end_to_end.virtual_sound import VirtualSound

pytestmark = pytest.mark.sound


def sentences(plan: Plan) -> Iterator[str]:
    """What is said to every "next" of the pair."""
    language, progress = load(), replay(begin(plan).events)
    yield word(begin(plan).reply, language)
    while not is_finished(plan, progress.now):
        decision = decide(plan, progress, Next())
        yield word(decision.reply, language)
        for event in decision.events:
            progress = evolve(progress, event)


def entries(journal: Path) -> tuple[Entry, ...]:
    with Journal.read(journal) as opened:
        return opened.entries()


def drive(folder: Path, commands: list[str]) -> None:
    """Say every command once, live; then compare what was said, heard, written down, announced and spoken."""
    plan, journal = folder / "plan.toml", folder / "journal.sqlite"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    with VirtualSound() as card, Program(card, folder, str(plan), "--journal", str(journal), "--yes") as program:
        program.wait_for(next(sentences(practice().plan)))
        greeting = len(program.lines) - 1
        answers = [(words, program.say(words)) for words in commands]
        lines = list(program.lines)
        program.recording.stop()
        save(program.recording.samples, folder / "answers.wav")
        kept = entries(journal)
        announced = [entry.said for entry in kept if entry.said is not None]
        heard = [entry.heard for entry in kept if entry.heard is not None]
        missed = [words for words, came in answers if not came]
    wrong_ears = misheard(commands, heard)
    print(f"{len(commands)} commands said, {len(missed)} met with silence, {wrong_ears} of all missed or misheard")
    read, wrong = read_back(program, lines[greeting:])
    assert read >= len(commands) - len(missed)
    assert [line.text for line in lines] == announced
    assert wrong_ears <= 0.15 * len(commands)
    assert not wrong


def read_back(program: Program, lines: list[Line]) -> tuple[int, list[tuple[str, str]]]:
    """How many answers were read, and those that Whisper read otherwise than printed.

    It chooses among all that is said to any "next" of the pair and all that was said in this session. What
    PocketSphinx's other search makes of them is printed beside it.
    """
    possible = {*sentences(practice().plan), *(line.text for line in lines)}
    ends = [line.at_s for line in lines[1:]] + [lines[-1].at_s + 12.0]
    spoken = [
        (line.text, program.between(line.at_s, min(end_s - 0.7, line.at_s + 12.0)))
        for line, end_s in zip(lines, ends, strict=True)
    ]
    for name, reader in (("another search", BySearch(possible)), ("Whisper", ByWhisper(possible))):
        read = ((text, reader.read(samples)) for text, samples in spoken)
        wrong = [(text, words) for text, words in read if carrying(text) != carrying(words)]
        print(f"{len(spoken)} answers read back by {name}, {len(wrong)} otherwise than printed: {wrong}")
    return len(spoken), wrong


def test_a_pair_is_begun_live(tmp_path: Path) -> None:
    drive(tmp_path, list(script(practice().plan))[:14])


@pytest.mark.nightly
def test_a_whole_practice_pair_live(tmp_path: Path) -> None:
    drive(tmp_path, list(script(practice().plan)))


@pytest.mark.nightly
def test_both_heels_at_the_finest_grain_with_a_kill_inside(tmp_path: Path) -> None:
    """Typed up to the heel; then live, group by group, with "undo", "where am I", and kill -9 in each heel."""
    plan, journal = tmp_path / "plan.toml", tmp_path / "journal.sqlite"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    arguments = (str(plan), "--journal", str(journal), "--yes", "--grain", "group")
    _type(arguments, _until_heel())
    with VirtualSound() as card:
        for _ in range(2):
            with Program(card, tmp_path, *arguments) as program:
                program.wait_until_silent(0)
                for words in ("next", "next", "where am i", "undo", "next", "next", "where am i", "next"):
                    program.say(words)
                announced = [line.text for line in program.lines]
            kept = [entry.said for entry in entries(journal) if entry.said is not None]
            assert announced == kept[-len(announced) :]
            _type(arguments, ["next"] * 60)


def _until_heel() -> list[str]:
    commands = list(script(practice().plan))
    return [words for words in commands if words == "next"][:95]


def _type(arguments: tuple[str, ...], commands: list[str]) -> None:
    options = ("--recogniser", "typed", "--from", "-", "--to", "none")
    program = (sys.executable, "-m", "assistant", "knit", *arguments, *options)
    subprocess.run(program, input="\n".join(commands), text=True, check=True, stdout=subprocess.DEVNULL)


def test_the_answers_can_be_exported_as_json_lines(tmp_path: Path) -> None:
    plan, journal = tmp_path / "plan.toml", tmp_path / "journal.sqlite"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    _type((str(plan), "--journal", str(journal)), ["next", "where am i"])
    shown = subprocess.run(
        (sys.executable, "-m", "assistant", "journal", "export", str(journal), "--json"),
        capture_output=True, check=True, text=True,
    )  # fmt: skip

    assert {"advanced", "told"} <= {json.loads(line)["kind"] for line in shown.stdout.splitlines()}
