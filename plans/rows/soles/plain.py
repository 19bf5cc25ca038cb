"""A plain sole."""

from plans.rows.parts import SolePart
from plans.rows.rounds import plain

SOLE = SolePart(ops=lambda _, half: plain(half), look=lambda _: r"k \d+")
