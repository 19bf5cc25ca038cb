"""A piece written by hand, or a sock with a chart, damaged at any single place is refused."""

from collections import Counter

import pytest

from plans.conversation import Problem
from plans.pattern import Colour, Group, Plan
from plans.proof import prove
from plans.stitches import Op
from tests.plans.damages import Damage, all_damages
from tests.plans.written.pieces import CAP, charted_sock, made

SMALL = charted_sock("front", '["leg"]', "||||", "/O|-", more="").replace("[swatch]", "practice = true\n[swatch]")
COLOURED = charted_sock("around", '["foot"]', "MMC", "MCC").replace("[swatch]", "practice = true\n[swatch]")


def test_every_damage_to_a_piece_written_by_hand_is_found_no_later_than_where_it_is():
    plan = made(CAP)
    found = [(damage, prove(damage.plan)) for damage in all_damages(plan)]
    late = [damage.kind for damage, problems in found if damage.rows and problems and not _in_time(damage, problems)]

    assert prove(plan) == ()
    assert Counter() == Counter(damage.kind for damage, problems in found if not problems)
    assert [] == late
    assert len(found) > 300


def _in_time(damage: Damage, problems: tuple[Problem, ...]) -> bool:
    rows = {int(problem.where.split()[1]) for problem in problems if problem.where}
    return bool(rows) and min(rows) <= max(damage.rows)


@pytest.mark.parametrize("text", [SMALL, COLOURED], ids=["stitches", "colours"])
def test_every_damage_to_a_charted_row_is_found(text):
    plan = made(text)
    charted = [row.index for row in plan.rows if row.chart][:4]
    damages = [damage for damage in all_damages(plan) if damage.rows & set(charted)]

    assert charted
    assert [] == [damage.kind for damage in damages if not prove(damage.plan)]


def with_row(plan: Plan, place: int, **changes: object) -> Plan:
    row = plan.rows[place].model_copy(update=changes)
    return plan.model_copy(update={"rows": (*plan.rows[:place], row, *plan.rows[place + 1 :])})


@pytest.mark.parametrize("text", [SMALL, COLOURED], ids=["stitches", "colours"])
def test_a_chart_is_followed_row_by_row_and_colour_by_colour(text):
    plan = made(text)
    place = next(row.index for row in plan.rows if row.chart)
    row = plan.rows[place]
    assert row.chart is not None
    other = row.chart.model_copy(update={"row": row.chart.row % row.chart.of + 1})
    recoloured = [
        group.model_copy(update={"colour": Colour.CONTRAST if group.colour is Colour.MAIN else Colour.MAIN})
        for group in row.ops
    ]

    assert "chart-row-wrong" in keys(with_row(plan, place, chart=None))
    assert "chart-row-wrong" in keys(with_row(plan, place, chart=other))
    assert "chart-row-wrong" in keys(with_row(plan, 4, chart=row.chart))
    assert "chart-row-wrong" in keys(with_row(plan, 4, ops=(Group(op=Op.K, times=4, colour=Colour.CONTRAST),)))
    assert "chart-not-followed" in keys(with_row(plan, place, ops=(recoloured[0], *row.ops[1:])))
    assert "chart-not-followed" in keys(with_row(plan, place, ops=(*row.ops[:-1], recoloured[-1])))
    assert "stated-wrong" in keys(plan.model_copy(update={"charts": plan.charts * 2}))
    assert keys(plan.model_copy(update={"charts": ()})) >= {"chart-row-wrong"}


def keys(plan: Plan) -> set[str]:
    return {problem.key for problem in prove(plan)}


def test_a_pattern_that_is_not_its_own_is_refused():
    plan = made(CAP)
    assert plan.written is not None
    for pattern, key in (
        (plan.written.pattern.replace("ssk", "k2tog"), "written-otherwise"),
        (plan.written.pattern.replace("ssk", "skq"), "written-unread"),
        (plan.written.pattern.replace("Weave in.", ""), "written-otherwise"),
        (plan.written.pattern + "\nBody\nRnd 1: k.", "written-otherwise"),
    ):
        assert key in keys(plan.model_copy(update={"written": plan.written.model_copy(update={"pattern": pattern})}))
