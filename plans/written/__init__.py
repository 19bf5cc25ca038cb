"""Patterns written in the usual abbreviations: read into rows, and printed from the rows of any plan.

`reading` and `printing` know nothing of each other, so that each is a check on the other.
"""
