"""Speech recognition: phrases in, words out. Knows no knitting."""
