"""Whether the yarn will do: what the pair takes, where it runs out, and how high a leg it allows."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from plans.conversation import Measure, Reply
from plans.pattern import Colour, Plan, Row, StageName
from plans.wishes import Wishes
from plans.yarn.ball import Ball, ball_of, class_note
from plans.yarn.use import Use, bind_off_rows, use_of

TO_BUY = Fraction(115, 100)
"""A margin of 10 to 15 % is usual (common practice); and the loop's length is not known better than to a tenth."""
TO_BE_SURE = Fraction(110, 100)


def yarn_notes(plan: Plan, wishes: Wishes) -> Iterator[Reply]:
    """The yarn's class, what the pair takes, and whether what there is will do."""
    use = use_of(plan, washed=wishes.swatch.washed)
    ball = ball_of(wishes, plan.gauge.stitches_per_10cm)
    yield class_note(plan.gauge.stitches_per_10cm)
    yield _needed("yarn-needed", use.total(), ball)
    if contrast := use.total(Colour.CONTRAST):
        yield _needed("yarn-needed-contrast", contrast, ball)
    if not ball.is_known:
        yield Reply.of("yarn-assumed", metres=round(ball.mm_per_gram / 10))
    if ball.skeins is not None:
        yield _will_do(plan, use, ball, ball.skeins)
        if ball.skeins % 2:
            yield _halves(plan, use, ball)


def _needed(key: str, mm: Fraction, ball: Ball) -> Reply:
    grams = mm / ball.mm_per_gram
    return Reply.of(
        key, metres=ceil(mm / 1000), grams=ceil(grams), buy_metres=ceil(mm * TO_BUY / 1000),
        buy_grams=ceil(grams * TO_BUY),
    )  # fmt: skip


def _will_do(plan: Plan, use: Use, ball: Ball, skeins: int) -> Reply:
    """By each sock's half of all there is."""
    there, needed = skeins * ball.mm, use.total()
    if needed * TO_BE_SURE <= there:
        return Reply.of("yarn-enough", skeins=skeins, grams=floor((there - needed) / ball.mm_per_gram))
    row = runs_out(plan, use, 1, there / 2)
    leg = leg_allowed(plan, use, there / 2 / TO_BE_SURE)
    if row is None:
        close = Reply.of("yarn-close-foot", skeins=skeins)
        return close if leg is None else Reply.of("yarn-close", skeins=skeins, leg=leg)
    stage = Reply.of(f"stage-{row.stage}")
    if leg is None:
        return Reply.of("yarn-short-foot", skeins=skeins, stage=stage, round=row.round)
    return Reply.of("yarn-short", skeins=skeins, leg=leg, stage=stage, round=row.round)


def runs_out(plan: Plan, use: Use, sock: int, mm: Fraction) -> Row | None:
    """The first row of a sock for which so much yarn from its cast-on is not enough; its bind-off is kept back."""
    left = mm - use.of(bind_off_rows(plan, sock))
    for row in plan.rows:
        if row.sock == sock and row.stage is not StageName.BIND_OFF:
            left -= use.of((row.index,))
            if left < 0:
                return row
    return None if left >= 0 else plan.rows[-1]


def leg_allowed(plan: Plan, use: Use, mm: Fraction) -> Measure | None:
    """How high so much yarn lets the leg of one sock be, cuff included; None where there is none for any leg."""
    own = [row for row in plan.rows if row.sock == 1]
    leg = [row.index for row in own if row.stage is StageName.LEG]
    rounds = {stage: len({row.round for row in own if row.stage is stage}) for stage in (StageName.LEG, StageName.CUFF)}
    if not leg:
        return None
    a_round = use.of(leg) / rounds[StageName.LEG]
    rest = use.of(row.index for row in own) - use.of(leg)
    allowed = floor((mm - rest) / a_round)
    if allowed < 1:
        return None
    height_mm = (allowed + rounds[StageName.CUFF]) * 100 / plan.gauge.rounds_per_10cm
    return Measure(tenths_mm=round(height_mm * 10))


def _halves(plan: Plan, use: Use, ball: Ball) -> Reply:
    """An odd number of balls: each sock may take its half of the last one."""
    reserve = use.of(bind_off_rows(plan, 1)) / ball.mm_per_gram
    return Reply.of("yarn-halves", grams=floor(ball.grams / 2), reserve=ceil(reserve))
