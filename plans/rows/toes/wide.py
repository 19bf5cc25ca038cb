"""A wide toe: half of each half is cast on, then plain, increase, plain, increase (common practice)."""

from plans.rows.parts import ToePart
from plans.rows.toes import both_edges

TOE = ToePart(steps=lambda increases: both_edges((False, True) * increases), tip_of_half=(1, 4))
