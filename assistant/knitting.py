"""Runs one session from its first word to its last: the pair, ears, voice and keys put together."""

import sys
from collections.abc import Iterable
from contextlib import ExitStack
from dataclasses import dataclass
from typing import Literal

from assistant.devices import StreamClock, SystemClock
from assistant.dialogue import Lines
from assistant.failing import as_problem
from assistant.inputs import Input, Inputs
from assistant.journal_events import SessionBegan, SessionEnded
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.manners import Manners
from assistant.session import Habits, Session
from assistant.settings import Settings
from assistant.sittings import Opening
from assistant.speaking.earcons import Earcon, earcon
from assistant.voice import Voice
from assistant.wiring import Routes, key_presses, make_ears, make_source, make_voice
from plans.conversation import Grain, GrainSet

Why = Literal["stopped", "end_of_input", "interrupted", "failed"]


@dataclass(frozen=True, slots=True)
class Wanted:
    """How this session is to run, as on the command line.

    Attributes:
        routes: where words come from and sound goes.
        habits: see there.
        grain: how much one call covers, from the start; None to leave it as it was.
        lines: typed lines, where some were taken before the session.
    """

    routes: Routes
    habits: Habits
    grain: Grain | None = None
    lines: Lines | None = None


def knit_pair(opening: Opening, language: Language, wanted: Wanted, settings: Settings) -> Session:
    """Say where things stand, then take inputs until she stops or they end; the journal knows how it ended.

    Raises:
        Refused, Surroundings, or an adapter's error: what was written down before stays.
    """
    routes = wanted.routes
    with ExitStack() as closing:
        clock = StreamClock(live=routes.is_live)
        ears = _ears(routes, clock, settings, closing)
        voice = make_voice(routes, clock, settings, closing)
        if ears is not None:
            close_ears_while_speaking(voice, ears, live=routes.is_live)
        session = Session(
            opening.sitting, language, voice, SystemClock(clock), manners=_manners(settings), habits=wanted.habits,
            expect=ears.expect if ears else lambda _: None,
        )  # fmt: skip
        _open(session, opening, wanted, language)
        why: Why = "failed"
        try:
            session.run(_inputs(ears, voice, routes, closing, wanted.lines or Lines()))
            why = "stopped" if session.stopped else "end_of_input"
        except KeyboardInterrupt:
            why = "interrupted"
            raise
        finally:
            session.end(SessionEnded(why=why))
    return session


def _ears(routes: Routes, clock: StreamClock, settings: Settings, closing: ExitStack) -> Ears | None:
    if routes.recogniser == "typed" or routes.hear_from == "keys":
        return None
    ears = make_ears(make_source(routes, clock, settings), routes)
    closing.callback(ears.close)
    return ears


def _manners(settings: Settings) -> Manners:
    return Manners(voice=settings.voice, verbosity=settings.verbosity, attention=settings.attention)


def _open(session: Session, opening: Opening, wanted: Wanted, language: Language) -> None:
    began = SessionBegan(recogniser=wanted.routes.recogniser, language=language.name)
    grain = (GrainSet(grain=wanted.grain),) if wanted.grain else ()
    first, *others = opening.sayings
    session.greet(first, events=(began, *opening.events, *grain))
    for saying in others:
        session.greet(saying, events=())


def close_ears_while_speaking(voice: Voice, ears: Ears, *, live: bool) -> None:
    """Half duplex: it does not hear itself; a soft tone says when it listens again."""
    voice.before = ears.pause
    voice.after = ears.resume
    voice.closing_tone = earcon(Earcon.LISTENING_AGAIN) if live else None


def _inputs(
    ears: Ears | None, voice: Voice, routes: Routes, closing: ExitStack, lines: Lines
) -> Iterable[Input]:
    if routes.recogniser == "typed":
        return lines
    if ears is not None and not routes.is_live:
        return ears
    inputs = Inputs()
    if ears is not None:
        inputs.feed(ears, name="ears", to_problem=as_problem)
    if ears is None or sys.stdin.isatty():
        inputs.feed(key_presses(voice, closing), name="keys", to_problem=as_problem)
    return inputs
