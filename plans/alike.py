"""What rows made up of the same groups have in common is worked out once for all of them.

The groups of a plan that was just written are the same objects wherever rows are alike; a plan read from elsewhere
only shares less. Groups are frozen, and live as long as their plan.
"""

from collections.abc import Callable
from typing import Generic, TypeVar

from plans.pattern import Group

Ops = tuple[Group, ...]
Found = TypeVar("Found")


class OfOps(Generic[Found]):
    """What a function finds of a row's operations, found once for rows of the very same groups."""

    def __init__(self, find: Callable[[Ops], Found]) -> None:
        self._find = find
        self._found: dict[tuple[int, ...], tuple[Ops, Found]] = {}

    def __call__(self, ops: Ops) -> Found:
        """As the function would say; the operations are kept, so that no other group takes their place in memory."""
        key = tuple(map(id, ops))
        known = self._found.get(key)
        if known is None:
            known = self._found[key] = ops, self._find(ops)
        return known[1]
