"""The source of the program, as text."""

from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGES = ("assistant", "plans", "models")


def _modules() -> Iterator[Path]:
    for package in PACKAGES:
        for file in sorted((ROOT / package).rglob("*.py")):
            path = file.relative_to(ROOT)
            if path.parts[:2] != ("models", "training"):
                yield path


MODULES = tuple(_modules())
"""All source files that are installed, by their paths inside the repository."""


def read(path: Path) -> str:
    """The text of a file, by its path inside the repository."""
    return (ROOT / path).read_text(encoding="utf-8")
