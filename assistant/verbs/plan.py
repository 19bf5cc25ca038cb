"""`roundcaller plan`: from the tape measure to a plan file."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import click

from assistant.failing import Refused
from assistant.speaking.wording import Verbosity, word
from assistant.summing_up import summary
from assistant.verbs.shared import language_option, load_language, write_text
from plans.conversation import Problem
from plans.files import write_wishes
from plans.files.fields import DIRECTIONS, PAIR_NEEDLES, READERS, read_answer, read_counts, read_field
from plans.making import make_plan
from plans.pattern import BindOff, Cuff, Heel, Increase, Leg, Sole, Toe
from plans.sizing.feet import is_childs
from plans.sizing.measures import field
from plans.sizing.shoes import shoes_note
from plans.wishes import Height, Swatch, Wishes

_MEASURES = {
    "foot_length": "Heel to longest toe, standing, such as 24.5cm or 9 5/8in.",
    "ball": "Around the ball of the foot. Estimated from the foot length where left out.",
    "ankle": "Around the narrowest place above the ankle bones. Estimated where left out.",
    "heel_diagonal": "From the front of the ankle round the back of the heel. Estimated where left out.",
    "calf": "Around the calf at its widest, for a leg above 15cm. Estimated where left out.",
    "leg": "From the top of the heel flap to the top edge, cuff included.",
    "cuff": "Depth of the ribbing.",
}

_COUNT = (
    'One more count of a swatch, such as "31 stitches 43 rounds over 10cm"; add flat or unwashed where it was so. '
    "May be given again and again: the mean is taken, and the spread is told."
)


def _choice(names: Iterable[str]) -> click.Choice[str]:
    return click.Choice([str(name) for name in names])


@click.command()
@click.option("--foot-length", metavar="LENGTH", help=_MEASURES["foot_length"])
@click.option("--shoe", metavar="SIZE", help='A shoe size in place of the foot length, such as "EU 39".')
@click.option("--ball", metavar="LENGTH", help=_MEASURES["ball"])
@click.option("--ankle", metavar="LENGTH", help=_MEASURES["ankle"])
@click.option("--heel-diagonal", metavar="LENGTH", help=_MEASURES["heel_diagonal"])
@click.option("--calf", metavar="LENGTH", help=_MEASURES["calf"])
@click.option("--leg", metavar="LENGTH", help=_MEASURES["leg"])
@click.option("--leg-height", type=_choice(Height), help="How high the leg comes, in proportion to the foot.")
@click.option("--cuff", metavar="LENGTH", help=_MEASURES["cuff"])
@click.option("--stitches", metavar="NUMBER", help="Stitches counted across the washed swatch.")
@click.option("--rounds", metavar="NUMBER", help="Rounds counted up the washed swatch.")
@click.option("--over", metavar="LENGTH", help="The length they were counted over; 10cm where left out.")
@click.option("--count", "counts", metavar="TEXT", multiple=True, help=_COUNT)
@click.option("--needle", metavar="SIZE", help='Your needle, such as 2.5mm or "US 1.5".')
@click.option("--ease", metavar="PERCENT", help="How much smaller than the foot, around; 10% where left out.")
@click.option("--around", metavar="STITCHES", help="The whole sock's stitches, where you want your own number.")
@click.option("--cast-on", metavar="LOOPS", help="The whole sock's cast-on loops, both needle tips together.")
@click.option("--direction", type=_choice(DIRECTIONS), help="Which end it begins at; toe-up where left out.")
@click.option("--toe", type=_choice(Toe), help="How the toe widens.")
@click.option("--increase", type=_choice(Increase), help="How toe and gusset become wider.")
@click.option("--sole", type=_choice(Sole), help="How the back of the foot is knitted.")
@click.option("--heel", type=_choice(Heel), help="The heel: with a gusset and a flap, of short rows, or made last.")
@click.option("--leg-style", type=_choice(Leg), help="How the leg below its cuff is knitted.")
@click.option("--cuff-style", type=_choice(Cuff), help="What the cuff is.")
@click.option("--bind-off", type=_choice(BindOff), help="How the cuff ends, or a toe from the cuff down.")
@click.option("--gusset", metavar="STITCHES", help="Stitches added on each side of the sole; more for a high instep.")
@click.option("--skein", metavar="WEIGHT", help="What one ball weighs, such as 50g: whether the yarn will do is told.")
@click.option("--skein-length", metavar="LENGTH", help="How long one ball's yarn is, as its band says, such as 210m.")
@click.option("--skeins", metavar="NUMBER", help="How many balls you have, for both socks together.")
@click.option("--needles", type=_choice(PAIR_NEEDLES), help="What it is knitted on.")
@click.option("--one-at-a-time", is_flag=True, help="Begin the second sock when the first is done.")
@click.option("--practice", is_flag=True, help="The fewest stitches that still show every step; needs no foot.")
@click.option("--name", metavar="TEXT", help="What to call the pair; the file's name where left out.")
@click.option("--socks", metavar="ONE,TWO", help='What to call the two socks; "first,second" where left out.')
@click.option("--out", metavar="FILE.toml", required=True, type=click.Path(path_type=Path), help="Where to write it.")
@language_option
def plan(out: Path, language: str | None, **given: Any) -> None:  # noqa: ANN401 (click hands over the options)
    """Work out a pair from foot and gauge, prove it, and write the plan file.

    Example: roundcaller plan --foot-length 24.5cm --ball 23cm --stitches 30 --rounds 42 --out socks.toml
    """
    spoken = load_language(language)
    wishes = wishes_given({**given, "name": given.get("name") or _name_of(out)})
    made = make_plan(wishes)
    if isinstance(made, tuple):
        raise Refused(*map(_at_its_option, made))
    write_text(out, write_wishes(wishes))
    foot = wishes.foot_length
    shoes = () if foot is None or wishes.practice else (shoes_note(foot, child=is_childs(foot)),)
    for note in (summary(made.plan), *shoes, *made.notes):
        click.echo(word(note, spoken, Verbosity.PLAIN), err=True)
    click.echo(click.format_filename(out), err=True)


def _name_of(out: Path) -> str:
    """The file's name as words that can be said and printed on one line."""
    stem = click.format_filename(out.stem)
    words = "".join(sign if sign.isprintable() else " " for sign in stem).split()
    return " ".join(words) or Wishes.model_fields["name"].default


def wishes_given(given: Mapping[str, Any]) -> Wishes:
    """The options as wishes.

    Raises:
        Refused: with every problem at once.
    """
    values = {name: _read(name, value) for name, value in _fields(given).items()}
    _first_count(values)
    counted = not isinstance(values.get("counts"), Problem)
    missing = [name for name in _NEEDED if counted and name not in values]
    problems = [value for value in values.values() if isinstance(value, Problem)]
    problems += [Problem.of("field-missing", _option(name), field=field(name)) for name in missing]
    if problems:
        raise Refused(*problems)
    swatch = {name.removeprefix("swatch."): values.pop(name) for name in list(values) if "." in name}
    return Wishes(swatch=Swatch(**swatch), **values)


def _first_count(values: dict[str, Any]) -> None:
    """Without --stitches and --rounds the first whole count stands in their place."""
    counts = values.get("counts", ())
    if isinstance(counts, Problem) or not values.keys().isdisjoint(_NEEDED):
        return
    for count in counts:
        if count.stitches is not None and count.rounds is not None:
            values |= {f"swatch.{name}": value for name, value in count}
            values["counts"] = tuple(other for other in counts if other is not count)
            return


_NEEDED = ("swatch.stitches", "swatch.rounds")
_RENAMED = {
    "stitches": "swatch.stitches", "rounds": "swatch.rounds", "over": "swatch.over", "ease": "ease_percent",
    "count": "counts",
}  # fmt: skip


def _read(name: str, value: object) -> Any:  # noqa: ANN401 (each field has a type of its own)
    where = _option(name)
    if name == "counts":
        return read_counts(value if isinstance(value, tuple) else (), where)
    return read_answer(name, value, where) if isinstance(value, str) else read_field(name, value, where)


def _clean(value: object) -> object:
    """What was typed, with signs that are no text replaced."""
    return value.encode(errors="surrogateescape").decode(errors="replace") if isinstance(value, str) else value


def _at_its_option(problem: Problem) -> Problem:
    """What is wrong with a field of the plan, told as wrong with the option that gave it."""
    where = _option(problem.where) if problem.where in READERS else problem.where
    return Problem(key=problem.key, where=where, values=problem.values)


def _option(name: str) -> str:
    shown = {new: old for old, new in _RENAMED.items()}.get(name, name)
    return f"--{shown.replace('_', '-')}"


def _fields(given: Mapping[str, Any]) -> Mapping[str, Any]:
    made = {name: value for name, value in given.items() if value not in (None, False, ())}
    fields = {_RENAMED.get(name, name): _clean(value) for name, value in made.items()}
    socks = fields.get("socks")
    if isinstance(socks, str) and socks.count(",") == 1:
        fields["socks"] = [part.strip() for part in socks.split(",")]
    return fields
