"""Where generated plans and commands come from."""

from dataclasses import dataclass
from functools import cache
from random import Random

import pytest
from hypothesis import strategies as st

from plans.conversation import (
    Again,
    AtRound,
    Back,
    Coarser,
    Command,
    Explain,
    Finer,
    Forward,
    HowFar,
    HowMany,
    IHave,
    Mark,
    Marks,
    NewBall,
    Next,
    No,
    Redo,
    RippedBack,
    Stop,
    Undo,
    WhatNext,
    WhereAmI,
    YarnLeft,
    Yes,
)
from plans.files.fields import PAIR_NEEDLES
from plans.making import make_plan
from plans.pattern import (
    BindOff,
    Cuff,
    Direction,
    Half,
    Heel,
    Increase,
    Leg,
    Needles,
    Plan,
    Sole,
    StageName,
    Toe,
)
from plans.rows.heels import heel as heel_part
from plans.sizing.directions import serving
from plans.wishes import Swatch, Wishes


def beginning(field: str, name: str) -> Direction:
    """The end at which a sock with that construction begins: the toe, unless it is none of such a sock."""
    down = field in {"heel", "bind_off"} and name not in serving(field, Direction.TOE_UP)
    return Direction.CUFF_DOWN if down else Direction.TOE_UP


UP_HEELS, DOWN_HEELS = (tuple(map(Heel, serving("heel", way))) for way in (Direction.TOE_UP, Direction.CUFF_DOWN))
UP_BIND_OFFS = tuple(map(BindOff, serving("bind_off", Direction.TOE_UP)))

FLAP_HEELS = tuple(heel for heel in UP_HEELS if StageName.HEEL_FLAP in heel_part(heel).stages)
"""Those with a gusset that a flap eats."""

KINDS = {
    "toe": Toe, "increase": Increase, "sole": Sole, "heel": Heel, "leg_style": Leg, "cuff_style": Cuff,
    "bind_off": BindOff,
}  # fmt: skip
"""The fields of the wishes that name a construction, and what they may name."""

CHOICES = tuple((field, str(name)) for field, names in KINDS.items() for name in names)
"""Every construction there is."""

ARRANGEMENTS = tuple(
    (needles, alone)
    for needles in PAIR_NEEDLES
    for alone in (False, True)
    if alone or not needles.pointed
)
"""What a pair can lie on, both socks at once or one after the other; double-pointed needles hold one alone."""

EVERYWHERE = tuple((*choice, *arrangement) for choice in CHOICES for arrangement in ARRANGEMENTS)
"""Every construction on every arrangement."""

USUAL = tuple((*choice, *Random(" ".join(choice)).choice(ARRANGEMENTS)) for choice in CHOICES)
"""The usual share of these: every construction once, on an arrangement drawn by its name, whatever others there are."""

SHARED = tuple(pytest.param(*each, marks=() if each in USUAL else pytest.mark.nightly) for each in EVERYWHERE)
"""Every construction on every arrangement, as parameters: at night those that are not of the usual share."""

_USUAL_HEELS = {Heel("wrapped"), Heel("german"), Heel("short-row-german"), Heel("forethought")}
HEELS = tuple(pytest.param(each, marks=() if each in _USUAL_HEELS else pytest.mark.nightly) for each in UP_HEELS)
"""Every heel, as a parameter of what takes long: usually one of each family and of each way to mark a turn."""


@cache
def practice(
    heel: Heel = Heel.WRAPPED, bind_off: BindOff = BindOff.DECREASE, toe: Toe = Toe.WEDGE
) -> Plan:
    """The practice pair: 24 stitches around."""
    return _made(Wishes(swatch=_SWATCH, heel=heel, bind_off=bind_off, toe=toe, practice=True))


@cache
def varied(field: str, name: str, needles: Needles = Needles.ONE_LONG_CIRCULAR, *, alone: bool = False) -> Plan:
    """The practice pair with one construction instead of the usual one, on any needles."""
    chosen = {field: KINDS[field](name), "direction": beginning(field, name)}
    return _made(Wishes(swatch=_SWATCH, practice=True, needles=needles, one_at_a_time=alone, **chosen))


_SWATCH = Swatch(stitches=22, rounds=30)


@cache
def adult(heel: Heel = Heel.WRAPPED) -> Plan:
    """An invented adult pair of 64 stitches around."""
    wishes = Wishes.model_validate({
        "swatch": {"stitches": 30, "rounds": 42}, "foot_length": "24.5cm", "ball": "23cm", "around": 64,
        "heel": heel,
    })  # fmt: skip
    return _made(wishes)


def _made(wishes: Wishes) -> Plan:
    made = make_plan(wishes)
    assert not isinstance(made, tuple), made
    return made.plan


@dataclass(frozen=True)
class Pair:
    """A practice pair by its choices, so that a failure names them and not every row."""

    heel: Heel
    bind_off: BindOff
    toe: Toe

    @property
    def plan(self) -> Plan:
        """Its plan."""
        return practice(self.heel, self.bind_off, self.toe)


def pairs() -> st.SearchStrategy[Pair]:
    """Practice pairs with every heel, toe and bind-off."""
    return st.builds(
        Pair, st.sampled_from(UP_HEELS), st.sampled_from(UP_BIND_OFFS), st.sampled_from(list(Toe))
    )


def _rounds() -> st.SearchStrategy[int]:
    return st.integers(0, 14)


def questions() -> st.SearchStrategy[Command]:
    """Commands that move nothing."""
    plain = (WhereAmI(), HowMany(), HowFar(), WhatNext(), Explain(), Again(), Marks())
    return st.one_of(
        st.sampled_from(plain),
        st.builds(YarnLeft, grams=st.integers(0, 120), sock=st.none() | st.sampled_from((1, 2))),
        st.builds(NewBall, sock=st.none() | st.sampled_from((1, 2))),
        st.builds(
            IHave,
            stitches=st.integers(0, 30),
            half=st.none() | st.sampled_from(list(Half)),
            sock=st.none() | st.sampled_from((1, 2)),
        ),
    )


def moves() -> st.SearchStrategy[Command]:
    """Commands that may move, with the answers to what they ask."""
    return st.one_of(st.sampled_from((Next(), Undo(), Redo())), other_moves())


def other_moves() -> st.SearchStrategy[Command]:
    """The same without next, undo and redo."""
    plain = (Finer(), Coarser(), Mark(), Yes(), No(), Stop())
    stages = st.none() | st.sampled_from([*(stage.value for stage in StageName), "heel"])
    return st.one_of(
        st.sampled_from(plain),
        st.builds(Back, rounds=_rounds()),
        st.builds(Forward, rounds=_rounds()),
        st.builds(AtRound, round=_rounds()),
        st.builds(RippedBack, stage=stages, round=st.none() | _rounds()),
    )


def commands() -> st.SearchStrategy[Command]:
    """Anything that can be said to the engine."""
    return st.one_of(moves(), questions())
