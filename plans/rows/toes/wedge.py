"""A wedge: plain, increase, plain, increase: 2k rounds (common practice)."""

from plans.rows.parts import ToePart
from plans.rows.toes import both_edges

TOE = ToePart(steps=lambda increases: both_edges((False, True) * increases), tip_of_half=(3, 16))
