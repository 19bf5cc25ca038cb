"""Every key that is said about yarn, with the names of its values; metres, grams, rounds and skeins are integers."""

_NOTES = {
    **{f"yarn-weight-{number}": frozenset() for number in range(8)},
    "yarn-class": frozenset({"classes", "thin", "thick"}),     # `classes` is a list; needles in millimetres, as text
    "yarn-class-and-up": frozenset({"classes", "thin"}),
    "yarn-needed": frozenset({"metres", "grams", "buy_metres", "buy_grams"}),
    "yarn-needed-contrast": frozenset({"metres", "grams", "buy_metres", "buy_grams"}),
    "yarn-assumed": frozenset({"metres"}),                     # to 100 grams
    "yarn-enough": frozenset({"skeins", "grams"}),             # grams left over
    "yarn-close": frozenset({"skeins", "leg"}),                # the leg that it allows for sure
    "yarn-close-foot": frozenset({"skeins"}),
    "yarn-short": frozenset({"skeins", "leg", "stage", "round"}),
    "yarn-short-foot": frozenset({"skeins", "stage", "round"}),
    "yarn-halves": frozenset({"grams", "reserve"}),
}  # fmt: skip

YARN_SAYINGS: dict[str, frozenset[str]] = _NOTES
"""Key → the names of its values."""
