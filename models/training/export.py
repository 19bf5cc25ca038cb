"""From a checkpoint to the folder that `vosk.Model` loads: network, graph, options; or the graph alone anew."""

import argparse
import json
from collections.abc import Iterator, Mapping
from pathlib import Path

import numpy as np
import numpy.typing as npt
import torch

from models.training import graph, kaldi_files, lexicon
from models.training.features import BINS, CONF
from models.training.kaldi_files import Component
from models.training.network import BYPASS, EPSILON, OFFSETS, Network

MODEL_CONF = """--min-active=200
--max-active={active}
--beam=13.0
--lattice-beam={lattice}
--acoustic-scale=1.0
--frame-subsampling-factor=3
--frames-per-chunk=12
--phone-determinize=false
--endpoint.silence-phones=1
--endpoint.rule2.min-trailing-silence=0.5
--endpoint.rule3.min-trailing-silence=1.0
--endpoint.rule4.min-trailing-silence=2.0
"""

Array = npt.NDArray[np.float32]


def _spliced(weights: Array) -> Array:
    """(out, in, taps) as one matrix over the inputs one after the other."""
    return weights.transpose(0, 2, 1).reshape(len(weights), -1)


def layers(stored: Mapping[str, Array]) -> Iterator[Component]:
    """The trained network as nnet3 components; the scaling of its input stands in its first layer."""

    def affine(name: str, weights: str, bias: str | None, given: str) -> Component:
        matrix = stored[weights]
        return Component(
            name,
            kaldi_files.affine(_spliced(matrix), stored[bias] if bias else np.zeros(len(matrix), np.float32)),
            given,
        )

    def rectified(name: str, norm: str, given: str) -> Iterator[Component]:
        mean = stored[f"{norm}.running_mean"]
        yield Component(f"{name}.relu", kaldi_files.rectifier(len(mean)), given)
        yield Component(
            f"{name}.norm", kaldi_files.normaliser(mean, stored[f"{norm}.running_var"], EPSILON), f"{name}.relu"
        )

    scaled = stored["splice.weight"] / stored["spread"][None, :, None]
    shifted = stored["splice.bias"] - (scaled * stored["mean"][None, :, None]).sum((1, 2))
    yield Component(
        "splice", kaldi_files.affine(_spliced(scaled), shifted), "Append(Offset(input, -1), input, Offset(input, 1))"
    )
    yield affine("first", "first.weight", "first.bias", "splice")
    yield from rectified("first", "first_norm", "first")
    before = "first.norm"
    width = len(stored["first.bias"])
    for number, (back, ahead) in enumerate(OFFSETS):
        name = f"layer{number}"
        yield affine(f"{name}.down", f"layers.{number}.down.weight", None,
                     f"Append(Offset({before}, {-back}), {before})" if back else before)  # fmt: skip
        spread = (
            f"Append({name}.down, Offset({name}.down, {ahead}))"
            if ahead
            else f"Append(Offset({name}.down, {-back}), {name}.down)"
        )
        yield affine(
            f"{name}.up", f"layers.{number}.up.weight", f"layers.{number}.up.bias", spread if back else f"{name}.down"
        )
        yield from rectified(name, f"layers.{number}.norm", f"{name}.up")
        yield Component(f"{name}.sum", kaldi_files.passing(width), f"Sum(Scale({BYPASS}, {before}), {name}.norm)")
        before = f"{name}.sum"
    yield affine("neck", "neck.weight", None, before)
    yield affine("wide", "wide.weight", "wide.bias", "neck")
    yield from rectified("wide", "wide_norm", "wide")
    yield affine("small", "small.weight", None, "wide.norm")
    mean = stored["small_norm.running_mean"]
    yield Component("small.norm", kaldi_files.normaliser(mean, stored["small_norm.running_var"], EPSILON), "small")
    yield affine("scores", "out.weight", "out.bias", "small.norm")


FOLLOWERS = Path(__file__).with_name("followers.json")
"""How likely each phone begins and follows each other, of the last model exported: all that its graph needs of it."""


def export(checkpoint: Path, folder: Path, conf: str) -> None:
    """Write network and options; `conf` is the text of conf/model.conf."""
    trained = torch.load(checkpoint, map_location="cpu")
    network = Network()
    network.load_state_dict(trained["network"])
    stored = {name: value.numpy() for name, value in network.state_dict().items()}
    for part in ("am", "conf"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    kaldi_files.write_model(folder / "am" / "final.mdl", graph.PDFS, BINS, list(layers(stored)), network.context)
    (folder / "conf" / "mfcc.conf").write_text(CONF)
    (folder / "conf" / "model.conf").write_text(conf)
    rounded = {name: trained[name].double().round(decimals=4).tolist() for name in ("begin", "moves")}
    FOLLOWERS.write_text(json.dumps(rounded) + "\n")


def connect(phrases: Path, costs: graph.Costs, folder: Path) -> None:
    """Write the graph for the words of these phrases."""
    words = lexicon.for_phrases(phrases)
    followers = json.loads(FOLLOWERS.read_text())
    graph.build(words, followers["moves"], followers["begin"], costs, folder)
    print(
        f"{len(words)} words, {sum(file.stat().st_size for file in folder.rglob('*') if file.is_file()) / 1e6:.1f} MB"
    )


def main() -> None:
    """The command line; README.md shows it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint", type=Path, nargs="?", help="left out: the graph alone, for other phrases")
    parser.add_argument("--phrases", type=Path, required=True)
    parser.add_argument("--to", type=Path, required=True)
    parser.add_argument("--unknown", type=float, default=4.0)
    parser.add_argument("--phone", type=float, default=0.0)
    parser.add_argument("--active", type=int, default=1000)
    parser.add_argument("--lattice", type=float, default=4.0)
    asked = parser.parse_args()
    costs = graph.Costs(asked.unknown, asked.phone)
    if asked.checkpoint:
        export(asked.checkpoint, asked.to, MODEL_CONF.format(active=asked.active, lattice=asked.lattice))
    connect(asked.phrases, costs, asked.to)


if __name__ == "__main__":
    main()
