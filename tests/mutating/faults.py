"""What can stand in the place of a piece of source: a comparison off by one, a condition that always holds, ..."""

import ast
from collections.abc import Iterator

GONE = ast.Pass()
"""In the place of something in a list that is left out."""

_OTHER_COMPARISON = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
_OTHER_ARITHMETIC = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Mult,
    ast.Mod: ast.FloorDiv, ast.Pow: ast.Mult, ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd,
}  # fmt: skip
_OTHER_CALL = {
    "min": "max", "max": "min", "any": "all", "all": "any", "ceil": "floor", "floor": "ceil", "sorted": "list",
    "removeprefix": "removesuffix", "startswith": "endswith", "endswith": "startswith", "rstrip": "lstrip",
}  # fmt: skip
_FACTOR = 1.1
_ODD = "¿"
"""Behind a text; it means nothing there, not in a regular expression either."""


def instead_of(  # noqa: C901 - one case for each kind of node
    node: ast.AST, parent: ast.AST, field: str
) -> Iterator[tuple[str, ast.AST | None]]:
    """The kind of each fault that this node can have, and what then stands in its place (None: nothing)."""
    match node:
        case ast.Compare():
            yield from _comparisons(node)
        case ast.BinOp(op=op) if type(op) in _OTHER_ARITHMETIC:
            yield "arithmetic", ast.BinOp(node.left, _OTHER_ARITHMETIC[type(op)](), node.right)
        case ast.AugAssign(op=op) if type(op) in _OTHER_ARITHMETIC:
            yield "arithmetic", ast.AugAssign(node.target, _OTHER_ARITHMETIC[type(op)](), node.value)
        case ast.BoolOp():
            yield from _junctions(node)
        case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=operand):
            yield "sign", operand
        case ast.Constant():
            yield from _constants(node, parent)
        case ast.Return(value=ast.expr() as value) if not _is_none(value):
            yield "return", ast.Return(ast.Constant(None))
        case ast.Call():
            yield from _calls(node)
        case ast.keyword() if isinstance(parent, ast.Call):
            yield "argument", GONE
        case ast.match_case() if isinstance(parent, ast.Match) and len(parent.cases) > 1:
            yield "case", GONE
        case ast.ExceptHandler():
            yield "handler", ast.ExceptHandler(node.type, node.name, [ast.Raise()])
        case ast.Expr(value=ast.Call() | ast.Yield() | ast.YieldFrom()) | ast.Raise() | ast.Continue() | ast.Break():
            yield "statement", ast.Pass()
    yield from _conditions(parent, field)


def _comparisons(node: ast.Compare) -> Iterator[tuple[str, ast.AST]]:
    for index, op in enumerate(node.ops):
        ops = [*node.ops]
        ops[index] = _OTHER_COMPARISON[type(op)]()
        yield "comparison", ast.Compare(node.left, ops, node.comparators)


def _junctions(node: ast.BoolOp) -> Iterator[tuple[str, ast.AST]]:
    other = ast.Or() if isinstance(node.op, ast.And) else ast.And()
    yield "boolean", ast.BoolOp(other, node.values)
    for index in range(len(node.values)):
        rest = node.values[:index] + node.values[index + 1 :]
        yield "boolean", rest[0] if len(rest) == 1 else ast.BoolOp(node.op, rest)


def _constants(node: ast.Constant, parent: ast.AST) -> Iterator[tuple[str, ast.AST]]:
    match node.value:
        case bool():
            yield "constant", ast.Constant(not node.value)
        case int():
            yield "constant", ast.Constant(node.value + 1)
        case float():
            yield "constant", ast.Constant(node.value * _FACTOR if node.value else 1.0)
        case str() if not isinstance(parent, ast.Expr):
            yield "constant", ast.Constant(node.value + _ODD)


def _calls(node: ast.Call) -> Iterator[tuple[str, ast.AST]]:
    match node.func:
        case ast.Name(id=name) if name in _OTHER_CALL:
            yield "call", ast.Call(ast.Name(_OTHER_CALL[name], ast.Load()), node.args, node.keywords)
        case ast.Attribute(attr=name) if name in _OTHER_CALL:
            other = ast.Attribute(node.func.value, _OTHER_CALL[name], ast.Load())
            yield "call", ast.Call(other, node.args, node.keywords)
    if len(node.args) > 1:
        yield "argument", ast.Call(node.func, node.args[:-1], node.keywords)


def _conditions(parent: ast.AST, field: str) -> Iterator[tuple[str, ast.AST | None]]:
    match parent:
        case ast.If() | ast.IfExp() if field == "test":
            yield "condition", ast.Constant(True)
            yield "condition", ast.Constant(False)
        case ast.While() | ast.Assert() if field == "test":
            yield "condition", ast.Constant(not isinstance(parent, ast.While))
        case ast.comprehension() if field == "ifs":
            yield "condition", GONE
        case ast.match_case() if field == "guard":
            yield "condition", None
        case ast.Slice():
            yield "slice", None


def _is_none(value: ast.expr) -> bool:
    return isinstance(value, ast.Constant) and value.value is None
