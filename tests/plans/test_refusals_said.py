"""What a refusal says, to the number: where it is, what was found, and what would do."""

from fractions import Fraction

import pytest

from plans.conversation import Problem
from plans.pattern import BindOff, Cuff, Direction, Heel
from plans.quantities import Length
from plans.sayings import SAYINGS
from plans.sizing import size_sock
from plans.sizing.stretch import stretchiest
from plans.wishes import SockSize, Swatch
from tests.plans.test_sizing import cm, wished

DOWN = {"direction": Direction.CUFF_DOWN, "heel": Heel("french"), "bind_off": BindOff("graft")}


def refused(**changes) -> tuple[str, str, dict]:
    """Key, place and values of the one thing that is wrong."""
    found = size_sock(wished(**changes))
    assert isinstance(found, tuple), found
    [problem] = found
    assert isinstance(problem, Problem)
    assert SAYINGS[problem.key] == {name for name, _ in problem.values}
    return problem.key, problem.where, dict(problem.values)


@pytest.mark.parametrize(
    ("changes", "refusal"),
    [
        ({"socks": ("Left", "left ")}, ("names-alike", "socks", {"name": "Left"})),
        ({"cast_on": 22}, ("cast-on-unfit", "cast_on", {"loops": 22, "stitches": 64, "below": 20, "above": 24})),
        ({"cast_on": 68}, ("cast-on-too-many", "cast_on", {"loops": 68, "stitches": 64, "most": 64})),
        ({"around": 62},
         ("around-uneven", "around", {"stitches": 62, "multiple": 4, "below": 60, "above": 64})),
        ({**DOWN, "cast_on": 20}, ("cast-on-not-cuff-down", "cast_on", {"loops": 20})),
        ({"leg": Length.parse("4cm"), "cuff": Length.parse("4cm")},
         ("leg-too-short", "leg", {"leg": cm("4"), "cuff": cm("4"), "least": cm("4.2")})),
        ({"bind_off": BindOff("tubular"), "cuff_style": Cuff("rib-2x2")},
         ("bind-off-needs-rib", "bind_off", {"name": "tubular", "cuff": "rib-2x2", "better": "yarn-over"})),
    ],
)  # fmt: skip
def test_a_refusal_says_what_was_found_and_what_would_do(changes, refusal):
    assert refusal == refused(**changes)


def test_too_few_stitches_name_a_gauge_that_is_fine_enough():
    foot = {"foot_length": "9.5cm", "ball": "9cm", "ankle": None, "heel_diagonal": None, "leg": "8cm", "cuff": None}
    at = ("too-few-stitches", "swatch.stitches", {"stitches": 4, "least": 8, "gauge": "7.5"})

    assert at == refused(**foot, swatch=Swatch(stitches=6, rounds=9))
    assert at == refused(**foot, swatch=Swatch(stitches=Fraction("7.4"), rounds=9))
    assert isinstance(size_sock(wished(**foot, swatch=Swatch(stitches=Fraction("7.5"), rounds=9))), SockSize)


@pytest.mark.parametrize(("cuff_style", "bind_off"), [("rib-2x2", "yarn-over"), ("rib-1x1", "tubular")])
def test_the_stretchiest_edge_of_a_cuff(cuff_style, bind_off):
    assert bind_off == stretchiest(cuff_style)
