"""A fault is tried: the tests that reach it, fastest first, until one fails.

A fault inside a function is put into the running program, in a process forked from one that has collected all tests.
A fault in what runs at import (constants, records, defaults) is there before anything of plans/ is imported; so is one
in a function that runs while tests are collected, unless it has been noticed already.
"""

import gc
import importlib.util
import json
import signal
import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from importlib.machinery import ModuleSpec, SourceFileLoader
from pathlib import Path
from types import CodeType, FunctionType, ModuleType

import pytest

from tests.mutating.forking import forked, most_seconds, passes, silently, temporary_folders_made
from tests.mutating.mutants import Mutant, with_fault
from tests.mutating.reach import Reach, Test

FEW_FILES = 3
"""As many test files are collected at first for a fault that is there at import."""
_COLLECTED = 0.05
"""Seconds that any test takes besides its own."""
_UNKNOWN = 60.0
"""Seconds that a test is taken to last that was not waited for."""
_CANNOT_BE_PUT_IN = 75
_NOT_AS_EXPECTED = 70


@dataclass(frozen=True)
class Trial:
    """A fault and the tests to try, in their order; the first ones, `direct`, run its very line.

    `left` more reach it, for which there is no time.
    """

    mutant: Mutant
    at_import: bool
    tests: tuple[Test, ...]
    direct: int
    left: int


@dataclass(frozen=True)
class Outcome:
    """What became of a fault: `by` is the test that noticed it, if it was one."""

    mutant: Mutant
    result: str
    by: str
    tried: int
    left: int


def trial_of(mutant: Mutant, reach: Reach, most: float) -> Trial:
    """The tests that reach a fault and together take no longer than that, in seconds of the processor.

    First come those that run its very line; of them those that for their time run most of what other tests leave out
    in that module, and of one test with many parameters each further one later. Where no line tells, those that run
    something of the module, or whose file imports it by name, and of one file each further one later.
    """
    lines = range(mutant.lines[0], mutant.lines[1] + 1)
    importing = {file for file, reached in reach.collected.items() if _meets(reached.get(mutant.module), lines)}
    about = {file for file in importing if _is_about(reach, file, mutant.module)}
    found = [(kind, test) for test in reach.tests if (kind := _kind(test, mutant, lines, importing, about)) is not None]
    order = _in_turn(found, reach.times(mutant.module), mutant.module)
    taken, seconds = 0, 0.0
    for _, test in order:
        seconds += _seconds(test)
        if taken and seconds > most:
            break
        taken += 1
    direct = sum(kind == 0 for kind, _ in order[:taken])
    return Trial(mutant, bool(importing), tuple(test for _, test in order[:taken]), direct, len(order) - taken)


def _meets(reached: list[int] | None, lines: range) -> bool:
    return any(line in lines for line in reached or ())


def _is_about(reach: Reach, file: str, module: str) -> bool:
    return module.removesuffix(".py").removesuffix("/__init__").replace("/", ".") in reach.imports[file]


def _kind(test: Test, mutant: Mutant, lines: range, importing: set[str], about: set[str]) -> int | None:
    reached = test.lines.get(mutant.module)
    if _meets(reached, lines):
        return 0
    if test.file not in importing:
        return None
    return 4 - 2 * bool(reached) - (test.file in about)


def _seconds(test: Test) -> float:
    return _COLLECTED + (test.seconds if test.whole else _UNKNOWN)


def _in_turn(found: list[tuple[int, Test]], times: Mapping[int, int], module: str) -> list[tuple[int, Test]]:
    turns: Counter[str] = Counter()
    costs: dict[str, float] = {}
    for kind, test in sorted(found, key=lambda each: each[1].seconds):
        alike = test.name.partition("[")[0] if kind == 0 else test.file
        turns[alike] += 1
        rare = _COLLECTED + sum(1 / times[line] for line in test.lines.get(module, ()))
        costs[test.name] = turns[alike] * _seconds(test) * (kind or rare**-2)
    return sorted(found, key=lambda each: (each[0] > 0, costs[each[1].name]))


def outcomes(root: Path, trials: Sequence[Trial], files: list[str], kept: Path) -> Iterator[Outcome]:
    """Try them; those in functions first."""
    answers = kept / "answers.jsonl"
    answers.unlink(missing_ok=True)
    trials = [trial for trial in trials if trial.tests]
    inside = [trial for trial in trials if trial.mutant.function and trial.direct]
    again = [trial for trial in trials if not (trial.mutant.function and trial.direct)]
    if inside:
        plugin = _PuttingIn(root, inside, answers)
        code = forked(lambda: silently(root, files, plugin, kept / "scratch"))
        if code != 0:
            raise ValueError(f"pytest cannot collect the tests: it ends with {code}")
        for trial, outcome in zip(inside, _answered(inside, answers), strict=True):
            if outcome is None:
                again.append(trial)
            else:
                yield outcome
    for trial in again:
        yield _at_import(root, trial, kept)


def _answered(trials: list[Trial], answers: Path) -> Iterator[Outcome | None]:
    for trial, line in zip(trials, answers.read_text(encoding="utf-8").splitlines(), strict=True):
        code, by, tried = json.loads(line)
        again = code == _CANNOT_BE_PUT_IN or (code == 0 and trial.at_import)
        yield None if again else _outcome(trial, code, by, tried)


def _outcome(trial: Trial, code: int, by: str, tried: int) -> Outcome:
    if code == _NOT_AS_EXPECTED:
        raise ValueError(f"could not be tried: {trial.mutant}")
    result = {0: "survived", -signal.SIGPROF: "timed out"}.get(code, "killed")
    return Outcome(trial.mutant, result, by, tried, trial.left if result == "survived" else 0)


def _until_one_fails(items: Iterable[tuple[pytest.Item, Test | None]], told: Path) -> int:
    for number, (item, test) in enumerate(items, start=1):
        told.write_text(json.dumps([item.nodeid, number]), encoding="utf-8")
        most_seconds(_limit(test))
        good = passes(item)
        most_seconds(0)
        if not good:
            return 1
    return 0


def _limit(test: Test | None) -> float:
    if test is None or not test.whole:
        return 300.0
    return 4.0 + 4 * test.seconds


def _told(told: Path) -> tuple[str, int]:
    if not told.exists():
        return "", 0
    by, tried = json.loads(told.read_text(encoding="utf-8"))
    told.unlink()
    return by, tried


class _PuttingIn:
    def __init__(self, root: Path, trials: list[Trial], answers: Path):
        self._root = root
        self._trials = trials
        self._answers = answers

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        temporary_folders_made(session)
        items = {item.nodeid: item for item in session.items}
        functions: dict[str, list[FunctionType]] = {}
        for each in gc.get_objects():
            if isinstance(each, FunctionType):
                functions.setdefault(each.__code__.co_filename, []).append(each)
        gc.freeze()
        told = self._answers.with_suffix(".one")
        with self._answers.open("w", encoding="utf-8") as answers:
            for trial in self._trials:
                file = str(self._root / trial.mutant.module)
                code = forked(lambda: self._one(trial, functions.get(file, []), items, told))  # noqa: B023 - run at once
                answers.write(json.dumps([code, *_told(told)]) + "\n")
                answers.flush()
        return True

    def _one(self, trial: Trial, functions: list[FunctionType], items: dict[str, pytest.Item], told: Path) -> int:
        file = self._root / trial.mutant.module
        code = compile(with_fault(file.read_text(encoding="utf-8"), trial.mutant.number), str(file), "exec")
        faulty = {(each.co_qualname, each.co_firstlineno): each for each in _all_code(code)}
        for function in functions:
            old = function.__code__
            new = faulty.get((old.co_qualname, old.co_firstlineno))
            if new is None or new.co_freevars != old.co_freevars:
                return _CANNOT_BE_PUT_IN
            function.__code__ = new
        return _until_one_fails(((items[test.name], test) for test in trial.tests[: trial.direct]), told)


def _all_code(code: CodeType) -> Iterator[CodeType]:
    for each in code.co_consts:
        if isinstance(each, CodeType):
            yield each
            yield from _all_code(each)


def _at_import(root: Path, trial: Trial, kept: Path) -> Outcome:
    told = kept / "told.one"
    tried = 0
    for tests in _few_files_first(trial.tests):
        files = list(dict.fromkeys(test.file for test in tests))
        code = forked(lambda: _with_fault_at_import(root, trial.mutant, files, tests, kept))  # noqa: B023 - run at once
        by, number = _told(told)
        tried += number
        if code != 0:
            return _outcome(trial, code, by, tried)
    return _outcome(trial, 0, "", tried)


def _few_files_first(tests: tuple[Test, ...]) -> Iterator[list[Test]]:
    few = list(dict.fromkeys(test.file for test in tests))[:FEW_FILES]
    yield [test for test in tests if test.file in few]
    rest = [test for test in tests if test.file not in few]
    if rest:
        yield rest


def _with_fault_at_import(root: Path, mutant: Mutant, files: list[str], tests: list[Test], kept: Path) -> int:
    if any(name.partition(".")[0] == "plans" for name in sys.modules):
        return _NOT_AS_EXPECTED
    sys.meta_path.insert(0, _Faulty(root, mutant))
    most_seconds(120)
    return silently(root, files, _InOrder(tests, kept / "told.one"), kept / "scratch")


class _InOrder:
    def __init__(self, tests: list[Test], told: Path):
        self._tests = tests
        self._told = told

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        if session.testsfailed:
            return False
        known = {test.name: test for test in self._tests}
        rank = {test.name: number for number, test in enumerate(self._tests)}
        items = {item.nodeid: item for item in session.items}
        order = [items[name] for name in rank if name in items]
        session.testsfailed = _until_one_fails(((item, known.get(item.nodeid)) for item in order), self._told)
        return True


class _Faulty(SourceFileLoader):
    def __init__(self, root: Path, mutant: Mutant):
        self._file = root / mutant.module
        self._mutant = mutant
        name = mutant.module.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        super().__init__(name, str(self._file))

    def find_spec(self, name: str, path: object = None, target: ModuleType | None = None) -> ModuleSpec | None:
        del path, target
        return importlib.util.spec_from_file_location(name, self._file, loader=self) if name == self.name else None

    def get_code(self, fullname: str) -> CodeType:
        del fullname
        source = self._file.read_text(encoding="utf-8")
        return compile(with_fault(source, self._mutant.number), str(self._file), "exec")
