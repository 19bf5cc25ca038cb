"""A pattern's text to rows."""

from dataclasses import dataclass

from plans.files.lines import Position
from plans.pattern import Needles, Row
from plans.replies import Problem
from plans.written.reading.assembling import Head
from plans.written.reading.cursor import Wrong
from plans.written.reading.grammar import Grammar
from plans.written.reading.laying import Needle
from plans.written.reading.tokens import tokens
from plans.written.reading.whose import Lie


@dataclass(frozen=True, slots=True)
class Refused:
    """All that is wrong in a pattern."""

    problems: tuple[Problem, ...]


_START = Position(1, 1)


def read_rows(
    pattern: str, head: Head, began: Position = _START
) -> tuple[Row, ...] | Refused:
    """The rows that a pattern tells of, or what is wrong in it: all that is not understood, else the first count."""
    cut = tokens(pattern, began.line, began.column)
    grammar = Grammar(cut, max(1, len(head.sizes)), head.size)
    statements = list(grammar.statements())
    if grammar.problems:
        return Refused(tuple(grammar.problems))
    lie = Lie(head.pieces, head.needles is not Needles.ONE_CIRCULAR, head.needles)
    needle = Needle(lie, head.charts)
    try:
        needle.work(statements, cut[-1])
    except Wrong as wrong:
        return Refused((wrong.problem,))
    return needle.rows()
