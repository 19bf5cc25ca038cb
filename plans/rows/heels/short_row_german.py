"""A short-row heel with German double stitches."""

from plans.rows.hourglasses import short_row_heel
from plans.rows.short_rows import GERMAN

HEEL = short_row_heel(GERMAN)
