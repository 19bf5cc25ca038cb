"""How well commands are told from each other and from talk, over many synthetic voices, every command active."""

import random
import shutil
from pathlib import Path

import numpy as np

from assistant.languages import load
from assistant.listening.understanding import understand
from assistant.wiring import make_recogniser
from models.recognising import Block, Heard
from models.shipped import default_recogniser
from models.voice_activity import VoiceActivity
from tests.benchmarks.figures import share
from tests.benchmarks.spoken import take

ESPEAK = ("en-us", "en-us+f5", "en-us+m3", "en-gb", "en-gb+f2", "en-gb-scotland", "en-gb-x-rp+m1", "en-029+f3")
FLITE = ("kal", "slt", "rms")
COMMANDS = (
    "next", "done", "where am i", "undo", "redo", "again", "how many", "how many left", "how far", "what comes after",
    "back two rounds", "go back a round", "forward three rounds", "i am at round seventeen",
    "ripped back to the gusset",
    "i ripped back to round twelve", "i have eighteen", "i have thirty two stitches on the front", "finer", "coarser",
    "slower", "faster", "louder", "softer", "pause listening", "listen again", "mark this place", "marks",
    "stop for today", "help", "how long", "take a break",
)  # fmt: skip
"""Said most, or most to lose."""
TALK = Path(__file__).with_name("talk.txt")
NUMBERS = (
    "one two three four", "five six seven eight", "two four six eight ten", "ten eleven twelve",
    "eighteen nineteen twenty",
    "twenty one twenty two twenty three", "thirty thirty one thirty two", "three six nine twelve", "forty eight fifty",
    "sixty two sixty three sixty four", "seven eight nine", "sixteen", "twenty four", "thirty six and two more", "four",
    "eleven twelve thirteen fourteen fifteen", "ninety eight ninety nine one hundred",
    "one and two and three", "fifty six",
    "twelve fourteen sixteen eighteen",
)  # fmt: skip
"""Counting aloud, as knitters do."""
FRAMES = (
    "he said {} and then he laughed", "my sister always writes {} on the board", "what does {} mean in your language",
    "the word {} was painted on the door", "they kept shouting {} from the boat",
)  # fmt: skip
INSIDE = (
    "next", "undo", "where am i", "how many", "how far", "again", "back two rounds", "i have eighteen",
    "stop for today", "faster", "louder", "mark", "help", "done", "take a break", "go on",
)  # fmt: skip
"""Commands that stand in those sentences, and are none."""
PAUSE_S = 0.9


def voices():
    """Those of the synthesisers that are installed."""
    found = {"espeak-ng": ESPEAK, "flite": FLITE}
    return [f"{program} {name}" for program, names in found.items() if shutil.which(program) for name in names]


def sentences():
    """Invented: ordinary ones, ones with a command inside, and counting aloud; mixed, the same each time."""
    framed = [frame.format(words) for frame in FRAMES for words in INSIDE]
    everything = [*TALK.read_text(encoding="utf-8").splitlines(), *framed, *NUMBERS]
    return random.Random(1).sample(everything, len(everything))


class Listener:
    """The ears of a session whose every command may be said, and what they come to."""

    def __init__(self):
        self._language = load()
        self._recogniser = make_recogniser(default_recogniser())
        self._recogniser.expect(self._language.vocabulary())
        self._activity = VoiceActivity()
        self._next = 0

    def meant(self, words):
        """The command that the words are, said clearly."""
        return understand(Heard(words, 1.0, 0, 0), self._language, asked=False).command

    def hear(self, words, voice):
        """What was heard, and what came of it: the words, "act", "ask" or "ignore", and the command; all of them."""
        samples = take([words], PAUSE_S, voice).samples
        first, self._next = self._next, self._next + len(samples) + 16_000
        found = [each for at in range(0, len(samples), 800)
                 for marked in self._activity.mark(Block(first + at, np.array(samples[at : at + 800])))
                 for each in self._recogniser.accept(marked)]  # fmt: skip
        found += self._recogniser.finish()
        heard = [each for each in found if isinstance(each, Heard)]
        understood = [(each, understand(each, self._language, asked=False)) for each in heard]
        return [(each.words, about.outcome, about.command) for each, about in understood]


def ears(count=None):
    """Every command by every voice; every sentence by one voice, in turn."""
    listener, failures = Listener(), []
    table = {voice: {"commands_right_share": _commands(listener, voice, count, failures)} for voice in voices()}
    acted, asked = dict.fromkeys(table, 0), dict.fromkeys(table, 0)
    said = dict.fromkeys(table, 0)
    for number, words in enumerate(sentences()[:count]):
        voice = list(table)[number % len(table)]
        outcomes = {outcome: heard for heard, outcome, _ in listener.hear(words, voice)}
        said[voice] += 1
        acted[voice] += "act" in outcomes
        asked[voice] += "ask" in outcomes and "act" not in outcomes
        if "act" in outcomes:
            failures.append({"voice": voice, "said": words, "acted_on": outcomes["act"]})
    for voice, figures in table.items():
        figures |= {"sentences": said[voice], "sentences_acted_on_share": share(acted[voice], said[voice])}
    rights = [figures["commands_right_share"] for figures in table.values()]
    sentences_said = sum(said.values())
    return {
        "voices": len(table),
        "commands_each_voice": len(COMMANDS[:count]),
        "commands_right_share": share(sum(rights), len(rights)),
        "sentences": sentences_said,
        "sentences_acted_on_share": share(sum(acted.values()), sentences_said),
        "sentences_asked_back_share": share(sum(asked.values()), sentences_said),
        "by_voice": table,
        "failures": failures,
    }


def _commands(listener, voice, count, failures):
    right = 0
    for words in COMMANDS[:count]:
        found = listener.hear(words, voice)
        is_right = [listener.meant(words)] == [command for _, outcome, command in found if outcome == "act"]
        right += is_right
        if not is_right:
            heard = [f"{heard} ({outcome})" for heard, outcome, _ in found]
            failures.append({"voice": voice, "said": words, "heard": heard})
    return share(right, len(COMMANDS[:count]))
