"""The acoustic network: a small factored TDNN, three frames in for one out, whose layers Kaldi's nnet3 can express.

Factored time-delay layers after Povey and others, "Semi-orthogonal low-rank matrix factorization for deep neural
networks", 2018. The last layers look back only, so that an answer waits for 19 frames (0.19 s) of what follows.
"""

import torch
from torch import Tensor, nn
from torch.nn import functional

from models.training.features import BINS
from models.training.lexicon import PHONES

OUTPUTS = 2 * len(PHONES)
"""For each phone the score of its first frame, then of each further frame."""
EPSILON = 1e-3
BYPASS = 0.66
OFFSETS = ((1, 1),) * 3 + ((0, 0),) + ((3, 3),) * 5 + ((3, 0),) * 5
"""For each layer how many frames its two halves look back and ahead."""


def _norm(width: int) -> nn.BatchNorm1d:
    return nn.BatchNorm1d(width, eps=EPSILON, affine=False, momentum=0.05)


class Factored(nn.Module):
    """Wide to narrow, over this frame and one before; narrow to wide, over this frame and one after or before."""

    def __init__(self, width: int, narrow: int, back: int, ahead: int) -> None:
        super().__init__()
        self.back, self.ahead = back, ahead
        taps = 2 if back else 1
        self.down = nn.Conv1d(width, narrow, taps, bias=False)
        self.up = nn.Conv1d(narrow, width, taps)
        self.norm = _norm(width)

    def forward(self, frames: Tensor, step: int) -> Tensor:
        """`step`: input frames between two of `frames`."""
        back, ahead = self.back // step, self.ahead // step
        first = functional.conv1d(frames, self.down.weight, dilation=max(back, 1))
        second = functional.conv1d(first, self.up.weight, self.up.bias, dilation=max(back, 1))
        kept = frames[..., (back if ahead else 2 * back) : frames.shape[2] - ahead] if back else frames
        return self.norm(functional.relu(second)) + BYPASS * kept


class Network(nn.Module):
    """Cepstra (batch, frames, BINS) to scores (batch, ceil(frames / 3), OUTPUTS)."""

    def __init__(self, width: int = 768, narrow: int = 64, outputs: int = OUTPUTS) -> None:
        super().__init__()
        self.register_buffer("mean", torch.zeros(BINS))
        self.register_buffer("spread", torch.ones(BINS))
        self.splice = nn.Conv1d(BINS, 220, 3)
        self.first = nn.Conv1d(220, width, 1)
        self.first_norm = _norm(width)
        self.layers = nn.ModuleList(Factored(width, narrow, back, ahead) for back, ahead in OFFSETS)
        self.neck = nn.Conv1d(width, narrow, 1, bias=False)
        self.wide = nn.Conv1d(narrow, width, 1)
        self.wide_norm = _norm(width)
        self.small = nn.Conv1d(width, narrow, 1, bias=False)
        self.small_norm = _norm(narrow)
        self.out = nn.Conv1d(narrow, outputs, 1)
        nn.init.zeros_(self.out.weight)
        nn.init.zeros_(self.out.bias)
        self.drop = nn.Dropout1d(0.05)

    @property
    def context(self) -> tuple[int, int]:
        """Frames that one output looks back and ahead."""
        back = 1 + sum(back if ahead or not back else 2 * back for back, ahead in OFFSETS)
        return back, 1 + sum(ahead for _, ahead in OFFSETS)

    def forward(self, cepstra: Tensor) -> Tensor:
        """Edge frames stand for what is before and after."""
        count = cepstra.shape[1]
        frames = ((cepstra - self.mean) / self.spread).transpose(1, 2)
        frames = functional.pad(frames, self.context, mode="replicate")
        frames = self.first_norm(functional.relu(self.first(self.splice(frames))))
        step = 1
        for layer, (back, _) in zip(self.layers, OFFSETS, strict=True):
            if back == 3 and step == 1:
                frames, step = frames[..., ::3], 3
            frames = layer(frames, step)
        frames = self.drop(frames)
        frames = self.wide_norm(functional.relu(self.wide(self.neck(frames))))
        return self.out(self.small_norm(self.small(frames))).transpose(1, 2)[:, : (count + 2) // 3]
