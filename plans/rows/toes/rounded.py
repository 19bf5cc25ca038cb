"""A rounded toe: one plain round, increases in every round, and the last three after 2, 2 and 3 plain rounds.

The schedule printed for 56, 60 and 64 stitches in "Making a rounded toe", alpacadirect.com; with fewer than four
increases it keeps the end of that schedule.
"""

from plans.rows.parts import Step, ToePart
from plans.rows.toes import both_edges

_END = (2, 2, 3)
"""Plain rounds before each of the last increases."""


def _steps(increases: int) -> tuple[Step, ...]:
    slow = _END[-increases:]
    fast = (False,) + (True,) * (increases - len(slow)) if increases > len(slow) else ()
    return both_edges(fast + tuple(step for plain in slow for step in (False,) * plain + (True,)))


TOE = ToePart(steps=_steps, tip_of_half=(3, 16))
