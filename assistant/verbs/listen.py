"""`roundcaller listen`: what would it have heard?"""

import json
from collections.abc import Iterator
from contextlib import ExitStack
from fractions import Fraction
from typing import Any

import click

from assistant.clocks import StreamClock
from assistant.equipment import Piece, Present, present
from assistant.failing import refuse
from assistant.knitting import close_ears_while_speaking
from assistant.languages import Language
from assistant.listening.understanding import Understood, understand
from assistant.settings import Settings
from assistant.speaking.wording import word
from assistant.teaching import Teacher, forget_taught, keep_taught, taught_file
from assistant.verbs.choices import careful_option, microphone_option, remember
from assistant.verbs.knit import model_option, routes_of, sound_recogniser_option
from assistant.verbs.shared import language_option, remembered
from assistant.wiring import Routes, data_dir, make_ears, make_scorer, make_source, make_taking_ears, make_voice
from models.recognising import SAMPLE_RATE_HZ, Heard


@click.command()
@click.argument("files", nargs=-1, metavar="FILE…")
@click.option("--mic", is_flag=True, help="Listen to the microphone until Control-C.")
@click.option("--json", "as_json", is_flag=True, help="As JSON lines, for other programs.")
@sound_recogniser_option
@model_option
@microphone_option
@careful_option
@click.option("--learn", is_flag=True, help="Learn how you say the commands used most; no sound is kept.")
@click.option("--forget", is_flag=True, help="Delete what was learnt of your voice.")
@language_option
def listen(  # noqa: PLR0913, PLR0917 (one parameter an option)
    files: tuple[str, ...], mic: bool, as_json: bool, recogniser: str | None, model: str | None,
    microphone: str | None, careful: bool | None, learn: bool, forget: bool, language: str | None,
) -> None:
    """Tell what is heard in recordings, or at the microphone, and what would be done about it; nothing is kept.

    Example: roundcaller listen take.wav --json
    """
    if learn + forget > 1 or (learn and len(files) > 1) or (not (learn or forget) and bool(files) == mic):
        raise refuse("listen-to-what")
    memory, spoken = remembered(language)
    unwritten = remember(memory, {"microphone": microphone, "careful": careful}, spoken.name)
    settings = memory.settings.but(language=spoken.name)
    if forget:
        click.echo(word(forget_taught(taught_file(data_dir(), spoken.name)), spoken))
        return
    pieces: set[Piece] = set() if files else {"microphone", "speaker", "voice"} if learn else {"microphone"}
    here = present(settings, pieces).and_note(unwritten).with_taught(data_dir())
    here = here if learn else here.with_second_opinion(make_scorer, live=mic)
    for note in here.notes:
        click.echo(word(note, spoken), err=True)
    if learn:
        given, speak_to = (files[0], "none") if files else (None, "speaker")
        routes = routes_of(given, speak_to, None, None, language=spoken.name)
        _learn(routes, spoken, here.settings)
        return
    for each in files or ("mic",):
        for line in _lines(routes_of(each, "none", recogniser, model, language=spoken.name), spoken, here):
            shown = {"file": each, **line} if len(files) > 1 else line
            click.echo(json.dumps(shown, ensure_ascii=False) if as_json else _text(shown))


def _learn(routes: Routes, language: Language, settings: Settings) -> None:
    """Ask for each word; each is kept as soon as it was said three times."""
    file = taught_file(data_dir(), language.name)
    with ExitStack() as closing:
        clock = StreamClock(live=routes.is_live)
        ears, taker = make_taking_ears(make_source(routes, clock, settings))
        closing.callback(ears.close)
        voice = make_voice(routes, clock, settings, closing)
        close_ears_while_speaking(voice, ears, live=routes.is_live)
        teacher = Teacher(lambda reply: voice.say(word(reply, language)), lambda taught: keep_taught(file, taught))
        lesson = teacher.teach(language.phrases.to_teach, ears, taker)
        voice.say(word(lesson.outcome(file), language))


def _lines(routes: Routes, language: Language, here: Present) -> Iterator[dict[str, Any]]:
    clock = StreamClock(live=routes.is_live)
    ears = make_ears(make_source(routes, clock, here.settings), routes, here)
    ears.expect(language.vocabulary())
    try:
        for heard in ears:
            yield described(heard, understand(heard, language, asked=True))
    finally:
        ears.close()


def described(heard: Heard, understood: Understood) -> dict[str, Any]:
    """One utterance as plain values; times in seconds from the start of the stream."""
    number = understood.number
    return {
        "began_s": round(heard.began / SAMPLE_RATE_HZ, 3),
        "ended_s": round(heard.ended / SAMPLE_RATE_HZ, 3),
        "words": heard.words,
        "confidence": round(heard.confidence, 3),
        "command": understood.name,
        "number": float(number) if isinstance(number, Fraction) and number.denominator > 1 else _whole(number),
        "outcome": understood.outcome,
        "why": understood.why,
    }


def _whole(number: int | Fraction | None) -> int | None:
    return None if number is None else int(number)


def _text(line: dict[str, Any]) -> str:
    what = line["command"] or "no command"
    when = f"{line['began_s']:.2f} to {line['ended_s']:.2f} s"
    return f"{when}: “{line['words']}”, {what}, {line['outcome']}: {line['why']}"
