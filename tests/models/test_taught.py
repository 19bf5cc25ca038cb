"""Words taught by one speaker: known again, told from other words, kept as numbers and nothing else."""

import subprocess
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.languages import load
from models.likeness import features
from models.pocketsphinx_recogniser import PocketSphinxRecogniser
from models.recognising import UNKNOWN_WORD, Alternative, Block, Heard
from models.recordings import read_sound
from models.taking import Taker
from models.taught import Taught, as_archive, fused, read_taught
from models.voice_activity import VoiceActivity

WORDS = ("next", "undo", "again", "where am i", "how many", "how far")
OTHERS = ("coarser", "redo", "read my marks", "stop for today", "the kettle is on", "nectar", "what did you say")
VOICES = ("en-gb-scotland+f4", "en-us-nyc+m8")
"""Of which PocketSphinx knows few words."""
TEACHING_WPM, SAYING_WPM = (140, 150, 165), (145, 158)
SURE = 0.6


def said(voice: str, words: str, wpm: int, folder: Path) -> np.ndarray:
    file = folder / f"{voice}-{words}-{wpm}.wav"
    pitch = str(45 + wpm % 7)
    subprocess.run(("espeak-ng", "-v", voice, "-s", str(wpm), "-p", pitch, "-w", str(file), words), check=True)
    room = np.rint(np.random.default_rng(wpm).normal(0, 20, 8_000)).astype(np.int16)
    return np.concatenate((room, read_sound(file), room, room))


def hear(recogniser, samples: np.ndarray) -> list[Heard]:
    recogniser.reset()
    mark = VoiceActivity().mark
    blocks = (Block(at, samples[at : at + 320]) for at in range(0, len(samples), 320))
    found = [each for block in blocks for marked in mark(block) for each in recogniser.accept(marked)]
    return [*(each for each in found if isinstance(each, Heard)), *recogniser.finish()]


def taken(samples: np.ndarray) -> np.ndarray:
    taker = Taker()
    assert len(hear(taker, samples)) == 1
    return taker.taken


@pytest.fixture(scope="module", params=VOICES)
def taught(request, tmp_path_factory):
    folder, known = tmp_path_factory.mktemp("takes"), Taught({})
    for words in WORDS:
        for wpm in TEACHING_WPM:
            known = known.with_take(words, taken(said(request.param, words, wpm, folder)))
    return request.param, known, folder


def test_what_was_taught_is_known_again_and_other_words_are_not(taught):
    voice, known, folder = taught
    for words in WORDS:
        for wpm in SAYING_WPM:
            found = known.like(taken(said(voice, words, wpm, folder)), lambda _: True)
            assert found is not None and found.words == words and found.confidence >= SURE
    for words in OTHERS:
        found = known.like(features(said(voice, words, 150, folder)), lambda _: True)
        assert found is None or found.confidence < SURE, (words, found)


def test_a_recogniser_hears_more_with_what_was_taught_and_nothing_less(taught):
    voice, known, folder = taught
    recogniser = PocketSphinxRecogniser()
    recogniser.expect(load().vocabulary())
    right = []
    for recogniser.taught in (None, known):
        heard = [hear(recogniser, said(voice, words, 158, folder)) for words in WORDS]
        pairs = ((words, only) for words, (only,) in zip(WORDS, heard, strict=True))
        right.append(sum(only.words == words and only.confidence >= SURE for words, only in pairs))
    print(f"{voice}: {right[0]} of {len(WORDS)} by the model, {right[1]} with three takes of each")
    assert right[0] < right[1] == len(WORDS)
    (heard,) = hear(recogniser, said(voice, "the kettle is on the stove", 158, folder))
    assert heard.words == UNKNOWN_WORD


def test_what_may_not_be_said_now_is_not_meant(taught):
    voice, known, folder = taught
    assert known.like(taken(said(voice, "next", 158, folder)), lambda text: text == "how far") is None


def test_another_word_does_not_fit_among_its_takes(taught):
    voice, known, folder = taught
    assert known.fits("next", taken(said(voice, "next", 158, folder)))
    assert not known.fits("next", taken(said(voice, "where am i", 158, folder)))
    assert known.fits("never taught", taken(said(voice, "next", 158, folder)))


def test_takes_are_kept_as_numbers_and_read_again(taught, tmp_path):
    _, known, _ = taught
    file = tmp_path / "en.npz"
    file.write_bytes(as_archive(known))
    again = read_taught(file)
    assert again.takes.keys() == known.takes.keys()
    for words, takes in known.takes.items():
        for one, other in zip(takes, again.takes[words], strict=True):
            assert np.allclose(one, other, rtol=2e-3, atol=2e-3)
    assert read_taught(tmp_path / "none.npz") == Taught({})


@pytest.mark.parametrize("content", [b"", b"no archive", b"PK\x03\x04 cut"], ids=["empty", "words", "cut"])
def test_what_is_no_archive_of_takes_is_told(tmp_path, content):
    file = tmp_path / "en.npz"
    file.write_bytes(content)
    with pytest.raises(ValueError, match=r"."):
        read_taught(file)


def test_an_archive_of_something_else_is_told(tmp_path):
    file = tmp_path / "en.npz"
    np.savez(file, **{"next#0": np.array(["a", "b"])})
    with pytest.raises(ValueError, match="tables of numbers"):
        read_taught(file)


readings = st.builds(Alternative, st.sampled_from(["next", "undo", "redo", UNKNOWN_WORD]), st.floats(0, 1))
own_readings = st.builds(Alternative, st.sampled_from(["next", "undo", "redo"]), st.floats(0.3, 1))


@given(st.lists(readings, min_size=1, max_size=4).map(tuple), st.none() | own_readings)
def test_two_opinions_together(others, own):
    together = fused(others, own, SURE)
    best = others[0]
    assert together and all(0 <= each.confidence <= 1 for each in together)
    if own is None:
        assert together == others
    elif best.words == own.words:
        assert together[0].words == own.words
        assert together[0].confidence >= max(best.confidence, own.confidence) - 1e-9
    elif best.words != UNKNOWN_WORD and min(best.confidence, own.confidence) >= SURE:
        assert {each.words for each in together[:2]} == {best.words, own.words}
        assert together[0].confidence < SURE
    else:
        assert together[0] == (own if best.words == UNKNOWN_WORD else max(best, own, key=lambda each: each.confidence))
