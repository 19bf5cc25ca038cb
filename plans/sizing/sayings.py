"""Every key that sizing, shoe sizes and the plan file can utter, with the names of its values.

Lengths are measures (`Measure`): length, give_or_take, foot, ball, ankle, leg, cuff, heel, girth, circumference,
wanted, made, finished, shorter, gives, men, women; also least and most where a length is out of range, and in
"heel-tight", "leg-too-short" and "cuff-too-short". Elsewhere least and most are plain numbers. `field` is a
reply out of `FIELD_SAYINGS`, `cure` one out of `CURE_SAYINGS`. exact, percent and gauge are decimals as
text; stitches, rounds, loops, multiple, needed, there, toe, gusset and turn are integers; only in
"gauge-more-stitches-than-rounds" and "gauge-mean" stitches and rounds are numbers of the swatch, as text, and in
"fit-checked" all values are per cent, as text.
"""

_FIELDS = (
    "schema-version", "name", "socks", "swatch", "stitches", "rounds", "over", "worked", "washed", "counts",
    "foot-length", "shoe", "ball", "ankle", "heel-diagonal", "calf", "leg", "leg-height", "cuff", "ease-percent",
    "around", "cast-on", "gusset", "foot-rounds", "leg-rounds", "cuff-rounds", "calf-shape", "needle", "skein",
    "skein-length", "skeins", "direction", "toe", "increase", "sole", "heel", "leg-style", "cuff-style", "bind-off",
    "needles", "one-at-a-time", "through-back-loop", "practice", "chart",
)  # fmt: skip

FIELD_SAYINGS: dict[str, frozenset[str]] = {f"field-{name}": frozenset() for name in _FIELDS}
"""What each field of a plan file is called; "stitches", "rounds" and "over" are the swatch's."""

CURE_SAYINGS: dict[str, frozenset[str]] = {
    "cure-cast-on": frozenset({"loops"}),
    "cure-rounded-toe": frozenset(),
    "cure-rounded-toe-cast-on": frozenset({"loops"}),
    "cure-around": frozenset({"stitches"}),
    "cure-gauge": frozenset({"rounds"}),
    "cure-foot": frozenset({"length"}),
    "cure-measure-again": frozenset(),
    "cure-gusset": frozenset({"stitches"}),
    "cure-heel-with-gusset": frozenset(),
    "cure-calf-shaped": frozenset({"name"}),
    "cure-leg": frozenset({"length"}),
    "cure-bind-off": frozenset({"name"}),
    "cure-bind-off-needle": frozenset(), "cure-cast-on-needle": frozenset(),
    "cure-needle-up": frozenset(),
    "cure-needle-down": frozenset(),
    "cure-needle-up-to": frozenset({"millimetres"}),
    "cure-needle-down-to": frozenset({"millimetres"}),
}
"""What to do about a foot too short for its toe, gusset and heel turn, or about a bad fit; computed to work.

Not reckoned, but what knitters do, are another needle ("cure-needle-…", "cure-bind-off-needle"). `name` is a
bind-off as the plan file names it.

The rounds of "cure-gauge" are those over 10 cm, as text; "cure-measure-again" is what remains where no single
change helps.
"""

NOTE_SAYINGS: dict[str, frozenset[str]] = {
    "foot-from-shoe": frozenset({"shoe", "length", "give_or_take"}),
    "foot-in-shoes": frozenset({"foot", "sizes"}),
    "foot-estimated": frozenset({"length", "give_or_take"}),
    "ball-estimated": frozenset({"length", "give_or_take"}),
    "ankle-estimated": frozenset({"length", "give_or_take"}),
    "heel-estimated": frozenset({"length", "give_or_take"}),
    "calf-estimated": frozenset({"length", "give_or_take"}),
    "child-estimated": frozenset(),
    "leg-chosen": frozenset({"length"}),
    "leg-height-unused": frozenset(),
    "calf-shaped": frozenset({"pairs", "first", "every", "stitches", "circumference"}),
    "calf-narrowed": frozenset({"pairs", "first", "every", "stitches", "circumference"}),
    "calf-straight": frozenset({"leg"}),
    "cuff-chosen": frozenset({"length"}),
    "ease-chosen": frozenset({"percent"}),
    "foot-shortened": frozenset({"foot", "finished", "shorter"}),
    "stitches-rounded": frozenset({"exact", "stitches", "multiple"}),
    "around-yours": frozenset({"stitches", "circumference", "percent"}),
    "around-larger-than-foot": frozenset({"stitches", "circumference", "ball", "better"}),
    "around-tight": frozenset({"stitches", "circumference", "ball", "percent", "better"}),
    "foot-yours": frozenset({"foot", "made", "rounds"}),
    "foot-rounded": frozenset({"wanted", "made", "rounds"}),
    "leg-rounded": frozenset({"wanted", "made", "rounds"}),
    "cuff-rounded": frozenset({"wanted", "made", "rounds"}),
    "cuff-at-least-one-round": frozenset({"made"}),
    "leg-wide": frozenset({"circumference", "ankle", "cure"}),
    "leg-tight": frozenset({"circumference", "ankle", "percent", "cure"}),
    "calf-tight": frozenset({"leg", "circumference", "girth", "percent", "cure"}),
    "heel-tight": frozenset({"heel", "most", "cure"}),
    "heel-loose": frozenset({"heel", "circumference", "cure"}),
    "edge-tight": frozenset({"circumference", "girth", "gives", "cure"}),
    "fit-checked": frozenset({"ball", "heel", "leg", "edge", "gives"}),
    "gauge-mean": frozenset({"counts", "stitches", "give_or_take", "rounds", "rounds_off"}),
    "swatch-unwashed": frozenset(),
    "swatch-flat": frozenset(),
    **{
        f"{key}-{name}-{more}": frozenset({"percent"})
        for key in ("washing-changes", "flat-differs") for name in ("stitches", "rounds") for more in ("more", "fewer")
    },
    "gauge-more-stitches-than-rounds": frozenset({"stitches", "rounds"}),
    "swatch-small": frozenset({"length", "least"}),
    "cast-on-unusual": frozenset({"loops", "least", "most"}),
    "needles-hold-one": frozenset(),
    "practice-size": frozenset({"stitches", "circumference", "foot", "leg"}),
    "practice-ignores": frozenset({"field"}),
}
"""What was estimated, rounded or looks doubtful; nothing is refused."""

PROBLEM_SAYINGS: dict[str, frozenset[str]] = {
    "foot-missing": frozenset(),
    "length-out-of-range": frozenset({"field", "length", "least", "most"}),
    "gauge-out-of-range": frozenset({"field", "gauge", "least", "most"}),
    "gauge-zero": frozenset({"field"}),
    "ease-out-of-range": frozenset({"percent", "least", "most"}),
    "around-uneven": frozenset({"stitches", "multiple", "below", "above"}),
    "around-too-few": frozenset({"stitches", "least"}),
    "around-too-many": frozenset({"stitches", "most"}),
    "too-few-stitches": frozenset({"stitches", "least", "gauge"}),
    "cast-on-unfit": frozenset({"loops", "stitches", "below", "above"}),
    "cast-on-too-few": frozenset({"loops", "least"}),
    "not-toe-up": frozenset({"field", "name", "choices"}), "not-cuff-down": frozenset({"field", "name", "choices"}),
    "chart-not-cuff-down": frozenset(), "cast-on-not-cuff-down": frozenset({"loops"}),
    "cast-on-not-half": frozenset({"loops", "stitches", "half"}),
    "cast-on-too-many": frozenset({"loops", "stitches", "most"}),
    "foot-too-short": frozenset({"needed", "there", "toe", "gusset", "turn", "cure"}),
    "number-out-of-range": frozenset({"field", "number", "least", "most"}),
    "needle-out-of-range": frozenset({"millimetres", "least", "most"}),
    "skein-out-of-range": frozenset({"field", "text", "most"}),
    "leg-too-short": frozenset({"leg", "cuff", "least"}),
    "cuff-too-short": frozenset({"cuff", "least"}),
    "calf-shape-too-high": frozenset({"last", "rounds"}),
    "calf-shape-uneven": frozenset({"pairs", "better"}),
    "names-alike": frozenset({"name"}),
    "bind-off-needs-rib": frozenset({"name", "cuff", "better"}),
    "shoe-unreadable": frozenset({"text"}),
    "shoe-no-system": frozenset({"text"}),
    "shoe-men-or-women": frozenset({"text", "men", "women"}),
    "shoe-out-of-range": frozenset({"text", "least", "most"}),
}
"""What cannot be knitted or understood; each sentence names the value and what to do."""

FILE_SAYINGS: dict[str, frozenset[str]] = {
    "file-unreadable": frozenset({"line", "column", "text"}),
    "file-too-long": frozenset({"most"}),
    "file-too-new": frozenset({"found", "known"}),
    "field-unknown": frozenset({"name"}),
    "field-misspelt": frozenset({"name", "meant"}),
    "field-missing": frozenset({"field"}),
    "field-not-a-table": frozenset({"field"}),
    "length-no-unit": frozenset({"field", "text", "number"}),
    "length-unknown-unit": frozenset({"field", "text", "unit"}),
    "length-unreadable": frozenset({"field", "text"}),
    "number-unreadable": frozenset({"field", "text"}),
    "whole-number-unreadable": frozenset({"field", "text"}),
    "yes-or-no-unreadable": frozenset({"field", "text"}),
    "text-unreadable": frozenset({"field", "text"}),
    "text-empty": frozenset({"field"}),
    "two-names-unreadable": frozenset({"field", "text"}),
    "choice-unknown": frozenset({"field", "text", "choices"}),
    "needle-unknown": frozenset({"field", "text"}),
    "needle-ambiguous": frozenset({"field", "text", "thin", "thick"}),
    "calf-shape-unreadable": frozenset({"field", "text"}),
    "counts-unreadable": frozenset({"field", "text"}),
    "weight-unreadable": frozenset({"field", "text"}),
    "yarn-length-unreadable": frozenset({"field", "text"}),
}
"""A plan file, or one field typed or spoken, that cannot be read; `where` is "line 3, column 8" in a file."""

SIZING_SAYINGS: dict[str, frozenset[str]] = {
    **FIELD_SAYINGS, **CURE_SAYINGS, **NOTE_SAYINGS, **PROBLEM_SAYINGS, **FILE_SAYINGS,
}  # fmt: skip
