"""A toe of short rows with German double stitches, over a provisional cast-on."""

from plans.rows.hourglasses import short_row_toe
from plans.rows.short_rows import GERMAN

TOE = short_row_toe(GERMAN)
