"""Another network is asked where a recogniser is unsure, and its answer weighed; here with the real one on sound."""

import json
import shutil
import subprocess
import wave
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from assistant.languages import load
from models.catalogue import catalogue, find
from models.errors import ModelBroken, SecondOpinionMissing
from models.evaluating import main
from models.fitting import examples
from models.following import NOTHING_KNOWN, Following
from models.keeping import model_path
from models.phrase_book import PhraseBook
from models.pocketsphinx_recogniser import PocketSphinxRecogniser
from models.recognising import UNKNOWN_WORD, Alternative
from models.recordings import Recording, read_sound
from models.second_opinion import MOST_TEXTS, SecondOpinion, Trust, seconds_needed
from models.whisper_scoring import MODEL, NEEDED, Whisper, load_whisper
from tests.fakes import StillTime, TextScorer
from tests.models import hearing

NOWHERE = Path("/nowhere")


@pytest.fixture(scope="module")
def whisper():
    return load_whisper(NOWHERE)


@pytest.fixture(scope="module")
def spoken(tmp_path_factory):
    """Sound of a text in one of flite's voices."""
    folder = tmp_path_factory.mktemp("spoken")

    def speak(words, voice="rms"):
        file = folder / f"{voice}-{words}.wav"
        subprocess.run(("flite", "-voice", voice, "-t", words, "-o", str(file)), check=True)
        silence = np.zeros(4_800, np.int16)
        return np.concatenate((silence, read_sound(file), silence))

    return speak


# --- the network ---------------------------------------------------------------------------------------------------

SAID = (
    "next", "undo that", "where am i", "i have thirty three stitches", "back two rounds", "take a rest",
    "the foot is eighteen centimetres", "i've got a hundred and five", "i am at round thirteen",
)  # fmt: skip


@pytest.mark.parametrize("words", SAID)
def test_of_all_texts_it_finds_likeliest_what_is_said(whisper, spoken, words):
    freely, found = whisper.encode(spoken(words)).scored(SAID)

    scores = dict(zip(SAID, found, strict=True))
    assert max(scores, key=lambda text: scores[text].score) == words
    assert scores[words].score > freely - 4.0
    assert scores[words].score <= 0.0 and scores[words].a_piece <= 0.0


def test_talk_is_far_likelier_as_what_it_would_write_down_than_as_any_command(whisper, spoken):
    freely, found = whisper.encode(spoken("the next train leaves from the other platform")).scored(SAID)

    assert max(each.score for each in found) < freely - 10.0


def test_it_writes_down_what_is_said(whisper, spoken):
    assert whisper.encode(spoken("next")).words == "next"
    assert whisper.encode(spoken("i have thirty three stitches")).words == "i have thirty three stitches"


def test_nothing_said_and_no_texts_is_no_error(whisper):
    freely, found = whisper.encode(np.zeros(0, np.int16)).scored([])

    assert freely <= 0.0 and found == ()


def test_what_is_longer_than_its_window_is_cut_off(whisper, spoken):
    said = spoken("next")
    long = np.concatenate((said, np.zeros(20 * 16_000, np.int16)))

    assert whisper.encode(long).words == whisper.encode(said).words


@pytest.mark.parametrize("lacking", NEEDED)
def test_a_model_without_one_of_its_files_is_broken(tmp_path, lacking):
    for file in NEEDED:
        if file != lacking:
            (tmp_path / file).write_bytes(b"")
    with pytest.raises(ModelBroken) as broken:
        Whisper(tmp_path)

    assert broken.value.values["what"] == lacking


@pytest.mark.parametrize("damaged", ["model.bin", "tokenizer.json"])
def test_a_model_that_cannot_be_loaded_is_broken(tmp_path, damaged):
    shutil.copytree(model_path(MODEL, NOWHERE), tmp_path, dirs_exist_ok=True)
    (tmp_path / damaged).write_bytes(b"{}")
    with pytest.raises(ModelBroken):
        Whisper(tmp_path)


def test_a_model_that_is_not_here_is_told_with_its_cure():
    elsewhere = {**catalogue(), MODEL: replace(find(MODEL), package="no_such_package")}
    with pytest.raises(SecondOpinionMissing) as missing:
        load_whisper(NOWHERE, elsewhere)

    assert missing.value.values == {"what": MODEL, "cure": "pip install --force-reinstall no_such_package"}


# --- weighing ------------------------------------------------------------------------------------------------------


def anything(_):
    return True


def test_it_is_asked_only_between_chance_and_sure():
    opinion = SecondOpinion(TextScorer("next"), Trust(unsure=0.1, sure=0.9))

    for confidence, wanted in ((0.05, False), (0.1, True), (0.5, True), (0.9, False)):
        assert opinion.is_wanted(Alternative("next", confidence)) is wanted


def test_where_both_are_of_one_mind_it_is_surer_and_where_not_less_sure():
    sound, first = np.zeros(16_000, np.int16), Alternative("next", 0.5)
    agreed = SecondOpinion(TextScorer("next")).on(sound, first, (), anything)
    other = SecondOpinion(TextScorer("the weather")).on(sound, first, (), lambda text: text == "next")

    assert agreed.words == "next" and agreed.readings[0].confidence > 0.6
    assert other.readings == (Alternative(UNKNOWN_WORD, other.readings[0].confidence),)


def test_what_it_hears_itself_counts_where_it_may_be_said():
    sound, first = np.zeros(16_000, np.int16), Alternative("next", 0.5)
    opinion = SecondOpinion(TextScorer("undo")).on(sound, first, (), anything)

    assert opinion.words == "undo"
    assert [each.words for each in opinion.readings] == ["undo", "next"]
    assert sum(each.confidence for each in opinion.readings) <= 1.0


def test_it_is_asked_about_few_texts_numbers_that_sound_alike_among_them():
    scorer = TextScorer("nothing of the kind")
    others = [f"i have {number}" for number in ("one", "two", "three", "four", "five", "six", "seven")]
    SecondOpinion(scorer).on(np.zeros(0, np.int16), Alternative("i have thirty", 0.5), others, anything)

    (asked,) = scorer.asked
    assert len(asked) == MOST_TEXTS
    assert asked[0] == "i have thirty" and "i have thirteen" in asked


def test_how_long_it_takes_is_measured_once_the_library_is_warm():
    time = StillTime()
    scorer = TextScorer("next", takes=(3.0, 0.25), time=time)

    assert seconds_needed(scorer, time) == 0.25


# --- within a recogniser -------------------------------------------------------------------------------------------


class Guessing(Following):
    """A recogniser that hears the same in everything, no surer than it is told."""

    name = "guessing"

    def __init__(self, guess):
        self.guess = guess
        super().__init__()

    def _take_up(self, expected):
        pass

    def _feed(self, samples):
        pass

    def _begin_reading(self):
        pass

    def _so_far(self):
        return self.guess

    def _to_end(self):
        return (self.guess,)

    def _guess(self):
        return self.guess

    def _drop(self):
        pass


def heard(recogniser, sound):
    recogniser.expect(load().vocabulary())
    silence = np.zeros(16_000, np.int16)
    return hearing.heard(recogniser, hearing.marked(np.concatenate((silence[:8_000], sound, silence))))


@pytest.mark.parametrize(
    ("said", "guess", "meant"),
    [
        ("next", "next", "next"),
        ("how far", "next", "how far"),
        ("i have thirteen stitches", "i have thirty stitches", "i have thirteen stitches"),
        ("the kettle is on the stove", "take a rest", UNKNOWN_WORD),
        ("what next week will bring", "next", UNKNOWN_WORD),
    ],
)
def test_an_unsure_recogniser_is_set_right(whisper, spoken, said, guess, meant):
    recogniser = Guessing(Alternative(guess, 0.5))
    recogniser.second = SecondOpinion(whisper)
    (only,) = heard(recogniser, spoken(said))

    assert only.words == meant
    assert meant == UNKNOWN_WORD or only.confidence >= 0.6


@pytest.mark.parametrize("guess", [Alternative("next", 0.99), Alternative("next", 0.001), NOTHING_KNOWN])
def test_a_recogniser_that_is_sure_is_left_alone(spoken, guess):
    recogniser = Guessing(guess)
    scorer = TextScorer("undo")
    recogniser.second = SecondOpinion(scorer)
    (only,) = heard(recogniser, spoken("next"))

    assert (only.words, only.confidence) == (guess.words, guess.confidence)
    assert scorer.asked == []


def test_each_pause_is_asked_about_once(spoken):
    recogniser = Guessing(Alternative("next", 0.5))
    scorer = TextScorer("the weather")
    recogniser.second = SecondOpinion(scorer)
    (only,) = heard(recogniser, spoken("next"))

    assert only.words == UNKNOWN_WORD
    assert len(scorer.asked) == 1


def test_pocketsphinx_tells_what_else_it_finds_likely(spoken):
    recogniser = PocketSphinxRecogniser()
    scorer = TextScorer("the weather")
    recogniser.second = SecondOpinion(scorer, Trust(unsure=0.0, sure=1.1))
    heard(recogniser, spoken("i have six"))

    (asked,) = scorer.asked
    assert asked[0] == "i have six"
    assert {"i have sixty", "i have sixteen"} <= set(asked)
    assert recogniser.weighed is not None and recogniser.weighed.words in asked


# --- measuring -----------------------------------------------------------------------------------------------------


def test_every_recogniser_is_measured_without_it_and_with_it(tmp_path, capfd):
    (tmp_path / "set.csv").write_text("path,transcript,speaker,kind\n")
    (tmp_path / "phrases.json").write_text(json.dumps({"commands": [{"name": "yes", "phrases": ["yes"]}]}))
    arguments = ("--set", tmp_path / "set.csv", "--phrases", tmp_path / "phrases.json", "--careful", "--json")

    assert main(list(map(str, arguments))) == 0
    found = [each["recogniser"] for each in json.loads(capfd.readouterr().out)]
    assert found[1::2] == [f"{name}, careful" for name in found[::2]]


def test_its_weights_are_fitted_on_what_it_was_asked_about(tmp_path, spoken):
    with wave.open(str(tmp_path / "next.wav"), "wb") as file:
        file.setparams((1, 2, 16_000, 0, "NONE", ""))
        file.writeframes(spoken("next").tobytes())
    recording = Recording(tmp_path / "next.wav", "next", "rms", "word")
    book = PhraseBook({"next": ("next",), "undo": ("undo",)})
    recogniser = Guessing(Alternative("next", 0.5))
    recogniser.expect(book.vocabulary)
    recogniser.second = SecondOpinion(TextScorer("next"))
    (asked,) = examples(recogniser, [recording], book)
    recogniser.guess = Alternative("next", 0.99)

    assert asked.right and asked.command
    assert len(asked.features) + 1 == len(Trust().weights)
    assert list(examples(recogniser, [recording], book)) == []
