"""How fast she knits, learned from the journal, and how long the rest will take."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from assistant.timing import RECORD_LOOPS_A_MINUTE
from assistant.work import Loops, Worked
from plans.conversation import Reply, Standing

PACE_SAYINGS: dict[str, frozenset[str]] = {
    "time-to-go": frozenset({"in_stage", "in_pair"}),      # both are one of the next two
    "time-about": frozenset({"duration"}),                 # about two and a half hours
    "time-between": frozenset({"least", "most"}),          # between two and three hours
    "duration-few-minutes": frozenset(),                   # less than five minutes
    "duration-minutes": frozenset({"minutes"}),            # 5, 10 … 25, 35 … 50
    "duration-half-hour": frozenset(),
    "duration-hours": frozenset({"hours"}),
    "duration-hours-and-half": frozenset({"hours"}),       # two and a half hours: hours is 2
}  # fmt: skip
"""Every key that can be said about time, with the names of its values."""

FEWEST_LOOPS, FEWEST_STEPS = 200, 10
_RECENT = 200
_PAUSE_MINUTES = 3


@dataclass(frozen=True, slots=True)
class Pace:
    """Loops a minute, acts and turns included: a slow, a usual and a fast figure."""

    slow: Fraction
    usual: Fraction
    fast: Fraction


DEFAULT_PACE = Pace(Fraction(15), Fraction(25), Fraction(40))
"""Until it is measured. A knitter's own count, 23,808 stitches in 16 hours, is 24.8 a minute (makingalife.me,
2014); keen amateurs report 35 to 42 (Hastings Tribune, 2022); 15 leaves room for beginners."""


def is_pause(stretch: Worked) -> bool:
    """Whether it took longer than twice the time at the slowest usual pace, and three minutes more."""
    return stretch.minutes > 2 * stretch.loops / DEFAULT_PACE.slow + _PAUSE_MINUTES


def learn(stretches: Sequence[Worked]) -> Pace:
    """Her pace over the last steps: median and quartiles, weighted by loops, so one odd step changes little.

    Stretches with a pause in them, and those faster than the record, do not count; the default stands until
    ten steps and 200 loops do.
    """
    usable = [stretch for stretch in stretches if _is_usable(stretch)][-_RECENT:]
    total = sum(stretch.loops for stretch in usable)
    if len(usable) < FEWEST_STEPS or total < FEWEST_LOOPS:
        return DEFAULT_PACE
    rates = sorted((_rate(stretch), stretch.loops) for stretch in usable)
    return Pace(*(_quantile(rates, Fraction(share, 4) * total) for share in (1, 2, 3)))


def _is_usable(stretch: Worked) -> bool:
    if not stretch.steady or stretch.loops == 0 or stretch.ended_ms <= stretch.began_ms or is_pause(stretch):
        return False
    return _rate(stretch) <= RECORD_LOOPS_A_MINUTE


def _rate(stretch: Worked) -> Fraction:
    return Fraction(stretch.loops * 60_000, stretch.ended_ms - stretch.began_ms)


def _quantile(rates: Sequence[tuple[Fraction, int]], at: Fraction) -> Fraction:
    reached = 0
    for rate, loops in rates:
        reached += loops
        if reached >= at:
            return rate
    return rates[-1][0]


def time_to_go(loops: Loops, standing: Standing, pace: Pace) -> Reply:
    """How long the stage in hand, and the pair, will take."""
    return Reply.of(
        "time-to-go",
        in_stage=said_range(loops.in_stage(standing), pace),
        in_pair=said_range(loops.in_pair(standing), pace),
    )


def said_range(loops: int, pace: Pace) -> Reply:
    """The time for so many loops: one figure where the fast and the slow one round to the same."""
    least, most = said_duration(loops / pace.fast), said_duration(loops / pace.slow)
    if least == most:
        return Reply.of("time-about", duration=least)
    return Reply.of("time-between", least=least, most=most)


def said_duration(minutes: Fraction) -> Reply:
    """A duration as people say it: to five minutes, from one hour to half an hour, from ten hours to one."""
    fives = round(minutes / 5)
    if fives == 0:
        return Reply.of("duration-few-minutes")
    if fives <= 11 and fives != 6:
        return Reply.of("duration-minutes", minutes=5 * fives)
    halves = max(1, round(minutes / 30)) if minutes < 600 else 2 * round(minutes / 60)
    if halves == 1:
        return Reply.of("duration-half-hour")
    return Reply.of("duration-hours-and-half" if halves % 2 else "duration-hours", hours=halves // 2)
