"""`roundcaller` alone: it speaks, asks, and begins or resumes a pair."""

from collections.abc import Iterable
from contextlib import ExitStack
from dataclasses import dataclass, replace
from typing import Any

import click

from assistant.clocks import StreamClock
from assistant.device_errors import DeviceProblem
from assistant.devices import nameable
from assistant.dialogue import Dialogue, Lines
from assistant.equipment import Present, present
from assistant.failing import as_problem, explained
from assistant.inputs import Input, Inputs
from assistant.journal import Journal
from assistant.knitting import Wanted, close_ears_while_speaking, knit_pair, open_ears
from assistant.languages import Language
from assistant.listening.ears import Ears
from assistant.session import Habits
from assistant.settings import Memory, Settings
from assistant.sittings import Opening, open_pair
from assistant.speaking.wording import word
from assistant.starting import check_sound, new_pair, wanted_pair
from assistant.verbs.choices import remember, voice_options
from assistant.verbs.knit import routes_of
from assistant.verbs.shared import language_option, remembered
from assistant.voice import Voice
from assistant.wiring import Routes, data_dir, default_journal, make_scorer, make_source, make_voice, types
from plans.conversation import Problem, Reply
from plans.making import Made


@click.command()
@voice_options
@language_option
def start(language: str | None, **given: Any) -> None:  # noqa: ANN401 (what is remembered)
    """Check the sound, then ask for a new pair or resume the last one."""
    memory, spoken = remembered(language)
    unwritten = remember(memory, given, spoken.name)
    here = present(memory.settings.but(language=spoken.name), {"microphone", "speaker", "voice"}).and_note(unwritten)
    here = here.with_taught(data_dir())
    routes, problems = _possible(routes_of(None, "speaker", None, None, language=spoken.name), here.settings)
    if routes.has_ears:
        here = here.with_second_opinion(make_scorer, live=True)
    for line in dict.fromkeys(word(problem, spoken) for problem in problems):
        click.echo(line, err=True)
    with Journal.open(default_journal()) as journal:
        beginning = Beginning(routes, here, memory, spoken)
        opening = beginning.opening(journal)
        if opening is not None:
            wanted = Wanted(routes, Habits(real_time=routes.is_timed), lines=beginning.lines)
            knit_pair(opening, spoken, wanted, here._replace(settings=beginning.settings, notes=()), memory)


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


class Beginning:
    """The first minutes of a run.

    Args:
        routes: where words come from and sound goes.
        here: settings that can be used, and what is to be told about those that cannot.
        memory: the microphone that hears her is remembered in.
        language: what is said and heard in.

    Attributes:
        settings: as the first minutes leave them.
        lines: typed lines; those not taken yet are left for the session.
    """

    def __init__(self, routes: Routes, here: Present, memory: Memory, language: Language) -> None:
        self.settings = here.settings
        self.lines = Lines()
        self._routes = routes
        self._here = here
        self._memory = memory
        self._language = language

    def opening(self, journal: Journal) -> Opening | None:
        """The pair to be knitted; None where the answers ended before one was chosen."""
        routes = self._routes
        with ExitStack() as closing:
            clock = StreamClock(live=routes.is_live)
            voice = make_voice(routes, clock, self.settings, closing)
            ears = open_ears(routes, clock, self._here, closing)
            if ears is not None:
                close_ears_while_speaking(voice, ears, live=routes.is_live)
            inputs = self._inputs(ears, closing)
            dialogue = Dialogue(inputs, voice, self._language, ears)
            dialogue.say(Reply.of("welcome"), *self._here.notes)
            if routes.speak_to == "none":
                dialogue.say(Reply.of("no-mouth"))
            if ears is not None:
                self._check_sound(dialogue, ears, _Others(routes, self._here, voice, inputs, clock, closing))
            elif routes.hear_from == "keys":
                dialogue.say(Reply.of("no-ears"))
            name = wanted_pair(dialogue, journal)
            if name is not None:
                return open_pair(journal, None, pair=name)
            made = new_pair(dialogue, data_dir() / "plans", journal.pairs())
            return None if made is None else open_pair(journal, Made(plan=made.plan))

    def _check_sound(self, dialogue: Dialogue, ears: Ears, others: "_Others") -> None:
        """Where she chose no microphone and this one hears nothing, try the others; the one that hears is kept."""
        is_chosen = self._memory.settings.microphone is not None
        found = check_sound(dialogue, ears, None if is_chosen else others.following)
        if found and others.name is not None:
            self.settings = self.settings.but(microphone=others.name)
            unwritten = self._memory.change(microphone=others.name)
            dialogue.say(*(() if unwritten is None else (unwritten,)))

    def _inputs(self, ears: Ears | None, closing: ExitStack) -> Iterable[Input]:
        """Spoken answers, and typed ones where somebody can type."""
        if self._routes.recogniser == "typed":
            return self.lines
        inputs = Inputs()
        if ears is not None:
            inputs.feed(ears, name="ears", to_problem=as_problem)
        if types():
            closing.callback(self.lines.close)
            inputs.feed(self.lines, name="lines", to_problem=as_problem)
        return inputs


@dataclass
class _Others:
    """The other microphones of this machine, one after the other.

    Attributes:
        name: of the one in use; None while it is the system's own.
    """

    routes: Routes
    here: Present
    voice: Voice
    inputs: Iterable[Input]
    clock: StreamClock
    closing: ExitStack
    name: str | None = None
    _names: list[str] | None = None

    def following(self, ears: Ears) -> tuple[str, Ears] | None:
        """The next one's name and ears, in place of these; None when all were tried."""
        if self._names is None:
            self._names = [device.name for device in nameable("microphone")]
        while self._names and isinstance(self.inputs, Inputs):
            name = self._names.pop(0)
            settings = self.here.settings.but(microphone=name)
            try:
                found = open_ears(self.routes, self.clock, self.here._replace(settings=settings), self.closing)
            except DeviceProblem:
                continue
            if found is not None:
                ears.close()
                self.inputs.feed(found, name="ears", to_problem=as_problem)
                close_ears_while_speaking(self.voice, found, live=True)
                self.name = name
                return name, found
        return None
