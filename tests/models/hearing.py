"""Streams of sound for recognisers, and what they hear in them."""

import numpy as np

from models.recognising import Block, Heard, Vocabulary
from models.voice_activity import VoiceActivity
from tests.models import rooms

NUMBERS = ("one", "two", "three", "six", "twelve", "eighteen", "thirty", "thirty six", "forty")
SMALL = Vocabulary(
    ("next", "undo that", "where am i", "go back {number} rounds", "i have {number}", "stop for today"),
    {"number": NUMBERS},
)


def take(*parts, seed=3):
    """Words (synthetic voice) and silences (seconds) one after another in a quiet room, as int16."""
    pieces = [rooms.silence(part) if isinstance(part, int | float) else voice(part) for part in parts]
    sound = np.concatenate(pieces)
    return rooms.as_int16(sound + rooms.white(len(sound) / 16_000, -75, seed)[: len(sound)])


def voice(words):
    """A synthetic voice at the level of near speech; "en-us+m5: next" names the voice."""
    name, _, rest = words.rpartition(": ")
    return rooms.at_level(rooms.spoken(rest, name or "en-us"), -24)


def blocks(sound, size=320, first_sample=0, speech=None):
    """The sound in blocks; nobody has marked speech in them."""
    for at in range(0, len(sound), size):
        yield Block(first_sample + at, sound[at : at + size], speech)


def marked(sound, size=320, first_sample=0):
    """The same, marked by voice activity."""
    activity = VoiceActivity()
    for block in blocks(sound, size, first_sample):
        yield from activity.mark(block)
    yield from activity.finish()


def everything(recogniser, stream):
    """All partial results and utterances, to the end of the stream."""
    found = [each for block in stream for each in recogniser.accept(block)]
    return [*found, *recogniser.finish()]


def heard(recogniser, stream):
    """All utterances, to the end of the stream."""
    return [each for each in everything(recogniser, stream) if isinstance(each, Heard)]
