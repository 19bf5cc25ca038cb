"""What listening costs: in a silent room, and while commands are said; and the memory of a whole session."""

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from assistant.clocks import StreamClock
from assistant.equipment import Present
from assistant.languages import load
from assistant.listening.sources import WavFile
from assistant.settings import Settings
from assistant.wiring import Routes, make_ears
from models.shipped import default_recogniser
from plans.files import write_wishes
from tests.benchmarks import computing
from tests.benchmarks.answering import COMMANDS
from tests.benchmarks.processes import core_seconds, resident_mb
from tests.benchmarks.spoken import save, take
from tests.models.rooms import as_int16, pink

_EVERY_S = 0.05


def _cost(samples):
    """Processor seconds a second of the stream, and how many utterances were heard."""
    with tempfile.TemporaryDirectory() as folder:
        path = save(samples, Path(folder) / "take.wav")
        routes = Routes(str(path), "none", default_recogniser())
        ears = make_ears(WavFile(path, StreamClock(live=False)), routes, Present(Settings()))
        ears.expect(load().vocabulary())
        heard, began = 0, None
        for _ in _started(ears):
            began = began or core_seconds(os.getpid())
            heard += _ is not None
        return (core_seconds(os.getpid()) - began) / (len(samples) / 16_000), heard


def _started(ears):
    """None once the vocabulary is taken up, which happens once a session; then what is heard."""
    ears._take_up_vocabulary()
    yield None
    yield from ears


def cost(room_s, commands):
    """Over a room's noise at -55 dBFS, falling by 3 dB an octave; over commands with a second between."""
    idle, heard = _cost(as_int16(pink(room_s, -55)))
    said = [COMMANDS[number % len(COMMANDS)] for number in range(commands)]
    speaking, _ = _cost(take(said, 1.0).samples)
    return {
        "room_noise_s": room_s,
        "room_noise_core_share": round(idle, 4),
        "room_noise_core_share_aim": 0.05,
        "room_noise_utterances": heard,
        "recognition_real_time_factor": round(speaking, 3),
    }


def memory(commands):
    """The peak of one `knit` from a recording to a WAV and of what helps it listen; looked at every 50 ms."""
    said = [COMMANDS[number % len(COMMANDS)] for number in range(commands)]
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        plan, sound = home / "plan.toml", save(take(said, 0.9).samples, home / "take.wav")
        plan.write_text(write_wishes(computing.wishes()), encoding="utf-8")
        knit = (sys.executable, "-m", "assistant", "knit", str(plan), "--journal", str(home / "journal.sqlite"),
                "--from", str(sound), "--to", str(home / "answers.wav"))  # fmt: skip
        process, peak_mb = subprocess.Popen(knit, stdout=subprocess.DEVNULL), 0.0
        while process.poll() is None:
            peak_mb = max(peak_mb, resident_mb(process.pid))
            time.sleep(_EVERY_S)
        if process.returncode:
            raise subprocess.CalledProcessError(process.returncode, knit)
    return {"peak_memory_mb": round(peak_mb, 1), "peak_memory_mb_aim": 300}
