"""Teaching the program how she says its commands: asked for one by one, kept, used, forgotten."""

import json
import subprocess
import wave
from pathlib import Path

import numpy as np
import pytest

from assistant.teaching import (
    TEACHING_SAYINGS,
    Lesson,
    TaughtUnwritable,
    Teacher,
    forget_taught,
    keep_taught,
    load_taught,
    taught_file,
)
from models.likeness import FRAMES_A_SECOND
from models.recordings import read_sound
from models.taught import TAKES, Taught
from tests.assistant.running import Machine

VOICE = "en-gb-scotland+f4"
WORDS = ("next", "undo", "again", "where am i", "how many", "how far")


def take(number: int, seconds: float = 0.5) -> np.ndarray:
    """Cepstra of an invented word: takes of one number are alike, of different ones are not."""
    frames = 5 * round(seconds * FRAMES_A_SECOND / 5)
    shape = np.random.default_rng(number).normal(0, 1, (5, 25))
    return np.repeat(shape, frames // 5, axis=0) + np.random.default_rng(frames).normal(0, 0.05, (frames, 25))


def test_each_word_is_asked_for_three_times_and_then_kept() -> None:
    said, kept = [], []
    takes = [take(word) for word in (1, 2) for _ in range(TAKES)]

    class Taker:
        taken = takes[0]

    def utterances():
        for Taker.taken in takes:
            yield object()

    lesson = Teacher(said.append, kept.append).teach(("next", "undo"), utterances(), Taker)  # type: ignore[arg-type]
    assert lesson.question is None
    assert [tuple(each.takes) for each in kept] == [("next",), ("next", "undo")]
    assert [(reply.key, dict(reply.values).get("text"), dict(reply.values).get("left")) for reply in said] == [
        ("teach-begin", None, None),
        ("teach-say", "next", None), ("teach-again", "next", 1), ("teach-again", "next", 0),
        ("teach-say", "undo", None), ("teach-again", "undo", 1), ("teach-again", "undo", 0),
    ]  # fmt: skip


def test_what_is_too_short_or_too_long_is_not_taken() -> None:
    for seconds in (0.1, 3.0):
        lesson, wrong = Lesson(("next",)).given(take(1, seconds))
        assert wrong is not None and wrong.key == "teach-unclear"
        assert lesson == Lesson(("next",))


def test_what_is_more_like_another_word_is_not_taken_and_twice_begins_anew() -> None:
    lesson = Lesson(("next", "undo"))
    for number in (1, 1, 1, 2):
        lesson, wrong = lesson.given(take(number))
        assert wrong is None
    lesson, wrong = lesson.given(take(1))
    assert wrong is not None and wrong.key == "teach-unlike"
    assert len(lesson.taught.takes["undo"]) == 1
    lesson, wrong = lesson.given(take(1))
    assert wrong is not None and wrong.key == "teach-anew"
    assert lesson.wanted == "undo" and "undo" not in lesson.taught.takes
    assert lesson.whole.takes.keys() == {"next"}


def test_a_word_taught_anew_takes_the_place_of_the_old_one_and_others_stay(tmp_path: Path) -> None:
    file = taught_file(tmp_path, "en")
    keep_taught(file, Taught({"next": (take(1),), "undo": (take(2),)}))
    keep_taught(file, Taught({"next": (take(3),)}))
    taught, problem = load_taught(file)
    assert problem is None and taught is not None
    assert np.allclose(taught.takes["next"][0], take(3), atol=1e-2)
    assert np.allclose(taught.takes["undo"][0], take(2), atol=1e-2)


def test_a_damaged_file_is_told_and_left_alone(tmp_path: Path) -> None:
    file = tmp_path / "en.npz"
    file.write_bytes(b"damaged")
    taught, problem = load_taught(file)
    assert taught is None and problem is not None and problem.key == "taught-unreadable"
    assert set(dict(problem.values)) == TEACHING_SAYINGS[problem.key]
    assert file.read_bytes() == b"damaged"


def test_where_it_cannot_be_kept_that_is_told(tmp_path: Path) -> None:
    (tmp_path / "taught").write_text("a file where the folder should be")
    with pytest.raises(TaughtUnwritable) as refused:
        keep_taught(taught_file(tmp_path, "en"), Taught({"next": (take(1),)}))
    assert set(refused.value.values) == TEACHING_SAYINGS[refused.value.key]


def test_forgetting(tmp_path: Path) -> None:
    file = taught_file(tmp_path, "en")
    assert forget_taught(file).key == "teach-none"
    keep_taught(file, Taught({"next": (take(1),)}))
    assert forget_taught(file).key == "teach-forgotten"
    assert load_taught(file) == (None, None)


def recording(file: Path, texts: list[str], wpm: list[int]) -> Path:
    """The texts said one after the other, with pauses in which a room is heard."""
    room, pieces = np.random.default_rng(1), []
    for number, text in enumerate(texts):
        one = file.with_name(f"{number}.wav")
        rate = str(wpm[number % len(wpm)])
        subprocess.run(("espeak-ng", "-v", VOICE, "-s", rate, "-w", str(one), text), check=True)
        pieces += [np.rint(room.normal(0, 15, 20_000)).astype(np.int16), read_sound(one)]
    pieces.append(np.rint(room.normal(0, 15, 20_000)).astype(np.int16))
    with wave.open(str(file), "wb") as out:
        out.setparams((1, 2, 16_000, 0, "NONE", ""))
        out.writeframes(np.concatenate(pieces).tobytes())
    return file


def commands(machine: Machine, file: Path) -> list[str | None]:
    """What would be acted on, utterance by utterance."""
    ran = machine.run("listen", file, "--json")
    assert ran.code == 0, ran
    lines = [json.loads(line) for line in ran.lines]
    return [line["words"] if line["outcome"] == "act" else None for line in lines]


def test_what_she_taught_is_heard_better_until_it_is_forgotten(tmp_path: Path) -> None:
    machine = Machine(tmp_path / "home")
    teaching = recording(tmp_path / "teaching.wav", [words for words in WORDS for _ in range(TAKES)], [140, 150, 165])
    saying = recording(tmp_path / "saying.wav", list(WORDS), [145, 158])
    before = commands(machine, saying)

    taught = machine.run("listen", "--learn", teaching)
    assert taught.code == 0, taught
    assert taught.out.count("Once more") == 2 * len(WORDS)
    assert "I know six commands by your voice now." in taught.out

    after = commands(machine, saying)
    print(f"{before} by the model alone, {after} with three takes of each")
    assert after == list(WORDS)
    assert sum(words is not None for words in before) < len(WORDS)

    assert machine.run("listen", "--forget").code == 0
    assert commands(machine, saying) == before


def test_a_recording_that_ends_early_keeps_the_words_that_are_whole(tmp_path: Path) -> None:
    machine = Machine(tmp_path / "home")
    teaching = recording(tmp_path / "teaching.wav", ["next"] * TAKES + ["undo"], [140, 150, 165])
    ran = machine.run("listen", "--learn", teaching)
    assert ran.code == 0 and "I know one command by your voice now." in ran.out
    nothing = recording(tmp_path / "nothing.wav", ["next"], [150])
    ran = machine.run("listen", "--learn", nothing)
    assert ran.code == 0 and "Nothing was learnt" in ran.out


def test_what_was_damaged_is_told_and_listening_goes_on(tmp_path: Path) -> None:
    machine = Machine(tmp_path / "home")
    file = taught_file(machine.home / "data" / "roundcaller", "en")
    file.parent.mkdir(parents=True)
    file.write_bytes(b"damaged")
    ran = machine.run("listen", recording(tmp_path / "one.wav", ["next"], [150]))
    assert ran.code == 0 and "cannot be read" in ran.complaint and str(file) in ran.complaint


@pytest.mark.parametrize("arguments", [("--learn", "--forget"), ("--learn", "a.wav", "b.wav"), ()])
def test_what_contradicts_itself_is_refused(arguments: tuple[str, ...], tmp_path: Path) -> None:
    ran = Machine(tmp_path).run("listen", *arguments)
    assert ran.code == 2 and ran.complaint
