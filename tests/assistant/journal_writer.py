"""A program that steps through a journal without end, naming each event once it is written.

Run as `python -m tests.assistant.journal_writer FILE`: prints where it took the journal up,
then, for each command, the number and row it announces.
"""

import sys
from pathlib import Path

from assistant.journal import Journal
from plans.conversation import Advanced, Answered, PlaceSet
from tests.assistant.journalling import PLAN, standing


def main(path: Path) -> None:
    """Write until killed. Every third command comes to two events."""
    with Journal.open(path) as journal:
        journal.keep_plan(PLAN, "{}")
        last = journal.last_seq
        _announce(f"took up {last}")
        while True:
            row = last + 1
            events = [Advanced(now=standing(row, row))]
            if row % 3 == 0:
                events = [Answered(yes=True), PlaceSet(now=standing(row, row), why="back")]
            said = f"row {row}"
            last = journal.append(events, after=last, at_ms=row, heard="next", said=said)
            _announce(f"{last} {said}")


def _announce(line: str) -> None:
    # Straight to the pipe, so that what is announced is outside the process at once.
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
