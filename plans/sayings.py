"""Every key that can be said, with the names of its values: what a language's sentences are written from.

A value that is a list holds parts to be said one after the other and may be empty; which values are lists
stands beside the keys. Numbers are plain ints, lengths are Measures, names are the knitter's own words.
"""

from plans.pattern import Act, StageName
from plans.proof.sayings import PROOF_SAYINGS
from plans.sizing.sayings import SIZING_SAYINGS
from plans.stitches import MARKERS, Op
from plans.written.sayings import WRITTEN_SAYINGS
from plans.yarn.sayings import YARN_SAYINGS

_MEASURED = {Act.MEASURE, Act.TRY_ON}


def op_key(op: Op) -> str:
    """The key of an operation worked `times` times: "op-k", "op-sl-wyib"."""
    return f"op-{op.value.replace('_', '-')}"


def act_key(act: Act) -> str:
    """The key of an act: "act-change-yarn". Measuring stops have keys of their own, see SAYINGS."""
    return f"act-{act.value.replace(' ', '-')}"


EXPLAINED_ACTS = frozenset({
    Act.PREPARE_TIPS, Act.LOOSELY, Act.SECURE_TAIL, Act.READY_TO_KNIT, Act.JOIN, Act.PULL_WASTE, Act.SNIP, Act.LIFELINE,
    Act.TRY_ON, Act.MEASURE, Act.SEW_HEM, Act.WEAVE_IN, Act.WASH, Act.MARKER,
})  # fmt: skip
"""Acts whose name does not say all of how they are done."""


def explanation_key(technique: Op | Act) -> str:
    """The key of how an operation or an act is worked: "explain-m1l", "explain-try-on"."""
    return f"explain-{technique.value.replace('_', '-').replace(' ', '-')}"


def stage_key(stage: StageName) -> str:
    """The key of a stage's name: "stage-heel-turn"."""
    return f"stage-{stage.value}"


_PARTS: dict[str, set[str]] = {
    # names of things
    **{stage_key(stage): set() for stage in StageName},
    "half-front": set(), "half-back": set(),
    "half-sole": set(), "half-leg": set(),     # of a heel made last
    "sock-first": set(), "sock-second": set(), "sock-named": {"name"},
    "piece-first": set(), "piece-second": set(),       # of a pair that is no socks
    "grain-group": set(), "grain-half": set(), "grain-side": set(), "grain-round": set(),
    "grain-needle": set(), "grain-follow": set(),
    # where a step is: one half of one sock, one row of a heel, a side of both socks, a round, the rest of one
    "where-half": {"half", "sock"},
    "where-heel-row": {"sock", "row", "of"},
    "where-side": {"half"},
    "where-piece": {"sock"},                   # a single piece, all of it
    "where-one-half": {"half"},                # a half of a single piece
    "where-round": {"round", "of"},
    "where-sock-round": {"sock", "round", "of"},       # of one sock, while the other is ahead
    "sock-ahead": {"sock", "stage", "round", "of"}, "sock-finished": {"sock"},
    "where-rest-of-round": {"round", "of"},
    # what is worked. `work` is a list
    **{op_key(op): {"times"} for op in Op},
    "with-wraps": {"work"},                    # … each together with its wrap
    "with-doubles": {"work"},                  # … each double stitch or twin as one
    "repeat": {"work", "times"},               # slip one, knit one: five times
    "work-cast-on": set(), "work-plain": set(), "work-increase": set(), "work-decrease": set(),
    "work-narrow": set(),
    "work-closing": set(),                     # the corner strands lifted and worked with their neighbours
    "work-increase-left-first": set(), "work-increase-kfb": set(), "work-increase-lifted": set(),
    "work-increase-one-edge": set(), "work-increase-centre": set(), "work-decrease-centre": set(),
    "work-pick-up": set(), "work-open-heel": set(), "work-keep-heel": set(), "work-graft": set(), "work-holes": set(),
    "work-three-needle": set(), "work-gather": set(),
    "work-slipped": set(),                     # every second stitch
    "work-rib": set(), "work-bind-off": set(), "work-mixed": set(),
    # a row of a chart is told before its stitches; a round in two colours: "three main, one contrast"
    "chart-row": {"row", "of"},
    "in-main": {"times"}, "in-contrast": {"times"}, "in-yarn": {"times", "name"},
    "work-in-main": {"work"}, "work-in-contrast": {"work"}, "work-in-yarn": {"work", "name"},
    "on-half": {"half", "work"},               # front plain, back increase
    # acts: no loop is worked. In the cast-on a sock's first acts name it through `where` of the call
    **{act_key(act): set() for act in Act if act not in _MEASURED},
    "act-measure-foot": {"due"}, "act-measure-leg": {"due"},
    "act-try-on-foot": {"due"}, "act-try-on-leg": {"due"},
    "act-measure-height": {"due"}, "act-try-on-height": {"due"},
    # counts a step makes: on this half, on both socks, on each half of both, front and back apart, one by one
    "makes": {"count"},
    "makes-each": {"count"},
    "makes-each-half": {"count"},
    "makes-front-back": {"front", "back"},
    "makes-on": {"where", "count"},
    "stage-begins": {"stage", "rounds"},       # foot, four rounds
    "heel-begins": set(),                      # the round of the heel: its plain fronts come first
    "heel-stage-begins": {"stage", "sock", "rows"},
    "half-counts": {"where", "before", "after"},
    # inside the heel, sides as she sees them with the row in hand facing her
    "turn-wraps": {"on_right", "on_left", "unmarked"},
    "turn-doubles": {"on_right", "on_left", "unmarked"},
    "flap-gussets": {"on_right", "on_left"},   # gusset stitches still to be eaten
    "heel-rows-ahead": {"rows"}, "toe-rows-ahead": {"rows"},
    "mark": {"number", "stage", "round", "of", "where"}, "mark-of-other-plan": {"number"},
    # where things hang when she comes back
    "marker-faces-you": set(), "marker-hidden": set(), "marker-not-yet": set(),
    "marker-at-start": set(),
    "yarn-in-the-gap": {"sock"}, "yarn-at-the-edge": {"sock"}, "yarn-at-the-working-point": {"sock"},
    "yarn-cut": {"sock"},
    "check-count": {"where", "count"},
    "check-middle": {"where", "count"},        # the unmarked stitches in the middle of a heel turn
    # likely causes of a wrong count
    "cause-cast-on-miscounted": set(), "cause-first-loop-lost": set(), "cause-increase-missed": set(),
    "cause-increase-round-twice": set(), "cause-increased-on-front": set(), "cause-dropped-stitch": set(),
    "cause-yarn-over-or-split": set(), "cause-join-forgotten": set(), "cause-two-eaten": set(),
    "cause-corner-not-joined": set(), "cause-decrease-missed": set(), "cause-decreased-twice": set(),
    "cause-worked-too-far": set(),             # this is the count of one step further on
    "cause-bound-off-early": set(),
    # what a dropped question was about
    "wish-at-round": {"stage", "round"}, "wish-ripped-back": {"stage", "round"}, "wish-next": set(),
    "wish-at-round-on": {"sock", "stage", "round"}, "wish-ripped-back-on": {"sock", "stage", "round"},
    "wish-stop": set(), "wish-replan": set(),
    "sock-both": set(),
    # doubts about a weighed ball: grams it lost, and those that the plan reckons; metres to 100 grams
    "yarn-lost-otherwise": {"lost", "reckoned"}, "yarn-taken-as": {"metres"},
}  # fmt: skip

_REPLIES: dict[str, set[str]] = {
    # the step in hand, all lists, in this order; `acts` come before the work, `then` after it
    "call": {"stage", "where", "acts", "work", "then", "makes"},
    "call-round": {"round", "of"},             # a whole plain round: fourteen of twenty-four
    "call-round-one": {"round", "of"},         # the same of one sock
    "call-round-same": {"round", "of"},        # a whole round worked like the one before
    "finished": set(), "finished-already": set(),
    "finished-written": set(), "finished-already-written": set(),      # of a piece that is no sock
    # `call` is the step now in hand: a call, a call-round or finished
    "undone": {"call"}, "nothing-to-undo": set(), "redone": {"call"}, "nothing-to-redo": set(),
    "undone-other-plan": set(), "redone-other-plan": set(),      # back in the plan used before, or after
    "went-back": {"rounds", "call"}, "went-back-fewer": {"asked", "rounds", "call"}, "cannot-go-back": set(),
    "went-forward": {"rounds", "call"}, "went-forward-fewer": {"asked", "rounds", "call"},
    "cannot-go-forward": set(),
    "no-rounds": set(),                        # "back zero rounds"
    "ask-at-round": {"stage", "round", "of"}, "ask-at-round-on": {"sock", "stage", "round", "of"},
    "no-such-round": {"stage", "round", "of"},
    "ask-ripped-back": {"stage", "round", "of"}, "ask-ripped-back-on": {"sock", "stage", "round", "of"},
    "ripped-back-to-where": set(), "no-such-stage": set(),
    "not-knitted-yet": {"stage", "round"},
    "ask-next": {"call"},                      # already done? The step that was called stands in `call`
    "ask-stop": {"to_go", "where"},            # so many stitches to the end of this side: stop here?
    "place-set": {"stage", "round", "of", "call"}, "place-set-on": {"sock", "stage", "round", "of", "call"},
    "dropped": {"wish"}, "nothing-asked": set(),
    # `apart`, `counts` and `heel` are lists
    "where-am-i": {"where", "stage", "round", "of", "apart", "counts", "heel", "call"},
    "how-many": {"where", "now", "after", "to_go"},
    "how-many-whole": {"where", "now", "after", "to_go"},     # of a piece without halves
    "how-far": {"stage", "rounds", "in_sock", "heels"},      # `heels` is a list
    "how-far-written": {"stage", "rounds", "in_sock", "heels"},
    "how-far-in-heel": {"stage", "rows", "in_sock", "heels"},
    "what-next": {"call"},
    "explanation": {"how"}, "nothing-to-explain": set(),         # `how` is a list
    **{explanation_key(op): set() for op in Op if op not in {Op.K, Op.P, *MARKERS}},
    **{explanation_key(act): set() for act in EXPLAINED_ACTS},
    "explain-closed-toe": set(),                   # the loops of both tips wound at once
    "explain-bind-off-together": set(),            # each two knitted together, in place of passing over
    "explain-with-wraps": set(), "explain-with-doubles": set(),
    "again": set(),
    "grain-set": {"grain", "call"}, "grain-finest": set(), "grain-coarsest": set(),
    "marked": {"number"}, "marks": {"marks"}, "no-marks": set(),       # `marks` is a list
    "count-right": {"stitches", "where"},
    "count-too-many": {"stitches", "where", "expected", "difference", "causes"},     # `causes` is a list
    "count-too-few": {"stitches", "where", "expected", "difference", "causes"},
    "stopped": {"where", "stage", "round", "of"}, "stopped-finished": set(), "stopped-finished-written": set(),
    # `apart`, `yarns` and `check` are lists
    "resume": {"pair", "where", "stage", "round", "of", "apart", "marker", "yarns", "check", "call"},
    # the tape and the scales; rounds to ten centimetres are text, `part` and `stage` are names of stages
    "ask-replan": {"rounds", "planned", "changes", "part", "length"},            # `changes` is a list
    "replan-change": {"stage", "before", "after"},
    "replan-taken": {"stage", "round", "of", "call"},
    "tape-passed": {"rounds", "part", "length", "aimed"},        # too many rounds are knitted already
    "tape-same": {"rounds", "part"}, "tape-too-early": {"part"}, "tape-too-late": {"part"}, "tape-no-plan": set(),
    "tape-second-sock": {"part"},                               # the first is done, and both are alike
    "tape-unlikely": {"part", "length", "planned"},
    # `doubts` is a list
    "yarn-left-enough": {"grams", "metres", "whose", "doubts", "spare"},
    "yarn-left-short": {"grams", "metres", "whose", "doubts", "stage", "round", "of", "leg"},
    "yarn-left-short-foot": {"grams", "metres", "whose", "doubts", "stage", "round", "of"},
    "yarn-left-too-much": {"grams", "ball"},
    # `tail` in centimetres, `metres` for both bind-offs
    "new-ball": {"sock", "where", "stage", "round", "of", "tail", "metres"},
    "new-ball-here": {"sock", "where", "stage", "round", "of", "tail", "metres"},
    "new-ball-anywhere": {"sock", "tail", "metres"},
    "resume-whole": {"pair", "stage", "round", "of", "apart", "marker", "yarns", "check", "call"},     # no halves
    "resume-finished": {"pair"}, "resume-finished-written": {"pair"},
}  # fmt: skip

ENGINE_SAYINGS: dict[str, frozenset[str]] = {
    key: frozenset(names) for key, names in (_PARTS | _REPLIES).items()
}
"""What the engine says: key → the names of its values."""

SAYINGS: dict[str, frozenset[str]] = {
    **ENGINE_SAYINGS, **SIZING_SAYINGS, **PROOF_SAYINGS, **YARN_SAYINGS, **WRITTEN_SAYINGS,
}  # fmt: skip
"""All that plans can say, refusals included: key → the names of its values."""
