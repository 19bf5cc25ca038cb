"""How long the spoken replies to "next" last, over a whole adult pair as it is usually called."""

from functools import cache

from assistant.languages import load
from assistant.ports import VoiceSettings
from assistant.speaking.synthesis import Synthesis, SystemVoice
from assistant.speaking.wording import word
from plans.conversation import Next
from plans.engine import begin, decide, evolve, replay
from plans.engine.places import is_finished
from tests.benchmarks import computing
from tests.benchmarks.figures import percentile

USUAL_S = 3.0


def _said(steps):
    plan, language = computing.made(computing.wishes()), load()
    progress = replay(begin(plan).events)
    while not is_finished(plan, progress.now) and steps:
        decision = decide(plan, progress, Next())
        yield word(decision.reply, language)
        for event in decision.events:
            progress = evolve(progress, event)
        steps -= 1


def lengths(steps):
    """Seconds, each reply as often as it is said; `steps` of the pair, -1 for all of it."""
    system = SystemVoice()
    system.start()
    synthesis = Synthesis(system)

    @cache
    def seconds(text):
        sound = synthesis.render(text, VoiceSettings())
        return len(sound.samples) / sound.rate_hz

    try:
        found = [seconds(text) for text in _said(steps)]
    finally:
        synthesis.close()
        system.close()
    return {
        "spoken_next_replies": len(found),
        "spoken_next_p50_s": round(percentile(found, 50), 2),
        "spoken_next_p95_s": round(percentile(found, 95), 2),
        "spoken_next_p50_s_aim": USUAL_S,
        "spoken_next_share_under_aim": round(sum(each < USUAL_S for each in found) / len(found), 2),
    }
