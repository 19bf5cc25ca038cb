"""Sounds are kept up to a size, rendered ahead one at a time, and what is needed now goes first."""

import threading
import time
from collections import OrderedDict

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.ports import Sound, SpeechFailed, VoiceSettings
from assistant.speaking.cache import RenderAhead, SoundCache
from tests.fakes import MuteVoice, ToneVoice

USUAL = VoiceSettings()
FAST = VoiceSettings(rate_wpm=300)


@pytest.fixture
def voice():
    return ToneVoice()


@pytest.fixture
def renders(voice):
    ahead = RenderAhead(voice, USUAL)
    yield ahead
    voice.held.set()
    ahead.close()


def until(condition, seconds=5.0):
    """Wait for something that another thread brings about."""
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end, "it never happened"
        time.sleep(0.002)


def in_thread(function, *arguments):
    """A call on a thread of its own, and where its result or error will stand."""
    results = []

    def run():
        try:
            results.append(function(*arguments))
        except SpeechFailed as error:
            results.append(error)

    thread = threading.Thread(target=run)
    thread.start()
    return thread, results


def silence(samples):
    return Sound(np.zeros(samples, np.int16), 22_050)


def test_a_sound_that_is_kept_is_not_made_again(renders, voice):
    assert renders.get("one") is renders.get("one")
    assert voice.texts == ["one"]


def test_other_settings_are_another_sound(renders, voice):
    slow = renders.get("one")
    renders.settings = FAST
    assert renders.get("one").seconds < slow.seconds
    renders.settings = USUAL
    assert renders.get("one") is slow
    assert voice.settings == [USUAL, FAST]


def test_what_is_wanted_is_there_when_asked_for(renders, voice):
    renders.want(["one", "two"])
    until(lambda: voice.texts == ["one", "two"])
    voice.held.clear()
    assert renders.get("two").seconds > 0
    assert voice.texts == ["one", "two"]


def test_what_is_wanted_twice_is_made_once(renders, voice):
    renders.want(["one", "one", "two"])
    until(lambda: len(voice.texts) == 2)
    renders.want(["two", "one", "three"])
    until(lambda: "three" in voice.texts)
    assert voice.texts == ["one", "two", "three"]


def test_what_is_needed_now_goes_before_what_is_wanted(renders, voice):
    """While "one" is being made, "now" is asked for: it is the next, before "two" and "three"."""
    voice.held.clear()
    renders.want(["one", "two", "three"])
    assert voice.began.wait(5)
    thread, results = in_thread(renders.get, "now")
    until(lambda: renders._urgent)
    voice.held.set()
    thread.join()
    until(lambda: len(voice.texts) == 4)
    assert voice.texts == ["one", "now", "two", "three"]
    assert results[0].seconds > 0


def test_what_is_needed_now_comes_in_the_order_of_asking(renders, voice):
    voice.held.clear()
    renders.want(["one"])
    assert voice.began.wait(5)
    threads = []
    for count, text in enumerate(("two", "three", "four"), start=1):
        threads.append(in_thread(renders.get, text)[0])
        until(lambda: len(renders._urgent) == count)  # noqa: B023 (waited for inside the loop)
    voice.held.set()
    for thread in threads:
        thread.join()
    assert voice.texts == ["one", "two", "three", "four"]


def test_asking_for_what_is_just_being_made_waits_for_it(renders, voice):
    voice.held.clear()
    renders.want(["one"])
    assert voice.began.wait(5)
    thread, results = in_thread(renders.get, "one")
    until(lambda: renders._urgent)
    voice.held.set()
    thread.join()
    assert results[0].seconds > 0
    assert voice.texts == ["one"]


def test_new_wishes_replace_old_ones(renders, voice):
    voice.held.clear()
    renders.want(["one", "two", "three"])
    assert voice.began.wait(5)
    renders.want(["four"])
    voice.held.set()
    until(lambda: "four" in voice.texts)
    assert voice.texts == ["one", "four"]


def test_many_threads_get_their_own_sounds(renders, voice):
    """`ToneVoice` fails when two renders meet."""
    texts = ["x" * length for length in range(1, 16)]
    calls = [in_thread(renders.get, text) for text in texts]
    for (thread, results), text in zip(calls, texts, strict=True):
        thread.join()
        assert results[0].seconds == pytest.approx(0.08 * len(text), abs=0.001)
    assert sorted(voice.texts) == texts


def test_a_failure_reaches_whoever_asked_and_ends_nothing():
    renders = RenderAhead(MuteVoice(), USUAL)
    for text in ("one", "two"):
        with pytest.raises(SpeechFailed) as failed:
            renders.get(text)
        assert dict(failed.value.values) == {"text": text}
    renders.close()


def test_a_failure_ahead_of_time_is_nobodys():
    renders = RenderAhead(MuteVoice(), USUAL)
    renders.want(["one", "two"])
    with pytest.raises(SpeechFailed):
        renders.get("three")
    assert renders._thread.is_alive()
    renders.close()


def test_it_is_a_synthesiser_too(renders):
    assert renders.render("one") is renders.get("one")


def test_closing_ends_the_thread_and_the_voice(voice):
    renders = RenderAhead(voice, USUAL)
    renders.want(["one", "two"])
    renders.close()
    assert voice.closed
    assert not renders._thread.is_alive()
    with pytest.raises(SpeechFailed):
        renders.get("three")


def test_closing_answers_whoever_still_waits(voice):
    renders = RenderAhead(voice, USUAL)
    voice.held.clear()
    renders.want(["one"])
    assert voice.began.wait(5)
    thread, results = in_thread(renders.get, "two")
    until(lambda: renders._urgent)
    closing, _ = in_thread(renders.close)
    until(lambda: renders._closing)
    voice.held.set()
    thread.join()
    closing.join()
    assert isinstance(results[0], SpeechFailed)


def test_after_closing_what_is_kept_can_still_be_said(voice):
    renders = RenderAhead(voice, USUAL)
    sound = renders.get("one")
    renders.close()
    assert renders.get("one") is sound


ORDERS = st.tuples(st.sampled_from("abcdef"), st.integers(0, 60))


@given(st.integers(0, 200), st.lists(ORDERS, max_size=40))
def test_the_cache_keeps_what_was_used_last_and_never_more_than_its_size(kept_samples, puts):
    """Against the plainest model: a list of what was put, newest last, cut to size from the front."""
    cache, model = SoundCache(2 * kept_samples), OrderedDict()
    for text, samples in puts:
        order = (text, USUAL)
        if cache.get(order) is not None:
            model.move_to_end(order)
        cache.put(order, silence(samples))
        model[order] = samples
        model.move_to_end(order)
        while sum(model.values()) > kept_samples:
            model.popitem(last=False)
        assert len(cache) == len(model)
        assert all(order in cache for order in model)
        assert cache._bytes == 2 * sum(model.values()) <= 2 * kept_samples
