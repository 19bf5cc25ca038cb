"""`roundcaller` alone: it speaks, asks, and begins or resumes a pair."""

from collections.abc import Iterable
from contextlib import ExitStack
from dataclasses import replace

import click

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceProblem
from assistant.dialogue import Dialogue, Lines
from assistant.failing import as_problem, explained
from assistant.inputs import Input, Inputs
from assistant.journal import Journal
from assistant.knitting import Wanted, close_ears_while_speaking, knit_pair, open_ears
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.session import Habits
from assistant.settings import Settings
from assistant.sittings import Opening, open_pair
from assistant.speaking.wording import word
from assistant.starting import check_sound, new_pair, wants_last
from assistant.verbs.knit import routes_of
from assistant.verbs.shared import load_language, settings_or_usual
from assistant.wiring import Routes, data_dir, default_journal, make_source, make_voice, types
from plans.conversation import Problem, Reply
from plans.making import Made


@click.command()
def start() -> None:
    """Check the sound, then ask for a new pair or resume the last one."""
    settings, language = settings_or_usual(), load_language("en")
    routes, problems = _possible(routes_of(None, "speaker", None, None), settings)
    for line in dict.fromkeys(word(problem, language) for problem in problems):
        click.echo(line, err=True)
    with Journal.open(default_journal()) as journal:
        lines = Lines()
        opening = _opening(journal, routes, settings, language, lines)
        if opening is not None:
            wanted = Wanted(routes, Habits(real_time=routes.is_timed), lines=lines)
            knit_pair(opening, language, wanted, settings)


def _possible(routes: Routes, settings: Settings) -> tuple[Routes, tuple[Problem, ...]]:
    """The routes without a microphone or a speaker that is not there, and why; typed and printed lines always are."""
    clock, problems = StreamClock(live=True), list[Problem]()
    try:
        with ExitStack() as closing:
            make_voice(routes, clock, settings, closing)
    except DeviceProblem as error:
        routes = replace(routes, speak_to="none")
        problems += explained(error).problems
    if routes.hear_from == "mic":
        try:
            make_source(routes, clock, settings).close()
        except DeviceProblem as error:
            routes = replace(routes, hear_from="keys") if types() else Routes("-", routes.speak_to, "typed")
            problems += explained(error).problems
    return routes, tuple(problems)


def _opening(
    journal: Journal, routes: Routes, settings: Settings, language: Language, lines: Lines
) -> Opening | None:
    """The pair to be knitted; None where the answers ended before one was chosen."""
    with ExitStack() as closing:
        clock = StreamClock(live=routes.is_live)
        voice = make_voice(routes, clock, settings, closing)
        ears = open_ears(routes, clock, settings, closing)
        if ears is not None:
            close_ears_while_speaking(voice, ears, live=routes.is_live)
        dialogue = Dialogue(_inputs(ears, routes, lines, closing), voice, language, ears)
        dialogue.say(Reply.of("welcome"))
        if routes.speak_to == "none":
            dialogue.say(Reply.of("no-mouth"))
        if ears is not None:
            check_sound(dialogue, ears)
        elif routes.hear_from == "keys":
            dialogue.say(Reply.of("no-ears"))
        if wants_last(dialogue, journal):
            return open_pair(journal, None)
        made = new_pair(dialogue, data_dir() / "plans", journal.pairs())
        return None if made is None else open_pair(journal, Made(plan=made.plan))


def _inputs(ears: Ears | None, routes: Routes, lines: Lines, closing: ExitStack) -> Iterable[Input]:
    """Spoken answers, and typed ones where somebody can type."""
    if routes.recogniser == "typed":
        return lines
    inputs = Inputs()
    if ears is not None:
        inputs.feed(ears, name="ears", to_problem=as_problem)
    if types():
        closing.callback(lines.close)
        inputs.feed(lines, name="lines", to_problem=as_problem)
    return inputs

