import csv
import json
import math
import wave
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from models.evaluating import main
from models.phrase_book import PhraseBook, read_entries, read_phrases
from models.recognising import Heard
from models.recordings import Recording, SetBroken, plain, read_set, read_sound
from models.scoring import Limits, Marker, Trial, failures, percentile, score, wilson_low
from tests.models import rooms

PHRASES = {
    "language": "en",
    "commands": [
        {"name": "next", "phrases": ["next", "go on"], "moves": True},
        {"name": "back", "phrases": ["back {number} rounds"], "moves": True},
        {"name": "again", "phrases": ["say that again"]},
    ],
    "slots": {"number": ["one", "twenty", "twenty one", "one hundred one", "one hundred and one"]},
    "values": {"number": {"one hundred one": 101, "one hundred and one": 101}},
}
KEYS = {
    "recogniser", "n", "right", "wrong", "asked", "ignored", "accuracy", "wilson_low", "talk_hours", "false_acts",
    "false_moves", "latency_ms_p50", "latency_ms_p95", "real_time_factor", "rss_mb", "per_speaker",
}  # fmt: skip


@pytest.fixture
def book(tmp_path) -> PhraseBook:
    return read_phrases(_written(tmp_path))


def _written(folder: Path) -> Path:
    path = folder / "phrases.json"
    path.write_text(json.dumps(PHRASES))
    return path


def _trial(transcript: str, *heard: tuple[str, float], kind="phrase", seconds=1.0, speaker="a") -> Trial:
    recording = Recording(Path("x.wav"), transcript, speaker, kind)
    return Trial(recording, tuple(Heard(words, sure, 0, 1) for words, sure in heard), seconds)


@pytest.mark.parametrize(
    ("text", "meaning"),
    [
        ("next", ("next", ())),
        ("go on", ("next", ())),
        ("back twenty one rounds", ("back", (("number", "twenty one"),))),
        ("back one hundred and one rounds", ("back", (("number", 101),))),
        ("twenty", ("number", (("number", "twenty"),))),
        ("back twenty two rounds", None),
        ("next next", None),
        ("", None),
    ],
)
def test_a_text_means_a_command_and_what_stands_in_its_slots(book, text, meaning):
    assert book.meaning(text) == meaning


@pytest.mark.parametrize(
    ("trial", "outcome"),
    [
        (_trial("next", ("next", 0.9)), "right"),
        (_trial("next", ("go on", 0.9)), "right"),
        (_trial("next", ("next", 0.9), ("[unk]", 1.0)), "right"),
        (_trial("back one hundred one rounds", ("back one hundred and one rounds", 0.9)), "right"),
        (_trial("next", ("next", 0.9), ("next", 0.9)), "wrong"),
        (_trial("next", ("say that again", 0.9)), "wrong"),
        (_trial("next", ("next", 0.5)), "asked"),
        (_trial("next", ("say that again", 0.5)), "asked"),
        (_trial("next", ("next", 0.3)), "ignored"),
        (_trial("next", ("[unk]", 1.0)), "ignored"),
        (_trial("next"), "ignored"),
    ],
)
def test_outcomes(book, trial, outcome):
    assert Marker(book, Limits(act=0.6, ask=0.4)).outcome(trial) == outcome


def test_the_figures_add_up(book):
    trials = [
        _trial("next", ("next", 0.9)),
        _trial("next", ("next", 0.5), speaker="b"),
        _trial("back one rounds", ("back twenty rounds", 0.8)),
        _trial("say that again"),
        _trial("the next bus", ("next", 0.9), kind="talk", seconds=1800.0),
        _trial("as I said again", ("say that again", 0.9), kind="talk", seconds=900.0),
        _trial("twenty people", ("twenty", 0.9), kind="talk", seconds=900.0),
        _trial("sheila", ("next", 0.2), kind="word", seconds=0.0),
    ]
    found = score(trials, Marker(book), book.moving)

    assert (found["n"], found["right"], found["wrong"], found["asked"], found["ignored"]) == (4, 1, 1, 1, 1)
    assert (found["accuracy"], found["talk_hours"]) == (0.25, 1.0)
    assert (found["false_acts"], found["false_moves"]) == (2, 1)
    assert {name: each["n"] for name, each in found["per_speaker"].items()} == {"a": 3, "b": 1}


def test_every_failure_is_a_line(book):
    trials = [_trial("next", ("next", 0.9)), _trial("next"), _trial("next bus", ("next", 0.9), kind="talk")]
    lines = failures(trials, Marker(book), lambda trial: trial.recording.speaker)

    assert lines == ["ignored: a: 'next' heard as nothing", "acted on: a: 'next bus' heard as next 0.90"]


@pytest.mark.parametrize(
    ("successes", "trials", "expected"),
    [(81, 263, 0.255), (15, 148, 0.0624), (0, 10, 0.0), (10, 10, 0.7225)],
)
def test_the_lower_end_of_the_interval_is_as_published(successes, trials, expected):
    """The first two: R. G. Newcombe, Statistics in Medicine 17 (1998), table I, method 3; the others by hand."""
    assert math.isclose(wilson_low(successes, trials), expected, abs_tol=0.0005)


@given(some.lists(some.floats(0, 1e4), min_size=1, max_size=30), some.sampled_from((50, 95, 100)))
def test_a_percentile_is_a_value_that_enough_do_not_exceed(values, percent):
    trial = Trial(Recording(Path("x"), "", "a", "word"), (), 1.0, tuple(values))
    found = percentile([trial], percent)

    assert sum(round(value, 1) <= found for value in values) >= len(values) * percent / 100
    assert found in {round(value, 1) for value in values}


def test_nothing_has_no_percentile():
    assert percentile([], 50) is None


def test_words_are_plain():
    assert plain(" Don't -- STOP, it's twenty-one! ") == "don't stop it's twenty one"


def _wav(path, sound, rate_hz=16_000, channels=1):
    with wave.open(str(path), "wb") as file:
        file.setnchannels(channels)
        file.setsampwidth(2)
        file.setframerate(rate_hz)
        file.writeframes(np.repeat(sound, channels).astype(np.int16).tobytes())


@pytest.mark.parametrize(("rate_hz", "channels"), [(8_000, 1), (16_000, 1), (44_100, 2), (48_000, 1)])
def test_wav_of_any_rate_becomes_16_khz_mono(tmp_path, rate_hz, channels):
    tone = 8_000 * np.sin(2 * np.pi * 440 * np.arange(rate_hz) / rate_hz)
    _wav(tmp_path / "a.wav", tone, rate_hz, channels)
    sound = read_sound(tmp_path / "a.wav")

    assert len(sound) == 16_000
    assert abs(np.sqrt(np.mean(np.square(sound[2_000:-2_000].astype(float)))) - 8_000 / math.sqrt(2)) < 80


def test_a_set_and_its_mistakes(tmp_path):
    path = tmp_path / "set.csv"
    path.write_text("path,transcript,speaker,kind\na.wav,Next!,ann,word\n")
    assert read_set(path) == (Recording(tmp_path / "a.wav", "next", "ann", "word"),)

    path.write_text("path,transcript,speaker,kind\na.wav,next,ann,song\n")
    with pytest.raises(SetBroken, match="line 2 has the kind"):
        read_set(path)
    path.write_text("path,speaker,kind\n")
    with pytest.raises(SetBroken, match="no column transcript"):
        read_set(path)
    with pytest.raises(SetBroken, match="cannot be read"):
        read_sound(tmp_path / "a.wav")


def _made_set(folder):
    lines = [("path", "transcript", "speaker", "kind")]
    said = [("next", "word"), ("say that again", "phrase"), ("the cat sat on the mat all day", "talk")]
    for number, (words, kind) in enumerate(said):
        _wav(folder / f"{number}.wav", rooms.as_int16(rooms.at_level(rooms.spoken(words, "en-us+m5"), -24)))
        lines.append((f"{number}.wav", words, "espeak", kind))
    with (folder / "set.csv").open("w", newline="") as file:
        csv.writer(file).writerows(lines)
    return folder / "set.csv"


def test_the_command_line_prints_an_object_for_each_recogniser(tmp_path, capfd):
    arguments = ["--set", str(_made_set(tmp_path)), "--phrases", str(_written(tmp_path)), "--json"]

    assert main(arguments) == 0
    found = json.loads(capfd.readouterr().out)
    assert [each["recogniser"] for each in found] == ["vosk", "pocketsphinx"]
    for each in found:
        assert each.keys() >= KEYS
        assert (each["n"], each["right"], each["false_acts"]) == (2, 2, 0)


def test_a_vocabulary_of_entries_takes_the_place_of_the_phrases(tmp_path, capfd):
    entries = tmp_path / "entries.txt"
    entries.write_text("next\n\nSay that again\nover there\n")
    arguments = ["--set", str(_made_set(tmp_path)), "--phrases", str(_written(tmp_path)), "--json"]

    assert read_entries(entries).meaning("say that again") == ("say that again", ())
    assert main([*arguments, "--vocabulary", str(entries)]) == 0
    assert json.loads(capfd.readouterr().out)[0]["right"] == 2


@pytest.mark.parametrize("lacking", ["set", "phrases"])
def test_what_cannot_be_read_is_one_sentence_and_exit_code_2(tmp_path, capsys, lacking):
    paths = {"set": _made_set(tmp_path), "phrases": _written(tmp_path), lacking: tmp_path / "nowhere"}

    assert main(["--set", str(paths["set"]), "--phrases", str(paths["phrases"])]) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_a_damaged_recording_is_one_sentence_and_exit_code_2(tmp_path, capsys):
    made = _made_set(tmp_path)
    (tmp_path / "1.wav").write_bytes(b"RIFF and no more")

    assert main(["--set", str(made), "--phrases", str(_written(tmp_path))]) == 2
    assert "1.wav: cannot be read" in capsys.readouterr().err


def test_a_model_that_is_missing_is_one_sentence_and_exit_code_1(tmp_path, capsys):
    arguments = ["--set", str(_made_set(tmp_path)), "--phrases", str(_written(tmp_path))]

    assert main([*arguments, "--vosk", str(tmp_path / "model")]) == 1
    assert "model-missing" in capsys.readouterr().err
