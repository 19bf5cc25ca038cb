"""Speech is marked where there is speech, early and late enough, and nothing else is."""

import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from models.errors import ModelBroken, ModelMissing
from models.recognising import Block
from models.speech_model import FRAME_SAMPLES, SHIPPED, SpeechModel
from models.voice_activity import VoiceActivity
from tests.models.rooms import VOICES, WORDS, as_int16, at_level, needle_clicks, pink, silence, spoken, white

LEAD_S = 5.0
"""The room alone, before anybody speaks: longer than its level takes to be known."""


@pytest.fixture(scope="module")
def network():
    return SpeechModel()


class Counting:
    """A judge that takes everything for speech and counts what it is asked."""

    def __init__(self):
        self.judged = self.restarted = 0

    def restart(self):
        self.restarted += 1

    def judge(self, frame, gain):
        assert frame.shape == (FRAME_SAMPLES,)
        assert gain >= 1.0
        self.judged += 1
        return 1.0


def marked(sound, model, block_samples=1_600):
    """All frames of a stream."""
    activity = VoiceActivity(model)
    samples = as_int16(sound)
    frames = []
    for begin in range(0, len(samples), block_samples):
        frames += activity.mark(Block(begin, samples[begin : begin + block_samples]))
    return [*frames, *activity.finish()]


def share(frames):
    """How much of it was marked as speech."""
    return sum(frame.speech for frame in frames) / len(frames)


def said(words, voice, room_dbfs, speech_dbfs=-25.0):
    """A stream with one utterance; gives it with the utterance's first sample and the first after it."""
    speech = at_level(spoken(words, voice), speech_dbfs)
    begin = round(16_000 * LEAD_S)
    sound = np.concatenate((silence(LEAD_S), speech, silence(1)))
    return sound + pink(len(sound) / 16_000, room_dbfs), begin, begin + len(speech)


def test_frames_come_back_whole_in_order_and_marked(network):
    frames = marked(white(1.0, -50)[:15_000], network)

    expected = [*range(0, 15_000 - FRAME_SAMPLES + 1, FRAME_SAMPLES), 15_000 // FRAME_SAMPLES * FRAME_SAMPLES]
    assert expected == [frame.first_sample for frame in frames]
    assert frames[-1].end_sample == 15_000
    assert all(frame.speech is not None for frame in frames)


@given(lengths=st.lists(st.integers(1, 4_000), min_size=1, max_size=60))
@settings(max_examples=15, deadline=None)
def test_marks_do_not_depend_on_how_the_stream_is_cut(lengths):
    sound = as_int16(np.concatenate((pink(0.4, -50), at_level(spoken("undo"), -25), pink(0.6, -50))))
    cuts = [cut for cut in np.cumsum(lengths).tolist() if cut < len(sound)]
    expected = [*(whole := VoiceActivity()).mark(Block(0, sound)), *whole.finish()]
    activity = VoiceActivity()

    actual = []
    for begin, end in zip([0, *cuts], [*cuts, len(sound)], strict=True):
        actual += activity.mark(Block(begin, sound[begin:end]))
    actual += activity.finish()

    assert [(b.first_sample, b.speech) for b in expected] == [(b.first_sample, b.speech) for b in actual]
    assert np.concatenate([b.samples for b in actual]).tolist() == sound.tolist()
    assert any(frame.speech for frame in actual)


@pytest.mark.parametrize("voice", VOICES)
@pytest.mark.parametrize("words", WORDS)
def test_every_word_is_marked_begun_and_ended_in_time_in_a_quiet_room(network, words, voice):
    sound, begin, end = said(words, voice, room_dbfs=-60)

    speech = [frame for frame in marked(sound, network) if frame.speech]

    begun_late_ms = (speech[0].end_sample - begin) / 16
    ended_late_ms = (speech[-1].end_sample + FRAME_SAMPLES - end) / 16
    assert -FRAME_SAMPLES / 16 < begun_late_ms < 250
    assert -150 < ended_late_ms < 200


@pytest.mark.parametrize(("room_dbfs", "speech_dbfs"), [(-60, -25), (-55, -25), (-45, -25), (-35, -15)])
def test_most_of_the_speech_is_marked_and_its_end_decided_within_100_ms(network, room_dbfs, speech_dbfs):
    found, late_ms = [], []
    for words in WORDS:
        for voice in VOICES[:3]:
            sound, begin, end = said(words, voice, room_dbfs, speech_dbfs)
            frames = marked(sound, network)
            found.append(share([f for f in frames if f.first_sample >= begin and f.end_sample <= end]))
            last = max(frame.end_sample for frame in frames if frame.speech)
            late_ms.append((last + FRAME_SAMPLES - end) / 16)

    assert np.mean(found) > 0.8
    assert min(found) > 0.3
    assert np.median(late_ms) < 100


def test_a_faint_voice_in_a_still_room_is_heard(network):
    for words in WORDS:
        sound, begin, end = said(words, "en-gb", room_dbfs=-70, speech_dbfs=-45)
        frames = marked(sound, network)

        assert share([f for f in frames if f.first_sample >= begin and f.end_sample <= end]) > 0.4


def test_speech_at_the_very_beginning_of_a_stream_is_marked(network):
    sound = np.concatenate((at_level(spoken("where am I"), -25), silence(0.5)))

    assert share(marked(sound, network)[:20]) > 0.6


@pytest.mark.parametrize(
    "noise",
    [
        silence(20),
        white(20, -55),
        white(20, -30),
        pink(20, -55),
        pink(20, -35),
        needle_clicks(20, -40),
        needle_clicks(20, -25),
        needle_clicks(20, -15, clicks_a_second=6),
        0.3 * np.sign(np.sin(2 * np.pi * 100 * np.arange(320_000) / 16_000)),
    ],
    ids=["nothing", "white", "loud white", "pink", "loud pink", "faint clicks", "clicks", "loud clicks", "hum"],
)
def test_rooms_and_needles_are_not_speech(network, noise):
    assert share(marked(noise, network)) < 0.01


def test_the_network_sleeps_in_a_still_room():
    judge = Counting()

    marked(white(60, -55), judge)

    assert judge.judged == 0


def test_the_network_sleeps_again_in_a_loud_but_steady_room():
    judge = Counting()

    frames = marked(white(30, -35), judge)

    assert judge.judged < 200
    assert not any(frame.speech for frame in frames[200:])


def test_the_network_hears_what_came_just_before_the_sound_that_woke_it():
    judge = Counting()

    marked(np.concatenate((white(2, -70), white(0.032, -20))), judge)

    assert judge.restarted == 1
    assert 8 <= judge.judged <= 10


def test_a_gap_in_the_stream_ends_the_frame_and_begins_a_new_one(network):
    activity = VoiceActivity(network)
    first = activity.mark(Block(0, np.zeros(700, np.int16)))
    second = activity.mark(Block(5_000, np.zeros(1_100, np.int16)))

    expected = [(0, 512), (512, 188), (5_000, 512), (5_512, 512)]
    assert expected == [(frame.first_sample, len(frame.samples)) for frame in first + second]


def test_after_a_reset_speech_that_had_begun_is_over():
    judge = Counting()
    activity = VoiceActivity(judge)
    loud = as_int16(np.concatenate((silence(0.064), white(0.192, -20))))
    assert activity.mark(Block(0, loud))[-1].speech

    activity.reset()
    frames = activity.mark(Block(len(loud), np.zeros(8_192, np.int16)))

    assert not any(frame.speech for frame in frames)
    judged = judge.judged
    activity.mark(Block(len(loud) + 8_192, np.zeros(8_192, np.int16)))
    assert judged == judge.judged


def test_a_missing_model_file_is_told_with_its_cure(tmp_path):
    with pytest.raises(ModelMissing) as missing:
        SpeechModel(tmp_path / "none.onnx")

    assert missing.value.values == {"name": "voice-activity", "cure": "pip install --force-reinstall ."}


@pytest.mark.parametrize("damage", [lambda content: content[:-1], lambda content: b"\0" + content[1:]])
def test_a_damaged_model_file_is_never_loaded(tmp_path, damage):
    path = tmp_path / "model.onnx"
    path.write_bytes(damage(SHIPPED.read_bytes()))

    with pytest.raises(ModelBroken) as broken:
        SpeechModel(path)

    assert broken.value.values["what"] == "model.onnx"


def test_the_licence_lies_beside_the_model():
    assert "MIT License" in SHIPPED.with_name("LICENSE").read_text("utf-8")


def test_loading_and_running_give_no_warning_and_print_nothing():
    program = (
        "import numpy as np; from models.voice_activity import VoiceActivity; from models.recognising import Block;"
        "VoiceActivity().mark(Block(0, (np.arange(9000) * 77 % 9000).astype(np.int16)))"
    )
    done = subprocess.run([sys.executable, "-W", "error", "-c", program], capture_output=True, check=False)

    assert (done.returncode, done.stdout, done.stderr) == (0, b"", b"")
