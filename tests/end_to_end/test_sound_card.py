"""The real adapters over a software sound card: what is said is heard, where and when they say it is."""

import threading
import time
import wave
from contextlib import ExitStack

import numpy as np
import pytest

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceLost
from assistant.devices import list_devices
from assistant.listening.sources import Microphone
from assistant.ports import Sound, VoiceSettings
from assistant.speaking.earcons import Earcon, earcon
from assistant.speaking.playing import at_rate
from assistant.speaking.speaker import Speaker
from assistant.speaking.synthesis import Synthesis, SystemVoice
from tests.end_to_end.virtual_sound import RECORDING_HZ, VirtualSound, is_possible

pytestmark = [
    pytest.mark.sound,
    pytest.mark.skipif(not is_possible(), reason="needs pulseaudio, pulseaudio-utils and libasound2-plugins"),
]


@pytest.fixture(scope="module")
def sentence():
    """A sentence of about three seconds, spoken by the system's voice."""
    synthesis = Synthesis(SystemVoice(), VoiceSettings(voice="en"))
    yield synthesis.render("First sock, front: knit fourteen, makes eighteen.")
    synthesis.close()


@pytest.fixture
def card():
    with VirtualSound() as sound, sound.here():
        yield sound


@pytest.fixture
def clock():
    return StreamClock(live=True)


@pytest.fixture
def speaker(card, clock):  # noqa: ARG001 (the card must be there)
    device = Speaker(clock)
    yield device
    device.close()


def find(sound, recorded, after=0):
    """Where in a recording at 16 kHz a sound begins, and how alike the two are there, from 0 to 1."""
    pattern, recorded = at_rate(sound, RECORDING_HZ).samples.astype(float), recorded[after:].astype(float)
    size = len(recorded) + len(pattern)
    spectrum = np.fft.rfft(recorded, size) * np.conj(np.fft.rfft(pattern, size))
    likeness = np.fft.irfft(spectrum, size)[: len(recorded)]
    begin = int(np.argmax(likeness))
    there = recorded[begin : begin + len(pattern)]
    alike = likeness[begin] / np.sqrt((there @ there) * (pattern[: len(there)] @ pattern[: len(there)]) + 1)
    return after + begin, float(alike)


def save(path, *sounds, pause_s=0.3):
    """The sounds with pauses around them as a WAV."""
    rate_hz = sounds[0].rate_hz
    pause = np.zeros(int(pause_s * rate_hz), np.int16)
    with wave.open(str(path), "wb") as file:
        file.setparams((1, 2, rate_hz, 0, "NONE", ""))
        file.writeframes(np.concatenate([pause, *(part for one in sounds for part in (one.samples, pause))]).tobytes())
    return path


class Ears:
    """A microphone heard on a thread of its own, into one array with silence where nothing was handed out."""

    def __init__(self, clock):
        self.microphone = Microphone(clock)
        self.blocks = []
        self.error = None
        self._thread = threading.Thread(target=self._hear)
        self._thread.start()
        end = time.monotonic() + 5
        while not self.blocks and time.monotonic() < end:
            time.sleep(0.005)

    def _hear(self):
        try:
            self.blocks.extend(self.microphone.blocks())
        except DeviceLost as lost:
            self.error = lost

    def stop(self):
        """All that was heard, by sample number of the stream."""
        self.microphone.close()
        self._thread.join()
        heard = np.zeros(self.blocks[-1].end_sample, np.int16)
        for block in self.blocks:
            heard[block.first_sample : block.end_sample] = block.samples
        return heard


@pytest.mark.usefixtures("card")
def test_the_default_devices_hear_and_speak():
    assert {device.name for device in list_devices() if device.channels_in and device.channels_out} >= {"default"}


def test_a_sentence_is_played_as_it_is(card, speaker, sentence):
    recording = card.record_speaker()
    played = speaker.play(sentence)
    time.sleep(0.2)
    _, alike = find(sentence, recording.stop())
    assert alike > 0.98
    assert played.ended - played.began == len(sentence.samples) * 16_000 // sentence.rate_hz
    assert not played.cut_short


def test_several_sounds_stand_as_far_apart_as_told(card, speaker, sentence):
    recording = card.record_speaker()
    sounds = [earcon(Earcon.ATTENTION), sentence, earcon(Earcon.TURN_THE_WORK)]
    played = []
    for sound in sounds:
        played.append(speaker.play(sound))
        time.sleep(0.3)
    recorded, begins = recording.stop(), []
    for sound in sounds:
        begin, alike = find(sound, recorded, begins[-1] + 1_000 if begins else 0)
        assert alike > 0.97
        begins.append(begin)
    pairs = zip(begins, played, strict=True)
    off_ms = [((begin - begins[0]) - (one.began - played[0].began)) / 16 for begin, one in pairs]
    print("distances off by ms:", off_ms)
    assert np.abs(off_ms).max() < 60


def test_what_is_told_is_when_the_ears_hear_it(card, clock, speaker, sentence):
    """Speaker into microphone: an echo stands in the stream where `Played` says it is, or a little later."""
    card.listen_to_itself()
    ears = Ears(clock)
    played = [speaker.play(sentence) for _ in range(3)]
    time.sleep(0.3)
    heard, late_ms = ears.stop(), []
    for one in played:
        window = heard[: one.ended + 16_000]  # the same sentence comes again later
        begin, alike = find(sentence, window, max(0, one.began - 3_200))
        assert alike > 0.95
        late_ms.append((begin - one.began) / 16)
    print("the echo is late by ms:", late_ms)
    assert min(late_ms) > -100  # the software card takes sound in pieces of 50 ms
    assert max(late_ms) < 100


def test_what_is_said_into_the_microphone_is_heard(card, clock, sentence, tmp_path):
    ears = Ears(clock)
    card.say_into_microphone(save(tmp_path / "said.wav", sentence))
    time.sleep(0.3)
    heard = ears.stop()
    _, alike = find(sentence, heard)
    assert alike > 0.98
    ends = [block.end_sample for block in ears.blocks]
    assert [block.first_sample for block in ears.blocks[1:]] == ends[:-1]


def test_a_cut_is_heard_at_once_and_told(card, clock, speaker, sentence):
    card.listen_to_itself()
    ears, cut_at = Ears(clock), []

    def cut():
        cut_at.append(clock.now())
        speaker.cut()

    timer = threading.Timer(1.0, cut)
    timer.start()
    played = speaker.play(sentence)
    back_at = clock.now()
    time.sleep(0.5)
    heard = ears.stop()
    spoken = played.ended - played.began
    begin, alike = find(Sound(at_rate(sentence, 16_000).samples[:spoken], 16_000), heard)
    last = int(np.flatnonzero(np.abs(heard.astype(int)) > 50)[-1])
    print("from cut to silence, ms:", (last - (begin - played.began) - cut_at[0]) / 16)
    print("from cut to return, ms:", (back_at - cut_at[0]) / 16)
    assert played.cut_short
    assert alike > 0.95
    assert spoken < len(sentence.samples) * 16_000 // sentence.rate_hz
    assert abs(last - (begin + spoken)) < 16_000 // 20
    assert played.ended - cut_at[0] < 16_000 // 10
    assert back_at - cut_at[0] < 16_000 // 5


def test_half_duplex_does_not_hear_its_own_voice(card, clock, speaker, sentence):
    """The speaker is at the microphone's side; ears closed while it plays hear nothing of the sentence."""
    card.listen_to_itself()
    ears = Ears(clock)
    ears.microphone.pause()
    played = speaker.play(sentence)
    time.sleep(0.25)
    ears.microphone.resume()
    speaker.play(earcon(Earcon.LISTENING_AGAIN))
    time.sleep(0.3)
    heard = ears.stop()
    assert np.abs(heard[played.began : played.ended].astype(int)).max() == 0
    assert find(earcon(Earcon.LISTENING_AGAIN), heard, played.ended)[1] > 0.9


def test_a_speaker_that_is_pulled_out_is_lost_not_stuck(card, speaker, sentence):
    threading.Timer(0.5, card.die).start()
    began = time.monotonic()
    with pytest.raises(DeviceLost):
        speaker.play(sentence)
    assert time.monotonic() - began < 6


def test_a_microphone_that_is_pulled_out_is_lost_not_stuck(card, clock):
    ears = Ears(clock)
    card.die()
    ears._thread.join(8)
    assert not ears._thread.is_alive()
    assert isinstance(ears.error, DeviceLost)


def test_two_cards_after_one_another_leave_nothing_behind():
    for _ in range(2):
        with ExitStack() as stack:
            card = stack.enter_context(VirtualSound())
            stack.enter_context(card.here())
            speaker = Speaker(StreamClock(live=True))
            speaker.play(earcon(Earcon.HEARD))
            speaker.close()
            folder, daemon = card._folder, card._daemon
        assert not folder.exists()
        assert daemon.poll() is not None
