"""Puts faults into plans/, one at a time, and prints which the tests notice.

    python -m tests.mutating [--share 0.05] [--seed 1] [--module plans/sizing/fit.py] [--seconds 20] [TESTS ...]

It ends with 1 where they notice fewer than nine of ten.
"""

import argparse
import os
import sys
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, Phase, settings

from tests.mutating.figures import chosen, share_killed, telling, told
from tests.mutating.mutants import Mutant, mutants_of
from tests.mutating.reach import reach_of
from tests.mutating.trying import Outcome, Trial, outcomes, trial_of
from tests.source import ROOT

LIBRARIES = ("hypothesis.stateful", "jsonschema", "networkx", "pydantic", "hassil", "fluent.runtime", "unicode_rbnf")
"""Loaded once, before there are many processes."""

LEAST = 0.9
_AS_USUAL = {
    "deadline": None,
    "suppress_health_check": [HealthCheck.too_slow],
    "phases": [Phase.explicit, Phase.generate],
}


def main() -> int:
    options = _options()
    for each in LIBRARIES:
        __import__(each)
    settings.register_profile("mutating", derandomize=True, **_AS_USUAL)
    os.environ["HYPOTHESIS_PROFILE"] = "mutating"  # the usual examples; one that fails need not be made smaller
    os.environ["PYTHONPATH"] = str(ROOT)
    kept = Path(options.kept)
    kept.mkdir(parents=True, exist_ok=True)
    files = sorted(_test_files(options.tests))
    modules = sorted(str(file.relative_to(ROOT)) for file in (ROOT / "plans").rglob("*.py"))
    every = [mutant for module in options.module or modules for mutant in mutants_of(ROOT, module)]
    found = _tried(chosen(every, options.share, options.seed), files, kept, options.seconds)
    _say(f"Faults there are: {len(every)} in {len({each.module for each in every})} modules")
    for line in told(found, options.share, options.seed):
        _say(line)
    return int(share_killed(telling(found)) < LEAST)


def _tried(mutants: list[Mutant], files: list[str], kept: Path, seconds: float) -> list[Outcome]:
    reach = reach_of(ROOT, files, kept)
    trials = [trial_of(mutant, reach, seconds) for mutant in mutants]
    found = [_unreached(trial) for trial in trials if not trial.tests]
    for number, outcome in enumerate(outcomes(ROOT, trials, files, kept), start=1):
        found.append(outcome)
        sys.stderr.write(f"{number}/{len(trials)} {outcome.result}: {outcome.mutant}  {outcome.by}\n")
    return sorted(found, key=lambda each: (each.mutant.module, each.mutant.number))


def _unreached(trial: Trial) -> Outcome:
    return Outcome(trial.mutant, "survived", "", 0, 0)


def _test_files(given: list[str]) -> set[str]:
    for name in given:
        path = ROOT / name
        for file in sorted(path.rglob("test_*.py")) if path.is_dir() else [path]:
            yield str(file.relative_to(ROOT))


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.mutating")
    parser.add_argument("--share", type=float, default=0.02, help="of all faults, from all modules alike")
    parser.add_argument("--seed", type=int, default=1, help="which of them; the next seed takes others")
    parser.add_argument("--module", action="append", help="only faults in this one, as in plans/sizing/fit.py")
    parser.add_argument("--seconds", type=float, default=20.0, help="of tests a fault, the fastest first")
    parser.add_argument("--kept", default=f"{tempfile.gettempdir()}/mutating", help="where it keeps what reaches what")
    parser.add_argument("tests", nargs="*", default=["tests/plans", "tests/test_languages.py"])
    return parser.parse_args()


def _say(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    sys.exit(main())
