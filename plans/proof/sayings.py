"""What the proof can find wrong: each key with the names of its values. Where it is, the problem says."""

_NOTHING: frozenset[str] = frozenset()
_FOUND = frozenset({"found", "wanted"})

PROOF_SAYINGS: dict[str, frozenset[str]] = {
    # order and labels
    "row-index-wrong": _FOUND,
    "stage-wrong": _FOUND,
    "round-number-wrong": _FOUND,
    "rows-missing": frozenset({"stage"}),
    "cast-on-out-of-order": frozenset({"sock", "half"}),
    "opened-out-of-order": frozenset({"sock", "half"}),
    # loops on the needle
    "wrong-loops-at-tip": frozenset({"sock", "half", "at_sock", "at_half"}),
    "too-few-loops": frozenset({"sock", "half"}),
    "loops-not-worked": frozenset({"sock", "half", "loops"}),
    "loops-at-end": frozenset({"loops"}),
    "other-sock-on-needle": frozenset({"sock", "loops"}),
    "count-wrong": frozenset({"found", "stated"}),
    "nothing-to-pass-over": frozenset({"sock"}),
    "fastened-too-early": frozenset({"loops"}),
    "nothing-kept": frozenset({"loops"}),
    "kept-loops-left": frozenset({"loops"}),
    "nothing-to-graft-to": frozenset({"sock"}),
    # where yarn and work are
    "yarn-elsewhere": frozenset({"sock", "yarn"}),
    "yarn-of-other-sock": frozenset({"sock", "yarn"}),
    "wrong-side": _FOUND,
    "wrong-half": _FOUND,
    "turn-missing": _NOTHING,
    "turn-not-due": _NOTHING,
    # short rows and flap
    "wrap-not-lifted": frozenset({"loops"}),
    "no-wrap-there": frozenset({"loops"}),
    "double-not-joined": frozenset({"loops"}),
    "no-double-there": frozenset({"loops"}),
    "mark-misplaced": frozenset({"op"}),
    "turned-at-wrong-loop": _FOUND,
    "flap-join-wrong": _FOUND,
    "heel-rows-wrong": _FOUND,
    # shape
    "increases-not-mirrored": _NOTHING,
    "op-out-of-place": frozenset({"op", "stage"}),
    "corner-strands-wrong": _NOTHING,
    "rib-broken": _NOTHING,
    "turn-broken": _NOTHING,
    "flap-broken": _NOTHING,
    "row-broken": _NOTHING,
    "socks-differ": frozenset({"other_row"}),
    # charts
    "chart-row-wrong": _NOTHING,
    "chart-not-followed": frozenset({"row"}),
    # what is done without a loop
    "act-missing": frozenset({"act"}),
    "act-not-due": frozenset({"act"}),
    "acts-out-of-order": frozenset({"act"}),
    "needles-wrong": frozenset({"found", "wanted"}),
    # what the plan says of itself; `name` is the field, such as gusset
    "stated-wrong": frozenset({"name", "found", "stated"}),
    "circumference-off": _FOUND,
    "foot-length-off": _FOUND,
    "leg-length-off": _FOUND,
    "height-off": _FOUND,
    # a piece written round by round, against its own pattern
    "written-unread": _NOTHING,
    "written-otherwise": _NOTHING,
}
"""Key -> names of values. `found` and `wanted` are counts or names; in those that end in -off they are lengths."""
