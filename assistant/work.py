"""How many loops were worked when, read from the journal: what pace and rests are reckoned from."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import accumulate

from assistant.journal import Entry, standing_of
from assistant.journal_events import Paused, Rested, RestEnded, Resumed, SessionBegan, SessionEnded
from plans.conversation import Advanced, Marked, PlanId, Standing
from plans.engine.courses import Course, course
from plans.engine.places import in_hand, position
from plans.pattern import Plan, Sock


class Loops:
    """Loops of a plan, counted along each sock."""

    def __init__(self, plan: Plan) -> None:
        """Count once; takes some milliseconds."""
        self._course = course(plan)
        self._done = {sock: _along(self._course, sock) for sock in (1, 2)}

    def done(self, standing: Standing) -> int:
        """Loops worked on both socks up to a standing."""
        first, second = position(self._course, standing.first), position(self._course, standing.second)
        return self._done[1][first] + self._done[2][second]

    def in_pair(self, standing: Standing) -> int:
        """Loops to go until both socks are finished."""
        return self._done[1][-1] + self._done[2][-1] - self.done(standing)

    def in_stage(self, standing: Standing) -> int:
        """Loops to go in the stage in hand; in a heel, of the sock in hand."""
        start = in_hand(self._course, standing)
        if start >= self._course.end:
            return 0
        stage = self._course.stages[self._course.stage_of[self._course.row_of[start]]]
        end = self._course.starts[stage.end]
        places = {1: standing.first, 2: standing.second}
        return sum(
            max(0, self._done[sock][end] - self._done[sock][position(self._course, place)])
            for sock, place in places.items()
        )


def _along(the_course: Course, sock: Sock | int) -> tuple[int, ...]:
    own = (
        step.loops_worked if the_course.row(at).sock == sock else 0
        for at, step in enumerate(the_course.steps)
    )
    return tuple(accumulate(own, initial=0))


@dataclass(frozen=True, slots=True)
class Worked:
    """A stretch between two moments at which a place was written down.

    Attributes:
        began_ms: wall time.
        ended_ms: wall time.
        loops: how many were worked in between; 0 where the place was moved without knitting.
        steady: whether nothing lay in between: no pause, no end of a session, no rest.
    """

    began_ms: int
    ended_ms: int
    loops: int
    steady: bool

    @property
    def minutes(self) -> float:
        """Duration; negative where the wall clock was set back."""
        return (self.ended_ms - self.began_ms) / 60_000


_BREAKS = (SessionBegan, SessionEnded, Paused, Resumed, Rested, RestEnded)


def worked(entries: Iterable[Entry], loops: Mapping[PlanId, Loops]) -> tuple[Worked, ...]:
    """The stretches of one pair's entries, in order."""
    found: list[Worked] = []
    before: tuple[int, Standing] | None = None
    steady = True
    for entry in entries:
        steady = steady and not isinstance(entry.event, _BREAKS)
        standing = standing_of(entry.event)
        if standing is None or isinstance(entry.event, Marked):
            continue
        if before is not None:
            count = _between(before[1], standing, loops) if isinstance(entry.event, Advanced) else 0
            found.append(Worked(before[0], entry.at_ms, count, steady))
        before, steady = (entry.at_ms, standing), True
    return tuple(found)


def _between(before: Standing, now: Standing, loops: Mapping[PlanId, Loops]) -> int:
    counted = loops.get(now.plan) if before.plan == now.plan else None
    return 0 if counted is None else max(0, counted.done(now) - counted.done(before))
