"""Rows as lines for a person to read; `python -m tests.plans.row_text` writes the golden files anew."""

from pathlib import Path

from plans.pattern import BindOff, Group, Heel, Plan, Row, Toe
from tests.strategies import practice

GOLDEN = Path(__file__).parent.parent / "golden"
PAIRS = {
    "rows-wrapped-wedge-decrease": (Heel.WRAPPED, BindOff.DECREASE, Toe.WEDGE),
    "rows-german-rounded-sewn": (Heel.GERMAN, BindOff.SEWN, Toe.ROUNDED),
    "rows-wrapped-wedge-yarn-over": (Heel.WRAPPED, BindOff.YARN_OVER, Toe.WEDGE),
}


def operation(group: Group) -> str:
    """Such as "k 3 with wraps"."""
    marks = (" with wraps" if group.wrap else "") + (" doubles" if group.double else "")
    return f"{group.op} {group.times}{marks}"


def line(row: Row) -> str:
    """A row with all that it says."""
    work = ", ".join(operation(group) for group in row.ops)
    place = f"{row.index:3} {row.stage} {row.round}, {row.sock} {row.half} {row.facing} yarn {row.yarn}"
    turn = " turn." if row.turn_after else ""
    return f"{place}: {work}; {row.stitches_after}.{turn} [{'; '.join(row.acts)}]"


def text(plan: Plan) -> str:
    """All rows."""
    return "".join(line(row) + "\n" for row in plan.rows)


if __name__ == "__main__":
    for name, pair in PAIRS.items():
        (GOLDEN / f"{name}.txt").write_text(text(practice(*pair)), encoding="utf-8")
