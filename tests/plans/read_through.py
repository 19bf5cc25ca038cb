"""Answers, patterns, sizes and what is found wrong as lines to be read through by a person; writes the golden files:

    python -m tests.plans.read_through
"""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import count
from pathlib import Path
from typing import Any, Literal

from plans.charts import SYMBOLS, rows_of
from plans.conversation import (
    Again,
    AtRound,
    Back,
    Coarser,
    Command,
    Finer,
    Forward,
    Grain,
    HowFar,
    HowMany,
    IHave,
    Mark,
    Marks,
    Measure,
    NewBall,
    Next,
    No,
    Problem,
    Redo,
    Reply,
    RippedBack,
    TapeSays,
    Undo,
    WhatNext,
    WhereAmI,
    YarnLeft,
    Yes,
)
from plans.engine.resuming import resume
from plans.files import write_wishes
from plans.making import Made, make_plan
from plans.pattern import BindOff, Chart, Cuff, Direction, Half, Heel, Leg, Needles, Plan, StageName, Toe
from plans.proof import prove
from plans.quantities import Length
from plans.sizing import limits, size_sock
from plans.sizing.proportions import fewest_around
from plans.sizing.standards import NEEDLE_SIZES, YARN_WEIGHTS
from plans.stitches import TAKES_MAKES
from plans.wishes import Count, SockSize, Swatch
from plans.written.printing import pattern_text
from plans.written.reading import abbreviations
from plans.yarn.enough import yarn_notes
from tests.plans.damages import all_damages
from tests.plans.knitter import Knitter, script, shown
from tests.plans.test_sizing import wished
from tests.plans.written.pieces import CAP, PIECES, charted_sock, made
from tests.strategies import beginning, practice, varied

GOLDEN = Path(__file__).parent.parent / "golden"
_HEAD = "== "
_EVERY = 7
"""Steps from one time that she asks to the next."""
_FIRST = 5
"""Findings of one damage that are shown."""

ASKED: dict[str, tuple[Plan, Grain]] = {
    "wrapped by halves": (practice(), "half"),
    "from the cuff down": (varied("heel", "french"), "follow"),
    "double-pointed, a sock at a time": (varied("heel", "forethought", Needles.DOUBLE_POINTED, alone=True), "follow"),
    "mittens": (made(PIECES["mittens"]), "side"),
    "cowl": (made(PIECES["cowl"]), "follow"),
}


def smallest(heel: str) -> Plan:
    """The smallest pair that a heel can be knitted in."""
    way = beginning("heel", heel)
    around = fewest_around(heel)
    wishes = wished(
        swatch=Swatch(stitches=around, rounds=2 * around), foot_length="16cm", ball="10cm", ankle=None, leg=None,
        cuff=None, heel_diagonal=None, around=around, heel=Heel(heel), direction=way,
        bind_off=BindOff("graft" if way is Direction.CUFF_DOWN else "decrease"),
    )  # fmt: skip
    found = make_plan(wishes)
    assert isinstance(found, Made), found
    return found.plan


DONE: tuple[tuple[Command, ...], ...] = (
    (YarnLeft(grams=12), NewBall()), (Back(rounds=1), Undo()), (IHave(stitches=11),),
    (Forward(rounds=2), Undo(), Redo()), (Mark(), Marks()), (RippedBack(), No()), (AtRound(round=2), Yes(), Undo()),
    (Finer(),), (YarnLeft(grams=40),), (RippedBack(stage="toe"), Yes(), Undo()), (Coarser(),),
    (NewBall(sock=2), Again()), (AtRound(round=3, sock=1), No()),
    (IHave(stitches=12, sock=2, half=Half.BACK),), (Forward(rounds=30),), (Back(rounds=40), Undo()),
)  # fmt: skip
"""What is done at one place of those, then the next at the next one."""

CALLED: dict[str, tuple[Plan, Grain]] = {
    "mittens by groups": (made(PIECES["mittens"]), "group"),
    "forethought by halves": (varied("heel", "forethought"), "half"),
    "short-row toe on two circulars by sides": (varied("toe", "short-row-german", Needles.TWO_CIRCULARS), "side"),
    "calf-shaped, by rounds": (varied("leg_style", "calf-shaped"), "round"),
    "gathered, a sock at a time": (varied("bind_off", "gathered", alone=True), "follow"),
    "tubular on double-pointed needles": (varied("bind_off", "tubular", Needles.DOUBLE_POINTED, alone=True), "half"),
}

MEASURED: dict[str, dict[str, Any]] = {
    "a ball for both": {"skein": "100g", "skein_length": "420m", "skeins": 1},
    "two balls": {"skein": "50g", "skein_length": "210m", "skeins": 2, "calf": "36cm", "leg": "36cm",
                  "leg_style": Leg("calf-shaped")},
    "an unknown ball, from the cuff down": {
        "direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft"),
    },
    "short-row heel and toe": {"toe": Toe("short-row-german"), "heel": Heel("short-row-german"), "skein": "100g"},
}  # fmt: skip
"""Pairs that are weighed and measured while they are knitted."""
PARTS_MEASURED: tuple[Literal["foot", "leg"], ...] = ("foot", "leg")

YARN: dict[str, dict[str, Any]] = {
    "nothing known": {},
    "a ball for both": {"skein": "100g", "skein_length": "420m", "skeins": 1},
    "a small ball for both": {"skein": "50g", "skein_length": "210m", "skeins": 1},
    "a very small ball": {"skein": "20g", "skein_length": "80m", "skeins": 1},
    "three balls": {"skein": "50g", "skein_length": "200m", "skeins": 3},
    "two balls, hardly enough": {"skein": "30g", "skein_length": "126m", "skeins": 2},
    "a weight": {"skein": "100g", "skeins": 2},
    "a length": {"skein_length": "300m", "skeins": 1},
    "thick yarn": {"swatch": Swatch(stitches=11, rounds=15), "skein": "100g", "skein_length": "110m", "skeins": 2},
    "the thickest yarn": {"swatch": Swatch(stitches=6, rounds=8), "around": 16},
    "two colours": {"chart": Chart(
        name="stripes", rows=rows_of("MMMC\nMMCC"), on="around", stages=(StageName.LEG,), yarns=("cream", "moss"),
    )},
}  # fmt: skip

PRINTED: dict[str, Plan] = {
    "wrapped": practice(),
    "french": varied("heel", "french"),
    "short-row toe": varied("toe", "short-row-german"),
    "ribbed leg on double-pointed needles": varied("leg_style", "ribbed", Needles.DOUBLE_POINTED, alone=True),
    "picot cuff on two circulars": varied("cuff_style", "picot", Needles.TWO_CIRCULARS),
    **{f"{field} {name}": varied(field, name) for field, name in (
        ("toe", "rounded"), ("toe", "wide"), ("toe", "anatomic"), ("toe", "short-row-wrapped"), ("increase", "kfb"),
        ("increase", "lifted"), ("sole", "reinforced"), ("heel", "german"), ("heel", "eye-of-partridge"),
        ("heel", "mini-gusset"), ("heel", "short-row-shadow"), ("heel", "afterthought"), ("leg_style", "calf-shaped"),
        ("leg_style", "ribbed"), ("cuff_style", "rolled"), ("cuff_style", "folded"), ("cuff_style", "rib-2x2"),
        ("bind_off", "sewn"), ("bind_off", "tubular"), ("bind_off", "yarn-over"),
    )},
    **{f"as few stitches as can be, {name}": smallest(name) for name in (
        "wrapped", "german", "shadow", "french", "eye-of-partridge", "ribbed-flap", "mini-gusset", "short-row-wrapped",
        "short-row-german", "short-row-shadow", "forethought", "forethought-round",
    )},
    "colours around": made(charted_sock("around", '["leg"]', "MMMC", "MMCC", more='main = "cream"\n')),
    **{name: made(text) for name, text in PIECES.items()},
}

LACE = Chart(name="lace", rows=rows_of("||||||\n|O^O||"), on="front", stages=(StageName.LEG,))
SIZED = {
    "hers": {},
    "only the foot": {"ball": None, "ankle": None, "heel_diagonal": None, "leg": None, "cuff": None},
    "a shoe": {"foot_length": None, "shoe": "EU 39", "ball": None},
    "a wide ankle": {"ankle": "28cm"},
    "a narrow ankle": {"ankle": "16cm"},
    "a large heel": {"heel_diagonal": "38cm"},
    "a small heel": {"heel_diagonal": "26cm"},
    "a large heel in short rows": {"heel_diagonal": "36cm", "heel": Heel("short-row-german")},
    "up to the calf": {"calf": "36cm", "leg": "36cm"},
    "widened to the calf": {"calf": "36cm", "leg": "36cm", "leg_style": Leg("calf-shaped")},
    "an edge for a large heel": {"heel_diagonal": "35cm", "bind_off": BindOff("decrease")},
    "more stitches": {"around": 72},
    "fewer stitches, her needle": {"around": 56, "needle": "2.5mm"},
    "a child": {"foot_length": "14cm", "ball": None, "ankle": None, "heel_diagonal": None, "leg": None, "cuff": None},
    "rounds of her own": {"foot_rounds": 30, "leg_rounds": 50, "cuff_rounds": 12},
    "from the cuff down": {"direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft")},
    "a short foot in a deep heel": {"foot_length": "16cm", "around": 72},
    "a short foot and a long toe": {"foot_length": "13cm", "toe": Toe("wide"), "cast_on": 16},
    "a very short foot": {"foot_length": "12cm", "around": 72},
    "a short foot, rounded toe": {"foot_length": "13cm", "around": 72, "toe": Toe("rounded")},
    "a short foot, short-row toe": {"foot_length": "14cm", "around": 72, "toe": Toe("short-row-german")},
    "a short foot, short-row toe cast on": {
        "foot_length": "14cm", "around": 72, "cast_on": 36, "toe": Toe("short-row-german"),
    },
    "a short foot from the cuff down": {
        "foot_length": "13cm", "around": 72, "direction": Direction.CUFF_DOWN, "heel": Heel("french"),
        "bind_off": BindOff("graft"),
    },
    "a very tight ankle": {"ankle": "34cm", "needle": "2.5mm"},
    "a very small heel": {"heel_diagonal": "22cm", "needle": "2.5mm"},
    "a leg too short": {"leg": "2cm", "cuff": None},
    "an odd swatch": {"swatch": Swatch(stitches=30, rounds=26)},
    "a coarse swatch": {"swatch": Swatch(stitches=Fraction(9), rounds=13)},
    "a short foot and heel": {
        "foot_length": "13cm", "ball": None, "around": 96, "cast_on": 24, "heel": Heel("short-row-wrapped"),
    },
    "short rows at both ends": {
        "foot_length": "13cm", "around": 80, "toe": Toe("short-row-german"), "heel": Heel("short-row-wrapped"),
    },
    "no cure for it": {"foot_length": "12cm", "around": 56, "gusset": 20, "swatch": Swatch(stitches=6, rounds=9)},
    "few stitches, a loose heel": {
        "foot_length": "13.5cm", "ball": "15.1cm", "ankle": "8.4cm", "heel_diagonal": "20cm", "leg": None, "cuff": None,
        "around": 16, "heel": Heel("short-row-shadow"), "swatch": Swatch(stitches=6, rounds=9),
    },
    "rounds beyond all gauges": {"swatch": Swatch(stitches=30, rounds=130)},
    "a cast-on of two": {"cast_on": 2},
    "fewer than a french heel takes": {
        "around": 8, "direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft"),
    },
    "lace": {"chart": LACE, "cuff_style": Cuff("picot")},
}


FILES = {"hers": wished(), "with all that can be wished": wished(
    name="a = b", shoe="EU 39", calf="36cm", foot_rounds=30, leg_rounds=50, cuff_rounds=12, around=64, cast_on=24,
    needle="2.5mm", skein="50g", skein_length="200m", skeins=2, chart=LACE, socks=("left", "right"),
    counts=(Count(stitches=31, over="5cm", washed=False),), through_back_loop=True, one_at_a_time=True,
)}  # fmt: skip


WRONG: dict[str, tuple[Plan, frozenset[StageName]]] = {
    "wrapped, to the foot": (practice(), frozenset({StageName.CAST_ON, StageName.TOE, StageName.FOOT})),
    "wrapped, its heel": (practice(), frozenset({StageName.GUSSET, StageName.HEEL_TURN, StageName.HEEL_FLAP})),
    "wrapped, from the leg": (practice(), frozenset({StageName.LEG, StageName.CUFF, StageName.BIND_OFF})),
    "from the cuff down, its heel": (
        varied("heel", "french"), frozenset({StageName.CAST_ON, StageName.HEEL_FLAP, StageName.HEEL_TURN}),
    ),
    "from the cuff down, its toe": (varied("heel", "french"), frozenset({StageName.GUSSET, StageName.TOE})),
    "forethought on double-pointed needles": (
        varied("heel", "forethought", Needles.DOUBLE_POINTED, alone=True),
        frozenset({StageName.CAST_ON, StageName.LEG, StageName.BIND_OFF, StageName.HEEL}),
    ),
    "short-row toe on two circulars": (
        varied("toe", "short-row-german", Needles.TWO_CIRCULARS), frozenset({StageName.CAST_ON, StageName.TOE}),
    ),
    "anatomic toe on four needles": (
        varied("toe", "anatomic", Needles.FOUR_DOUBLE_POINTED, alone=True), frozenset({StageName.TOE}),
    ),
    "calf-shaped": (varied("leg_style", "calf-shaped"), frozenset({StageName.LEG})),
    "mini-gusset, a sock at a time": (
        varied("heel", "mini-gusset", alone=True), frozenset({StageName.GUSSET, StageName.HEEL, StageName.LEG}),
    ),
    "tubular": (varied("bind_off", "tubular", Needles.TWO_CIRCULARS), frozenset({StageName.BIND_OFF})),
    "gathered": (varied("bind_off", "gathered", alone=True), frozenset({StageName.CUFF, StageName.BIND_OFF})),
    "cap": (made(CAP), frozenset(StageName)),
}
"""Plans, and the stages in which they are damaged."""


def filed(name: str) -> Iterator[str]:
    """Its plan file, with what is explained in it; not which heels and the like there are, which grow more."""
    for line in write_wishes(FILES[name]).split("\n"):
        if not line.startswith("#") or '"' not in line:
            yield line


def answers(name: str) -> Iterator[str]:
    """Every answer at every few steps."""
    knitter = Knitter(*ASKED[name])
    step = 0
    while not knitter.finished:
        if step % _EVERY == 0:
            yield from (shown(knitter.say(question)) for question in (WhereAmI(), HowMany(), HowFar(), WhatNext()))
        knitter.say(Next())
        step += 1


def called(name: str) -> Iterator[str]:
    """All that is called from the cast-on to the end."""
    yield from script(*CALLED[name])


def replied(name: str) -> Iterator[str]:
    """What is told at every few steps when something is done, and what she is told next day."""
    knitter = Knitter(*ASKED[name])
    step = 0
    while not knitter.finished:
        if step % _EVERY == 0:
            done = DONE[step // _EVERY % len(DONE)]
            yield from (f"{command.kind}: {shown(knitter.say(command))}" for command in done)
            yield f"next day: {shown(resume(knitter.plan, knitter.progress))}"
        knitter.say(Next())
        step += 1


def measured(name: str) -> Iterator[str]:
    """What is told of the rest of the ball, and of a length, every twelfth round of the pair."""
    found = make_plan(wished(**MEASURED[name]))
    assert isinstance(found, Made), found
    knitter = Knitter(found.plan, "round")
    for number in count():
        if knitter.finished:
            return
        if number % 24 == 5:
            said = [knitter.say(YarnLeft(grams=max(2, 98 - 2 * number // 5)))]
            said += [knitter.say(NewBall())] if number % 3 == 2 else []
            said += [each for part in PARTS_MEASURED for each in _taped(knitter, part, 94 + number % 9)]
            yield from map(shown, said)
        knitter.say(Next())


def _taped(knitter: Knitter, part: Literal["foot", "leg"], percent: int) -> Iterator[Reply]:
    """What is told of a length that cannot be, and of one as much longer or shorter than is planned."""
    yield (told := knitter.say(TapeSays(part=part, length=Length.of_cm(60))))
    planned = dict(told.values).get("planned")
    if isinstance(planned, Measure):
        length = Length(Fraction(planned.tenths_mm * percent, 1000))
        yield knitter.say(TapeSays(part=part, length=length))
        knitter.say(No())


def reckoned(name: str) -> Iterator[str]:
    """What is told of the yarn."""
    wishes = wished(**YARN[name])
    found = make_plan(wishes)
    assert isinstance(found, Made), found
    yield from (shown(note) for note in yarn_notes(found.plan, wishes))


def printed(name: str) -> Iterator[str]:
    """Its pattern."""
    yield from pattern_text(PRINTED[name]).split("\n")


def sized(name: str) -> Iterator[str]:
    """All numbers of a sock and all that is noted of it; or why there is none."""
    found = size_sock(wished(**SIZED[name]))
    if isinstance(found, SockSize):
        numbers = found.model_dump(exclude={"notes"}, mode="json")
        yield ", ".join(f"{field} {value}" for field, value in numbers.items() if value is not None)
        yield from (shown(note) for note in found.notes)
    else:
        for problem in found:
            yield f"{problem.where}: {shown(Reply(key=problem.key, values=problem.values))}"


def wrong(name: str) -> Iterator[str]:
    """What the proof says of each kind of damage in each of these stages, and of each change of its head."""
    plan, stages = WRONG[name]
    seen = set()
    for damage in all_damages(plan):
        row = plan.rows[min(*damage.rows, len(plan.rows) - 1)] if damage.rows else None
        what = (damage.kind, row.stage, row.acts if damage.kind == "act lost" else ()) if row else len(seen)
        if what not in seen and (row is None or row.stage in stages):
            seen.add(what)
            at = f"{damage.kind} at {row.index}, {row.stage}" if row else damage.kind
            yield f"{at}: {_found(prove(damage.plan))}"


def _found(problems: tuple[Problem, ...]) -> str:
    told = [f"{each.where} {shown(Reply(key=each.key, values=each.values))}".strip() for each in problems]
    return ", ".join([*told[:_FIRST], *([f"and {len(told) - _FIRST} more"] if len(told) > _FIRST else [])])


WORDS: dict[str, Iterable[tuple[object, object]]] = {
    "abbreviations of stitches": {**abbreviations.OPS, **abbreviations.PHRASES}.items(),
    "what stands behind a stitch": [
        ((one, tail), other) for tail, changed in abbreviations.TAILS.items() for one, other in changed.items()
    ],
    "what is done besides": abbreviations.ACTS.items(),
    "parts of a piece": abbreviations.STAGES.items(),
    "numbers": abbreviations.NUMBERS.items(),
    "other words": [
        (name, sorted(getattr(abbreviations, name)))
        for name in ("COUNTED", "BEGINNINGS", "COLOURS", "STITCHES", "ROUNDS")
    ],
    "loops that a stitch takes and makes": TAKES_MAKES.items(),
    "symbols of a chart": SYMBOLS.items(),
    "the least and the most of a wish": (
        *limits.LENGTHS.items(), *limits.GAUGES.items(), *limits.COUNTS.items(), ("ease", limits.EASE_PERCENTS),
        ("swatch", limits.SWATCH_WIDTHS), ("needle", limits.NEEDLES), ("yarn", (limits.MOST_GRAMS, limits.MOST_METRES)),
    ),
    "sizes of needles": list(enumerate(NEEDLE_SIZES)),
    "weights of yarn": list(enumerate(YARN_WEIGHTS)),
}
"""What may be written, and what it means."""


def meant(name: str) -> Iterator[str]:
    """Each word of a kind with what it means."""
    yield from (f"{_plainly(word)}: {_plainly(meaning)}" for word, meaning in WORDS[name])


def _plainly(value: object) -> str:
    if isinstance(value, (tuple, list)):
        return " ".join(map(_plainly, value))
    return str(value)


TEXTS = {"answers": (ASKED, answers), "called": (CALLED, called), "replies": (ASKED, replied), "yarn": (YARN, reckoned),
         "measured": (MEASURED, measured), "printed": (PRINTED, printed), "sizes": (SIZED, sized),
         "plan_files": (FILES, filed), "findings": (WRONG, wrong), "words": (WORDS, meant)}  # fmt: skip
"""By the name of the golden file: what there is in it, and how each is told."""


def read_through(file: str, name: str) -> str:
    """One part of a golden file."""
    return "".join(f"{line.rstrip()}\n" for line in TEXTS[file][1](name))


def kept(file: str) -> dict[str, str]:
    """The parts that a golden file has."""
    parts = (GOLDEN / f"{file}.txt").read_text(encoding="utf-8").removeprefix(_HEAD).split(f"\n{_HEAD}")
    return dict(part.split("\n", maxsplit=1) for part in parts)


if __name__ == "__main__":
    for each, (every, _) in TEXTS.items():
        text = "\n".join(f"{_HEAD}{part}\n{read_through(each, part)}" for part in every)
        (GOLDEN / f"{each}.txt").write_text(text, encoding="utf-8")
