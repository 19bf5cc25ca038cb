"""A toe for a left and a right foot: steep beside the big toe, sloping over the little toes.

After one plain round the inner edge increases in every round until it has its width; the outer edge increases in
every second round: 2k rounds (asymmetric toes are common practice; this schedule is our own choice). The second
sock is the mirror image of the first.
"""

from plans.rows.parts import Step, ToePart


def _steps(increases: int) -> tuple[Step, ...]:
    rounds = range(2 * increases)
    return tuple(Step(outer=bool(number % 2), inner=1 <= number <= increases) for number in rounds)


TOE = ToePart(steps=_steps, tip_of_half=(3, 16), mirrored=True)
