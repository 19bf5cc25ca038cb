"""Joins plans and models to ears, voice, clock and disk."""
