"""A name is matched forgivingly: case, accents, a part of it, words in any order; and voices by it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.device_errors import NoSuchVoice, SeveralVoices
from assistant.name_matching import fitting
from assistant.speaking.voices import ListedVoice, find_voice

NAMES = ("USB Headset: Audio (hw:1,0)", "Küchenradio", "Wireless Headset", "Headset")
VOICES = (
    ListedVoice("gmw/en", "English (Great Britain)", ("en-gb",)),
    ListedVoice("gmw/en-us", "English (America)", ("en-us",)),
    ListedVoice("gmw/en-us-nyc", "English (America, New York City)", ("en-us-nyc",)),
    ListedVoice("zlw/pl", "Polish", ("pl",)),
)


@pytest.mark.parametrize(("wanted", "meant"), [
    ("headset", (3,)), ("HEADSET wireless", (2,)), ("usb", (0,)), ("hw:1,0", (0,)), ("kuchen", (1,)),
    ("audio headset", (0,)), ("e", (0, 1, 2, 3)), ("piano", ()), ("", ()), (" , ", ()),
])  # fmt: skip
def test_a_name_means_those_that_are_so_or_that_hold_all_its_words(wanted: str, meant: tuple[int, ...]) -> None:
    assert meant == fitting(wanted, NAMES)


def test_one_device_reached_in_two_ways_is_one() -> None:
    assert (0,) == fitting("built-in", ["Built-in Audio", "built in audio"])


@given(st.lists(st.text(st.characters(categories=["L", "N", "Zs"])), min_size=1), st.data())
def test_a_whole_name_always_means_itself(names: list[str], data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(names))
    if any(map(str.isalnum, name)):
        (at,) = fitting(name, names) or (None,)
        assert at is not None
        assert at in fitting(name.swapcase(), names)


@pytest.mark.parametrize(("wanted", "identifier"), [
    ("English (America)", "gmw/en-us"), ("gmw/en-us", "gmw/en-us"), ("EN-US", "gmw/en-us"), ("en", "gmw/en"),
    ("new york", "gmw/en-us-nyc"), ("polish", "zlw/pl"), ("pl", "zlw/pl"), ("great", "gmw/en"),
])  # fmt: skip
def test_a_voice_is_found_by_name_tag_or_part(wanted: str, identifier: str) -> None:
    assert identifier == find_voice(wanted, VOICES, "en").identifier


def test_of_several_voices_those_meant_are_told_and_of_none_those_of_the_language() -> None:
    with pytest.raises(SeveralVoices) as several:
        find_voice("america", VOICES, "en")
    with pytest.raises(NoSuchVoice) as none:
        find_voice("nobody", VOICES, "pl")

    assert "English (America); English (America, New York City)" == several.value.values["found"]
    assert "Polish" == none.value.values["found"]
