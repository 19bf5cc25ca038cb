"""The wishes that a plan in hand was made from."""

from functools import lru_cache

from plans.files import read_wishes
from plans.pattern import Plan
from plans.wishes import Wishes


def wishes_of(plan: Plan) -> Wishes | None:
    """As the plan file held them; None for a piece written by hand, or a plan older than this was kept."""
    return _read(plan.wishes) if plan.wishes else None


@lru_cache(maxsize=8)
def _read(text: str) -> Wishes | None:
    found = read_wishes(text)
    return found if isinstance(found, Wishes) else None
