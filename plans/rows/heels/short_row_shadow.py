"""A short-row heel with shadow twins."""

from plans.rows.hourglasses import short_row_heel
from plans.rows.short_rows import SHADOW

HEEL = short_row_heel(SHADOW)
