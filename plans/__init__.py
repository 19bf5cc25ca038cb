"""Sock knitting: measurements in, proven rounds out, and the engine that calls them. Pure."""
