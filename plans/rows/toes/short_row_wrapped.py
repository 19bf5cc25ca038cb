"""A toe of short rows with wrapped stitches, over a provisional cast-on."""

from plans.rows.hourglasses import short_row_toe
from plans.rows.short_rows import WRAP

TOE = short_row_toe(WRAP)
