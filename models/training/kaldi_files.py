"""Writes what Kaldi reads: a transition model and an nnet3 network in one binary file (`final.mdl`).

The layout is that of Kaldi's own readers: `TransitionModel::Read`, `HmmTopology::Read`, `Nnet::Read` and each
component's `Read` (kaldi-asr, Apache-2.0). One state a phone: a first frame, then any number of further ones.
"""

import struct
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt

Matrix = npt.NDArray[np.float32]


@dataclass(frozen=True)
class Component:
    """One layer: its name, its parameters as Kaldi stores them, and where its input comes from (a descriptor)."""

    name: str
    stored: bytes
    given: str


def _token(text: str) -> bytes:
    return text.encode() + b" "


def _integer(number: int) -> bytes:
    return b"\x04" + struct.pack("<i", number)


def _real(number: float) -> bytes:
    return b"\x04" + struct.pack("<f", number)


def _vector(numbers: npt.ArrayLike) -> bytes:
    stored = np.asarray(numbers, "<f4")
    return b"FV " + _integer(len(stored)) + stored.tobytes()


def _matrix(numbers: npt.ArrayLike) -> bytes:
    stored = np.ascontiguousarray(numbers, "<f4")
    return b"FM " + _integer(stored.shape[0]) + _integer(stored.shape[1]) + stored.tobytes()


def _integers(numbers: Iterable[int]) -> bytes:
    stored = np.asarray(list(numbers), "<i4")
    return b"\x04" + struct.pack("<i", len(stored)) + stored.tobytes()


def _named(kind: str, *fields: tuple[str, bytes]) -> bytes:
    return _token(f"<{kind}>") + b"".join(_token(f"<{name}>") + value for name, value in fields) + _token(f"</{kind}>")


def affine(weights: Matrix, bias: Matrix) -> bytes:
    """Weights (out, in), bias (out,)."""
    return _named("FixedAffineComponent", ("LinearParams", _matrix(weights)), ("BiasParams", _vector(bias)))


def rectifier(width: int) -> bytes:
    """max(0, x)."""
    none = _vector([])
    return _named(
        "RectifiedLinearComponent",
        ("Dim", _integer(width)), ("ValueAvg", none), ("DerivAvg", none), ("Count", _real(0)), ("OderivRms", none),
        ("OderivCount", _real(0)), ("NumDimsSelfRepaired", _real(0)), ("NumDimsProcessed", _real(0)),
    )  # fmt: skip


def normaliser(mean: Matrix, variance: Matrix, epsilon: float) -> bytes:
    """(x - mean) / sqrt(variance + epsilon)."""
    width = len(mean)
    return _named(
        "BatchNormComponent",
        ("Dim", _integer(width)), ("BlockDim", _integer(width)), ("Epsilon", _real(epsilon)), ("TargetRms", _real(1)),
        ("TestMode", b"T"), ("Count", _real(1000)), ("StatsMean", _vector(mean)), ("StatsVar", _vector(variance)),
    )  # fmt: skip


def passing(width: int) -> bytes:
    """The sum that stands in its descriptor, unchanged."""
    return _named("NoOpComponent", ("Dim", _integer(width)), ("BackpropScale", _real(1)))


def write_model(
    file: Path, pdfs: Sequence[tuple[int, int]], inputs: int, layers: Sequence[Component], context: tuple[int, int]
) -> None:
    """The whole file.

    Args:
        file: where.
        pdfs: for phone 1, 2, ... which outputs score its first frame and a further one.
        inputs: width of the network's input.
        layers: in order; the last one is the output.
        context: input frames that an output looks back and ahead.
    """
    phones = range(1, len(pdfs) + 1)
    half = float(np.log(0.5))
    state = _integer(0) + _integer(1) + _integer(2) + _integer(0) + _real(0.5) + _integer(1) + _real(0.5)
    end = _integer(-1) + _integer(-1) + _integer(0)
    topology = (
        _integers(phones)
        + _integers([-1, *(0 for _ in phones)])
        + _integer(-1)
        + _integer(1)
        + _integer(2)
        + state
        + end
    )
    tuples = b"".join(
        _integer(number) for phone, pair in zip(phones, pdfs, strict=True) for number in (phone, 0, *pair)
    )
    transitions = (
        _token("<TransitionModel>") + _token("<Topology>") + topology + _token("</Topology>")
        + _token("<Tuples>") + _integer(len(pdfs)) + tuples + _token("</Tuples>")
        + _token("<LogProbs>") + _vector([0.0] + [half] * (2 * len(pdfs))) + _token("</LogProbs>")
        + _token("</TransitionModel>")
    )  # fmt: skip
    lines = [
        f"input-node name=input dim={inputs}",
        *(f"component-node name={layer.name} component={layer.name} input={layer.given}" for layer in layers),
        f"output-node name=output input={layers[-1].name} objective=linear",
    ]
    network = (
        _token("<Nnet3>") + b"\n" + ("\n".join(lines) + "\n\n").encode()
        + _token("<NumComponents>") + _integer(len(layers))
        + b"".join(_token("<ComponentName>") + _token(layer.name) + layer.stored for layer in layers)
        + _token("</Nnet3>") + _token("<LeftContext>") + _integer(context[0])
        + _token("<RightContext>") + _integer(context[1]) + _token("<Priors>") + _vector([])
    )  # fmt: skip
    file.write_bytes(b"\0B" + transitions + network)
