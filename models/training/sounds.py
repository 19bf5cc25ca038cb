"""The corpora on the GPU: sounds by batches, words spelled in phones, and how often each comes."""

import itertools
import math
import random
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import torch
from torch import Tensor

from models.training import lexicon, shards

RATE_HZ = shards.RATE_HZ
SYNTHETIC = frozenset({"espeak", "flite", "festival", "kokoro"})
Chain = tuple[Tensor, Tensor, Tensor]
"""Phones in order and which may be left out, both (batch, longest); and how many, (batch,)."""

_NUMBER = {phone: at for at, phone in enumerate(lexicon.PHONES)}
_SHORTEST, _LONGEST = int(0.2 * RATE_HZ), int(9 * RATE_HZ)
_STEP = RATE_HZ // 2
_MOST_OFTEN = 5
"""How often a recording of a real person comes in one round through the data, if few say the same."""


@dataclass(frozen=True)
class Sounds:
    """All clips one after the other on the GPU, and where each begins."""

    samples: Tensor
    starts: Tensor
    lengths: Tensor
    clips: tuple[shards.Clip, ...]

    @property
    def hours(self) -> float:
        """How long all of it lasts."""
        return self.lengths.sum().item() / RATE_HZ / 3600

    def part(self, chosen: Sequence[int]) -> "Sounds":
        """Some of the clips."""
        at = torch.tensor(chosen, dtype=torch.long, device=self.starts.device)
        return Sounds(self.samples, self.starts[at], self.lengths[at], tuple(self.clips[one] for one in chosen))

    def noise(self) -> Tensor:
        """All recordings of noise, one after the other, int16."""
        return self._joined([at for at, clip in enumerate(self.clips) if clip.kind == "noise"])

    def speech(self) -> Tensor:
        """All else, one after the other, int16."""
        return self._joined([at for at, clip in enumerate(self.clips) if clip.kind != "noise"])

    def _joined(self, kept: Sequence[int]) -> Tensor:
        spans = [*zip(self.starts.tolist(), self.lengths.tolist(), strict=True)]
        return torch.cat([self.samples[spans[at][0] : sum(spans[at])] for at in kept])

    def batch(self, wanted: Sequence[int], room: int | None = None) -> tuple[Tensor, Tensor]:
        """Sounds (batch, samples; -1..1) and their lengths; as long as the longest, or `room` samples."""
        at = torch.tensor(wanted, device=self.samples.device)
        lengths = self.lengths[at]
        times = torch.arange(int(lengths.max()) if room is None else room, device=at.device)[None]
        inside = times < lengths[:, None]
        picked = self.samples[(self.starts[at][:, None] + times).clamp(max=len(self.samples) - 1)]
        return torch.where(inside, picked.float() / 32768, 0.0), lengths


def load(stems: Sequence[Path], device: str) -> Sounds:
    """The clips of all corpora that are neither too short nor too long."""
    kept: list[shards.Clip] = []
    heard: list[np.ndarray] = []
    with ThreadPoolExecutor(16) as pool:
        for stem in stems:
            found = shards.clips(stem)
            parts = [found[at::16] for at in range(16)]
            for part, sounds in zip(
                parts, pool.map(lambda part, stem=stem: list(shards.sounds(stem, part)), parts), strict=True
            ):
                for clip, sound in zip(part, sounds, strict=True):
                    if _SHORTEST < len(sound) < _LONGEST:
                        kept.append(clip)
                        heard.append(sound)
    lengths = torch.tensor([len(sound) for sound in heard])
    starts = torch.cumsum(lengths, 0) - lengths
    samples = torch.from_numpy(np.concatenate(heard)).to(device)
    return Sounds(samples, starts.to(device), lengths.to(device), tuple(kept))


class Speller:
    """From words to the chain of phones that may be heard."""

    def __init__(self, chance: random.Random) -> None:
        self._dictionary = lexicon.general()
        self._chance = chance

    def chain(self, clip: shards.Clip) -> tuple[list[int], list[bool]]:
        """Phones in order and which of them may be left out; one of a word's pronunciations, by chance."""
        phones, optional = [0], [bool(clip.text)]
        for word in clip.text.split():
            said = self._chance.choice(self._dictionary[word])
            if clip.british and self._chance.random() < 0.8:
                said = lexicon.british(word, said)
            phones += [_NUMBER[phone] for phone in said] + [0]
            optional += [False] * len(said) + [True]
        return phones, optional

    def chains(self, clips: Sequence[shards.Clip], device: str) -> Chain:
        """As the objective wants them: phones, optional, sizes."""
        made = [self.chain(clip) for clip in clips]
        sizes = np.array([len(phones) for phones, _ in made], np.int32)
        phones, optional = np.zeros((len(made), sizes.max()), np.int32), np.zeros((len(made), sizes.max()), np.bool_)
        for at, (one, free) in enumerate(made):
            phones[at, : len(one)] = one
            optional[at, : len(free)] = free
        return (
            torch.from_numpy(phones).to(device),
            torch.from_numpy(optional).to(device),
            torch.from_numpy(sizes).to(device),
        )


def followers(sounds: Sounds, speller: Speller) -> tuple[Tensor, Tensor]:
    """How likely each phone follows each other, and begins: log probabilities, with a little for what was not seen."""
    pairs = torch.full((len(lexicon.PHONES),) * 2, 0.1)
    begin = torch.full((len(lexicon.PHONES),), 0.1)
    for clip in sounds.clips:
        phones, optional = speller.chain(clip)
        heard = [phone for phone, free in zip(phones, optional, strict=True) if not free or random.random() < 0.4]
        for one, other in itertools.pairwise(heard):
            pairs[one, other] += 1
        if heard:
            begin[heard[0]] += 1
    return (pairs / pairs.sum(1, keepdim=True)).log(), (begin / begin.sum()).log()


@dataclass(frozen=True)
class Batch:
    """Clips of like length, and the samples that each is given: few shapes, so that the GPU plans each once."""

    wanted: list[int]
    room: int


def batches(sounds: Sounds, wanted: Sequence[int], seconds: float, chance: random.Random) -> Iterator[Batch]:
    """Clips by length in steps of half a second, so many seconds a batch, in random order."""
    lengths = sounds.lengths.tolist()
    order = [*wanted]
    chance.shuffle(order)
    shelves: dict[int, list[int]] = {}
    for at in order:
        shelves.setdefault(math.ceil(lengths[at] / _STEP) * _STEP, []).append(at)
    made: list[Batch] = []
    for room, shelf in shelves.items():
        size = max(2, int(seconds * RATE_HZ / (room + 1.2 * RATE_HZ)))
        full = shelf + chance.choices(shelf, k=-len(shelf) % size)
        made += [Batch(full[at : at + size], room) for at in range(0, len(full), size)]
    chance.shuffle(made)
    return iter(made)


def often(sounds: Sounds, synthetic: float, chance: random.Random) -> list[int]:
    """One round through the data: real people several times, what hundreds say once, a share of espeak, flite."""
    said = Counter(clip.text for clip in sounds.clips if clip.source not in SYNTHETIC)
    chosen: list[int] = []
    for at, clip in enumerate(sounds.clips):
        if clip.source in SYNTHETIC:
            chosen += [at] * (clip.source == "kokoro" or chance.random() < synthetic)
        else:
            chosen += [at] * max(
                1, round(_MOST_OFTEN / (1 + said[clip.text] / 20) * (0.5 if clip.kind == "phrase" else 1))
            )
    return chosen
