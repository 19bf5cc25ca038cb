"""From the true last sample of a command to the first sample of its answer, in real time.

Everything of a live session is in the way: paced blocks on a thread of their own, voice activity, recogniser,
understanding, engine, journal on a disk, wording, rendered speech. Only the speaker is one that notes when it
is given an answer, and is done at once; a sound card's own latency (20 ms asked for) comes on top.
"""

import io
import tempfile
import time
from contextlib import ExitStack, contextmanager
from itertools import pairwise
from pathlib import Path

from assistant.clocks import StreamClock, SystemClock
from assistant.equipment import Present
from assistant.inputs import Inputs
from assistant.journal import Journal
from assistant.knitting import close_ears_while_speaking
from assistant.languages import load
from assistant.listening.sources import WavFile
from assistant.manners import Manners
from assistant.ports import Played, VoiceSettings
from assistant.session import Session
from assistant.settings import Settings
from assistant.sittings import open_pair
from assistant.speaking.cache import RenderAhead
from assistant.speaking.synthesis import Synthesis, SystemVoice
from assistant.voice import Voice
from assistant.wiring import Routes, make_ears
from models.shipped import default_recogniser
from plans.making import make_plan
from tests.benchmarks import computing
from tests.benchmarks.figures import percentile, rounded
from tests.benchmarks.spoken import save, take

COMMANDS = ("next", "next", "where am i", "next", "how many", "next", "undo", "next", "how far", "next", "again")
PAUSE_S = 1.6
ANSWERED_S = 2.5
RATE_HZ = 16_000


class Timed:
    """A source that notes when its first sample was heard: before any block's last sample by the sound between."""

    def __init__(self, source):
        self._source = source
        self.began_s = float("inf")

    def blocks(self):
        first = None
        for block in self._source.blocks():
            first = block.first_sample if first is None else first
            self.began_s = min(self.began_s, time.monotonic() - (block.end_sample - first) / RATE_HZ)
            yield block

    def pause(self):
        self._source.pause()

    def resume(self):
        self._source.resume()

    def close(self):
        self._source.close()


class NotingSink:
    """Notes when each sound was given to it."""

    def __init__(self):
        self.given_s = []

    def play(self, _):
        self.given_s.append(time.monotonic())
        return Played(0, 0, cut_short=False)

    def cut(self):
        """There is nothing to cut."""

    def close(self):
        """There is nothing to close."""


class Cold:
    """Renders each answer when it is wanted, and keeps none."""

    def __init__(self, synthesis):
        self._synthesis = synthesis
        self.settings = VoiceSettings()

    def get(self, text):
        return self._synthesis.render(text, self.settings)

    def want(self, _):
        """Nothing is made ahead of time."""

    def close(self):
        self._synthesis.close()


@contextmanager
def _renders(*, cold):
    system = SystemVoice()
    system.start()
    renders = Cold(Synthesis(system)) if cold else RenderAhead(Synthesis(system), VoiceSettings())
    try:
        yield renders
    finally:
        renders.close()
        system.close()


def latencies(count, *, cold):
    """Milliseconds to each answer, and how many commands got none."""
    said = [COMMANDS[number % len(COMMANDS)] for number in range(count)]
    with tempfile.TemporaryDirectory() as folder, ExitStack() as stack:
        sound = take(said, PAUSE_S)
        clock, sink = StreamClock(live=True), NotingSink()
        source = Timed(WavFile(save(sound.samples, Path(folder) / "take.wav"), clock, paced=True))
        ears = make_ears(source, Routes("take.wav", "speaker", default_recogniser()), Present(Settings()))
        voice = Voice(stack.enter_context(_renders(cold=cold)), sink, lines=io.StringIO())
        close_ears_while_speaking(voice, ears, live=False)
        journal = stack.enter_context(Journal.open(Path(folder) / "journal.sqlite"))
        opening = open_pair(journal, make_plan(computing.wishes()))
        session = Session(
            opening.sitting, load(), voice, SystemClock(clock), manners=Manners(), expect=ears.expect
        )  # fmt: skip
        session.greet(*opening.sayings, events=opening.events)
        sink.given_s.clear()
        inputs = Inputs()
        inputs.feed(ears, name="ears", to_problem=lambda _: None)
        session.run(inputs)
    return _matched(sink.given_s, source.began_s, sound.ends)


def _matched(given_s, began_s, ends):
    """The first answer between a command's end and the next one's: a missed command is not given another's answer."""
    found = []
    for end, following in pairwise((*ends, ends[-1] + int(ANSWERED_S * RATE_HZ))):
        ended_s, until_s = began_s + end / RATE_HZ, began_s + following / RATE_HZ
        later = [at_s - ended_s for at_s in given_s if ended_s <= at_s < until_s]
        if later:
            found.append(1_000 * min(later))
    return found, len(ends) - len(found)


def answers(count):
    """Caches warm is how a session runs; cold is an answer that nobody foresaw."""
    figures = {"answer_commands_each": count, "answer_ms_aim": 300}
    for name in ("cold", "warm"):
        found, missing = latencies(count, cold=name == "cold")
        figures[f"answer_{name}_p50_ms"] = rounded(percentile(found, 50))
        figures[f"answer_{name}_p95_ms"] = rounded(percentile(found, 95))
        figures[f"answer_{name}_without_answer"] = missing
    return figures
