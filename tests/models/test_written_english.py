"""Texts as they are written, and back; and the pieces of words that a network counts in."""

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.languages import load
from models.keeping import model_path
from models.whisper_features import BANDS, log_mel
from models.word_pieces import WordPieces
from models.written_english import sounding_alike, spoken, written
from tests.models import rooms


@pytest.mark.parametrize(
    ("text", "ways"),
    [
        ("next", (" Next.",)),
        ("where am i", (" Where am I?",)),
        ("i have thirty three stitches", (" I have thirty-three stitches.", " I have 33 stitches.")),
        ("a hundred and five", (" A hundred and five.", " 105.")),
        ("foot is two point five centimetres", (" Foot is two point five centimeters.", " Foot is 2.5 cm.")),
    ],
)
def test_a_text_is_written_in_words_and_in_digits(text, ways):
    assert written(text) == ways


@given(st.integers(0, 999))
def test_every_number_is_read_back_from_its_digits_and_from_its_words(number):
    usual = load().numbers.ways(number)
    in_words, in_digits = written(f"i have {usual[0]}")

    assert in_digits == f" I have {number}."
    assert spoken(in_digits).removeprefix("i have ") in usual
    assert spoken(in_words) == f"i have {usual[0]}"


def test_teens_and_tens_sound_alike_and_nothing_else_does():
    assert sounding_alike("i have thirteen of the first") == ("i have thirty of the first",)
    assert sounding_alike("one hundred and eighty two") == ("one hundred and eighteen two",)
    assert sounding_alike("next") == ()
    for number in range(100):
        twin = load().numbers.twin(number)
        alike = sounding_alike(load().numbers.ways(number)[0])
        assert twin is None or load().numbers.ways(twin)[0] in alike


@pytest.fixture(scope="module")
def pieces():
    return WordPieces(model_path("whisper-tiny-en", Path("/nowhere")) / "tokenizer.json")


def test_words_are_joined_from_the_pieces_learnt_first(pieces):
    names = [pieces.text([number]) for number in pieces.numbers(" I've got thirty-three stitches.")]

    assert names == [" I", "'ve", " got", " thirty", "-", "three", " stitches", "."]


@given(st.lists(st.text("abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=12), min_size=1, max_size=6))
def test_pieces_say_the_text_that_they_are_of(pieces, words):
    line = "".join(f" {word}" for word in words)

    assert pieces.text(pieces.numbers(line)) == line


@pytest.mark.parametrize("content", ["", "[]", "{}", '{"model": {}}'])
def test_what_is_no_table_of_pieces_is_told(tmp_path, content):
    file = tmp_path / "tokenizer.json"
    file.write_text(content)
    with pytest.raises((ValueError, KeyError, TypeError)):
        WordPieces(file)


def test_a_tone_is_loudest_in_its_band_and_silence_is_even():
    time_s = np.arange(16_000) / 16_000
    tone = log_mel(rooms.as_int16(0.5 * np.sin(2 * np.pi * 1_000 * time_s)), 150)
    silence = log_mel(np.zeros(0, np.int16), 50)

    assert tone.shape == (BANDS, 150) and silence.shape == (BANDS, 50)
    assert {int(band) for band in tone[:, 10:90].argmax(axis=0)} == {26}
    assert silence.max() == silence.min()
    assert tone.max() - tone.min() <= 2.0 + 1e-6
