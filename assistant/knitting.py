"""Runs one session from its first word to its last: the pair, ears, voice and keys put together."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import ExitStack, suppress
from dataclasses import dataclass, replace

import click

from assistant.clocks import StreamClock, SystemClock
from assistant.device_errors import DeviceLost
from assistant.dialogue import Lines
from assistant.echo import Playback, WithoutEcho, make_canceller
from assistant.equipment import Present
from assistant.failing import Surroundings, as_problem
from assistant.inputs import Input, Inputs
from assistant.journal_errors import JournalError
from assistant.journal_events import JournalEvent, SessionBegan, SessionEnded, Told
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.manners import Manners
from assistant.over_the_voice import LetThrough, OverTheVoice, let_through
from assistant.session import Habits, Session
from assistant.settings import Memory, Settings
from assistant.sittings import Opening
from assistant.speaking.earcons import Earcon, earcon
from assistant.speaking.wording import word
from assistant.voice import Voice, WhileSpeaking
from assistant.wiring import Routes, key_presses, make_ears, make_source, make_voice, types
from models.recognising import Heard
from plans.conversation import Grain, GrainSet, Problem, Reply


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


def knit_pair(opening: Opening, language: Language, wanted: Wanted, here: Present, memory: Memory) -> Session:
    """Say where things stand, then take inputs until she stops or they end; the journal knows how it ended.

    Args:
        opening: the pair taken up.
        language: what is said and heard in.
        wanted: how it is to run.
        here: settings that can be used, and what is to be told about those that cannot.
        memory: what she changes is remembered in.

    Raises:
        Refused, Surroundings, or an adapter's error: what was written down before stays.
    """
    routes, settings = wanted.routes, here.settings
    with ExitStack() as closing:
        clock = StreamClock(live=routes.is_live)
        playback = Playback() if _hears_itself(routes, settings) else None
        ears = open_ears(routes, clock, here, closing, playback)
        voice = make_voice(routes, clock, settings, closing, playback)
        through = let_through(settings.while_speaking, language) if routes.hear_from == "mic" else None
        over = _over_the_voice(ears, voice, clock, through)
        session = Session(
            opening.sitting, language, voice, SystemClock(clock), manners=_manners(settings),
            habits=replace(wanted.habits, has_keys=_takes_keys(routes)),
            expect=(over or ears).expect if ears else lambda _: None, remember=memory.change,
        )  # fmt: skip
        try:
            heard = over.heard_by(session) if over else ears
            feeds = tuple(_feeds(heard, voice, routes, closing, hears_the_greeting=over is not None))
            inputs = Inputs()
            _start(inputs, (feed for feed in feeds if feed.from_the_start))
            _greet(session, (*here.notes, *opening.sayings), _beginning(opening, wanted, language), inputs)
            session.question = opening.question
            _start(inputs, (feed for feed in feeds if not feed.from_the_start))
            session.run(inputs if feeds else _script(ears, wanted))
        except BaseException as error:
            is_interrupt = isinstance(error, KeyboardInterrupt)
            with suppress(JournalError):  # what went wrong first is what is told
                session.end(SessionEnded(why="interrupted" if is_interrupt else "failed"))
            if is_interrupt:
                click.echo(word(Reply.of("interrupted"), language), err=True)
            raise
        session.end(SessionEnded(why="stopped" if session.stopped else "end_of_input"))
    if session.failed is not None and not session.stopped:
        raise Surroundings(session.failed)
    return session


def open_ears(
    routes: Routes, clock: StreamClock, here: Present, closing: ExitStack, playback: Playback | None = None
) -> Ears | None:
    """The ears that the routes name, closed with `closing`; None where only lines or keys come.

    Raises:
        EchoCancellerMissing: what is played back is to be taken out, and the library for it is not here.
    """
    if not routes.has_ears:
        return None
    canceller = None if playback is None else make_canceller()
    source = make_source(routes, clock, here.settings)
    if playback is not None and canceller is not None:
        source = WithoutEcho(source, playback, canceller)
    ears = make_ears(source, routes, here)
    closing.callback(ears.close)
    return ears


def _manners(settings: Settings) -> Manners:
    return Manners(
        voice=settings.speech, verbosity=settings.wording, attention=settings.attention_word, rests=settings.rests,
        rest_after_minutes=settings.rest_after_minutes,
    )  # fmt: skip


def _beginning(opening: Opening, wanted: Wanted, language: Language) -> tuple[JournalEvent, ...]:
    grain = (GrainSet(grain=wanted.grain),) if wanted.grain else ()
    return (SessionBegan(recogniser=wanted.routes.recogniser, language=language.name), *opening.events, *grain)


def _greet(
    session: Session, sayings: Sequence[Reply | Problem], events: tuple[JournalEvent, ...], inputs: Inputs
) -> None:  # fmt: skip
    """Cut short, it goes to the last sentence at once, which says what is to be done now.

    What was said or pressed before that sentence cannot mean that this was done, so it does no more than cut.
    """
    is_hurried = False
    for saying in sayings[:-1]:
        is_hurried |= session.greet(saying, events=events, aloud=not is_hurried)
        is_hurried |= inputs.forget()
        events = (Told(command="greeting"),)
    session.greet(sayings[-1], events=events)


def close_ears_while_speaking(voice: Voice, ears: Ears, *, live: bool) -> None:
    """Half duplex: it does not hear itself; a soft tone says when it listens again."""
    voice.before = ears.pause
    voice.after = ears.resume
    voice.closing_tone = earcon(Earcon.LISTENING_AGAIN) if live else None


def _hears_itself(routes: Routes, settings: Settings) -> bool:
    """Whether the microphone hears the loudspeaker while it is listened to."""
    is_open = settings.while_speaking is WhileSpeaking.LOUDSPEAKER
    return is_open and routes.hear_from == "mic" and routes.speak_to == "speaker"


def _over_the_voice(
    ears: Ears | None, voice: Voice, clock: StreamClock, through: LetThrough | None
) -> OverTheVoice | None:
    """Ears that stay open for some commands while the voice speaks; where there are none they are closed."""
    if ears is None:
        return None
    if through is not None:
        return OverTheVoice(ears, voice, clock, through)
    close_ears_while_speaking(voice, ears, live=clock.live)
    return None


def _takes_keys(routes: Routes) -> bool:
    """Whether keys count: where nothing else is listened to, or beside a microphone, where somebody can type."""
    return routes.hear_from == "keys" or (routes.hear_from == "mic" and types())


def _of_ears(error: Exception) -> Problem | None:
    if isinstance(error, DeviceLost):
        return Problem.of("microphone-lost", name=error.values["name"])
    return as_problem(error)


@dataclass(frozen=True, slots=True)
class _Feed:
    """What is taken on a thread of its own; from the start, where it may cut a greeting short."""

    things: Iterable[Input]
    name: str
    to_problem: Callable[[Exception], Problem | None]
    from_the_start: bool


def _feeds(
    heard: Iterable[Heard] | None, voice: Voice, routes: Routes, closing: ExitStack, *, hears_the_greeting: bool
) -> Iterator[_Feed]:  # fmt: skip
    """None where lines are typed, or a recording is listened to."""
    if routes.recogniser == "typed" or (heard is not None and not routes.is_live):
        return
    if heard is not None:
        yield _Feed(heard, "ears", _of_ears, hears_the_greeting)
    if _takes_keys(routes):
        yield _Feed(key_presses(voice, closing), "keys", as_problem, types())


def _script(ears: Ears | None, wanted: Wanted) -> Iterable[Input]:
    """A recording, or typed lines: taken one after the other, on no thread of their own."""
    return ears if ears is not None else wanted.lines or Lines()


def _start(inputs: Inputs, feeds: Iterable[_Feed]) -> None:
    for feed in feeds:
        inputs.feed(feed.things, name=feed.name, to_problem=feed.to_problem)
