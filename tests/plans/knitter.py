"""A knitter who gives commands, keeps every event, and checks that all she is told is registered."""

from plans.conversation import Command, Decision, Event, Grain, GrainSet, Next, Reply
from plans.engine import begin, decide, evolve, replay
from plans.engine.calling import call
from plans.engine.courses import course
from plans.engine.places import in_hand, is_finished
from plans.pattern import Plan, StageName
from plans.sayings import ENGINE_SAYINGS


class Knitter:
    """Holds the plan, the events so far and the progress they come to."""

    def __init__(self, plan: Plan, grain: Grain = "follow") -> None:
        self.plan = plan
        self.events: list[Event] = []
        decision = begin(plan)
        self.progress = replay(decision.events)
        self.last = self._take(decision, live=False)
        if grain != "follow":
            self.happens(GrainSet(grain=grain))

    def say(self, command: Command) -> Reply:
        """Give a command; what happened is kept, what was told comes back."""
        return self._take(decide(self.plan, self.progress, command))

    def hears(self, decision: Decision) -> Reply:
        """Take a decision that was made elsewhere."""
        return self._take(decision)

    def happens(self, event: Event) -> None:
        """Keep one event."""
        self.events.append(event)
        self.progress = evolve(self.progress, event)

    def _take(self, decision: Decision, *, live: bool = True) -> Reply:
        assert_registered(decision.reply)
        if live:
            for event in decision.events:
                self.happens(event)
        else:
            self.events += decision.events
        self.last = decision.reply
        return decision.reply

    @property
    def call(self) -> Reply:
        """The step in hand."""
        return call(self.plan, self.progress.now, self.progress.grain)

    @property
    def at(self) -> int:
        """The position of the step in hand."""
        return in_hand(course(self.plan), self.progress.now)

    @property
    def finished(self) -> bool:
        """Whether nothing is to go."""
        return is_finished(self.plan, self.progress.now)

    def knits_to(self, stage: StageName, number: int = 1, sock: int | None = None) -> "Knitter":
        """Say next until stitches of a stage's round (or heel row) are in hand."""
        while not self._is_at(stage, number, sock):
            assert not self.finished, f"never came to {stage} {number}"
            self.say(Next())
        return self

    def _is_at(self, stage: StageName, number: int, sock: int | None) -> bool:
        prepared = course(self.plan)
        if self.at >= prepared.end or not prepared.steps[self.at].groups:
            return False
        row = prepared.row(self.at)
        return (row.stage, row.round) == (stage, number) and sock in {None, row.sock}


def assert_registered(reply: Reply) -> None:
    """Every part of a reply has a key and values as registered."""
    for part in reply.walk():
        assert part.key in ENGINE_SAYINGS, part.key
        assert ENGINE_SAYINGS[part.key] == {name for name, _ in part.values}, part


def shown(value: object) -> str:
    """A reply as one line: key and values, without lists that are empty."""
    if isinstance(value, tuple):
        return " ".join(shown(part) for part in value)
    if not isinstance(value, Reply):
        return str(getattr(value, "tenths_mm", value))
    inside = "; ".join(f"{name} {shown(each)}" for name, each in value.values if each != ())
    return f"{value.key}({inside})" if inside else value.key


def script(plan: Plan, grain: Grain) -> list[str]:
    """All that is called from cast-on to the end."""
    knitter = Knitter(plan, grain)
    lines = [shown(knitter.call)]
    while not knitter.finished:
        lines.append(shown(knitter.say(Next())))
    return lines
