"""Every sentence is printed, then played with the ears closed; lines, voice or both; nothing is lost with a speaker."""

import io
import threading

import pytest

from assistant.device_errors import DeviceLost, DeviceRefused, WavUnwritable
from assistant.ports import Played, Sound, SpeechFailed, VoiceSettings
from assistant.voice import Output, Voice
from tests.fakes import RememberingSink, ToneVoice, tone


class Happening(list[str]):
    """What happened, in order."""


class LoggedLines(io.StringIO):
    """A terminal that tells when something is printed on it."""

    def __init__(self, happening: Happening) -> None:
        super().__init__()
        self._happening = happening

    def write(self, text: str) -> int:
        """Remember it, but for the end of the line."""
        if text.strip():
            self._happening.append(f"printed {text}")
        return super().write(text)


class LoggedSink(RememberingSink):
    """A sink that tells when something is played.

    Args:
        happening: where it tells.
        failing: raised in place of playing.
    """

    def __init__(self, happening: Happening, failing: Exception | None = None) -> None:
        super().__init__()
        self._happening = happening
        self.failing = failing

    def play(self, sound: Sound) -> Played:
        """Tell, then remember or fail."""
        self._happening.append("played")
        if self.failing is not None:
            raise self.failing
        return super().play(sound)


class Renders:
    """Makes a tone of every text; wants are remembered.

    Args:
        failing: raised in place of a sound.
    """

    def __init__(self, failing: Exception | None = None) -> None:
        self.settings = VoiceSettings()
        self.wanted: list[str] = []
        self.failing = failing
        self._voice = ToneVoice()

    def get(self, text: str) -> Sound:
        """The tone."""
        if self.failing is not None:
            raise self.failing
        return self._voice.render(text, self.settings)

    def want(self, texts: object) -> None:
        """Remember."""
        self.wanted = list(texts)  # type: ignore[call-overload]


class Told:
    """A voice, and all that it does."""

    def __init__(self, output: Output = Output.BOTH, *, renders: Renders | None = None,
                 failing: Exception | None = None, mute: bool = False) -> None:
        self.happening = Happening()
        self.lines = LoggedLines(self.happening)
        self.sink = LoggedSink(self.happening, failing)
        self.renders = renders or Renders()
        self.voice = Voice(None if mute else self.renders, self.sink, lines=self.lines, output=output)
        self.voice.before = lambda: self.happening.append("ears closed")
        self.voice.after = lambda: self.happening.append("ears open")


def test_a_sentence_is_printed_before_it_is_played_with_the_ears_closed() -> None:
    told = Told()
    played = told.voice.say("Makes six.")

    assert ["printed Makes six.", "ears closed", "played", "ears open"] == told.happening
    assert played is not None and not played.cut_short
    assert "Makes six.\n" == told.lines.getvalue()


def test_the_tone_that_says_that_it_listens_again_comes_before_the_ears_open() -> None:
    told = Told()
    told.voice.closing_tone = tone(0.1)
    told.voice.say("Makes six.")

    assert ["ears closed", "played", "played", "ears open"] == told.happening[1:]
    assert told.voice.closing_tone is told.sink.sounds[-1]


def test_with_lines_only_nothing_is_rendered_or_played() -> None:
    told = Told(Output.LINES, renders=Renders(AssertionError("rendered")))

    assert told.voice.say("Makes six.") is None
    told.voice.signal(tone(0.1))
    told.voice.prepare(["Makes eight."])
    assert ["printed Makes six."] == told.happening
    assert [] == told.renders.wanted


def test_with_voice_only_nothing_is_printed() -> None:
    told = Told(Output.VOICE)
    told.voice.say("Makes six.")

    assert ["ears closed", "played", "ears open"] == told.happening


@pytest.mark.parametrize("output", list(Output))
def test_where_nothing_is_to_be_heard_every_line_is_printed(output: Output) -> None:
    told = Told(output, mute=True)
    told.voice.say("Makes six.")
    told.voice.use(VoiceSettings(rate_wpm=200))
    told.voice.prepare(["Makes eight."])
    told.voice.signal(tone(0.1))

    assert ["printed Makes six."] == told.happening


def test_the_key_goes_round_all_three() -> None:
    round_ = [Output.BOTH]
    for _ in Output:
        round_.append(round_[-1].following)

    assert round_[0] is round_[-1]
    assert set(Output) == set(round_)


@pytest.mark.parametrize("output", [Output.BOTH, Output.VOICE])
def test_a_sentence_that_cannot_be_spoken_is_printed_once(output: Output) -> None:
    told = Told(output, renders=Renders(SpeechFailed("Makes six.")))

    assert told.voice.say("Makes six.") is None
    assert ["printed Makes six."] == told.happening
    assert output is told.voice.output


@pytest.mark.parametrize("output", [Output.BOTH, Output.VOICE])
@pytest.mark.parametrize("lost", [DeviceLost(name="Headset"), DeviceRefused(name="Headset")])
def test_a_speaker_that_goes_away_takes_no_sentence_with_it(
    output: Output, lost: DeviceLost | DeviceRefused
) -> None:
    told = Told(output, failing=lost)
    told.voice.say("Makes six.")
    told.voice.say("Makes eight.")

    assert ["Makes six.", "Makes eight."] == told.lines.getvalue().splitlines()
    assert 1 == told.happening.count("played")
    assert "ears open" == [what for what in told.happening if what.startswith("ears")][-1]
    assert (Output.LINES, lost) == (told.voice.output, told.voice.lost)


def test_a_file_that_cannot_be_written_ends_it() -> None:
    told = Told(failing=WavUnwritable(path="x.wav"))

    with pytest.raises(WavUnwritable):
        told.voice.say("Makes six.")
    assert "ears open" == told.happening[-1]


def test_it_falls_silent_from_any_thread() -> None:
    told = Told()
    thread = threading.Thread(target=told.voice.cut)
    thread.start()
    thread.join()

    assert 1 == told.sink.cuts


def test_what_will_probably_be_said_is_rendered_ahead_in_the_voice_that_is_set() -> None:
    told = Told()
    told.voice.prepare(["Makes six.", "Makes eight."])
    told.voice.use(VoiceSettings(rate_wpm=200))

    assert ["Makes six.", "Makes eight."] == told.renders.wanted
    assert 200 == told.renders.settings.rate_wpm


def test_a_short_tone_is_played_and_not_printed() -> None:
    told = Told()
    told.voice.signal(tone(0.1))

    assert ["ears closed", "played", "ears open"] == told.happening
