"""The network that tells speech from other sound: silero-vad (MIT, see silero/LICENSE), run without torch."""

import hashlib
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from models.catalogue import find
from models.errors import ModelBroken, ModelMissing
from models.loudness import FULL_SCALE
from models.recognising import Samples

FRAME_SAMPLES = 512
"""What the network judges at once: 32 ms."""
CONTEXT_SAMPLES = 64
"""So many samples before a frame it looks at too."""

_MODEL = find("voice-activity")
_FILE, _SHA256 = next(iter(_MODEL.files.items()))
SHIPPED = Path(__file__).parent / _MODEL.folder / _FILE

_STATE = (1, 1, 128)

_Reals = NDArray[np.float32]


class Judge(Protocol):
    """Says how likely a frame is speech, from it and what came before."""

    def restart(self) -> None:
        """Forget what came before."""
        ...

    def judge(self, frame: Samples, gain: float) -> float:
        """The probability, 0 to 1, that the next frame of `FRAME_SAMPLES` is speech, made louder by `gain`."""
        ...


class SpeechModel:
    """The network, on one thread.

    Args:
        path: the ONNX file; another than the shipped one only where that was moved.

    Raises:
        ModelMissing: when the file is not there.
        ModelBroken: when it is not the recorded one.
    """

    def __init__(self, path: Path = SHIPPED) -> None:
        self._session = _load(path)
        self.restart()

    def restart(self) -> None:
        """Forget what came before."""
        self._hidden: _Reals = np.zeros(_STATE, np.float32)
        self._cell: _Reals = np.zeros(_STATE, np.float32)
        self._input: _Reals = np.zeros((1, CONTEXT_SAMPLES + FRAME_SAMPLES), np.float32)

    def judge(self, frame: Samples, gain: float = 1.0) -> float:
        """The probability, 0 to 1, that the next frame of `FRAME_SAMPLES` is speech, made louder by `gain`."""
        self._input[0, :CONTEXT_SAMPLES] = self._input[0, FRAME_SAMPLES:]
        np.multiply(frame, gain / FULL_SCALE, out=self._input[0, CONTEXT_SAMPLES:])
        given = {"input": self._input, "h": self._hidden, "c": self._cell}
        probabilities, self._hidden, self._cell = self._session.run(None, given)
        return float(probabilities[0])


def _load(path: Path) -> Any:  # noqa: ANN401 - the library is untyped
    try:
        content = path.read_bytes()
    except OSError as failure:
        raise ModelMissing(name=_MODEL.name, cure=_MODEL.cure) from failure
    if hashlib.sha256(content).hexdigest() != _SHA256:
        raise ModelBroken(name=_MODEL.name, what=path.name, cure=_MODEL.cure)
    import onnxruntime  # noqa: PLC0415 - 20 MB and 20 ms that only ears need

    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = options.inter_op_num_threads = 1
    options.enable_cpu_mem_arena = False
    options.log_severity_level = 3
    return onnxruntime.InferenceSession(content, options, providers=["CPUExecutionProvider"])
