"""What happens around the knitting and is written down beside the engine's own events."""

from typing import Annotated, Literal

from pydantic import Field, TypeAdapter

from plans.conversation import Event
from plans.record import Record


class SessionBegan(Record):
    """The program took a pair up; the ears' stream starts at nought.

    Attributes:
        recogniser: name of the recogniser, as on the command line.
        language: name of the language folder.
    """

    kind: Literal["session_began"] = "session_began"
    recogniser: str = ""
    language: str = "en"


class SessionEnded(Record):
    """The program let the pair go."""

    kind: Literal["session_ended"] = "session_ended"
    why: Literal["stopped", "end_of_input", "interrupted", "failed"] = "stopped"


class Told(Record):
    """A command was answered, or refused, that changes nothing; what was heard and said stand beside it."""

    kind: Literal["told"] = "told"
    command: str


class AskedBack(Record):
    """A near miss was asked back; nothing changed.

    Attributes:
        command: what it sounded like; None where nothing came near.
    """

    kind: Literal["asked_back"] = "asked_back"
    command: str | None = None


class NotUnderstood(Record):
    """Speech that was no command was met with silence. The words are not kept: they were not meant for us."""

    kind: Literal["not_understood"] = "not_understood"


class Spoke(Record):
    """A sentence was spoken to its end or cut short, after the event it belongs to was written down.

    Attributes:
        of_seq: the event whose `said` it was.
        began_ms: first sample, on the ears' stream.
        ended_ms: last sample, on the ears' stream.
    """

    kind: Literal["spoke"] = "spoke"
    of_seq: int
    began_ms: int
    ended_ms: int


class CutShort(Record):
    """A sentence was cut short; `by` tells what did it."""

    kind: Literal["cut_short"] = "cut_short"
    by: Literal["key", "speech", "device"] = "key"


class Paused(Record):
    """Listening was paused."""

    kind: Literal["paused"] = "paused"


class Resumed(Record):
    """Listening went on."""

    kind: Literal["resumed"] = "resumed"


class VolumeSet(Record):
    """Louder or softer: percent of full."""

    kind: Literal["volume_set"] = "volume_set"
    percent: int


class RateSet(Record):
    """Slower or faster: words a minute."""

    kind: Literal["rate_set"] = "rate_set"
    words_per_minute: int


class VerbositySet(Record):
    """Sentences became shorter or longer."""

    kind: Literal["verbosity_set"] = "verbosity_set"
    verbosity: str


class VoiceModeSet(Record):
    """Voice, screen reader or both (see assistant.terminal)."""

    kind: Literal["voice_mode_set"] = "voice_mode_set"
    mode: str


class AttentionSet(Record):
    """The attention word was switched on or off."""

    kind: Literal["attention_set"] = "attention_set"
    on: bool


class RestSuggested(Record):
    """A rest was offered."""

    kind: Literal["rest_suggested"] = "rest_suggested"


class RestSnoozed(Record):
    """The offer was put off, by minutes."""

    kind: Literal["rest_snoozed"] = "rest_snoozed"
    minutes: int


class Rested(Record):
    """The knitter said that she rests."""

    kind: Literal["rested"] = "rested"


class RestEnded(Record):
    """The rest was over, after so many whole minutes."""

    kind: Literal["rest_ended"] = "rest_ended"
    minutes: int


class RestsSet(Record):
    """Offers of a rest were switched on or off."""

    kind: Literal["rests_set"] = "rests_set"
    on: bool


class DeviceLost(Record):
    """A microphone or speaker went away."""

    kind: Literal["device_lost"] = "device_lost"
    device: str


class DeviceFound(Record):
    """A microphone or speaker came back."""

    kind: Literal["device_found"] = "device_found"
    device: str


SessionEvent = Annotated[
    SessionBegan | SessionEnded | Told | AskedBack | NotUnderstood | Spoke | CutShort | Paused | Resumed
    | VolumeSet | RateSet | VerbositySet | VoiceModeSet | AttentionSet | RestSuggested | RestSnoozed | Rested
    | RestEnded | RestsSet | DeviceLost | DeviceFound,
    Field(discriminator="kind"),
]  # fmt: skip

JournalEvent = Event | SessionEvent
"""All that a journal may hold."""

EVENTS: TypeAdapter[JournalEvent] = TypeAdapter(JournalEvent)
"""Reads and writes an event's body."""
