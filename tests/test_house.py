"""How the source is built: small modules, short functions, every public name explained, nothing patched in tests."""

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.packages import OURS
from tests.source import MODULES, PACKAGES, ROOT, read

MOST_LINES = 350
MOST_LINES_OF_A_FUNCTION = 60


@pytest.mark.parametrize("path", MODULES, ids=str)
def test_modules_and_functions_are_small(path: Path) -> None:
    text = read(path)
    functions = [node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]
    long = {each.name: each.end_lineno - each.lineno for each in functions if each.end_lineno}

    assert len(text.splitlines()) <= MOST_LINES
    assert {} == {name: lines for name, lines in long.items() if lines >= MOST_LINES_OF_A_FUNCTION}


def test_half_of_all_modules_are_at_most_100_lines() -> None:
    lengths = sorted(len(read(path).splitlines()) for path in MODULES)

    assert lengths[len(lengths) // 2] <= 100


@pytest.mark.parametrize("path", MODULES, ids=str)
def test_every_public_name_has_a_docstring(path: Path) -> None:
    tree = ast.parse(read(path))
    lacking = [] if ast.get_docstring(tree) or not tree.body else ["the module"]

    assert [] == [*lacking, *_undocumented(tree, "")]


def _undocumented(node: ast.AST, above: str) -> Iterator[str]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.If):
            yield from _undocumented(child, above)
        if not isinstance(child, ast.ClassDef | ast.FunctionDef) or child.name.startswith("_"):
            continue
        name = f"{above}{child.name}"
        if ast.get_docstring(child) is None:
            yield name
        if isinstance(child, ast.ClassDef):
            yield from _undocumented(child, f"{name}.")


def test_nothing_is_patched_in_tests() -> None:
    patching = re.compile(r"\bmock\b(?!\\)|\bpatch\(")
    found = [file for file in (ROOT / "tests").rglob("*.py") if patching.search(file.read_text(encoding="utf-8"))]

    assert [] == [file for file in found if file.name != Path(__file__).name]


def test_every_folder_of_tests_is_a_package() -> None:
    folders = {file.parent for file in (ROOT / "tests").rglob("test_*.py")}

    assert [] == [folder for folder in folders if not (folder / "__init__.py").exists()]


def test_the_wheel_holds_these_three_packages_and_their_data() -> None:
    project = tomllib.loads(read(Path("pyproject.toml")))
    wheel = project["tool"]["hatch"]["build"]["targets"]["wheel"]

    assert [*PACKAGES] == wheel["packages"]
    assert "models/training" in wheel["exclude"]


def test_every_package_carries_our_mark() -> None:
    assert all(OURS in read(Path(name) / "__init__.py") for name in ("plans", "models"))
