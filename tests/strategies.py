"""Where generated plans and commands come from."""

from dataclasses import dataclass
from functools import cache

from hypothesis import strategies as st

from plans.conversation import (
    Again,
    AtRound,
    Back,
    Coarser,
    Command,
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
from plans.making import make_plan
from plans.pattern import BindOff, Half, Heel, Plan, StageName, Toe
from plans.wishes import Swatch, Wishes


@cache
def practice(
    heel: Heel = Heel.WRAPPED, bind_off: BindOff = BindOff.DECREASE, toe: Toe = Toe.WEDGE
) -> Plan:
    """The practice pair: 24 stitches around."""
    wishes = Wishes(
        swatch=Swatch(stitches=22, rounds=30), heel=heel, bind_off=bind_off, toe=toe, practice=True
    )
    return _made(wishes)


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
        Pair, st.sampled_from(list(Heel)), st.sampled_from(list(BindOff)), st.sampled_from(list(Toe))
    )


def _rounds() -> st.SearchStrategy[int]:
    return st.integers(0, 14)


def questions() -> st.SearchStrategy[Command]:
    """Commands that move nothing."""
    plain = (WhereAmI(), HowMany(), HowFar(), WhatNext(), Again(), Marks())
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
