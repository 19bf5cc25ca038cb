"""Faults are put in where they should be, and the command tells those that are noticed from those that are not."""

import ast
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.mutating.figures import chosen, equivalents, interval
from tests.mutating.mutants import mutants_of, with_fault
from tests.source import ROOT, read

SOURCE = '''
"""A module."""
LIMIT = 3


def shorter(length, other=None):
    """The shorter one."""
    if length < LIMIT and other is not None:
        return min(length, other)
    match length:
        case 0:
            return -1
        case _:
            raise ValueError(length)
'''
NOTICED = """
import pytest
from plans.lengths import shorter

def test_shorter():
    assert shorter(1, 2) == 1
    assert shorter(0) == -1
    with pytest.raises(ValueError):
        shorter(4)
"""
TRYING = """
import dataclasses, json, sys
from pathlib import Path
from tests.mutating.mutants import mutants_of
from tests.mutating.reach import reach_of
from tests.mutating.trying import outcomes, trial_of

root = Path.cwd()
reach = reach_of(root, ["checks/test_lengths.py"], root / "kept")
trials = [trial_of(each, reach, 20) for each in mutants_of(root, "plans/lengths.py")]
for each in outcomes(root, trials, ["checks/test_lengths.py"], root / "kept"):
    print(json.dumps([each.result, each.mutant.before, each.mutant.after]))
"""


@pytest.fixture
def project(tmp_path: Path) -> Path:
    for name, text in (("plans/__init__.py", ""), ("plans/lengths.py", SOURCE), ("checks/test_lengths.py", NOTICED)):
        file = tmp_path / name
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return tmp_path


def test_every_kind_of_fault_is_put_in(project):
    found = {(each.before, each.after) for each in mutants_of(project, "plans/lengths.py")}

    assert {
        ("3", "4"),
        ("length < LIMIT", "length <= LIMIT"),
        ("length < LIMIT and other is not None", "length < LIMIT or other is not None"),
        ("length < LIMIT and other is not None", "other is not None"),
        ("length < LIMIT and other is not None", "True"),
        ("other is not None", "other is None"),
        ("min(length, other)", "max(length, other)"),
        ("return min(length, other)", "return None"),
        ("case 0: return -1", "(nothing)"),
        ("-1", "1"),
        ("raise ValueError(length)", "pass"),
    } <= found
    assert not any("module" in before or "shorter one" in before for before, _ in found)


@pytest.mark.parametrize("module", ["plans/sizing/gauge.py", "plans/proof/knitting.py", "plans/commands.py"])
def test_a_fault_changes_the_source_which_is_still_a_module(module):
    whole = ast.unparse(ast.parse(read(Path(module))))
    for mutant in list(mutants_of(ROOT, module))[::9]:
        faulty = with_fault(read(Path(module)), mutant.number)
        compile(faulty, module, "exec")

        assert ast.unparse(faulty) != whole


def test_what_is_noticed_is_told_from_what_is_not(project):
    place = {**os.environ, "PYTHONPATH": f"{project}{os.pathsep}{ROOT}"}
    command = [sys.executable, "-c", TRYING]
    run = subprocess.run(command, cwd=project, env=place, capture_output=True, text=True, check=True)
    results = {(before, after): result for result, before, after in map(json.loads, run.stdout.splitlines())}

    assert results["min(length, other)", "max(length, other)"] == "killed"
    assert results["case 0: return -1", "(nothing)"] == "killed"
    assert results["length < LIMIT", "length <= LIMIT"] == "survived"
    assert results["3", "4"] == "survived"


def test_seeds_in_a_row_choose_every_fault_once():
    every = [each for name in ("gauge", "fit") for each in mutants_of(ROOT, f"plans/sizing/{name}.py")]
    found = [mutant for seed in range(100, 120) for mutant in chosen(every, 0.05, seed)]

    assert sorted(found, key=every.index) == every


@pytest.mark.parametrize(
    ("hits", "tries", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)],
)
def test_the_interval_is_the_published_one(hits, tries, low, high):
    """Newcombe (1998), Statistics in Medicine 17, 857-872, table I, method 3."""
    found = interval(hits, tries)

    assert tuple(round(each, 4) for each in found) == (low, high)


def test_what_is_said_to_change_nothing_is_still_there():
    modules = [str(file.relative_to(ROOT)) for file in (ROOT / "plans").rglob("*.py")]
    for same in equivalents():
        places = modules if same.module == "*" else [same.module]
        assert any(same.means(mutant) for module in places for mutant in mutants_of(ROOT, module)), same
