"""A sound card of nothing but software: a private PulseAudio with two null sinks, for tests and measurements.

The program's speaker is the sink "speaker"; its microphone is the monitor of the sink "mic", into which a
test speaks. PortAudio reaches both as the default device through ALSA's pulse plugin (Debian: pulseaudio,
libasound2-plugins). Works as root, without systemd, D-Bus or a home.

The sinks do not rewind: else a null sink renders two seconds ahead, and takes or withholds sound in bursts.
"""

import contextlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
import wave
from pathlib import Path
from typing import Self

import numpy as np

from tests.end_to_end import room

STARTING_S = 10.0
RECORDING_HZ = 16_000
_ALSA = """\
pcm.!default { type pulse }
ctl.!default { type pulse }
"""
_PULSE = """\
load-module module-native-protocol-unix socket={socket} auth-anonymous=1
load-module module-null-sink sink_name=speaker rate=48000 channels=1 norewinds=1
load-module module-null-sink sink_name=mic rate=48000 channels=1 norewinds=1
set-default-sink speaker
set-default-source mic.monitor
"""


def is_possible() -> bool:
    """Whether this machine has what is needed."""
    plugin = list(Path("/usr/lib").glob("*/alsa-lib/libasound_module_pcm_pulse.so"))
    return bool(plugin) and all(map(shutil.which, ("pulseaudio", "paplay", "parec")))


class Recording:
    """What the speaker plays from the start of the recording on.

    Attributes:
        began_s: `time.monotonic()` when the first samples had come; a few milliseconds late.
        samples: shape (n,), int16, at `RECORDING_HZ`, once stopped.
    """

    def __init__(self, environment: dict[str, str], source: str) -> None:
        command = ("parec", f"--device={source}", f"--rate={RECORDING_HZ}", "--channels=1", "--format=s16le",
                   "--raw", "--latency-msec=5")  # fmt: skip
        self._raw = tempfile.TemporaryFile()  # noqa: SIM115
        quiet = subprocess.DEVNULL
        self._process = subprocess.Popen(command, env=environment, stdout=self._raw, stderr=quiet)
        until = time.monotonic() + STARTING_S
        while not (size := os.fstat(self._raw.fileno()).st_size) and time.monotonic() < until:
            time.sleep(0.001)
        self.began_s = time.monotonic() - size / 2 / RECORDING_HZ
        self.samples = np.zeros(0, np.int16)

    def stop(self) -> np.ndarray:
        """End the recording; its samples."""
        self._process.terminate()
        self._process.wait()
        self._raw.seek(0)
        self.samples = np.frombuffer(self._raw.read(), "<i2")
        self._raw.close()
        return self.samples

    def save(self, path: Path) -> None:
        """As a WAV file."""
        with wave.open(str(path), "wb") as file:
            file.setparams((1, 2, RECORDING_HZ, 0, "NONE", ""))
            file.writeframes(self.samples.tobytes())


class VirtualSound:
    """`with VirtualSound() as sound:` a sound card, until the end of the block.

    Attributes:
        environment: for the processes that shall use it, a whole environment.
    """

    def __init__(self) -> None:
        self._folder = Path(tempfile.mkdtemp(prefix="virtual-sound-"))
        socket = self._folder / "socket"
        alsa = self._folder / "asound.conf"
        alsa.write_text(_ALSA)
        (self._folder / "setup.pa").write_text(_PULSE.format(socket=socket))
        (self._folder / "home").mkdir()
        self.own = {
            "ALSA_CONFIG_PATH": f"/usr/share/alsa/alsa.conf:{alsa}",
            "PULSE_SERVER": f"unix:{socket}",
            "XDG_RUNTIME_DIR": str(self._folder),
        }
        self.environment = os.environ | self.own
        self._daemon: subprocess.Popen[bytes] | None = None

    def __enter__(self) -> Self:
        command = ("pulseaudio", "-n", "--daemonize=no", "--exit-idle-time=-1", "--disallow-exit",
                   "--use-pid-file=no", f"--file={self._folder / 'setup.pa'}")  # fmt: skip
        home = self.environment | {"HOME": str(self._folder / "home")}
        quiet = subprocess.DEVNULL
        self._daemon = subprocess.Popen(command, env=home, stdout=quiet, stderr=quiet)
        until = time.monotonic() + STARTING_S
        while self._run("pactl", "info", check=False).returncode:
            if time.monotonic() > until or self._daemon.poll() is not None:
                self.__exit__()
                raise RuntimeError("PulseAudio does not start")
            time.sleep(0.02)
        return self

    def __exit__(self, *_: object) -> None:
        self.die()
        shutil.rmtree(self._folder, ignore_errors=True)

    def die(self) -> None:
        """The sound card is gone, as if it were unplugged."""
        daemon, self._daemon = self._daemon, None
        if daemon is not None:
            daemon.kill()
            daemon.wait()

    @contextlib.contextmanager
    def here(self):
        """This very process uses it, inside the block; no device may be open at its ends."""
        from assistant.devices import look_again

        kept = {name: os.environ.get(name) for name in self.own}
        os.environ.update(self.own)
        try:
            look_again()
            yield self
        finally:
            for name, value in kept.items():
                os.environ.pop(name) if value is None else os.environ.update({name: value})
            look_again()

    def add_speaker(self, name: str, description: str) -> None:
        """One more speaker, which is not the default; people see its description."""
        self._load("module-null-sink", f"sink_name={name}", "rate=48000", "channels=1", "norewinds=1",
                   f"sink_properties=\"device.description='{description}'\"")  # fmt: skip

    def add_microphone(self, name: str, description: str) -> None:
        """One more microphone, which is not the default; what is played into the sink "NAME_side" is heard by it."""
        self._load("module-null-sink", f"sink_name={name}_side", "rate=48000", "channels=1", "norewinds=1",
                   "sink_properties=\"device.description='side of a microphone'\"")  # fmt: skip
        self._load("module-remap-source", f"master={name}_side.monitor", f"source_name={name}", "channels=1",
                   f"source_properties=\"device.description='{description}'\"")  # fmt: skip

    def _load(self, module: str, *arguments: str) -> None:
        self._run("pactl", "load-module", module, *arguments)

    def say_into_microphone(self, wav: Path, side: str = "mic") -> None:
        """Play a WAV file into the program's microphone, in real time; returns at its end."""
        self._run("paplay", f"--device={side}", "--latency-msec=20", str(wav))

    def start_saying_into_microphone(self, wav: Path) -> subprocess.Popen[bytes]:
        """As `say_into_microphone`, without waiting."""
        command = ("paplay", "--device=mic", "--latency-msec=20", str(wav))
        return subprocess.Popen(command, env=self.environment)

    def record_speaker(self, name: str = "speaker") -> Recording:
        """Everything that the program plays into one speaker from now on."""
        return Recording(self.environment, f"{name}.monitor")

    def listen_to_itself(self) -> None:
        """Let the program's microphone hear its own speaker, as a real one does."""
        self._run("pactl", "set-default-source", "speaker.monitor")

    @contextlib.contextmanager
    def loudspeaker_in_the_room(self, gain_db: float):
        """Inside the block the microphone hears the speaker too, through a room; see `tests.end_to_end.room`."""
        raw = ("--format=s16le", "--channels=1", f"--rate={room.RATE_HZ}", "--raw", "--latency-msec=10")
        between = (sys.executable, "-m", "tests.end_to_end.room", str(gain_db))
        quiet = {"env": self.environment, "stderr": subprocess.DEVNULL}
        taken = subprocess.Popen(("parec", "--device=speaker.monitor", *raw), stdout=subprocess.PIPE, **quiet)
        changed = subprocess.Popen(between, stdin=taken.stdout, stdout=subprocess.PIPE, **quiet)
        given = subprocess.Popen(("pacat", "--device=mic", *raw), stdin=changed.stdout, **quiet)
        try:
            yield self
        finally:
            for process in (taken, changed, given):
                process.terminate()
                process.wait()
                for pipe in (process.stdin, process.stdout):
                    if pipe:
                        pipe.close()

    def _run(self, *command: str, check: bool = True) -> subprocess.CompletedProcess[bytes]:
        return subprocess.run(command, env=self.environment, check=check, capture_output=True)
