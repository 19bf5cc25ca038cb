"""Constructions are found by name: each is a module in its kind's folder, and the file's name is its name."""

from enum import StrEnum
from importlib import import_module
from importlib.util import find_spec
from pkgutil import iter_modules
from typing import TYPE_CHECKING


def names(kind: str) -> dict[str, str]:
    """The names of a kind, sorted: plans/rows/heels/eye_of_partridge.py is EYE_OF_PARTRIDGE, "eye-of-partridge".

    Args:
        kind: a folder in plans/rows.
    """
    house = find_spec("plans")
    folders = [f"{folder}/rows/{kind}" for folder in (house.submodule_search_locations or ())] if house else []
    found = sorted(module.name for module in iter_modules(folders) if not module.name.startswith("_"))
    return {name.upper(): name.replace("_", "-") for name in found}


def load(kind: str, name: str, part: str) -> object:
    """What a construction's module holds under the name of its part, such as HEEL."""
    module = import_module(f"plans.rows.{kind}.{name.replace('-', '_')}")
    return getattr(module, part)


if TYPE_CHECKING:

    class Toe(StrEnum):
        """How the toe widens: the modules of plans/rows/toes."""

    class Heel(StrEnum):
        """The heel: the modules of plans/rows/heels."""

    class BindOff(StrEnum):
        """How the cuff ends: the modules of plans/rows/bind_offs."""

    class Increase(StrEnum):
        """How a half becomes wider: the modules of plans/rows/increases."""

    class Sole(StrEnum):
        """How the back of the foot is knitted: the modules of plans/rows/soles."""

    class Leg(StrEnum):
        """How the leg is knitted: the modules of plans/rows/legs."""

    class Cuff(StrEnum):
        """What the cuff is: the modules of plans/rows/cuffs."""

else:
    Toe, Heel, BindOff = (
        StrEnum(name, names(kind), module=__name__)
        for name, kind in (("Toe", "toes"), ("Heel", "heels"), ("BindOff", "bind_offs"))
    )
    Increase, Sole, Leg, Cuff = (
        StrEnum(name, names(kind), module=__name__)
        for name, kind in (("Increase", "increases"), ("Sole", "soles"), ("Leg", "legs"), ("Cuff", "cuffs"))
    )
