"""What can be wrong in a pattern file: each key with the names of its values. Where it is, the problem says."""

from plans.charts import CHART_SAYINGS

_NOTHING: frozenset[str] = frozenset()
_ROUND = frozenset({"round"})
_USED = frozenset({"round", "used", "stitches"})

WRITTEN_SAYINGS: dict[str, frozenset[str]] = {
    # the file
    "written-no-pattern": _NOTHING,
    "written-head-wrong": frozenset({"text"}),
    "written-field-wrong": frozenset({"name", "text"}),
    "written-needles": frozenset({"text", "choices"}),
    "written-pair-needs-halves": frozenset({"choices"}),
    "written-size-needed": frozenset({"choices"}),
    "written-size-unknown": frozenset({"text", "choices"}),
    "written-swatch-needed": frozenset({"name"}),
    "written-not-a-multiple": frozenset({"stitches", "multiple"}),
    # what is not understood
    "written-not-understood": frozenset({"text"}),
    "written-sizes-differ": frozenset({"found", "wanted"}),
    "written-star-alone": _NOTHING,
    "written-how-often": _NOTHING,
    "written-too-deep": frozenset({"most"}),
    "written-round-empty": _NOTHING,
    "written-nothing-same": _NOTHING,
    # counts that do not come out
    "written-too-few": _USED,
    "written-too-many": _USED,
    "written-repeat-uneven": _USED | {"width"},
    "written-count-differs": frozenset({"stated", "found"}),
    "written-never-ends": _NOTHING,
    "written-too-long": frozenset({"round", "most"}),
    # rounds, halves, markers
    "written-round-twice": _ROUND,
    "written-round-missing": frozenset({"round", "following"}),
    "written-no-such-round": _ROUND,
    "written-half-missing": frozenset({"round", "half"}),
    "written-half-twice": _ROUND,
    "written-across-halves": _ROUND,
    "written-no-marker": _ROUND,
    "written-marker-in-the-way": _ROUND,
    "written-act-in-the-way": frozenset({"act"}),
    # charts
    "written-no-chart": frozenset({"name", "names"}),
    **CHART_SAYINGS,
}
"""Key -> names of values. `round`, `used`, `stitches` and `width` are numbers; `choices` and `names` are text."""
