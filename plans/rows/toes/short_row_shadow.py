"""A toe of short rows with shadow twins, over a provisional cast-on."""

from plans.rows.hourglasses import short_row_toe
from plans.rows.short_rows import SHADOW

TOE = short_row_toe(SHADOW)
