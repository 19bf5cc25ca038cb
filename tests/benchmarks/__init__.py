"""Figures of the whole program: times, memory, and how well it hears."""

import os
from typing import NamedTuple


class Counts(NamedTuple):
    """How much is measured.

    Attributes:
        plans: how often a plan is made.
        pairs: of a batch, each for another foot and gauge.
        steps: of a pair that are replied to; -1 for the whole pair.
        answers: commands spoken in real time, with caches cold and again with caches warm.
        room_s: seconds of a room's noise.
        commands: spoken for cost and memory.
        ears: commands a voice, and sentences in all; None for all there are.
    """

    plans: int
    pairs: int
    steps: int
    answers: int
    room_s: int
    commands: int
    ears: int | None


FULL = Counts(plans=15, pairs=1_000, steps=-1, answers=33, room_s=60, commands=22, ears=None)
QUICK = Counts(plans=1, pairs=5, steps=20, answers=2, room_s=4, commands=2, ears=2)


def measure(counts, *, ears=False):
    """All figures, a key a figure; load is the mean number of processes that wanted a core in the last minute."""
    from tests.benchmarks import answering, computing, hearing, listening, speaking

    figures = {
        "cores": os.cpu_count(),
        "load_at_start": round(os.getloadavg()[0], 2),
        **computing.plan_and_proof(counts.plans),
        **computing.growth(counts.plans),
        **computing.batch(counts.pairs),
        **computing.replies(counts.steps),
        **speaking.lengths(counts.steps),
        **answering.answers(counts.answers),
        **listening.cost(counts.room_s, counts.commands),
        **listening.memory(counts.commands),
    }
    if ears:
        figures |= hearing.ears(counts.ears)
    return figures | {"load_at_end": round(os.getloadavg()[0], 2)}
