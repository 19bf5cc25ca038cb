"""Which test reaches which line of plans/, and how long it takes: each test once, in a process of its own."""

import ast
import hashlib
import json
import os
import signal
import time
import warnings
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import coverage
import pytest

from tests.mutating.forking import forked, most_seconds, passes, silently, temporary_folders_made

LONGEST = 8.0
"""Seconds of the processor after which a test is left alone: what it has reached by then is nearly all it reaches."""

Lines = dict[str, list[int]]
"""Line numbers by the path of the module inside the repository."""


@dataclass(frozen=True)
class Test:
    """What one test reaches; what is reached while its file is collected stands apart."""

    name: str
    file: str
    seconds: float
    whole: bool
    lines: Lines


@dataclass(frozen=True, eq=False)
class Reach:
    """What all tests reach, and the modules that each of their files imports by name."""

    tests: tuple[Test, ...]
    collected: dict[str, Lines]
    imports: dict[str, frozenset[str]]

    @lru_cache(maxsize=8)  # noqa: B019 - there is one of it
    def times(self, module: str) -> Counter[int]:
        """How many tests run each line of a module."""
        return Counter(line for test in self.tests for line in test.lines.get(module, ()))


def reach_of(root: Path, files: list[str], kept: Path) -> Reach:
    """Find it out, or read what was found out about the very same source.

    Raises:
        ValueError: a test file cannot be collected, or a test fails without any fault.
    """
    tests: list[Test] = []
    collected: dict[str, Lines] = {}
    source = _source(root)
    for file in files:
        name = hashlib.sha256(source + file.encode() + (root / file).read_bytes()).hexdigest()[:24]
        found = kept / f"reach-{name}.json"
        if not found.exists():
            _find_out(root, file, found, kept / "scratch")
        told = json.loads(found.read_text(encoding="utf-8"))
        collected[file] = told["collected"]
        failing = [test["name"] for test in told["tests"] if not test["passes"]]
        if failing:
            raise ValueError(f"fails without any fault: {', '.join(failing)}")
        tests += [Test(t["name"], file, t["seconds"], t["whole"], t["lines"]) for t in told["tests"]]
    return Reach(tuple(tests), collected, {file: _imported(root, root / file, set()) for file in files})


def _imported(root: Path, file: Path, seen: set[str]) -> frozenset[str]:
    """Modules that a file names in its imports, or what it imports of the tests does."""
    for name in _named(file):
        helper = root / f"{name.replace('.', '/')}.py"
        if name not in seen:
            seen.add(name)
            if name.startswith("tests.") and helper.exists():
                _imported(root, helper, seen)
    return frozenset(seen)


def _named(file: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{each.name}" for each in node.names)
        elif isinstance(node, ast.Import):
            yield from (each.name for each in node.names)


def _source(root: Path) -> bytes:
    whole = hashlib.sha256()
    for folder in ("plans", "tests"):
        for file in sorted((root / folder).rglob("*.*")):
            if file.suffix in {".py", ".toml"} and "mutating" not in file.parts and not file.name.startswith("test_"):
                whole.update(str(file.relative_to(root)).encode() + file.read_bytes())
    return whole.digest()


def _find_out(root: Path, file: str, found: Path, scratch: Path) -> None:
    found.parent.mkdir(parents=True, exist_ok=True)
    unfinished = found.with_suffix(".part")
    code = forked(lambda: silently(root, [file], _Finding(root, unfinished), scratch))
    if code != 0 or not unfinished.exists():
        raise ValueError(f"{file} cannot be collected: run pytest {file}")
    unfinished.replace(found)


class _Finding:
    def __init__(self, root: Path, found: Path):
        self._root = root
        self._found = found
        self._watch = _watching(root)
        self._watch.start()

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        self._watch.stop()
        collected = _lines(self._watch, self._root)
        temporary_folders_made(session)
        tests = [self._one(item) for item in session.items]
        self._found.write_text(json.dumps({"collected": collected, "tests": tests}), encoding="utf-8")
        return True

    def _one(self, item: pytest.Item) -> dict[str, object]:
        answer = self._found.with_suffix(".one")
        answer.unlink(missing_ok=True)
        code = forked(lambda: self._reached(item, answer))
        told = json.loads(answer.read_text(encoding="utf-8")) if answer.exists() else {"passes": False, "code": code}
        return {"name": item.nodeid, **told}

    def _reached(self, item: pytest.Item, answer: Path) -> int:
        watch = _watching(self._root)
        before = time.process_time()

        def tell(*, good: bool, whole: bool) -> None:
            watch.stop()
            told = {"passes": good, "whole": whole, "seconds": round(time.process_time() - before, 3)}
            answer.write_text(json.dumps({**told, "lines": _lines(watch, self._root)}), encoding="utf-8")

        def enough(*_: object) -> None:
            tell(good=True, whole=False)
            os._exit(0)

        signal.signal(signal.SIGPROF, enough)
        most_seconds(LONGEST)
        watch.start()
        good = passes(item)
        most_seconds(0)
        tell(good=good, whole=True)
        return 0


def _watching(root: Path) -> coverage.Coverage:
    return coverage.Coverage(data_file=None, config_file=False, include=[f"{root}/plans/*"], messages=False)


def _lines(watch: coverage.Coverage, root: Path) -> Lines:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", coverage.exceptions.CoverageWarning)  # it reaches none of our lines
        return dict(_by_path(watch.get_data(), root))


def _by_path(data: coverage.CoverageData, root: Path) -> Iterator[tuple[str, list[int]]]:
    for file in sorted(data.measured_files()):
        lines = data.lines(file)
        if lines:
            yield str(Path(file).relative_to(root)), sorted(lines)
