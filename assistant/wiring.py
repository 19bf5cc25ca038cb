"""The only module that names concrete recognisers, devices and clocks, and joins them to a session."""

import sys
import time
from collections.abc import Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import platformdirs

from assistant.clocks import StreamClock
from assistant.device_errors import WavEmpty
from assistant.echo import Playback
from assistant.equipment import Piece, Present
from assistant.inputs import Input, OutputWanted, Pressed
from assistant.keys import Keys, KeyTable, Meant, Surface, presses
from assistant.listening.ears import Ears
from assistant.ports import AudioSink, AudioSource
from assistant.settings import Settings
from assistant.terminal import open_keyboard
from assistant.voice import Voice
from models.following import Following
from models.second_opinion import Scorer
from models.shipped import shipped_model
from models.taking import Taker

APP = "roundcaller"


def data_dir() -> Path:
    """Where journals and fetched models are kept."""
    return Path(platformdirs.user_data_dir(APP, appauthor=False))


def config_dir() -> Path:
    """Where the settings are kept."""
    return Path(platformdirs.user_config_dir(APP, appauthor=False))


def default_journal() -> Path:
    """The journal where none is named."""
    return data_dir() / "journal.sqlite"


@dataclass(frozen=True, slots=True)
class Routes:
    """Where words come from and where sound goes, as on the command line.

    Attributes:
        hear_from: "mic", "keys", "-" for standard input, or a WAV file.
        speak_to: "speaker", "none", or a WAV file.
        recogniser: "pocketsphinx", "vosk" or "typed".
        model: name of the vosk model, where another than our own is wanted.
    """

    hear_from: str
    speak_to: str
    recogniser: str
    model: str | None = None

    @property
    def is_live(self) -> bool:
        """Whether inputs come as they happen."""
        return self.hear_from in ("mic", "keys")

    @property
    def has_ears(self) -> bool:
        """Whether words come from sound at all, and not from lines or keys alone."""
        return self.recogniser != "typed" and self.hear_from != "keys"

    @property
    def is_recording(self) -> bool:
        """Whether words come from a recording, whose wishes are not to be remembered."""
        return not self.is_live and self.recogniser != "typed"

    @property
    def pieces(self) -> frozenset[Piece]:
        """What of the equipment is used."""
        used: dict[Piece, bool] = {
            "microphone": self.hear_from == "mic",
            "speaker": self.speak_to == "speaker",
            "voice": self.speak_to != "none",
        }
        return frozenset(piece for piece, is_used in used.items() if is_used)

    @property
    def is_timed(self) -> bool:
        """Whether the time between two inputs is the knitter's own, and not a script's."""
        return self.hear_from == "mic" or (self.hear_from == "keys" and types())


def make_recogniser(name: str, model: str | None = None) -> Following:
    """A recogniser by the name it has on the command line.

    Raises:
        ModelProblem: its model is missing or broken.
    """
    if name == "vosk":
        from models.keeping import model_path  # noqa: PLC0415 (loaded when asked for)
        from models.vosk_recogniser import VoskRecogniser  # noqa: PLC0415

        ours = shipped_model() if model is None else None
        return VoskRecogniser(ours or model_path(model or "vosk-small-en-us", data_dir()))
    from models.pocketsphinx_recogniser import PocketSphinxRecogniser  # noqa: PLC0415

    return PocketSphinxRecogniser()


@cache
def make_scorer() -> Scorer:
    """Who is asked for a second opinion.

    Raises:
        SecondOpinionMissing, ModelBroken: it is not on this machine, or damaged.
    """
    from models.whisper_scoring import load_whisper  # noqa: PLC0415 (loaded when asked for)

    return load_whisper(data_dir())


def make_ears(source: AudioSource, routes: Routes, here: Present) -> Ears:
    """Ears for a source of sound, which know what was taught, and whom to ask."""
    from models.voice_activity import VoiceActivity  # noqa: PLC0415 (loads onnxruntime)

    recogniser = make_recogniser(routes.recogniser, routes.model)
    recogniser.taught, recogniser.second = here.taught, here.second
    return Ears(source, VoiceActivity().mark, recogniser)


def make_taking_ears(source: AudioSource) -> tuple[Ears, Taker]:
    """Ears that only take down what each utterance was like."""
    from models.voice_activity import VoiceActivity  # noqa: PLC0415 (loads onnxruntime)

    taker = Taker()
    return Ears(source, VoiceActivity().mark, taker), taker


def make_source(routes: Routes, clock: StreamClock, settings: Settings) -> AudioSource:
    """The source of sound that the routes name.

    Raises:
        DeviceProblem: there is no microphone, or the file is none that can be read; so that nothing is begun.
    """
    from assistant.listening.sources import Microphone, StandardInput, WavFile  # noqa: PLC0415

    if routes.hear_from == "mic":
        return Microphone(clock, settings.microphone)
    if routes.hear_from == "-" and sys.stdin is None:
        raise WavEmpty(path="-")
    if routes.hear_from == "-":
        return StandardInput(clock)
    path = Path(routes.hear_from)
    if path.is_file() or not path.exists():  # a pipe can be read only once
        next(WavFile(path, StreamClock(live=False)).blocks(), None)
    return WavFile(path, clock)


def make_voice(
    routes: Routes, clock: StreamClock, settings: Settings, stack: ExitStack, playback: Playback | None = None
) -> Voice:
    """A voice that speaks where the routes say, and tells `playback` what; closed with `stack`."""
    from assistant.speaking.speaker import Speaker  # noqa: PLC0415
    from assistant.speaking.wav_sink import Silent, WavSink  # noqa: PLC0415

    if routes.speak_to == "none":
        return Voice(None, Silent(clock))
    from assistant.speaking.cache import RenderAhead  # noqa: PLC0415
    from assistant.speaking.synthesis import Synthesis, SystemVoice  # noqa: PLC0415

    system = SystemVoice()
    stack.callback(system.close)
    system.start()
    sink: AudioSink
    if routes.speak_to == "speaker":
        sink = speaker = Speaker(clock, settings.speaker)
        speaker.playback = playback
    else:
        sink = WavSink(Path(routes.speak_to), clock)
    stack.callback(sink.close)
    renders = RenderAhead(Synthesis(system), settings.speech)
    stack.callback(renders.close)
    return Voice(renders, sink, output=settings.output)


def types() -> bool:
    """Whether somebody can type: standard input is a terminal."""
    return sys.stdin is not None and sys.stdin.isatty()


def key_presses(voice: Voice, stack: ExitStack) -> Iterator[Input]:
    """Keys and pedals of this terminal, taken on the thread that iterates; each cuts the voice short first.

    Call on the main thread; the terminal is put back with `stack`. Keys that come through a pipe have no time of
    their own, so none of them is taken for a repeat.
    """
    if sys.stdin is None:
        return iter(())
    keyboard = stack.enter_context(open_keyboard())
    table = KeyTable.usual()
    if not types():
        table = replace(table, guard_s=0.0, brief_guard_s=0.0)
    return _pressed(presses(keyboard.strokes(), time.monotonic, Keys(table)), voice)


def _pressed(meanings: Iterable[Meant], voice: Voice) -> Iterator[Input]:
    for meant in meanings:
        voice.cut()
        if meant is Surface.OUTPUT:
            yield OutputWanted()
        elif not isinstance(meant, Surface):
            yield Pressed(meant)
