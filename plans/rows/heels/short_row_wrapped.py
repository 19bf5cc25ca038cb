"""A short-row heel with wrapped stitches."""

from plans.rows.hourglasses import short_row_heel
from plans.rows.short_rows import WRAP

HEEL = short_row_heel(WRAP)
