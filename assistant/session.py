"""One session: hear, understand, decide, write down, speak; in this order, on one thread."""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from assistant.inputs import Ended, Failed, Input, OutputWanted, Pressed, Tick
from assistant.journal_errors import DiskFailed, DiskFull
from assistant.journal_events import (
    AskedBack,
    DeviceLost,
    JournalEvent,
    RestEnded,
    RestSuggested,
    SessionEnded,
    Told,
    VoiceModeSet,
)  # fmt: skip
from assistant.journal_plans import keep
from assistant.languages import Language
from assistant.listening.understanding import Understood, understand
from assistant.manners import Manners, manage
from assistant.near_misses import expecting, only_possible, vocabulary
from assistant.ports import Clock
from assistant.session_commands import AnyCommand, Attend, Help, ListenAgain, RestOver, SessionCommand, for_engine
from assistant.sitting import Book, Question, Sitting
from assistant.speaking.wording import word
from assistant.timing import is_too_soon
from assistant.voice import OUTPUT_SAYINGS, Voice
from models.recognising import Heard, Vocabulary
from plans.conversation import (
    Advanced,
    Again,
    Command,
    Decision,
    Event,
    Next,
    No,
    Problem,
    Reply,
    Stopped,
    WhereAmI,
    Yes,
)  # fmt: skip
from plans.engine import ask_next, decide
from plans.engine.calling import call
from plans.engine.places import worked_loops


@dataclass(frozen=True, slots=True)
class Habits:
    """How this run behaves.

    Attributes:
        answers_yes: questions are taken as answered with yes.
        real_time: inputs come as they happen, so that a "next" can be too soon, and what a full disk refused can be
            said again when there is room.
        has_keys: keys are taken beside what is heard.
    """

    answers_yes: bool = False
    real_time: bool = False
    has_keys: bool = False


class Session:
    """A knitter and her pair. `run` takes inputs until she stops or they end.

    Args:
        sitting: the pair, the plan, the journal.
        language: phrases and sentences.
        voice: says them.
        clock: wall and stream time.
        manners: what she set about voice and ears.
        habits: how this run behaves.
        expect: tells the ears what may be said from now on.
        remember: keeps what she changed for the next session; what is wrong where it cannot.
    """

    def __init__(  # noqa: PLR0913 (each is a port of its own)
        self, sitting: Sitting, language: Language, voice: Voice, clock: Clock, *, manners: Manners,
        habits: Habits = Habits(), expect: Callable[[Vocabulary], None] = lambda _: None,
        remember: Callable[..., Problem | None] = lambda **_: None,
    ) -> None:  # fmt: skip
        self.sitting = sitting
        self.manners = manners
        self.stopped = False
        self.failed: Problem | None = None
        self._any_socks = language
        self._voice = voice
        self._clock = clock
        self._habits = habits
        self._expect = expect
        self._remember = remember
        self._chosen = voice.output
        self._remembered = self._choices()
        self._told_of_memory = False
        self._book = Book(sitting, clock)
        self._language = language.with_socks(sitting.plan.socks)
        self._last_said = ""
        self._meant: Understood | None = None
        self.question: Question | None = None
        self._called_ms: int | None = None
        self._told_for: object = None
        self._tell_what_may_be_said()

    # --- taking inputs -----------------------------------------------------------------------------------------

    def run(self, inputs: Iterable[Input]) -> None:
        """Take inputs until she stops for the day or there are no more."""
        for thing in inputs:
            self.take(thing)
            if self.stopped:
                return

    def take(self, thing: Input) -> None:
        """One input; where the disk is full nothing moves, and she is told.

        Raises:
            JournalError: nothing can be written, and a script does not wait until it can.
        """
        before = self.manners, self._meant, self.question
        try:
            self._take(thing)
        except (DiskFull, DiskFailed) as refused:
            if not self._habits.real_time:
                raise
            self.manners, self._meant, self.question = before
            self._voice.use(self.manners.voice)
            self._voice.say(self._worded(refused.problem))

    def _take(self, thing: Input) -> None:
        match thing:
            case Heard():
                self._take_heard(thing)
            case Pressed(command=command):
                self.obey(command, heard=None)
            case OutputWanted():
                self._change_output()
            case Failed(problem=problem):
                self.failed = problem
                self._tell_failure(problem)
            case Tick() | Ended():
                pass

    def understood(self, heard: Heard, names: Collection[str] | None = None) -> Understood:
        """What an utterance would mean now: one of these commands and answers, or any command."""
        may_be = replace(expecting(self._meant, self.manners), names=names)
        understood = understand(heard, self._language, asked=self._is_asked(), expecting=may_be)
        is_heeded = self.manners.listening or isinstance(understood.command, ListenAgain)
        return understood if is_heeded else replace(understood, outcome="ignore")

    def vocabulary(self, phrases: tuple[str, ...]) -> Vocabulary:
        """These phrases as they may be said now."""
        return self._language.vocabulary_of(phrases, attention=self.manners.attention)

    def _take_heard(self, heard: Heard) -> None:
        understood = self.understood(heard)
        if understood.outcome == "act" and understood.command is not None:
            self.obey(understood.command, heard=heard.words)
        elif understood.outcome == "ask":
            self._settle(understood, heard.words)

    def _is_asked(self) -> bool:
        return not (self._meant is None and self.question is None and self.sitting.progress.question is None)

    def _settle(self, understood: Understood, words: str) -> None:
        """Of two numbers that sound alike take the one that can be true here; else ask back, once."""
        chosen = only_possible(understood, self.sitting)
        if chosen is not None:
            self.obey(chosen, heard=words)
            return
        if self._meant is not None:
            return
        self._meant = understood
        kind = understood.command.kind if understood.command else None
        question = understood.question or Reply.of("did-you-mean", said=words)
        self._write_and_say((AskedBack(command=kind),), question, words)

    def _change_output(self) -> None:
        output = self._chosen = self._voice.output = self._voice.output.following
        self._write_and_say((VoiceModeSet(mode=output.value),), Reply.of(OUTPUT_SAYINGS[output]), None)

    def _tell_failure(self, problem: Problem) -> None:
        device = next((str(value) for name, value in problem.values if name == "name"), "")
        last = self._last_said
        self._write_and_say((DeviceLost(device=device),), problem, None)
        self._last_said = last

    # --- carrying out ------------------------------------------------------------------------------------------

    def obey(self, command: AnyCommand, *, heard: str | None) -> None:
        """Carry out a command: write it down, then speak."""
        meant, self._meant = self._meant, None
        if meant is not None and meant.command is not None and isinstance(command, Yes):
            command = meant.command
        elif meant is not None and isinstance(command, No):
            self._write_and_say((Told(command="no"),), Reply.of("listening"), heard)
            return
        question, self.question = self.question, None
        if question is not None and isinstance(command, Yes | No):
            chosen = question.yes if isinstance(command, Yes) else question.no
            self._write_and_say(chosen.events or (Told(command=command.kind),), chosen.sayings[0], heard,
                                *chosen.sayings[1:])  # fmt: skip
            return
        if not isinstance(command, Attend):
            self.manners = self.manners.but(attending=False)
        if isinstance(command, RestOver) and (rest := self._rest_ended()) is not None:
            progress = self.sitting.progress
            self._write_and_say((rest,), _rest_over(rest), heard, call(self.sitting.plan, progress.now, progress.grain))
        elif isinstance(command, SessionCommand):
            self._manage(command, heard)
        elif isinstance(command, Again):
            said = self._last_said or self._worded(Reply.of("nothing-said-yet"))
            self._write_and_say((Told(command="again"),), said, heard)
        elif for_engine(command):
            self._decide(command, heard)

    def _manage(self, command: SessionCommand, heard: str | None) -> None:
        managed = manage(self.manners, command, word=self._language.phrases.attention[0], how_long=self._how_long)
        self.manners = managed.manners
        self._voice.use(managed.manners.voice)
        keys = (Reply.of("help-keys"),) if isinstance(command, Help) and self._habits.has_keys else ()
        self._write_and_say((managed.event,), managed.reply, heard, *keys)

    def _how_long(self) -> Reply:
        return self._book.outlook.time_to_go(self.sitting.progress.now)

    def _decide(self, command: Command, heard: str | None) -> None:
        decision = self._decision(command)
        if decision.plan is not None:
            keep(self.sitting.journal, decision.plan)
        events: tuple[JournalEvent, ...] = decision.events or (Told(command=command.kind),)
        sayings = [decision.reply]
        over = self._rest_ended()
        if over is not None and self.sitting.after(decision.events).now != self.sitting.progress.now:
            events, sayings = (over, *events), [_rest_over(over), *sayings]
        rest = None if over else self._rest_after(decision.events)
        if rest is not None:
            events, sayings = (*events, RestSuggested()), [*sayings, rest]
        if any(isinstance(event, Stopped) for event in decision.events):
            sayings = [*sayings, Reply.of("goodbye")]
        self._write_and_say(events, sayings[0], heard, *sayings[1:])
        self._called_ms = self._clock.now_ms()
        self.stopped = any(isinstance(event, Stopped) for event in decision.events)

    def _decision(self, command: Command) -> Decision:
        progress, plan = self.sitting.progress, self.sitting.plan
        if isinstance(command, Next) and self._is_too_soon():
            return ask_next(plan, progress)
        decision = decide(plan, progress, command)
        after = self.sitting.after(decision.events)
        if not self._habits.answers_yes or after.question is None:
            return decision
        answered = decide(plan, after, Yes())
        return Decision(events=decision.events + answered.events, reply=answered.reply, plan=answered.plan)

    def _rest_after(self, events: Sequence[Event]) -> Reply | None:
        if not self.manners.rests or not any(isinstance(event, Advanced) for event in events):
            return None
        now, after_minutes = self._clock.now_ms(), self.manners.rest_after_minutes
        return self._book.outlook.rest_due(self.sitting.after(events).now, now, after_minutes)

    def _rest_ended(self) -> RestEnded | None:
        """The end of the rest that she told of; None where she does not rest."""
        rested_ms = self._book.outlook.rested_ms(self._clock.now_ms())
        return None if rested_ms is None else RestEnded(minutes=rested_ms // 60_000)

    def _is_too_soon(self) -> bool:
        progress = self.sitting.progress
        if not self._habits.real_time or self._called_ms is None or progress.question is not None:
            return False
        loops = worked_loops(self.sitting.plan, progress.now, progress.grain)
        return is_too_soon(loops, self._clock.now_ms() - self._called_ms)

    # --- writing down, then speaking ---------------------------------------------------------------------------

    def greet(
        self, *sayings: Reply | Problem, events: tuple[JournalEvent, ...], aloud: bool = True
    ) -> bool:  # fmt: skip
        """Say where things stand, at the start, or show it as a line alone; whether it was cut short."""
        return self._write_and_say(events, " ".join(map(self._worded, sayings)), None, aloud=aloud)

    def end(self, event: SessionEnded) -> None:
        """Write the end of the session down."""
        self._append((event,), None, None)

    def _write_and_say(
        self, events: tuple[JournalEvent, ...], saying: Reply | Problem | str, heard: str | None, *others: Reply,
        aloud: bool = True,
    ) -> bool:  # fmt: skip
        first = saying if isinstance(saying, str) else self._worded(saying)
        text = " ".join((first, *map(self._worded, others)))
        self._append(events, heard, text)
        unwritten = self._keep_choices()
        self._last_said = text
        self._tell_what_may_be_said()
        played = None
        if aloud:
            played = self._voice.say(text)
        else:
            self._voice.show(text)
        if unwritten is not None:
            self._voice.say(self._worded(unwritten))
        self._voice.prepare(self._likely())
        lost, self._voice.lost = self._voice.lost, None
        if lost is not None:
            self._tell_failure(Problem.of("speaker-lost", name=lost.values["name"]))
        return played is not None and played.cut_short

    def _append(self, events: tuple[JournalEvent, ...], heard: str | None, said: str | None) -> None:
        if self._book.write(events, heard, said):  # an undo, or a redo, went to the plan used before
            self._language = self._any_socks.with_socks(self.sitting.plan.socks)

    def _choices(self) -> dict[str, object]:
        voice = self.manners.voice
        return {
            "words_a_minute": voice.rate_wpm, "loudness_percent": round(100 * voice.volume), "output": self._chosen,
            "rests": self.manners.rests,
        }  # fmt: skip

    def _keep_choices(self) -> Problem | None:
        """Remember what she changed, before it is said; where that fails it is told once."""
        choices = self._choices()
        if choices == self._remembered:
            return None
        self._remembered = choices
        problem, told = self._remember(**choices), self._told_of_memory
        self._told_of_memory = told or problem is not None
        return None if told else problem

    def _worded(self, saying: Reply | Problem) -> str:
        return word(saying, self._language, self.manners.verbosity)

    def _tell_what_may_be_said(self) -> None:
        other = self._meant.other if self._meant else None
        if (self.manners.attention, other) != self._told_for:
            self._told_for = (self.manners.attention, other)
            self._expect(vocabulary(self._meant, self.manners, self._language))

    def _likely(self) -> Iterator[str]:
        """What the next commands will probably say."""
        for command in (Next(), WhereAmI()):
            yield self._worded(decide(self.sitting.plan, self.sitting.progress, command).reply)


def _rest_over(rest: RestEnded) -> Reply:
    return Reply.of("rest-over", minutes=rest.minutes)
