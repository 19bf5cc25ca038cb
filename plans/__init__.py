"""Sock knitting: measurements in, proven rounds out, and the engine that calls them. Pure."""

PART_OF = "roundcaller"
"""Whose package this is; looked for at the start, as another distribution may use the same name."""
