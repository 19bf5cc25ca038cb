"""Spoken while the program speaks: over headphones, and against a loudspeaker in the room."""

import os
import pty
import subprocess
import time
from pathlib import Path

import pytest

from plans.files import write_wishes
from tests.assistant.sitting import PRACTICE, practice
from tests.end_to_end.driving import Program, speak
from tests.end_to_end.test_live import sentences
from tests.end_to_end.virtual_sound import VirtualSound

pytestmark = pytest.mark.sound

SPEAKING_S = 0.5
"""So far into an answer she interrupts."""
QUESTIONS = ("where am i", "how far to go")
"""Their answers are long."""


def program(card: VirtualSound, folder: Path, while_speaking: str, terminal: int = subprocess.DEVNULL) -> Program:
    plan = folder / "plan.toml"
    plan.write_text(write_wishes(PRACTICE), encoding="utf-8")
    journal = ("--journal", str(folder / "journal.sqlite"))
    return Program(card, folder, str(plan), *journal, "--yes", "--while-speaking", while_speaking, terminal=terminal)


def ask(running: Program, words: str) -> bool:
    """Ask, and wait until the answer is being spoken; whether there is one."""
    before = len(running.lines)
    running.card.say_into_microphone(speak(words, running.folder))
    return running.wait_until_speaking(before)


def interrupt(running: Program, words: str) -> tuple[list[str], float]:
    """Say words into an answer; the lines that come, and how long the voice still speaks from the end of the words."""
    time.sleep(SPEAKING_S)
    before = len(running.lines)
    running.card.say_into_microphone(speak(words, running.folder))
    ended_s = time.monotonic()
    silent_s = running.wait_for_pause()
    running.wait_until_silent(before - 1)
    return [line.text for line in running.lines[before:]], silent_s - ended_s


def test_over_headphones_a_command_cuts_the_answer_short(tmp_path: Path) -> None:
    with VirtualSound() as card, program(card, tmp_path, "headphones") as running:
        running.wait_for(next(sentences(practice().plan)))
        assert ask(running, "how far to go")
        answers, _ = interrupt(running, "next")
        assert ["Second sock, front: trap the tail under the yarn."] == answers

        assert ask(running, "where am i")
        answers, spoke_on_s = interrupt(running, "stop")
        assert [] == answers
        assert spoke_on_s < 3.0, "the whole answer takes some ten seconds"


@pytest.mark.parametrize("by", ["key", pytest.param("word", marks=pytest.mark.nightly)])
def test_a_greeting_is_cut_short_and_ends_with_what_is_to_be_done(by: str, tmp_path: Path) -> None:
    outside, inside = pty.openpty()
    while_speaking = "headphones" if by == "word" else "wait"
    try:
        with VirtualSound() as card, program(card, tmp_path, while_speaking, inside) as running:
            assert running.wait_until_speaking(2, within_s=60.0), "the third sentence is a long one"
            if by == "word":
                running.card.say_into_microphone(speak("next", tmp_path))
            else:
                os.write(outside, b" ")
            first_call = next(sentences(practice().plan))
            running.wait_for(first_call)
            greeting = list(running.lines)
    finally:
        os.close(outside)
        os.close(inside)

    assert first_call == greeting[-1].text, "it came too soon to mean that this was done"
    assert len(greeting) == 7
    assert greeting[-1].at_s - greeting[2].at_s < 10.0, "all of it takes some thirty seconds"


@pytest.mark.nightly
def test_a_loudspeaker_in_the_room_is_not_taken_for_her(tmp_path: Path) -> None:
    with VirtualSound() as card, card.loudspeaker_in_the_room(-6.0), program(card, tmp_path, "loudspeaker") as running:
        running.wait_for(next(sentences(practice().plan)))
        said = [words for words in QUESTIONS if ask(running, words)]
        before = len(running.lines)
        running.wait_until_silent(before - 1)
        told = [line.text for line in running.lines]

        assert said
        assert before == len(told)
        assert not any("trap the tail" in text for text in told[-len(said) :]), "nothing moved"


@pytest.mark.nightly
@pytest.mark.parametrize("gain_db", [-6.0, -12.0])
def test_how_often_a_command_gets_through_against_a_loudspeaker(tmp_path: Path, gain_db: float) -> None:
    words = ("next", "again") * 10
    with VirtualSound() as card, card.loudspeaker_in_the_room(gain_db), program(card, tmp_path, "loudspeaker") as her:
        her.wait_for(next(sentences(practice().plan)))
        came = []
        for number, word in enumerate(words):
            if ask(her, QUESTIONS[number % 2]):
                came.append((word, interrupt(her, word)[0]))
            her.wait_until_silent(len(her.lines) - 1)
    through = sum(bool(answers) for _, answers in came)
    print(f"loudspeaker at {gain_db} dB: {through} of {len(came)} commands said over the voice got through")
    assert len(came) >= 10
    assert through >= len(came) // 4
