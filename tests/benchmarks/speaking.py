"""How long the spoken replies to "next" last, over a whole adult pair as it is usually called."""

from functools import cache
from itertools import islice

from assistant.ports import VoiceSettings
from assistant.speaking.synthesis import Synthesis, SystemVoice
from tests.benchmarks import computing
from tests.benchmarks.figures import percentile
from tests.end_to_end.test_live import sentences

USUAL_S = 3.0


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
        replies = islice(sentences(computing.made(computing.wishes())), 1, None if steps < 0 else steps + 1)
        found = [seconds(text) for text in replies]
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
