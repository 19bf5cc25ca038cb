"""A straight, plain leg."""

from plans.rows.parts import LegPart
from plans.rows.rounds import plain

LEG = LegPart(ops=lambda _, __, half: plain(half), look=lambda _, __, ___: r"k \d+")
