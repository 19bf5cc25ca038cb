"""Small sums that several figures need."""

import numpy as np


def percentile(values, percent):
    """None where there are no values."""
    return float(np.percentile(values, percent)) if len(values) else None


def rounded(value, digits=1):
    return None if value is None else round(value, digits)


def share(part, whole):
    return round(part / whole, 4) if whole else None
