"""Devices are found by name, their errors are sayable, and the stream's time never goes back."""

import os
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.clocks import StreamClock, SystemClock
from assistant.device_errors import (
    DEVICE_ERRORS,
    DeviceLost,
    DeviceProblem,
    NoMicrophone,
    NoSpeaker,
    NoSuchMicrophone,
    NoSuchSpeaker,
    WavUnsupported,
)
from assistant.devices import find_device, list_devices
from models import sayable
from tests.fakes import FakeSoundLibrary, StillTime

THREE = (("Built-in", 0, 2, 44_100), ("Wireless Headset", 1, 2, 16_000), ("Headset", 1, 2, 48_000))
HAPPENINGS = st.tuples(st.sampled_from(["hear", "wait", "passes"]), st.integers(0, 1 << 40))


def run_python(script, *arguments, **environment):
    """The script in an interpreter of its own."""
    return subprocess.run(
        (sys.executable, "-c", script, *arguments),
        capture_output=True,
        text=True,
        check=True,
        env=os.environ | environment,
    )


def test_every_device_is_listed_with_what_it_can():
    listed = list_devices(FakeSoundLibrary(THREE))
    told = [(one.name, one.channels("microphone"), one.channels("speaker"), one.rate_hz) for one in listed]
    assert told == list(THREE)
    assert [d.index for d in listed] == [0, 1, 2]


def test_without_a_name_the_default_is_taken():
    library = FakeSoundLibrary(THREE)
    library.default.device = [1, 2]
    assert find_device("microphone", sounddevice=library).name == "Wireless Headset"
    assert find_device("speaker", sounddevice=library).name == "Headset"


def test_without_a_default_the_first_that_can_is_taken():
    library = FakeSoundLibrary(THREE)
    library.default.device = [-1, -1]
    assert find_device("microphone", sounddevice=library).name == "Wireless Headset"
    assert find_device("speaker", sounddevice=library).name == "Built-in"


def test_a_default_that_cannot_hear_is_not_taken_for_a_microphone():
    assert find_device("microphone", sounddevice=FakeSoundLibrary(THREE)).name == "Wireless Headset"


def test_a_part_of_the_name_is_enough_whatever_the_case():
    assert find_device("speaker", "built", FakeSoundLibrary(THREE)).name == "Built-in"


def test_of_several_names_that_fit_the_closest_is_taken():
    assert find_device("speaker", "headset", FakeSoundLibrary(THREE)).name == "Headset"


@pytest.mark.parametrize(("kind", "error"), [("microphone", NoMicrophone), ("speaker", NoSpeaker)])
def test_a_machine_without_any_is_an_error_of_its_own(kind, error):
    with pytest.raises(error):
        find_device(kind, sounddevice=FakeSoundLibrary(()))


@pytest.mark.parametrize(("kind", "error"), [("microphone", NoSuchMicrophone), ("speaker", NoSuchSpeaker)])
def test_a_name_that_fits_nothing_is_answered_with_the_names_there_are(kind, error):
    with pytest.raises(error) as refused:
        find_device(kind, "piano", FakeSoundLibrary(THREE[1:]))
    assert dict(refused.value.values) == {"wanted": "piano", "found": "Wireless Headset, Headset"}


def test_a_speaker_is_not_found_as_a_microphone():
    with pytest.raises(NoSuchMicrophone) as refused:
        find_device("microphone", "built-in", FakeSoundLibrary(THREE))
    assert "Built-in" not in refused.value.values["found"]


def test_every_error_has_a_key_of_its_own_and_named_values():
    kinds = sayable.kinds(DeviceProblem)
    assert len({kind.key for kind in kinds}) == len(kinds) == len(DEVICE_ERRORS) - 1
    for kind in kinds:
        error = kind(**dict.fromkeys(kind.names, "x"))
        assert set(error.values) == DEVICE_ERRORS[error.key]


def test_an_error_without_its_values_cannot_be_made():
    with pytest.raises(TypeError):
        DeviceLost()
    with pytest.raises(TypeError):
        WavUnsupported(path="a.wav")


def test_a_machine_without_portaudio_is_one_error(tmp_path):
    """A library that raises at import, as sounddevice does there, in a fresh interpreter."""
    (tmp_path / "sounddevice.py").write_text('raise OSError("PortAudio library not found")\n')
    script = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "from assistant.device_errors import PortAudioMissing\n"
        "from assistant.devices import load_sounddevice\n"
        "try:\n    load_sounddevice()\n"
        "except PortAudioMissing as missing:\n    print(missing.key, dict(missing.values))\n"
    )
    done = run_python(script, str(tmp_path))
    assert done.stdout == "no-portaudio {}\n"


def test_sound_is_loaded_only_when_needed():
    script = (
        "import sys, assistant.devices, assistant.speaking.speaker, assistant.speaking.synthesis\n"
        "import assistant.listening.sources, assistant.speaking.cache, assistant.speaking.earcons\n"
        "print({'sounddevice', 'pyttsx3'} & set(sys.modules))\n"
    )
    done = run_python(script)
    assert done.stdout == "set()\n"


def test_a_machine_without_a_sound_card_gets_no_noise_on_standard_error():
    script = "from assistant.devices import list_devices; list_devices()"
    done = run_python(script, PULSE_SERVER="unix:/nowhere")
    assert done.stderr == ""


def test_a_live_stream_runs_with_the_time():
    time = StillTime()
    clock = StreamClock(live=True, monotonic=time)
    time.passes(0.25)
    assert clock.now() == 4_000


def test_a_stream_that_waits_moves_only_when_told():
    time = StillTime()
    clock = StreamClock(live=False, monotonic=time)
    time.passes(60)
    assert clock.now() == 0
    clock.hear(800)
    clock.wait(1_600)
    assert clock.now() == 2_400


def test_playing_does_not_move_a_live_stream():
    clock = StreamClock(live=True, monotonic=StillTime())
    clock.wait(16_000)
    assert clock.now() == 0


def test_late_blocks_do_not_disturb_a_live_stream():
    """Blocks that come up to 30 ms late, never early: the clock is where the stream is."""
    time = StillTime()
    clock = StreamClock(live=True, monotonic=time)
    for block in range(1, 200):
        time.now_s = 1_000.0 + block * 0.05 + (block % 7) * 0.005
        clock.hear(block * 800)
    assert abs(clock.now() - (time.now_s - 1_000.0) * 16_000) <= 1


def test_a_device_that_runs_slow_is_followed():
    """One sample in a thousand too few: after ten minutes the clock is within 0.2 s of the blocks."""
    time = StillTime()
    clock = StreamClock(live=True, monotonic=time)
    for block in range(1, 12_001):
        time.passes(0.05)
        clock.hear(block * 799)
    assert 0 <= clock.now() - 12_000 * 799 <= 3_200


@given(st.booleans(), st.lists(HAPPENINGS, max_size=30))
def test_the_stream_never_goes_back(live, happenings):
    time = StillTime()
    clock = StreamClock(live=live, monotonic=time)
    last = clock.now()
    for what, samples in happenings:
        {"hear": clock.hear, "wait": clock.wait, "passes": lambda n: time.passes(n / 16_000)}[what](samples)
        assert clock.now() >= last
        last = clock.now()


def test_the_system_clock_tells_both_times_in_milliseconds():
    stream = StreamClock(live=False)
    clock = SystemClock(stream, wall=lambda: 1_700_000_000.1234)
    stream.hear(24_000)
    assert (clock.now_ms(), clock.stream_ms()) == (1_700_000_000_123, 1_500)
