"""Trains the acoustic network on corpora made by `models.training.corpora`; short runs, each from a checkpoint."""

import argparse
import math
import random
import time
from collections import Counter
from pathlib import Path

import torch
from torch import Tensor
from torch.nn import functional

from models.training import shards
from models.training.features import BINS, FRAME, SHIFT, Cepstra
from models.training.network import Network
from models.training.objective import information, said_alone
from models.training.roughening import quiet, roughened
from models.training.sounds import SYNTHETIC, Batch, Chain, Sounds, Speller, batches, followers, load, often

WARPS = (0.88, 0.92, 0.96, 1.0, 1.0, 1.0, 1.04, 1.08, 1.12)


@torch.no_grad()
def spread_evenly(sound: Tensor, chain: Chain, frames: Tensor, longest: int) -> Tensor:
    """What to score in each frame if every phone took the same time. Shape (batch, longest), -1 past the end.

    Between the first and the last loud frame (35 dB under the loudest) stand the phones that may not be left out;
    before and after is silence.
    """
    phones, optional, sizes = chain
    loud = functional.avg_pool1d(sound.square()[:, None], 480, 480, ceil_mode=True)[:, 0, :longest]
    loud = functional.pad(loud, (0, longest - loud.shape[1]))
    at = torch.arange(longest, device=sound.device)
    inside = (loud > loud.amax(1, keepdim=True) * 10**-3.5) & (at[None] < frames[:, None])
    first = torch.where(inside, at, longest).amin(1)
    last = torch.where(inside, at, -1).amax(1) + 1
    targets = torch.full((len(sound), longest), -1, device=sound.device)
    for row in range(len(sound)):
        said = phones[row, : sizes[row]][~optional[row, : sizes[row]]].long()
        targets[row, : frames[row]] = 1
        size = int(last[row] - first[row])
        if len(said) and size >= len(said):
            where = torch.arange(size, device=sound.device) * len(said) // size
            begins = torch.cat([where.new_ones(1), where[1:] != where[:-1]]).bool()
            targets[row, first[row] : last[row]] = 2 * said[where] + (~begins).long()
    return targets


@torch.no_grad()
def words_right(network: Network, cepstra: Cepstra, sounds: Sounds, device: str) -> dict[str, str]:
    """Of single words and short texts, by source: how many score best among all such texts of that source."""
    network.eval()
    speller = Speller(random.Random(0))
    found: dict[str, Counter[bool]] = {}
    rivals = sorted({clip.text for clip in sounds.clips if clip.text and len(clip.text.split()) <= 2})[:120]
    for at, clip in enumerate(sounds.clips):
        if clip.text not in rivals:
            continue
        sound, _ = sounds.batch([at])
        sound = functional.pad(sound, (4800, 4800)) * 20000 + torch.randn(1, sound.shape[1] + 9600, device=device)
        scores = network(cepstra(sound)).expand(len(rivals), -1, -1)
        chain = speller.chains([shards.Clip(text, "", "", "") for text in rivals], device)
        frames = torch.full((len(rivals),), scores.shape[1], dtype=torch.int32, device=device)
        best = rivals[int(said_alone(scores, *chain, frames).argmax())]
        found.setdefault(clip.source.split(" ")[0][-28:], Counter())[best == clip.text] += 1
    network.train()
    return {source: f"{right[True]}/{right.total()}" for source, right in found.items()}


def _parts(asked: argparse.Namespace, device: str) -> tuple[Sounds, Sounds]:
    """What is trained on, and what real people of whom nothing is trained on said."""
    everything = load(asked.corpus, device)
    kept = [shards.for_tuning(clip.speaker) for clip in everything.clips]
    real = [clip.source not in SYNTHETIC for clip in everything.clips]
    return (
        everything.part([at for at, tuning in enumerate(kept) if not tuning]),
        everything.part([at for at, tuning in enumerate(kept) if tuning and real[at]]),
    )


def _network(asked: argparse.Namespace, training: Sounds, plain: Cepstra, device: str) -> Network:
    """From a checkpoint, or new, with the scale of its input as the sounds have it."""
    network = Network().to(device)
    if asked.begin_from:
        network.load_state_dict(torch.load(asked.begin_from, map_location=device)["network"])
    else:
        sound, _ = training.batch(random.Random(asked.seed).sample(range(len(training.clips)), 200))
        seen = plain(sound * 10_000, dither=1.0).reshape(-1, BINS)
        network.mean.copy_(seen.mean(0))
        network.spread.copy_(seen.std(0))
    return network


class Trainer:
    """One run: batches in, steps of the optimiser out.

    Args:
        asked: the command line.
        training: what is trained on.
        device: of the sounds.
    """

    def __init__(self, asked: argparse.Namespace, training: Sounds, device: str) -> None:
        self._asked, self._training, self._device = asked, training, device
        self._speller = Speller(random.Random(asked.seed))
        self.moves, self.begin = (each.to(device) for each in followers(training, self._speller))
        self._recorded, self._talk = training.noise(), training.speech()
        self._cepstra, self.plain = Cepstra(WARPS).to(device), Cepstra().to(device)
        self.network = _network(asked, training, self.plain, device)
        self._optimiser = torch.optim.AdamW(
            self.network.parameters(), lr=asked.rate, betas=(0.9, 0.98), weight_decay=1e-3
        )
        self._gained = self._frames = torch.zeros((), device=device)
        self._step = 0

    def step(self, batch: Batch, passed: float) -> None:
        """Learn from these clips; `passed` is the share of the run that is over."""
        for group in self._optimiser.param_groups:
            group["lr"] = (
                self._asked.rate * min(1.0, (self._step + 1) / 200) * 0.5 * (1.02 + math.cos(math.pi * passed))
            )
        sound, lengths = self._training.batch(batch.wanted, batch.room)
        with torch.no_grad():
            clean = passed < self._asked.clean
            sound, lengths = quiet(sound, lengths) if clean else self._roughened(sound, lengths)
            given = self._cepstra(sound, dither=1.0, drop=_dropped(len(sound), self._device))
        chain = self._speller.chains([self._training.clips[at] for at in batch.wanted], self._device)
        frames = ((((lengths - FRAME) // SHIFT + 1) + 2) // 3).int()
        with torch.autocast(self._device, torch.bfloat16):
            scores = self.network(given)
        if passed < self._asked.flat:
            even = spread_evenly(sound, chain, frames, scores.shape[1])
            loss = functional.cross_entropy(scores.flatten(0, 1), even.flatten(), ignore_index=-1)
        else:
            loss = self._information(scores, chain, frames)
        self._optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(self.network.parameters(), 5.0)
        self._optimiser.step()
        self._step += 1
        if self._step % 500 == 0:
            self.save(self._asked.to)
        if self._step % 200 == 0:
            learned = float(self._gained / self._frames.clamp(min=1))
            print(f"step {self._step}, {passed:.0%}: information a frame {learned:.4f}", flush=True)
            self._gained = self._frames = torch.zeros((), device=self._device)

    def _roughened(self, sound: Tensor, lengths: Tensor) -> tuple[Tensor, Tensor]:
        return roughened(sound, lengths, self._recorded, self._talk)

    def _information(self, scores: Tensor, chain: Chain, frames: Tensor) -> Tensor:
        said, anything = information(scores, self.moves, self.begin, *chain, frames)
        inside = (torch.arange(scores.shape[1], device=self._device)[None] < frames[:, None]).float()
        small = (scores.square().mean(2) * inside).sum() / frames.sum()
        self._gained = self._gained + (said - anything).sum().detach()
        self._frames = self._frames + frames.sum()
        return (anything.detach() - said).sum() / frames.sum() + 5e-4 * small

    def save(self, file: Path) -> None:
        """The checkpoint."""
        kept = {"network": self.network.state_dict(), "moves": self.moves.cpu(), "begin": self.begin.cpu()}
        torch.save(kept, file)


def _dropped(count: int, device: str) -> Tensor:
    """Up to six neighbouring bins of each sound are silenced (SpecAugment; Park and others, 2019)."""
    first = torch.randint(0, BINS, (count, 1), device=device)
    bins = torch.arange(BINS, device=device)[None]
    return (bins >= first) & (bins < first + torch.randint(0, 7, (count, 1), device=device))


def train(asked: argparse.Namespace) -> None:
    """So many minutes of training; then the checkpoint, and how many short texts are told apart."""
    device = "cuda"
    torch.manual_seed(asked.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    chance = random.Random(asked.seed)
    training, tuning = _parts(asked, device)
    print(f"{training.hours:.2f} h to train on; {len(tuning.clips)} clips of tuning speakers", flush=True)
    trainer = Trainer(asked, training, device)
    began = time.monotonic()
    passed = 0.0
    while passed < 1:
        for batch in batches(training, often(training, asked.synthetic, chance), asked.seconds, chance):
            passed = (time.monotonic() - began) / 60 / asked.minutes
            if passed >= 1:
                break
            trainer.step(batch, passed)
    trainer.save(asked.to)
    print("tuning speakers", words_right(trainer.network, trainer.plain, tuning, device), flush=True)
    for held in asked.held:
        print(held.name, words_right(trainer.network, trainer.plain, load([held], device), device), flush=True)


def main() -> None:
    """The command line; README.md shows it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--corpus", type=Path, action="append", required=True, help="a corpus without its ending")
    parser.add_argument("--held", type=Path, action="append", default=[], help="a corpus to measure on alone")
    parser.add_argument("--to", type=Path, required=True)
    parser.add_argument("--begin-from", type=Path)
    parser.add_argument("--minutes", type=float, default=5.0)
    parser.add_argument(
        "--clean", type=float, default=0.0, help="share of the run, at its beginning, without rooms and noise"
    )
    parser.add_argument("--flat", type=float, default=0.0, help="share of the run that begins with every phone as long")
    parser.add_argument("--rate", type=float, default=1.5e-3)
    parser.add_argument("--seconds", type=float, default=500.0, help="of sound in a batch")
    parser.add_argument("--synthetic", type=float, default=0.5, help="share of espeak, flite in a round")
    parser.add_argument("--seed", type=int, default=1)
    train(parser.parse_args())


if __name__ == "__main__":
    main()
