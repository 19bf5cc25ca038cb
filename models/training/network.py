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
        """`frames`: (batch, time, width); `step`: input frames between two of them."""
        back, ahead = self.back // step, self.ahead // step
        second = _tapped(_tapped(frames, self.down, back), self.up, back)
        kept = frames[:, (back if ahead else 2 * back) : frames.shape[1] - ahead] if back else frames
        return normed(self.norm, functional.relu(second)) + BYPASS * kept


def _tapped(frames: Tensor, layer: nn.Conv1d, apart: int) -> Tensor:
    """A convolution of one tap or two as products of matrices: much faster where time is not the last dimension."""
    if layer.kernel_size[0] == 1:
        return functional.linear(frames, layer.weight[..., 0], layer.bias)
    before, after = frames[:, : frames.shape[1] - apart], frames[:, apart:]
    return functional.linear(before, layer.weight[..., 0], layer.bias) + functional.linear(after, layer.weight[..., 1])


def normed(norm: nn.BatchNorm1d, frames: Tensor) -> Tensor:
    """Each of the last dimension over all others."""
    return norm(frames.flatten(0, -2)).view(frames.shape)


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
        frames = self.splice(frames).transpose(1, 2)
        frames = normed(self.first_norm, functional.relu(_tapped(frames, self.first, 0)))
        step = 1
        for layer, (back, _) in zip(self.layers, OFFSETS, strict=True):
            if back == 3 and step == 1:
                frames, step = frames[:, ::3], 3
            frames = layer(frames, step)
        frames = self.drop(frames.transpose(1, 2)).transpose(1, 2)
        frames = normed(self.wide_norm, functional.relu(_tapped(_tapped(frames, self.neck, 0), self.wide, 0)))
        with torch.autocast(frames.device.type, enabled=False):
            scores = _tapped(normed(self.small_norm, _tapped(frames.float(), self.small, 0)), self.out, 0)
        return scores[:, : (count + 2) // 3]
