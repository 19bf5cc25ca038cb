"""The second opinion on what was heard: whether it can be had here and now, and what is told where it cannot."""

from collections.abc import Callable

from models.errors import SecondOpinionMissing
from models.second_opinion import SLOWEST_S, Scorer, SecondOpinion, seconds_needed
from plans.conversation import Problem

LANGUAGE = "en"
"""Of the network that is asked."""

SECOND_LOOK_PROBLEMS: dict[str, frozenset[str]] = {
    "second-opinion-gone": frozenset({"what", "cure"}),              # remembered, but not here: listens without it
    "second-opinion-slow": frozenset({"milliseconds", "most"}),      # listens without it
    "second-opinion-foreign": frozenset(),                           # it knows English only: listens without it
}  # fmt: skip
"""Every key that can be said about it, with the names of its values."""


def second_opinion(
    load: Callable[[], Scorer], language: str, *, live: bool, measure: Callable[[Scorer], float] = seconds_needed,
) -> tuple[SecondOpinion | None, Problem | None]:  # fmt: skip
    """Whom to ask where the ears are unsure, None for nobody; and why nobody, though somebody was wanted.

    Args:
        load: the other network; raises SecondOpinionMissing.
        language: what is heard in.
        live: whether somebody waits for the answer, so that a slow one is worse than none.
        measure: how many seconds an answer takes.

    Raises:
        ModelBroken: the network's model cannot be loaded.
    """
    if language != LANGUAGE:
        return None, Problem.of("second-opinion-foreign")
    try:
        scorer = load()
    except SecondOpinionMissing as missing:
        return None, Problem.of("second-opinion-gone", **missing.values)
    needed_s = measure(scorer) if live else 0.0
    if needed_s > SLOWEST_S:
        needed, most = round(1_000 * needed_s), round(1_000 * SLOWEST_S)
        return None, Problem.of("second-opinion-slow", milliseconds=needed, most=most)
    return SecondOpinion(scorer), None
