"""Speech recognition: phrases in, words out. Knows no knitting."""

PART_OF = "roundcaller"
"""Whose package this is; looked for at the start, as another distribution may use the same name."""
