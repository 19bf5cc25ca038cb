"""The whole called scripts of the practice pair; run as a module to write them anew, then read the diff."""

from pathlib import Path

from plans.conversation import Grain
from plans.pattern import BindOff, Heel
from tests.plans.knitter import script
from tests.strategies import practice

GOLDEN = Path(__file__).parent.parent / "golden"

SCRIPTS: dict[str, tuple[Heel, BindOff, Grain]] = {
    "called-follow": (Heel.WRAPPED, BindOff.DECREASE, "follow"),
    "called-group": (Heel.WRAPPED, BindOff.DECREASE, "group"),
    "called-half": (Heel.WRAPPED, BindOff.DECREASE, "half"),
    "called-side": (Heel.WRAPPED, BindOff.DECREASE, "side"),
    "called-round": (Heel.WRAPPED, BindOff.DECREASE, "round"),
    "called-follow-german-sewn": (Heel.GERMAN, BindOff.SEWN, "follow"),
}


def called(name: str) -> str:
    """One script, a line a call."""
    heel, bind_off, grain = SCRIPTS[name]
    return "".join(f"{line}\n" for line in script(practice(heel, bind_off), grain))


if __name__ == "__main__":
    for each in SCRIPTS:
        (GOLDEN / f"{each}.txt").write_text(called(each), encoding="utf-8")
