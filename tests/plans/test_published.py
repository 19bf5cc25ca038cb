"""Every row of tests/published that says which check it is for, against what this program computes."""

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest

from plans.amounts import Thread
from plans.making import Made, make_plan
from plans.pattern import Cuff, Direction, Half, StageName, Toe
from plans.quantities import Length
from plans.rows.heels import heel
from plans.rows.parts import Numbers
from plans.rows.toes import toe_schedule
from plans.sizing import gauge_of, size_sock
from plans.sizing.feet import Estimate, estimate
from plans.sizing.limits import check_around
from plans.sizing.proportions import usual_cast_on
from plans.sizing.shoes import BARLEYCORN, PARIS_POINT, System, parse_shoe, size_for
from plans.sizing.standards import needle_by_old_uk, needle_by_thickness, needle_by_us, yarn_weights
from plans.stitches import Op
from plans.wishes import SockSize, Swatch, Wishes
from plans.yarn.ball import classes_of
from plans.yarn.geometry import DRY_RELAXED, FULLY_RELAXED, WET_RELAXED, loop_mm
from plans.yarn.use import use_of

FOLDER = Path(__file__).parent.parent / "published"


def _needle(size):
    also = [float(mm) for mm in size.us_also_mm]
    return {"mm": float(size.mm), "us": size.us or "none", "old_uk": size.old_uk or "none",
            "ambiguous": size.us_is_ambiguous, "also_mm": also}  # fmt: skip


def _yarn(stitches):
    weights = yarn_weights(Fraction(str(stitches)))
    thin, thick = weights[0].needle_mm
    return {
        "classes": [weight.number for weight in weights],
        "needle_mm": [float(thin), float(thick) if thick else None],
        "needle_us": [weights[0].needle_us[0], weights[0].needle_us[1] or "up"],
    }


def _estimated(known, *parts):
    exact = {known[0]: Estimate(Length.parse(known[1]), Length(Fraction(0)))}
    return {f"{part}_mm": float(estimate(part, exact).length.mm) for part in parts}


def _foot(text):
    return _estimated(("foot", text), "ball", "ankle", "heel", "calf")


def _ball(text):
    return _estimated(("ball", text), "foot", "ankle", "heel")


def _foot_for(finished):
    length = Length.parse(finished)
    return length + Length.of_cm(1) if length.cm >= 19 else length * Fraction(100, 95)


def _sock(given):
    given = dict(given)
    swatch = given.pop("swatch")
    if "finished" in given:
        given["foot_length"] = str(_foot_for(given.pop("finished")))
    wishes = Wishes(swatch=Swatch(**swatch), **given)
    size = size_sock(wishes)
    assert isinstance(size, SockSize), size
    gauge = gauge_of(wishes.swatch)
    rounded = next((dict(note.values) for note in size.notes if note.key == "stitches-rounded"), {})
    gusset_begins = gauge.height(size.toe_rounds + size.even_rounds)
    width, half = gauge.width(size.around), size.around // 2
    toe = toe_schedule(wishes.toe, size.cast_on // 2, half)
    return {
        **size.model_dump(),
        "exact": float(rounded.get("exact", size.around)),
        "front": size.cast_on // 2 + 2 * sum(toe),
        "back": size.around - size.cast_on // 2 - 2 * sum(toe),
        "circumference_cm": float(width.cm),
        "circumference_in": float(width.inches),
        "finished_in": float(size.target_foot.inches),
        "gusset_rounds": 2 * size.gusset,
        "gusset_added": 2 * size.gusset,
        "widest_sole": half + 2 * size.gusset,
        "widest_round": size.around + 2 * size.gusset,
        "unturned": half - 2 * size.turned,
        "gusset_begins_cm": float(gusset_begins.cm),
        "gusset_begins_in": float(gusset_begins.inches),
        "over_heel_of_ball": float(gauge.width(size.around + 2 * size.gusset).mm / wishes.ball.mm)
        if wishes.ball else None,
    }  # fmt: skip


def _toe(given):
    schedule = toe_schedule(Toe(given["toe"]), given["cast_on"] // 2, given["around"] // 2)
    after = [given["cast_on"] + 4 * number for number in range(1, sum(schedule) + 1)]
    return {"increase_rounds": sum(schedule), "rounds": len(schedule), "last": after[-4:]}


def _height(given):
    swatch = Swatch(stitches=10, rounds=given["per_inch"], over="1in")
    return {"inches": float(gauge_of(swatch).height(given["rounds"]).inches)}


_STATES = {"dry relaxed": DRY_RELAXED, "wet relaxed": WET_RELAXED, "fully relaxed": FULLY_RELAXED}


def _loop(given):
    return {"cm": float(loop_mm(Fraction(given["stitches"]), Fraction(given["rounds"]), _STATES[given["state"]])) / 10}


def _stitches(given):
    loop = loop_mm(Fraction(given["stitches"]), Fraction(given["rounds"]))
    return {"metres": float(given["loops"] * loop / 1000)}


def _pair(given):
    given = dict(given)
    swatch = Swatch(stitches=given.pop("stitches"), rounds=given.pop("rounds"))
    made = make_plan(Wishes(swatch=swatch, **given))
    assert isinstance(made, Made), made
    return {"metres": float(use_of(made.plan).total() / 1000)}


def _usual_ball(stitches):
    bounds = {1: (383, 484), 2: (242, 383), 4: (121, 182), 5: (81, 121)}
    weight = classes_of(Fraction(str(stitches)))[0]
    least, most = bounds[weight.number]
    return {"least": least, "most": most, "within": least <= weight.metres_per_100g <= most}


def _usual_cast_on(given):
    least, most = usual_cast_on(given["around"])
    return {"within": least <= given["loops"] <= most}


def _finished_around(ball):
    wishes = Wishes(swatch=Swatch(stitches=30, rounds=42), ball=ball, foot_length="25cm")
    return {"inches": float(size_sock(wishes).target_circumference.inches)}


def _french_heel(given):
    part, half = heel("french"), given["half"]
    numbers = Numbers(half, 4, part.gusset(half), part.turned(half, 4))
    *rows, across = (each for each in next(part.rounds(numbers)).back if each.stage is StageName.HEEL_TURN)
    middle = rows[1].ops[1].times
    return {
        "first": rows[0].ops[0].times,
        "middle": middle,
        "with_the_slip": middle + 1,
        "last": rows[-1].ops[1].times,
        "rows": len(rows),
        "left": across.ops[0].times,
    }


def _cuff_down_sock(given):
    """Counts of a whole sock in the order in which they are knitted, from its rows."""
    given = dict(given)
    made = make_plan(Wishes(
        swatch=Swatch(stitches=30, rounds=42), foot_length="26cm", ball="24cm", direction=Direction.CUFF_DOWN,
        cuff_style=Cuff(given.pop("cuff_style", "rib-1x1")), **given,
    ))  # fmt: skip
    assert isinstance(made, Made), made
    rows = [row for row in made.plan.rows if row.sock == 1]
    backs = {stage: [row for row in rows if row.stage is stage and row.half is Half.BACK] for stage in StageName}
    *turn, across = backs[StageName.HEEL_TURN]
    picked_up, *narrowing = backs[StageName.GUSSET]
    toe = [2 * row.stitches_after for row in backs[StageName.TOE] if any(group.op is Op.SSK for group in row.ops)]
    return {
        "cast_on": made.plan.cast_on,
        "cuff_rounds": len(backs[StageName.CUFF]),
        "leg_rounds": len(backs[StageName.LEG]),
        "flap_stitches": backs[StageName.HEEL_FLAP][0].stitches_after,
        "flap_rows": len(backs[StageName.HEEL_FLAP]),
        "first": turn[0].ops[0].times,
        "left": turn[-1].stitches_after,
        "picked_up": [across.ops[-1].times, picked_up.ops[0].times],
        "widest": made.plan.half + picked_up.stitches_after,
        "decreases": sum(any(group.op is Op.SSK for group in row.ops) for row in narrowing),
        "gusset_rounds": len(narrowing),
        "after_gusset": made.plan.half + narrowing[-1].stitches_after,
        "foot_rounds": len(backs[StageName.FOOT]),
        "toe": toe,
        "toe_to_28": toe[: toe.index(28) + 1] if 28 in toe else toe,
    }


CHECKS = {
    "cuff-down-sock": _cuff_down_sock,
    "french-heel": _french_heel,
    "usual-cast-on": _usual_cast_on,
    "finished-around": _finished_around,
    "loops": lambda given: {"per_square_cm": given["course"] * given["wale"] / given["loop_cm"] ** 2},
    "loop": _loop,
    "stitches": _stitches,
    "pair": _pair,
    "yards-per-pound": lambda yards: {"metres_per_100g": float(Thread.parse(f"{yards} yd").metres) / 4.5359237},
    "usual-ball": _usual_ball,
    "us-needle": lambda number: _needle(needle_by_us(number)),
    "uk-needle": lambda number: _needle(needle_by_old_uk(number)),
    "needle": lambda thickness: _needle(needle_by_thickness(Length.parse(thickness))),
    "yarn": _yarn,
    "shoe": lambda text: {"foot_mm": float(parse_shoe(text).foot.mm)},
    "sizes": lambda foot: {each: float(size_for(Length.parse(foot), each).number) for each in System},
    "steps": lambda _: {"paris_point_mm": float(PARIS_POINT.mm), "barleycorn_mm": float(BARLEYCORN.mm)},
    "foot": _foot,
    "ball": _ball,
    "sock": _sock,
    "toe": _toe,
    "height": _height,
    "around-fits": lambda stitches: {"fits": not list(check_around(stitches))},
}


def _rows():
    for path in sorted(FOLDER.glob("*.toml")):
        values = tomllib.loads(path.read_text("utf-8")).values()
        tables = [table for table in values if isinstance(table, list)]
        for number, row in enumerate((row for table in tables for row in table if "check" in row), 1):
            yield pytest.param(row, id=f"{path.stem}-{number}-{row['check']}")


@pytest.mark.parametrize("row", list(_rows()))
def test_agrees_with_what_is_published(row):
    computed = CHECKS[row["check"]](row["given"])

    for name, expected in row["expected"].items():
        if isinstance(expected, (bool, str, list)):
            assert expected == computed[name], name
        else:
            tolerance = row.get("tolerance", abs(expected) * row.get("tolerance_percent", 0) / 100)
            assert abs(expected - computed[name]) <= tolerance + 1e-9, (name, computed[name])


def test_every_published_file_names_its_source_first():
    for path in FOLDER.glob("*.toml"):
        first = path.read_text("utf-8").splitlines()[0]

        assert first.startswith(("#", "source")), path.name
        assert len(first) > 30, path.name
