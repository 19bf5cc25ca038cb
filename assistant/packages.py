"""Whether the packages beside this one are this program's own.

`plans` and `models` are names that another distribution may use too: installed into the same environment, it
overwrites ours without a word. This runs before they are imported and needs nothing but the standard library.
"""

from importlib.util import find_spec
from pathlib import Path
from typing import NamedTuple

OURS = 'PART_OF = "roundcaller"'
"""Stands in the `__init__.py` of each package of this program."""

_HOME = Path(__file__).parent
_NAMES = ("plans", "models")
_SENTENCE = "packages-mixed-up = "


class Stranger(NamedTuple):
    """A package that is not ours: its name, and where it lies; no place where there is none of that name."""

    package: str
    path: str


def stranger(names: tuple[str, ...] = _NAMES) -> Stranger | None:
    """The first package that does not lie beside `assistant` or does not carry our mark."""
    for name in names:
        file = _file(name)
        if file is None or file.parent.parent != _HOME.parent or OURS not in _text(file):
            return Stranger(name, str(file or "nowhere"))
    return None


def _file(name: str) -> Path | None:
    found = find_spec(name)
    return Path(found.origin) if found is not None and found.origin is not None else None


def _text(file: Path) -> str:
    try:
        return file.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ""


def sentence(found: Stranger) -> str:
    """The English sentence, read as plain text: whatever words sentences otherwise may be a stranger's."""
    lines = (_HOME / "languages" / "en" / "sentences.ftl").read_text(encoding="utf-8").splitlines()
    text = next(line.removeprefix(_SENTENCE) for line in lines if line.startswith(_SENTENCE))
    for name, value in found._asdict().items():
        text = text.replace(f"{{ ${name} }}", value)
    return text
