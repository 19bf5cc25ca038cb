"""Lattice-free maximum mutual information from a flat start: what was said against anything that could have been.

After Hadian and others, "End-to-end speech recognition using lattice-free MMI", 2018. A phone is one state whose first
frame has a score of its own. What was said: its phones in order, silence optional between words. Anything: any phone
after any other, weighed by how often it follows. The kernels are CUDA (objective.cu); `python -m
models.training.objective` checks them against a plain reckoning in torch.
"""

import math
from functools import cache
from pathlib import Path
from typing import Any

import torch
from torch import Tensor

_NEVER = -1e30


@cache
def _kernels() -> Any:
    from torch.utils.cpp_extension import load_inline  # noqa: PLC0415 - compiles: only where there is a GPU

    source = Path(__file__).with_name("objective.cu").read_text()
    declared = (
        "void chains_pass(torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor,"
        " torch::Tensor, double);\n"
        "void loops_pass(torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor, torch::Tensor,"
        " double);"
    )
    return load_inline("objective", [declared], [source], functions=["chains_pass", "loops_pass"])


class _MutualInformation(torch.autograd.Function):
    @staticmethod
    def forward(ctx: Any, scores: Tensor, moves: Tensor, begin: Tensor, chain: Tensor, optional: Tensor, size: Tensor,
                frames: Tensor) -> tuple[Tensor, Tensor]:  # fmt: skip
        scores = scores.contiguous()
        gradient = torch.zeros_like(scores)
        said, anything = scores.new_empty(len(scores)), scores.new_empty(len(scores))
        _kernels().chains_pass(scores, chain, optional, size, frames, said, gradient, 1.0)
        _kernels().loops_pass(scores, moves, begin, frames, anything, gradient, -1.0)
        possible = (said > -1e20).float()
        ctx.save_for_backward(gradient * possible[:, None, None])
        ctx.mark_non_differentiable(anything)
        return said * possible, anything * possible

    @staticmethod
    def backward(ctx: Any, towards: Tensor, _: Tensor) -> tuple[Tensor | None, ...]:
        return ctx.saved_tensors[0] * towards[:, None, None], None, None, None, None, None, None


def information(scores: Tensor, moves: Tensor, begin: Tensor, chain: Tensor, optional: Tensor, size: Tensor,
                frames: Tensor) -> tuple[Tensor, Tensor]:  # fmt: skip
    """Log scores of what was said and of anything, shape (batch,); the gradient of their difference goes to the first.

    Args:
        scores: (batch, frames, 2 phones).
        moves: (phones, phones), log probabilities of one after the other.
        begin: (phones,), log probabilities of the first.
        chain: (batch, longest), int32: phones in order.
        optional: (batch, longest), bool: which of them may be left out.
        size: (batch,), int32: how many each has.
        frames: (batch,), int32: how long each sound is.
    """
    return _MutualInformation.apply(scores, moves, begin, chain, optional, size, frames)


def said_alone(scores: Tensor, chain: Tensor, optional: Tensor, size: Tensor, frames: Tensor) -> Tensor:
    """Log scores of what was said, shape (batch,), without gradient."""
    total = scores.new_empty(len(scores))
    _kernels().chains_pass(scores.contiguous(), chain, optional, size, frames, total, torch.zeros_like(scores), 1.0)
    return total


def plain_chain(scores: Tensor, chain: list[int], optional: list[bool]) -> Tensor:
    """One sound's log score of what was said, in torch, frame by frame: the check for the kernel."""
    never = scores.new_tensor(_NEVER)
    first, further = scores[:, 0::2], scores[:, 1::2]
    now = [first[0, phone] if at == 0 or (at == 1 and optional[0]) else never for at, phone in enumerate(chain)]
    for frame in range(1, len(scores)):
        entered = [
            torch.logsumexp(torch.stack([now[at - 1] if at else never,
                                         now[at - 2] if at > 1 and optional[at - 1] else never]), 0)
            for at in range(len(chain))
        ]  # fmt: skip
        now = [
            torch.logaddexp(now[at] + further[frame, phone], entered[at] + first[frame, phone])
            for at, phone in enumerate(chain)
        ]
    return torch.logaddexp(now[-1], now[-2]) if optional[-1] and len(now) > 1 else now[-1]


def plain_loop(scores: Tensor, moves: Tensor, begin: Tensor) -> Tensor:
    """One sound's log score of anything, likewise."""
    first, further = scores[:, 0::2], scores[:, 1::2]
    now = begin + first[0]
    for frame in range(1, len(scores)):
        entered = torch.logsumexp(now[:, None] + moves, 0)
        now = torch.logaddexp(now + further[frame], entered + first[frame])
    return torch.logsumexp(now, 0)


def _check() -> None:
    torch.manual_seed(0)
    phones, batch, longest = 40, 5, 14
    frames = torch.tensor([30, 22, 41, 16, 29], dtype=torch.int32)
    sizes = torch.tensor([14, 7, 11, 3, 1], dtype=torch.int32)
    scores = torch.randn(batch, 41, 2 * phones, dtype=torch.float64)
    moves = torch.randn(phones, phones, dtype=torch.float64).log_softmax(1)
    begin = torch.randn(phones, dtype=torch.float64).log_softmax(0)
    chain = torch.randint(1, phones, (batch, longest), dtype=torch.int32)
    optional = torch.zeros(batch, longest, dtype=torch.bool)
    optional[:, 0::4] = True
    optional[torch.arange(batch), sizes - 1] = True
    optional[4] = False
    slow = scores.clone().requires_grad_()
    differences = [
        plain_chain(slow[at, : frames[at]], chain[at, : sizes[at]].tolist(), optional[at, : sizes[at]].tolist())
        - plain_loop(slow[at, : frames[at]], moves, begin)
        for at in range(batch)
    ]
    torch.stack(differences).sum().backward()
    fast = scores.float().cuda().requires_grad_()
    said, anything = information(
        fast, moves.float().cuda(), begin.float().cuda(), chain.cuda(), optional.cuda(), sizes.cuda(), frames.cuda()
    )
    (said - anything).sum().backward()
    worst = (fast.grad.cpu() - slow.grad).abs().max().item()
    apart = (said - anything).detach().cpu() - torch.stack(differences).detach()
    print(f"largest difference: scores {apart.abs().max():.5f}, gradient {worst:.6f}")
    if not math.isfinite(worst) or worst > 1e-3:
        raise SystemExit("the kernels do not agree with the plain reckoning")


if __name__ == "__main__":
    _check()
