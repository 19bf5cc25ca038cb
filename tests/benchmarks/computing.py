"""How long a plan, its proof and a reply take to compute."""

import math
import statistics
import time
from fractions import Fraction

from assistant.languages import load
from assistant.languages.verbosity import Verbosity
from assistant.speaking.wording import word
from plans.conversation import Next, WhereAmI
from plans.engine import begin, decide, evolve, replay
from plans.engine.places import is_finished
from plans.making import Made, make_plan
from plans.quantities import Length
from plans.wishes import Swatch, Wishes
from tests.benchmarks.figures import percentile


def wishes(around=64, fineness=1):
    """An invented adult pair; twice the fineness is twice the stitches and rounds in the same foot."""
    return Wishes(
        name="adult",
        swatch=Swatch(stitches=Fraction(31 * fineness), rounds=Fraction(42 * fineness)),
        foot_length=Length.parse("24.5cm"),
        ball=Length.parse("23cm"),
        around=around,
    )


def made(asked):
    plan = make_plan(asked)
    if not isinstance(plan, Made):
        raise TypeError(plan)
    return plan.plan


def _plan_ms(asked, runs):
    spent = []
    for _ in range(runs):
        began = time.perf_counter()
        plan = made(asked)
        spent.append(1_000 * (time.perf_counter() - began))
    return spent, plan.around * len(plan.rows)


def plan_and_proof(runs):
    """A plan is handed out only proven, so making one is both. `loops` is stitches around times rows."""
    first, loops = _plan_ms(wishes(), 1)
    small, _ = _plan_ms(wishes(), runs)
    large, more_loops = _plan_ms(wishes(128, 2), max(1, runs // 3))
    return {
        "plan_and_proof_first_ms": round(first[0], 1),
        "plan_and_proof_ms": round(statistics.median(small), 1),
        "plan_and_proof_ms_aim": 50,
        "plan_and_proof_ratio_128_to_64_stitches": round(statistics.median(large) / statistics.median(small), 2),
        "plan_loops_ratio_128_to_64_stitches": round(more_loops / loops, 2),
    }


WIDTHS = (24, 32, 48, 64, 96, 128)
"""Stitches around."""


def growth(runs):
    """How making and proving grow with the stitches around, in the same foot: loops grow by the square of them."""
    runs = max(1, runs // 3)
    spent = {width: statistics.median(_plan_ms(wishes(width, Fraction(width, 64)), runs)[0]) for width in WIDTHS}
    power = math.log(spent[WIDTHS[-1]] / spent[WIDTHS[0]]) / math.log(WIDTHS[-1] / WIDTHS[0])
    figures = {f"plan_and_proof_ms_{width}_stitches": round(ms, 1) for width, ms in spent.items()}
    return {**figures, "plan_and_proof_growth_power_of_stitches": round(power, 2)}


def batch(pairs):
    """So many pairs one after the other, each of another foot and gauge, on one core; all must be proven."""
    feet = [
        Wishes(
            swatch=Swatch(stitches=Fraction(26 + number % 9), rounds=Fraction(36 + number % 11)),
            foot_length=Length(Fraction(foot_mm)),
            ball=Length(foot_mm * Fraction(88 + number % 13, 100)),
        )
        for number, foot_mm in ((number, 210 + number % 90) for number in range(pairs))
    ]
    began, worked = time.perf_counter(), time.process_time()
    stitches = sum(made(wish).around for wish in feet)
    spent, core = time.perf_counter() - began, time.process_time() - worked
    return {
        "batch_pairs": pairs,
        "batch_s": round(spent, 1),
        "batch_core_s": round(core, 1),
        "batch_pairs_a_minute": round(60 * pairs / spent),
        "batch_mean_stitches": round(stitches / pairs, 1),
    }


def replies(steps):
    """Every "next" from cast-on on, and "where am I" at each place: the engine's decision, and its words."""
    plan, language = made(wishes()), load()
    progress = replay(begin(plan).events)
    spent = {Next: [], WhereAmI: []}
    while not is_finished(plan, progress.now) and len(spent[Next]) != steps:
        for kind, times in spent.items():
            began = time.perf_counter()
            decision = decide(plan, progress, kind())
            word(decision.reply, language, Verbosity.PLAIN)
            times.append(1_000 * (time.perf_counter() - began))
            if kind is Next:
                moved = decision.events
        for event in moved:
            progress = evolve(progress, event)
    figures = {"reply_steps": len(spent[Next])}
    for name, kind in (("next", Next), ("where_am_i", WhereAmI)):
        for percent in (50, 95):
            figures[f"reply_{name}_p{percent}_ms"] = round(percentile(spent[kind], percent), 2)
    return figures
