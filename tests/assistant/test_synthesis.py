"""Every sentence becomes its whole sound or an error: whatever the system's voice does meanwhile."""

import itertools
import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.device_errors import NoSuchVoice, VoiceMissing
from assistant.ports import (
    FASTEST_WPM,
    SLOWEST_WPM,
    SOFTEST,
    AttemptFailed,
    Sound,
    SpeechFailed,
    VoiceSettings,
)
from assistant.speaking import synthesis
from assistant.speaking.synthesis import ATTEMPTS, Synthesis, SystemVoice, is_plausible, scaled, trimmed
from tests.fakes import FaultyVoice, MuteVoice, ToneVoice, tone

SENTENCE = "Fourteen of twenty-four."
NOTHING = Sound(np.zeros(0, np.int16), 22_050)
SILENCE = Sound(np.zeros(22_050, np.int16), 22_050)
FAULTS = [NOTHING, SILENCE, tone(0.01), tone(90.0), AttemptFailed("no file")]


@pytest.fixture(scope="module")
def system():
    """The system's own voice, one process for all tests here."""
    voice = SystemVoice()
    yield Synthesis(voice)
    voice.close()


def pitch_hz(sound):
    """The voice's pitch: the median over 40 ms pieces of how far each must be moved to be most like itself."""
    samples, width = sound.samples.astype(np.float64), sound.rate_hz // 25
    moves = range(sound.rate_hz // 300, sound.rate_hz // 70)
    found = []
    for begin in range(0, len(samples) - 2 * width, width):
        piece = samples[begin : begin + width]
        moved = [samples[begin + move : begin + move + width] for move in moves]
        likeness = [piece @ other / np.sqrt(piece @ piece * (other @ other) + 1) for other in moved]
        found.append(sound.rate_hz / moves[int(np.argmax(likeness))])
    return np.median(found)


class TestEveryAttemptIsChecked:
    def test_a_right_one_is_taken_at_once(self):
        voice = FaultyVoice()
        assert Synthesis(voice).render(SENTENCE).seconds > 1
        assert voice.attempts == 1

    @pytest.mark.parametrize("fault", FAULTS, ids=["no frames", "silence", "cut off", "endless", "no file"])
    def test_a_bad_one_is_made_again(self, fault):
        voice = FaultyVoice(fault)
        assert Synthesis(voice).render(SENTENCE).seconds > 1
        assert voice.attempts == 2

    def test_after_three_the_sentence_is_given_up(self):
        voice = FaultyVoice(*FAULTS[:ATTEMPTS])
        with pytest.raises(SpeechFailed) as failed:
            Synthesis(voice).render(SENTENCE)
        assert voice.attempts == ATTEMPTS == 3
        assert failed.value.key == "speech-failed"
        assert dict(failed.value.values) == {"text": SENTENCE}

    def test_the_next_sentence_works_after_one_was_given_up(self):
        synthesis = Synthesis(FaultyVoice(*[NOTHING] * ATTEMPTS))
        with pytest.raises(SpeechFailed):
            synthesis.render(SENTENCE)
        assert synthesis.render(SENTENCE).seconds > 1

    @pytest.mark.parametrize("error", [VoiceMissing(), NoSuchVoice(wanted="nobody", found="somebody")])
    def test_what_will_not_pass_is_not_tried_again(self, error):
        voice = FaultyVoice(error)
        with pytest.raises(type(error)):
            Synthesis(voice).render(SENTENCE)
        assert voice.attempts == 1

    @pytest.mark.parametrize("text", ["", "  ", "...", "\n"])
    def test_what_cannot_be_said_is_not_tried_at_all(self, text):
        voice = FaultyVoice()
        with pytest.raises(SpeechFailed):
            Synthesis(voice).render(text)
        assert voice.attempts == 0

    def test_two_threads_never_render_at_once(self):
        """`ToneVoice` refuses a second call while one is at work."""
        voice = ToneVoice()
        synthesis = Synthesis(voice)
        texts = [f"sentence {number}" for number in range(20)]
        threads = [threading.Thread(target=synthesis.render, args=(text,)) for text in texts]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        assert sorted(voice.texts) == sorted(texts)


class TestSettings:
    def test_a_call_may_bring_its_own(self):
        voice = ToneVoice()
        synthesis = Synthesis(voice, VoiceSettings(rate_wpm=200))
        synthesis.render("one")
        synthesis.render("two", VoiceSettings(rate_wpm=300))
        assert [given.rate_wpm for given in voice.settings] == [200, 300]

    def test_volume_is_applied_to_the_samples(self):
        full = Synthesis(ToneVoice()).render("four")
        half = Synthesis(ToneVoice(), VoiceSettings(volume=0.5)).render("four")
        assert np.abs(half.samples - full.samples * 0.5).max() <= 0.5

    @given(st.integers(SLOWEST_WPM, FASTEST_WPM), st.integers(-500, 500))
    def test_faster_and_slower_stay_within_limits(self, rate_wpm, by):
        changed = VoiceSettings(rate_wpm=rate_wpm, volume=0.5, voice="en").faster(by)
        assert changed.rate_wpm == min(max(rate_wpm + by, SLOWEST_WPM), FASTEST_WPM)
        assert (changed.volume, changed.voice) == (0.5, "en")

    @given(st.floats(0, 1), st.floats(-1, 1))
    def test_louder_and_softer_can_always_be_heard(self, volume, by):
        assert SOFTEST <= VoiceSettings(volume=volume).louder(by).volume <= 1.0

    @pytest.mark.parametrize("wrong", [{"rate_wpm": 20}, {"rate_wpm": 999}, {"volume": 2.0}, {"volume": -1.0}])
    def test_settings_out_of_range_cannot_be_made(self, wrong):
        with pytest.raises(ValueError, match="1 validation error"):
            VoiceSettings(**wrong)


class TestSilenceAround:
    @given(st.integers(0, 3_000), st.integers(0, 20_000))
    def test_it_goes_but_for_30_ms_at_the_end(self, before, after):
        inside = tone(0.3).samples[10:-10]
        whole = np.concatenate((np.zeros(before), inside, np.zeros(after))).astype(np.int16)
        kept = trimmed(Sound(whole, 22_050)).samples
        assert np.array_equal(kept[: len(inside)], inside)
        assert len(kept) - len(inside) <= 661

    def test_a_pause_inside_stays(self):
        one = tone(0.1).samples[5:-5]
        whole = np.concatenate((one, np.zeros(22_050, np.int16), one))
        assert len(trimmed(Sound(whole, 22_050)).samples) == len(whole)

    def test_of_silence_nothing_is_kept(self):
        assert len(trimmed(SILENCE).samples) == 0

    @given(st.floats(0, 1))
    def test_scaling_never_leaves_the_range(self, volume):
        loud = Sound(np.array([-32_768, 32_767, 0], np.int16), 22_050)
        assert np.abs(scaled(loud, volume).samples.astype(int)).max() <= 32_768


@pytest.mark.parametrize(("seconds", "text", "plausible"), [
    (0.25, "k", True), (2.0, "128", True), (0.0, "k", False), (0.3, "Fourteen of twenty-four.", False),
    (1.4, "Fourteen of twenty-four.", True), (30.0, "no", False),
])  # fmt: skip
def test_a_length_must_fit_the_text(seconds, text, plausible):
    assert is_plausible(tone(seconds), text, 170) is plausible


class TestTheSystemsVoice:
    def test_a_sentence_is_spoken(self, system):
        sound = system.render(SENTENCE, VoiceSettings(voice="en"))
        assert sound.rate_hz == 22_050
        assert 0.8 < sound.seconds < 2.5
        assert np.abs(sound.samples.astype(int)).max() > 5_000

    def test_faster_is_shorter_every_time(self, system):
        """Each of the settings must hold for its own sentence; the driver by itself mixes them up."""
        paces = [VoiceSettings(rate_wpm=wpm) for wpm in (100, 300, 150, 250) * 3]
        lengths = [system.render(SENTENCE, pace).seconds for pace in paces]
        for slow, fast, medium, quick in zip(*[iter(lengths)] * 4, strict=True):
            assert slow > 1.2 * medium > 1.2 * 1.2 * quick > 1.2 * 1.2 * fast

    def test_another_voice_speaks_otherwise_and_back(self, system):
        voices = ("en", "en-us+f3", "en")
        sounds = [system.render("nine", VoiceSettings(voice=voice)) for voice in voices]
        man, woman, again = [pitch_hz(sound) for sound in sounds]
        assert woman > 1.3 * man
        assert abs(again - man) < 0.1 * man

    def test_a_language_alone_is_its_plainest_voice(self, system):
        """English as such, not the first of its kinds in the list."""
        plain, named = (system.render("water", VoiceSettings(voice=voice)) for voice in ("en", "gmw/en"))
        assert abs(plain.seconds - named.seconds) < 0.05 * named.seconds

    def test_a_voice_that_does_not_exist_is_one_error(self, system):
        with pytest.raises(NoSuchVoice) as refused:
            system.render("seven", VoiceSettings(voice="nobody-at-all"))
        assert refused.value.values["wanted"] == "nobody-at-all"
        assert "English (America), " in refused.value.values["found"]
        assert system.render("seven", VoiceSettings()).seconds > 0.1

    def test_nothing_of_it_reaches_standard_output(self, system, capfd):
        system.render("seven")
        assert capfd.readouterr().out == ""

    def test_sentences_of_all_lengths_come_out_whole(self, system):
        """Each more must add length."""
        lengths = [system.render("knit fourteen " * times).seconds for times in (1, 2, 4, 8, 16)]
        for short, long in itertools.pairwise(lengths):
            assert 1.6 * short < long < 2.4 * short

    def test_words_beyond_ascii_are_spoken(self, system):
        assert system.render("trente-deux mailles à l'envers, çà", VoiceSettings(voice="fr")).seconds > 1


class TestTheProcessBehind:
    def voice(self, tmp_path, body):
        """A voice whose process runs these lines instead; `folder` is where its files would be."""
        script = tmp_path / "process.py"
        script.write_text(f"import sys, os, time, json\nfolder = sys.argv[1]\n{body}")
        return SystemVoice((sys.executable, str(script)))

    def test_a_system_without_a_synthesiser_is_one_error(self, tmp_path):
        """The real process, with a pyttsx3 that raises as it does without espeak-ng."""
        (tmp_path / "pyttsx3.py").write_text('def init():\n    raise RuntimeError("eSpeak not installed")\n')
        rendering = Path(sys.modules[Synthesis.__module__].__file__).with_name("rendering.py")
        starter = tmp_path / "start.py"
        starter.write_text(
            f"import sys, runpy\nsys.path.insert(0, {str(tmp_path)!r})\n"
            f"runpy.run_path({str(rendering)!r}, run_name='__main__')\n"
        )
        with pytest.raises(VoiceMissing):
            SystemVoice((sys.executable, str(starter))).attempt("seven", VoiceSettings())

    def test_one_that_dies_is_started_again(self, tmp_path):
        voice = self.voice(tmp_path, "print('{\"bytes\": 0}', flush=True)\nsys.stdin.readline()\n")
        for _ in range(2):
            with pytest.raises(AttemptFailed):
                voice.attempt("seven", VoiceSettings())
        voice.close()

    def test_one_that_never_starts_to_speak_fails_the_attempt(self, tmp_path):
        with pytest.raises(AttemptFailed):
            self.voice(tmp_path, "sys.exit(3)\n").attempt("seven", VoiceSettings())

    def test_one_that_answers_nonsense_fails_the_attempt(self, tmp_path):
        voice = self.voice(tmp_path, "print('{\"bytes\": 0}', flush=True)\nprint('hello', flush=True)\n")
        with pytest.raises(AttemptFailed):
            voice.attempt("seven", VoiceSettings())

    def test_one_that_hangs_is_ended(self, tmp_path):
        voice = self.voice(tmp_path, (
            "print('{\"bytes\": 0}', flush=True)\n"
            "open(sys.argv[0] + '.pid', 'w').write(str(os.getpid()))\n"
            "time.sleep(60)\n"
        ))  # fmt: skip
        began = time.monotonic()
        with pytest.raises(AttemptFailed):
            voice.attempt("seven", VoiceSettings())
        assert time.monotonic() - began < 8
        with pytest.raises(ProcessLookupError):
            os.kill(int((tmp_path / "process.py.pid").read_text()), 0)

    def test_closing_leaves_no_process_and_no_file(self, tmp_path, monkeypatch):
        monkeypatch.setenv("TMPDIR", str(tmp_path))
        monkeypatch.setattr("tempfile.tempdir", None)
        voice = SystemVoice()
        assert any(len(voice.attempt("seven", VoiceSettings()).samples) > 1_000 for _ in range(5))  # it loses some
        process = voice._helper.process
        assert list(tmp_path.iterdir()) != []
        voice.close()
        assert process.poll() == 0
        assert list(tmp_path.iterdir()) == []

    @pytest.mark.parametrize("name", ["SIGTERM", "SIGKILL"])
    def test_nothing_is_left_when_the_program_itself_is_ended(self, tmp_path, name):
        """However it ends: the process behind it notices, removes its folder and goes."""
        script = (
            "import time\n"
            "from assistant.speaking.synthesis import SystemVoice\n"
            "voice = SystemVoice(); voice.start()\n"
            "print(voice._helper.process.pid, flush=True)\n"
            "time.sleep(60)\n"
        )
        environment = os.environ | {"TMPDIR": str(tmp_path)}
        command = (sys.executable, "-c", script)
        with subprocess.Popen(command, stdout=subprocess.PIPE, env=environment) as program:
            behind = int(program.stdout.readline())
            assert len(list(tmp_path.iterdir())) == 1
            program.send_signal(getattr(signal, name))
        end = time.monotonic() + 5
        while list(tmp_path.iterdir()) and time.monotonic() < end:
            time.sleep(0.01)
        assert list(tmp_path.iterdir()) == []
        while Path(f"/proc/{behind}").exists() and time.monotonic() < end:
            time.sleep(0.01)
        assert not Path(f"/proc/{behind}").exists()

    @pytest.mark.parametrize(("name", "goes"), [("SIGTERM", True), ("SIGINT", False), ("SIGHUP", False)])
    def test_a_terminal_that_closes_or_interrupts_leaves_the_end_to_the_program(self, tmp_path, name, goes):
        """Those signals reach the whole group; only an order to end removes the folder and goes."""
        script = Path(synthesis.__file__).with_name("rendering.py")
        folder = tmp_path / "folder"
        folder.mkdir()
        command = (sys.executable, "-P", str(script), str(folder))
        with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as process:
            process.stdout.readline()
            process.send_signal(getattr(signal, name))
            time.sleep(0.3)
            assert (process.poll() is not None) is goes
            assert folder.exists() is not goes
        assert not folder.exists()

    def test_a_disk_that_takes_no_file_fails_the_attempt_quickly(self, tmp_path, monkeypatch):
        """The folder is gone, so the driver raises where nobody can catch it."""
        monkeypatch.setenv("TMPDIR", str(tmp_path))
        monkeypatch.setattr("tempfile.tempdir", None)
        voice = SystemVoice()
        voice.start()
        for folder in tmp_path.iterdir():
            folder.rmdir()
        began = time.monotonic()
        with pytest.raises(AttemptFailed):
            voice.attempt("seven", VoiceSettings())
        assert time.monotonic() - began < 2
        voice.close()


def test_a_mute_voice_costs_three_attempts_and_no_more():
    with pytest.raises(SpeechFailed):
        Synthesis(MuteVoice()).render(SENTENCE)
