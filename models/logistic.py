"""Logistic regression: how likely something is, by values weighed together."""

import math
from collections.abc import Sequence

_MOST_SURE = 50.0
"""Log odds beyond which nothing is told apart."""


def likelihood(values: Sequence[float], weights: Sequence[float]) -> float:
    """From 0 to 1; the first weight is the constant, then comes one for each value."""
    odds = weights[0] + sum(weight * value for weight, value in zip(weights[1:], values, strict=True))
    return 1.0 / (1.0 + math.exp(-max(-_MOST_SURE, min(_MOST_SURE, odds))))
