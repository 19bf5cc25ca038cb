"""Any plan printed as a pattern reads back as the same plan; reader and printer know nothing of each other."""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.commands import Next
from plans.json_form import as_json, plan_id
from plans.making import Made
from plans.opening import made_of
from plans.pattern import Group, Heel, Needles, Plan, Toe
from plans.stitches import Op, takes
from plans.written.printing import pattern_text, print_pattern
from plans.written.printing.glossary import MEANINGS, above
from plans.written.reading.assembling import Head
from plans.written.reading.patterns import read_rows
from tests.plans.knitter import Knitter
from tests.plans.written.pieces import PIECES, SOCK, charted_sock, made
from tests.source import ROOT
from tests.strategies import SHARED, adult, practice, varied

CHARTS = {
    "lace on the front": charted_sock("front", '["foot", "leg"]', "||||||||", r"|O/|\O|-", "||||||||", r"-/O|O\|-"),
    "with edges": charted_sock("front", '["leg"]', "-[|||-]|", "-[|Q|-]|"),
    "colours around": charted_sock("around", '["foot", "leg"]', "MMMC", "MMCC", "MCCC", more='main = "cream"\n'),
}


def came_back(plan: Plan) -> Plan:
    found = made_of(print_pattern(plan))
    assert isinstance(found, Made), found
    return found.plan


@pytest.mark.parametrize(("field", "name", "needles", "alone"), SHARED)
def test_every_construction_comes_back_the_same(field, name, needles, alone):
    plan = varied(field, name, needles, alone=alone)

    assert plan_id(plan) == plan_id(came_back(plan))


@pytest.mark.parametrize("heel", [Heel.WRAPPED, Heel.GERMAN])
def test_an_adult_pair_comes_back_the_same(heel):
    assert as_json(adult(heel)) == as_json(came_back(adult(heel)))


@pytest.mark.parametrize("text", [SOCK, *CHARTS.values()], ids=["plain", *CHARTS])
def test_a_sock_with_a_chart_comes_back_the_same(text):
    assert plan_id(made(text)) == plan_id(came_back(made(text)))


@pytest.mark.parametrize("text", PIECES.values(), ids=PIECES.keys())
def test_a_piece_written_by_hand_comes_back_the_same(text):
    plan = made(text)

    assert plan.written is not None
    assert plan.written.pattern == pattern_text(plan)
    assert as_json(plan) == as_json(came_back(plan))


def test_a_pattern_is_printed_as_a_writer_would():
    lines = pattern_text(practice()).split("\n")

    assert "Rnd 2: Each half: k1, m1r, k to last st, m1l, k1." in lines
    assert "Repeat rnds 1-2 5 times more. (36 sts)" in lines
    assert "Row 1 (RS): k17, w&t." in lines
    assert "Row 1 (RS): k4, k3 with wraps, ssk with wraps, turn." in lines
    assert "Row 3 (RS): [sl1 wyib, k1] 5 times, sl1 wyib, ssk, turn." in lines
    assert "Repeat rows 3-4 4 times more." in lines
    assert "First sock, back: the same." in lines
    assert "Rnds 1-4: *k1, p1; rep from * to end." in lines


# --- generated rounds ------------------------------------------------------------------------------------------

_OPS = (
    Op.K, Op.K, Op.P, Op.KTBL, Op.PTBL, Op.SL_WYIB, Op.SL_WYIF, Op.KFB, Op.PFB, Op.M1L, Op.M1R, Op.LIFTED_L,
    Op.LIFTED_R, Op.YO, Op.K2TOG, Op.SSK, Op.P2TOG, Op.SSP, Op.K3TOG, Op.SSSK, Op.S2KP2, Op.SKP, Op.SK2P, Op.P3TOG,
)  # fmt: skip
_SPELLED = {
    Op.KTBL: "k1 tbl", Op.PTBL: "p1 tbl", Op.SL_WYIB: "sl1 wyib", Op.SL_WYIF: "sl1 wyif", Op.LIFTED_L: "lli",
    Op.LIFTED_R: "rli", Op.K: "k1", Op.P: "p1",
}  # fmt: skip


@dataclass(frozen=True)
class Generated:
    """Rounds of single operations, each using all loops; and every operation spelled out."""

    cast_on: int
    rounds: tuple[tuple[Op, ...], ...]

    @property
    def pattern(self) -> str:
        """Nothing shortened."""
        told = (
            f"Rnd {number}: {', '.join(_SPELLED.get(op, op.value) for op in ops)}."
            for number, ops in enumerate(self.rounds, start=1)
        )
        return "\n".join([f"CO {self.cast_on}.", "Body", *told])


@st.composite
def pieces(draw: st.DrawFn) -> Generated:
    """Rounds built of motifs that repeat, so that there is something to shorten."""
    cast_on = loops = draw(st.integers(3, 24))
    rounds: list[tuple[Op, ...]] = []
    for _ in range(draw(st.integers(1, 4))):
        ops = tuple(_round(draw, loops))
        rounds += [ops] * (draw(st.integers(1, 3)) if _made(ops) == loops else 1)
        loops = _made(rounds[-1])
    return Generated(cast_on, tuple(rounds))


def _round(draw: st.DrawFn, loops: int) -> Iterator[Op]:
    taken = 0
    while taken < loops:
        motif = draw(st.lists(st.sampled_from(_OPS), min_size=1, max_size=4))
        for _ in range(draw(st.integers(1, 5))):
            wide = sum(takes(op) for op in motif)
            if taken + wide > loops or _made(tuple(motif)) > 3 * max(1, wide):
                break
            yield from motif
            taken += wide
        else:
            continue
        yield Op.K if taken < loops else Op.YO
        taken += 1


def _made(ops: tuple[Op, ...]) -> int:
    from plans.stitches import makes

    return sum(makes(op) for op in ops)


@given(pieces())
@settings(max_examples=60, deadline=None)
def test_generated_rounds_are_read_as_told_and_come_back_however_they_are_shortened(generated):
    head = f'pattern = """\n{generated.pattern}\nBO all.\n"""\nmultiple = 1\n[swatch]\nstitches = 20\nrounds = 28\n'
    plan = made(head)
    ops = [tuple(Group(op=op, times=len([*run])) for op, run in groupby(each)) for each in generated.rounds]

    assert ops == [row.ops for row in plan.rows[1:-1]]
    assert plan.rows == read_rows(pattern_text(plan), Head(pieces=1, needles=plan.construction.needles))
    assert plan_id(plan) == plan_id(came_back(plan))


# --- two that know nothing of each other -----------------------------------------------------------------------

_BOTH = {"plans.pattern", "plans.stitches"}
"""What a stitch and a row are; all that reader and printer have in common."""


def imports(folder: str) -> set[str]:
    """Every module of ours that is imported in a folder."""
    found: set[str] = set()
    for file in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            names += [each.name for each in node.names] if isinstance(node, ast.Import) else []
            found |= {name for name in names if name.split(".")[0] in ("plans", "assistant", "models")}
    return found


def test_reader_and_printer_share_no_code():
    reading, printing = imports("plans/written/reading"), imports("plans/written/printing")

    assert not any(name.startswith("plans.written.printing") for name in reading)
    assert not any(name.startswith("plans.written.reading") for name in printing)
    assert {name for name in reading & printing if not name.startswith("plans.written.")} == _BOTH


@pytest.mark.parametrize("needles", Needles)
def test_a_second_sock_that_is_the_same_is_told_in_a_line(needles):
    if needles is Needles.ONE_CIRCULAR:
        return
    text = pattern_text(varied("heel", "short-row-wrapped", needles, alone=True))

    assert text.startswith("First sock:\n\nCast on\n")
    assert text.endswith("\nSecond sock: the same.\nWeave in. Wash.\n")
    assert text.count("Cast on") == 1


def test_a_second_sock_that_is_the_others_mirror_image_is_told_in_full():
    text = pattern_text(varied("toe", "anatomic", alone=True))

    assert text.count("Cast on") == 2
    assert "Second sock:\n\nCast on\n" in text


def test_what_is_told_of_one_piece_by_name_is_told_of_the_other_by_the_same():
    told = """First sock:
    CO 8.
    Leg
    Rnd 1: First sock, front: k4. First sock, back: k4.
    First sock, back:
    Row 2 (RS): k4, turn.
    Row 3 (WS): p4.
    First sock:
    Rnd 4: k.
    Second sock: the same."""
    rows = read_rows(told, Head(pieces=2, needles=Needles.ONE_LONG_CIRCULAR))
    one, other = ([(row.stage, row.round, row.half, row.ops, row.stitches_after) for row in rows if row.sock == sock]
                  for sock in (1, 2))  # fmt: skip

    assert len(one) == 8
    assert one == other
    assert [row.sock for row in rows] == [1] * 8 + [2] * 8


def test_a_graft_and_loops_put_on_the_needle_turn_nothing():
    """In the reader's words, without a list of all that is done."""
    text = pattern_text(varied("heel", "forethought"))

    assert "{" not in text
    assert "pull out the waste yarn, join the yarn, free 12." in text


def test_every_stitch_is_explained_above_the_pattern():
    unexplained = {op for op in Op if op not in MEANINGS} - {Op.FASTEN, Op.SSK_STRAND}

    assert unexplained == set()


def test_above_the_pattern_stands_what_a_knitter_needs_before_she_begins():
    """32 rounds of leg and 17 of cuff at 42 are 10.5 and 4 cm; the foot is measured as the plan calls it."""
    lines = list(above(adult()))

    assert lines[:2] == [
        "Two socks, both at once, on one long circular needle, from the toe up.",
        "Front: instep and front of the leg. Back: sole, heel and back of the leg.",
    ]
    assert "Gauge: 30 stitches and 42 rounds to 10 cm." in lines
    assert "Finished: 21.3 cm around, foot 23.6 cm, leg 14.5 cm." in lines
    assert lines[5].startswith("Where it says measure: before the foot, foot 4.8 cm; before the gusset, foot 13.6 cm;")
    assert lines[5].endswith("before the heel turn, foot 21.2 cm; before the cuff, leg 10.5 cm.")
    assert {"w&t", "with wraps", "m1l"} <= {line.split(":")[0] for line in lines}
    assert "kfb" not in {line.split(":")[0] for line in lines}


@pytest.mark.parametrize("name", ["french", "short-row-german", "forethought", "wrapped"])
@pytest.mark.parametrize("toe", ["wedge", "short-row-german"])
def test_the_lengths_above_a_pattern_are_those_that_are_called(name, toe):
    plan = practice(heel=Heel(name), toe=Toe(toe)) if name != "french" else varied("heel", name)
    knitter, due = Knitter(plan), []
    while not knitter.finished:
        due += [dict(part.values)["due"].tenths_mm for part in knitter.call.walk() if "measure" in part.key]
        knitter.say(Next())
    [line] = [each for each in above(plan) if each.startswith("Where it says measure")]
    told = [float(each) for each in re.findall(r"([\d.]+) cm", line)]

    assert [round(each / 100, 1) for each in due] == pytest.approx(told, abs=0.051)
