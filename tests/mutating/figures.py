"""What the faults that were tried say about the tests."""

import re
import tomllib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import sqrt
from pathlib import Path

from tests.mutating.mutants import Mutant
from tests.mutating.trying import Outcome

EQUIVALENT = Path(__file__).parent / "equivalent.toml"
_Z = 1.959964
"""95 % of a normal distribution lie within so many standard deviations."""


@dataclass(frozen=True)
class Same:
    """A fault that changes nothing that anybody could notice, and why; a star stands for anything."""

    module: str
    text: str
    before: str
    after: str
    reason: str

    def means(self, mutant: Mutant) -> bool:
        """Whether it is this fault, wherever its line has gone to."""
        own = (self.module, self.text, self.before, self.after)
        its = (mutant.module, mutant.text, mutant.before, mutant.after)
        return all(_fits(one, other) for one, other in zip(own, its, strict=True))


def _fits(told: str, found: str) -> bool:
    return told == found or re.fullmatch(".*".join(map(re.escape, told.split("*"))), found) is not None


def equivalents() -> tuple[Same, ...]:
    """All that are known."""
    return tuple(Same(**each) for each in tomllib.loads(EQUIVALENT.read_text(encoding="utf-8"))["same"])


def interval(hits: int, tries: int) -> tuple[float, float]:
    """The share's 95 % interval after Wilson (1927), Journal of the American Statistical Association 22."""
    if tries == 0:
        return 0.0, 1.0
    share = hits / tries
    middle = share + _Z**2 / (2 * tries)
    half = _Z * sqrt(share * (1 - share) / tries + _Z**2 / (4 * tries**2))
    return (middle - half) / (1 + _Z**2 / tries), (middle + half) / (1 + _Z**2 / tries)


def chosen(mutants: Sequence[Mutant], share: float, seed: int) -> list[Mutant]:
    """A share of them, from all modules alike: of every block of neighbours one.

    Seeds in a row choose different ones: with a share of 1/20 any 20 of them choose all, each once.
    """
    block = max(1, round(1 / share))
    return [each for number, each in enumerate(mutants) if number % block == _place(number // block, block, seed)]


def _place(number: int, block: int, seed: int) -> int:
    """A place in that block, the next one with the next seed; another start in every block (Knuth's multiplier)."""
    return (number * 2654435761 % 2**32 // 4096 + seed) % block


def telling(outcomes: Sequence[Outcome]) -> list[Outcome]:
    """Without the survivors that change nothing."""
    same = equivalents()
    return [each for each in outcomes if each.result != "survived" or not _why(each.mutant, same)]


def share_killed(outcomes: Sequence[Outcome]) -> float:
    """0 to 1; a fault that runs into a time limit is killed."""
    return sum(each.result != "survived" for each in outcomes) / len(outcomes) if outcomes else 0.0


def told(outcomes: Sequence[Outcome], share: float, seed: int) -> Iterable[str]:
    """The lines that are printed."""
    same = equivalents()
    known = {id(each): _why(each.mutant, same) for each in outcomes}
    counted = telling(outcomes)
    yield f"Faults tried: {len(outcomes)} (share {share:g}, seed {seed})"
    yield f"  with those that change nothing:    {_share(outcomes)}"
    yield f"  without them:                      {_share(counted)}"
    yield f"  killed by a time limit:            {sum(each.result == 'timed out' for each in outcomes)}"
    yield "By module (tried, killed, survived, of these without any difference):"
    for module in sorted({each.mutant.module for each in outcomes}):
        here = [each for each in outcomes if each.mutant.module == module]
        lived = [each for each in here if each.result == "survived"]
        nothing = sum(bool(known[id(each)]) for each in lived)
        yield f"  {module:44}{len(here):6}{len(here) - len(lived):6}{len(lived):6}{nothing:6}"
    yield "Survivors:"
    for each in outcomes:
        if each.result == "survived" and not known[id(each)]:
            left = f", {each.left} more took too long" if each.left else ""
            yield f"  {each.mutant}  [{each.tried} tests{left}]"
    yield "Survivors that change nothing:"
    for each in outcomes:
        if each.result == "survived" and known[id(each)]:
            yield f"  {each.mutant}: {known[id(each)]}"


def _why(mutant: Mutant, same: Iterable[Same]) -> str:
    return next((each.reason for each in same if each.means(mutant)), "")


def _share(outcomes: Sequence[Outcome]) -> str:
    killed = sum(each.result != "survived" for each in outcomes)
    low, high = interval(killed, len(outcomes))
    survived = len(outcomes) - killed
    return f"{killed} killed, {survived} survived: {share_killed(outcomes):.1%} (95 % interval {low:.1%} to {high:.1%})"
