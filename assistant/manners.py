"""How a session behaves towards the knitter, and the commands that change it: state and command in, reply out."""

from collections.abc import Callable
from typing import assert_never

from assistant.journal_events import (
    AttentionSet,
    JournalEvent,
    Paused,
    RateSet,
    Rested,
    RestSnoozed,
    RestsSet,
    Resumed,
    Told,
    VolumeSet,
)  # fmt: skip
from assistant.languages.verbosity import Verbosity
from assistant.ports import VoiceSettings
from assistant.rest_times import DAY_MINUTES, WORK_MINUTES
from assistant.session_commands import (
    Attend,
    AttentionOff,
    AttentionOn,
    Faster,
    Help,
    HowLong,
    ListenAgain,
    Louder,
    NoRestsToday,
    PauseListening,
    Rest,
    RestOver,
    RestsOn,
    SessionCommand,
    Slower,
    Snooze,
    Softer,
)  # fmt: skip
from plans.conversation import Reply
from plans.record import Record


class Manners(Record):
    """What the knitter set about voice and ears.

    Attributes:
        voice: rate and volume.
        verbosity: how much is said.
        listening: False while listening is paused: only "listen again" is heeded.
        attention: True where a command counts only after the attention word.
        attending: the attention word was just heard alone: the next command counts.
        rests: whether rests are offered.
        rest_after_minutes: after how much knitting without one.
    """

    voice: VoiceSettings = VoiceSettings()
    verbosity: Verbosity = Verbosity.PLAIN
    listening: bool = True
    attention: bool = False
    attending: bool = False
    rests: bool = True
    rest_after_minutes: int = WORK_MINUTES

    def but(self, **changes: object) -> "Manners":
        """The same with some fields changed."""
        return Manners.model_validate({**dict(self), **changes})


class Managed(Record):
    """What a session command comes to: new manners, an event to be written down, then the reply to be spoken."""

    manners: Manners
    event: JournalEvent
    reply: Reply


def manage(manners: Manners, command: SessionCommand, *, word: str, how_long: Callable[[], Reply]) -> Managed:  # noqa: C901
    """Carry out a command to the surroundings.

    Args:
        manners: as they are.
        command: what was asked.
        word: the attention word.
        how_long: reckons how long stage and pair will still take.
    """
    match command:
        case Louder() | Softer():
            return _volume(manners, louder=isinstance(command, Louder))
        case Faster() | Slower():
            return _rate(manners, faster=isinstance(command, Faster))
        case PauseListening():
            return Managed(manners=manners.but(listening=False), event=Paused(), reply=Reply.of("listening-paused"))
        case ListenAgain():
            key = "listening" if manners.listening else "listening-again"
            return Managed(manners=manners.but(listening=True), event=Resumed(), reply=Reply.of(key))
        case AttentionOn():
            on = manners.but(attention=True, attending=False)
            return Managed(manners=on, event=AttentionSet(on=True), reply=Reply.of("attention-on", word=word))
        case AttentionOff():
            off = manners.but(attention=False, attending=False)
            return Managed(manners=off, event=AttentionSet(on=False), reply=Reply.of("attention-off"))
        case Attend():
            return Managed(
                manners=manners.but(attending=True), event=Told(command="attend"), reply=Reply.of("attending")
            )
        case Help():
            return Managed(manners=manners, event=Told(command="help"), reply=Reply.of("help"))
        case HowLong():
            return Managed(manners=manners, event=Told(command="how_long"), reply=how_long())
        case Rest() | RestOver() | Snooze() | NoRestsToday() | RestsOn():
            return _about_rests(manners, command)
        case _:
            assert_never(command)


def _about_rests(manners: Manners, command: Rest | RestOver | Snooze | NoRestsToday | RestsOn) -> Managed:
    match command:
        case Rest():
            return Managed(manners=manners, event=Rested(), reply=Reply.of("resting"))
        case RestOver():
            return Managed(manners=manners, event=Told(command="rest_over"), reply=Reply.of("no-rest-to-end"))
        case Snooze(minutes=minutes):
            snoozed = Reply.of("rest-snoozed", minutes=minutes)
            return Managed(manners=manners, event=RestSnoozed(minutes=minutes), reply=snoozed)
        case NoRestsToday():
            return Managed(manners=manners, event=RestSnoozed(minutes=DAY_MINUTES), reply=Reply.of("no-rests-today"))
        case RestsOn():
            after = Reply.of("rests-again", minutes=manners.rest_after_minutes)
            return Managed(manners=manners.but(rests=True), event=RestsSet(on=True), reply=after)


def _volume(manners: Manners, *, louder: bool) -> Managed:
    voice = manners.voice.louder() if louder else manners.voice.louder(-0.2)
    name, end = ("louder", "loudest") if louder else ("softer", "softest")
    event = VolumeSet(percent=round(100 * voice.volume))
    reply = Reply.of(name if voice != manners.voice else end)
    return Managed(manners=manners.but(voice=voice), event=event, reply=reply)


def _rate(manners: Manners, *, faster: bool) -> Managed:
    voice = manners.voice.faster() if faster else manners.voice.faster(-20)
    name, end = ("faster", "fastest") if faster else ("slower", "slowest")
    event = RateSet(words_per_minute=voice.rate_wpm)
    reply = Reply.of(name if voice != manners.voice else end)
    return Managed(manners=manners.but(voice=voice), event=event, reply=reply)

