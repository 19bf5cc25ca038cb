"""What is written short says no more and no less than the row."""

import pytest

from plans.pattern import Act, Group
from plans.stitches import Op
from plans.written.printing.acts import Told, told
from plans.written.printing.shortening import shortened
from tests.plans.written.pieces import HAT, made


def ops(*groups: tuple[str, int]) -> tuple[Group, ...]:
    """Stitches by their names; a star behind the name: with its wrap, two: with its double."""
    return tuple(
        Group(op=Op(name.rstrip("*")), times=times, wrap=name.count("*") == 1, double=name.count("*") == 2)
        for name, times in groups
    )


@pytest.mark.parametrize(
    ("work", "written"),
    [
        (ops(("k", 12)), "knit"),
        (ops(("k", 3), ("k*", 5)), "k to last 5 sts, k5 with wraps"),
        (ops(("k", 3), ("k**", 5)), "k to last 5 sts, k5 with doubles"),
        (ops(("k*", 5)), "k5 with wraps"),
        (ops(("k", 4), ("yo", 1)), "k4, yo"),
        (ops(("k", 2), ("p", 2), ("k", 2), ("p", 2)), "*k2, p2; rep from * to end"),
        (ops(("k", 2), ("p", 2), ("k", 2), ("p", 2), ("k", 1)), "*k2, p2; rep from * to last st, k1"),
        (ops(("k", 2), ("p", 2), ("k", 2), ("p", 2), ("yo", 1)), "[k2, p2] twice, yo"),
        (ops(("k", 2), ("p", 2), ("k", 2), ("p", 2), ("fasten", 1)), "[k2, p2] twice, fasten off"),
        (ops(("k", 5), ("p", 5)), "k5, p5"),
        (ops(("k", 1), ("p", 1)), "k1, p1"),
        (ops(("ssk", 1), ("k", 1)), "ssk, k1"),
        (ops(("ssk", 1), ("k", 2)), "ssk, k to end"),
    ],
)  # fmt: skip
def test_stitches_are_written_short(work, written):
    assert written == shortened(work, whole=True)


def test_acts_out_of_their_order_are_written_to_the_letter():
    rows = made(HAT.replace("Rnd 2: knit.", "Measure. Lifeline.\nRnd 2: knit.")).rows
    usual = next(row for row in rows if Act.LIFELINE in row.acts)
    other = usual.model_copy(update={"acts": usual.acts[::-1]})

    assert Told(before=(Act.LIFELINE, Act.MEASURE)) == told((usual,), 0, halves=False, turned=False)
    assert Told(exactly=(Act.MEASURE, Act.LIFELINE)) == told((other,), 0, halves=False, turned=False)
