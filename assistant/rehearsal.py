"""The demonstration: an invented pair, and everything its knitter says from cast-on to bind-off.

The person, the foot and the yarn are made up.
"""

from collections.abc import Iterator
from fractions import Fraction

import numpy as np

from assistant.ports import Sound, Synthesiser, VoiceSettings
from plans.conversation import Next, Progress
from plans.engine import begin, decide, evolve, replay
from plans.engine.courses import course
from plans.engine.places import in_hand, is_finished
from plans.pattern import Plan, StageName
from plans.quantities import Length
from plans.wishes import Swatch, Wishes

KNITTER = VoiceSettings(rate_wpm=150, voice="en-us+f5")
"""How the synthetic knitter speaks, where the system's synthesiser has this voice; not as the program does."""
PAUSE_S = 0.9
"""Silence around each command, so that each stands alone."""

INVENTED = Wishes(
    name="invented pair",
    swatch=Swatch(stitches=Fraction(22), rounds=Fraction(30)),
    foot_length=Length.parse("11.2cm"),
    ball=Length.parse("14cm"),
    ankle=Length.parse("12.8cm"),
    around=28,
    leg=Length.parse("3cm"),
    cuff=Length.parse("1cm"),
)
"""A very small sock, invented; enough stitches that every step comes, and few enough that it is soon heard."""

_ASIDES: dict[StageName, tuple[str, ...]] = {
    StageName.TOE: ("where am i", "how many"),
    StageName.FOOT: ("undo", "redo"),
    StageName.GUSSET: ("how far to go",),
    StageName.HEEL_TURN: ("where am i",),
    StageName.HEEL_FLAP: ("again",),
    StageName.LEG: ("what comes after",),
}
"""What is said besides "next", once in each of these stages, as soon as its second step is called."""


def script(plan: Plan) -> Iterator[str]:
    """Every command, in order, that takes the pair from cast-on to bind-off."""
    progress = replay(begin(plan).events)
    asides = dict(_ASIDES)
    steps_in: dict[StageName, int] = {}
    while not is_finished(plan, progress.now):
        stage = _stage(plan, progress)
        steps_in[stage] = steps_in.get(stage, 0) + 1
        if steps_in[stage] > 1:
            yield from asides.pop(stage, ())
        yield "next"
        for event in decide(plan, progress, Next()).events:
            progress = evolve(progress, event)


def _stage(plan: Plan, progress: Progress) -> StageName:
    the_course = course(plan)
    return the_course.row(in_hand(the_course, progress.now)).stage


def recording(commands: tuple[str, ...], speaker: Synthesiser) -> Sound:
    """All commands spoken one after the other, with pauses between, as one sound."""
    spoken = {words: speaker.render(words) for words in dict.fromkeys(commands)}
    rate_hz = next(iter(spoken.values())).rate_hz
    pause = np.zeros(int(PAUSE_S * rate_hz), np.int16)
    parts = [part for words in commands for part in (pause, spoken[words].samples)]
    return Sound(np.concatenate((*parts, pause)), rate_hz)
