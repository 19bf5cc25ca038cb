"""Every fault that can be put into a module, in the order of its source, and the module with one of them in it."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.mutating.faults import GONE, instead_of

_LONGEST = 110


@dataclass(frozen=True)
class Mutant:
    """One fault: the number it has in its module, and the lines (from, to) of the statement it is in."""

    module: str
    number: int
    kind: str
    line: int
    text: str
    lines: tuple[int, int]
    function: str
    before: str
    after: str

    def __str__(self) -> str:
        return f"{self.module}:{self.line} ({self.kind})  {self.before}  ->  {self.after}"


@dataclass
class _Place:
    node: ast.AST
    parent: ast.AST
    field: str
    index: int | None
    statement: ast.AST
    function: str

    def put(self, other: ast.AST | None) -> None:
        if self.index is None:
            setattr(self.parent, self.field, other)
        elif other is GONE:
            del getattr(self.parent, self.field)[self.index]
        else:
            getattr(self.parent, self.field)[self.index] = other


def mutants_of(root: Path, module: str) -> Iterator[Mutant]:
    """All faults of a module; the function is empty where the statement runs when the module is imported."""
    source = (root / module).read_text(encoding="utf-8")
    text = source.splitlines()
    tree = ast.parse(source)
    for number, (place, kind, other) in enumerate(_faults(tree)):
        lines = _header(place.statement)
        line = getattr(place.node, "lineno", lines[0])
        before, after = _text(place.node), "(nothing)" if other is None or other is GONE else _text(other)
        yield Mutant(module, number, kind, line, text[line - 1].strip(), lines, place.function, before, after)


def with_fault(source: str, number: int) -> ast.Module:
    """The module with that fault in it."""
    tree = ast.parse(source)
    for each, (place, _, other) in enumerate(_faults(tree)):
        if each == number:
            if other is not None and other is not GONE:
                ast.copy_location(other, place.node)
            place.put(other)
            return ast.fix_missing_locations(tree)
    raise ValueError(f"there is no fault {number}")


def _faults(tree: ast.Module) -> Iterator[tuple[_Place, str, ast.AST | None]]:
    for place in list(_places(tree, tree, "")):
        for kind, other in instead_of(place.node, place.parent, place.field):
            if not (place.function == "" and isinstance(other, ast.BinOp) and isinstance(other.op, ast.BitAnd)):
                yield place, kind, other


def _places(node: ast.AST, statement: ast.AST, function: str) -> Iterator[_Place]:
    for field, value in ast.iter_fields(node):
        if field == "format_spec" or _is_documentation(node, field):
            continue
        inside = function
        if field == "body" and isinstance(node, ast.FunctionDef):
            inside = function or node.name
        for index, child in _children(value):
            if field in {"annotation", "returns"}:
                yield from _typing(child, statement, inside)
                continue
            nearest = child if isinstance(child, ast.stmt | ast.match_case | ast.ExceptHandler) else statement
            yield _Place(child, node, field, index, nearest, inside)
            yield from _places(child, nearest, inside)


def _typing(node: ast.AST, statement: ast.AST, function: str) -> Iterator[_Place]:
    """Of an annotation only the limits and the words that a record is held to are numbers or text."""
    if function == "" and isinstance(statement, ast.AnnAssign):
        for each in ast.walk(node):
            if isinstance(each, ast.Call) or (isinstance(each, ast.Subscript) and _is_literal(each)):
                yield from _places(each, statement, function)


def _children(value: object) -> Iterator[tuple[int | None, ast.AST]]:
    if isinstance(value, ast.AST):
        yield None, value
    elif isinstance(value, list):
        yield from ((index, each) for index, each in enumerate(value) if isinstance(each, ast.AST))


def _is_literal(node: ast.Subscript) -> bool:
    return isinstance(node.value, ast.Name) and node.value.id == "Literal"


def _is_documentation(node: ast.AST, field: str) -> bool:
    return isinstance(node, ast.Expr) and field == "value" and isinstance(node.value, ast.Constant)


def _header(statement: ast.AST) -> tuple[int, int]:
    """The lines of a statement, without the statements inside it."""
    first = getattr(statement, "lineno", None) or statement.pattern.lineno  # type: ignore[attr-defined]
    body = getattr(statement, "body", None)
    if isinstance(statement, ast.Match):
        last = statement.subject.end_lineno
    elif isinstance(body, list) and body:
        last = max(first, body[0].lineno - 1)
    else:
        last = statement.end_lineno  # type: ignore[attr-defined]
    return first, last or first


def _text(node: ast.AST) -> str:
    if isinstance(node, ast.match_case):
        node = ast.Match(ast.Name("_"), [node])
        return _shortened(ast.unparse(ast.fix_missing_locations(node)).partition("\n")[2])
    return _shortened(ast.unparse(ast.fix_missing_locations(node)))


def _shortened(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= _LONGEST else f"{line[:_LONGEST]}..."
