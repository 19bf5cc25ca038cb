"""Shoe sizes and foot lengths, both ways. Half a size wrong at best: a tape is better.

Formulas by foot length f: EU = 1.5 f_cm + 2 (Paris points of 2/3 cm, two of them beyond the toes); UK =
3 f_in - 23; US men = 3 f_in - 22 and women = men + 1 (Brannock); UK child = 3 f_in - 10, US child half a size
more; Mondopoint = f_mm. They agree with a public copy of the table in ISO/TS 19407 for 210 to 320 mm within
half a size. The standard itself grades by foot length, EU by 6.67 mm and UK by 8.47 mm (ISO/TS 19407:2015,
introduction).
"""

import re
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from plans.conversation import Problem, Reply
from plans.quantities import MM_PER_INCH, Length, parse_number, plain_number
from plans.sizing.measures import measure

PARIS_POINT = Length(Fraction(20, 3))
BARLEYCORN = Length(MM_PER_INCH / 3)
SHORTEST_FOOT = Length.of_cm(5)
LONGEST_FOOT = Length.of_cm(40)


class System(StrEnum):
    """How shoes are numbered; the value is how it is written before the number."""

    EU = "EU"
    UK = "UK"
    UK_CHILD = "UK child"
    US_MEN = "US men"
    US_WOMEN = "US women"
    US_CHILD = "US child"
    MONDOPOINT = "Mondopoint"


class Grading(NamedTuple):
    """A system's sizes: number = foot / step + start."""

    step: Length
    start: Fraction


GRADINGS = {
    System.EU: Grading(PARIS_POINT, Fraction(2)),
    System.UK: Grading(BARLEYCORN, Fraction(-23)),
    System.UK_CHILD: Grading(BARLEYCORN, Fraction(-10)),
    System.US_MEN: Grading(BARLEYCORN, Fraction(-22)),
    System.US_WOMEN: Grading(BARLEYCORN, Fraction(-21)),
    System.US_CHILD: Grading(BARLEYCORN, Fraction(-19, 2)),
    System.MONDOPOINT: Grading(Length(Fraction(1)), Fraction(0)),
}


class Shoe(NamedTuple):
    """A shoe size."""

    system: System
    number: Fraction

    @property
    def foot(self) -> Length:
        """The foot it is made for."""
        grading = GRADINGS[self.system]
        return grading.step * (self.number - grading.start)

    @property
    def give_or_take(self) -> Length:
        """Half a size either way; 5 mm, the finer of its two steps, for Mondopoint."""
        mondopoint = self.system is System.MONDOPOINT
        return Length(Fraction(5)) if mondopoint else GRADINGS[self.system].step * Fraction(1, 2)

    def __str__(self) -> str:
        return f"{self.system} {plain_number(self.number)}"


def size_for(foot: Length, system: System) -> Shoe:
    """The size marked for a foot: EU rounded down to the half, others to the nearest, Mondopoint to 5 mm."""
    number = _number_for(foot, system)
    if system is System.MONDOPOINT:
        return Shoe(system, Fraction(5 * round(number / 5)))
    return Shoe(system, Fraction(floor(2 * number) if system is System.EU else round(2 * number), 2))


def _number_for(foot: Length, system: System) -> Fraction:
    grading = GRADINGS[system]
    return foot.mm / grading.step.mm + grading.start


_ADULTS = (System.EU, System.UK, System.US_MEN, System.US_WOMEN, System.MONDOPOINT)
_CHILDREN = (System.EU, System.UK_CHILD, System.US_CHILD, System.MONDOPOINT)


def shoes_note(foot: Length, *, child: bool) -> Reply:
    """The sizes marked for a foot, for whoever wants to see whether a measure can be right."""
    sizes = (size_for(foot, system) for system in (_CHILDREN if child else _ADULTS))
    return Reply.of("foot-in-shoes", foot=measure(foot), sizes=", ".join(map(str, sizes)))


_SYSTEM = re.compile(r"(?<![a-z])(eu|eur|uk|us|usa|mondopoint|mondo)(?![a-z])")
_WEARER = re.compile(r"(?<![a-z])(women|woman|ladies|w|men|man|m|children|child|kids|kid|c)(?![a-z])")
_WEARERS = {"women": "women", "woman": "women", "ladies": "women", "w": "women",
            "men": "men", "man": "men", "m": "men"}  # fmt: skip


def parse_shoe(text: str) -> Shoe | Problem:
    """Read "EU 39", "UK 5½", "UK child 7", "US men 10", "us 8.5 women's", "Mondopoint 245".

    A US number without men, women or child means two feet: asked back with both lengths. UK without "child"
    is an adult's, for men and women alike.
    """
    words = text.lower().replace("\N{RIGHT SINGLE QUOTATION MARK}", "'").replace("'s", "")
    system, wearer = _SYSTEM.search(words), _WEARER.search(words)
    try:
        number = parse_number(_WEARER.sub(" ", _SYSTEM.sub(" ", words)))
    except ValueError:
        return Problem.of("shoe-unreadable", "shoe", text=text)
    if system is None:
        return Problem.of("shoe-no-system", "shoe", text=text)
    worn_by = _WEARERS.get(wearer[0], "child") if wearer else ""
    found = _systems(system[0], worn_by)
    return _the_one(text, [Shoe(each, number) for each in found])


def _systems(written: str, worn_by: str) -> list[System]:
    match written[:2], worn_by:
        case "eu", _:
            return [System.EU]
        case "mo", _:
            return [System.MONDOPOINT]
        case "uk", "child":
            return [System.UK_CHILD]
        case "uk", _:
            return [System.UK]
        case _, "":
            return [System.US_MEN, System.US_WOMEN]
        case _:
            return [System(f"US {worn_by}")]


def _the_one(text: str, shoes: list[Shoe]) -> Shoe | Problem:
    if len(shoes) > 1:
        men, women = (measure(shoe.foot) for shoe in shoes)
        return Problem.of("shoe-men-or-women", "shoe", text=text, men=men, women=women)
    [shoe] = shoes
    if not SHORTEST_FOOT <= shoe.foot <= LONGEST_FOOT:
        least = max(Fraction(ceil(_number_for(SHORTEST_FOOT, shoe.system))), Fraction(0))
        most = Fraction(floor(_number_for(LONGEST_FOOT, shoe.system)))
        bounds = {"least": str(Shoe(shoe.system, least)), "most": str(Shoe(shoe.system, most))}
        return Problem.of("shoe-out-of-range", "shoe", text=text, **bounds)
    return shoe
