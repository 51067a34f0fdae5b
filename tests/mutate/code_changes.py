"""Changes of the code: orders, joins, sums, counts, severities, words."""

import ast
from collections.abc import Iterator
from functools import singledispatchmethod

from tests.mutate.change import Change
from tests.mutate.words import less_a_word

ORDERS = {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", " in ": " not in ", " is ": " is not "}
SIGNS: dict[type[ast.operator], tuple[str, str]] = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
}
NAMES = {"any": "all", "all": "any", "min": "max", "max": "min", "STOP": "CAUTION", "CAUTION": "STOP"}
LIFTS = {"never": "deviation", "deviation": "never"}


class CodeChanges:
    """Every change that can be made to one module."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.data = text.encode()
        self.lines = [0]
        for line in self.data.splitlines(keepends=True):
            self.lines.append(self.lines[-1] + len(line))

    def all(self) -> Iterator[Change]:
        """The changes, in the order of the code; what stands in annotations and docstrings is left."""
        yield from self.below(ast.parse(self.text))

    def below(self, node: ast.AST) -> Iterator[Change]:
        """The changes of a node and of all below it."""
        yield from self.of(node)
        for name, value in ast.iter_fields(node):
            if name in {"annotation", "returns"} or is_strict(node):
                continue
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.AST) and not is_docstring(child):
                    yield from self.below(child)

    @singledispatchmethod
    def of(self, node: ast.AST) -> Iterator[Change]:
        """The changes of a node itself."""
        return iter(())

    @of.register
    def _(self, node: ast.Compare) -> Iterator[Change]:
        for left, right in zip([node.left, *node.comparators], node.comparators, strict=False):
            gap = self.between(left, right)
            for sign in sorted(ORDERS, key=len, reverse=True):
                if sign in gap.before:
                    after = gap.before.replace(sign, ORDERS[sign], 1)
                    if " not not " not in after and " not in " not in gap.before and " is not " not in gap.before:
                        yield gap._replace(kind="order", after=after)
                    break

    @of.register
    def _(self, node: ast.BoolOp) -> Iterator[Change]:
        old, new = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
        gap = self.between(*node.values[:2])
        yield gap._replace(kind="join", after=gap.before.replace(old, new, 1))

    @of.register
    def _(self, node: ast.BinOp) -> Iterator[Change]:
        if type(node.op) in SIGNS and not is_text(node.left) and not is_text(node.right):
            old, new = SIGNS[type(node.op)]
            gap = self.between(node.left, node.right)
            yield gap._replace(kind="sum", after=gap.before.replace(old, new, 1))

    @of.register
    def _(self, node: ast.UnaryOp) -> Iterator[Change]:
        if isinstance(node.op, ast.Not):
            whole = self.at(node)
            yield whole._replace(kind="join", after=whole.before.removeprefix("not "))

    @of.register
    def _(self, node: ast.If | ast.IfExp) -> Iterator[Change]:
        test = self.at(node.test)
        yield test._replace(kind="turn", after=f"not ({test.before})")

    @of.register
    def _(self, node: ast.comprehension) -> Iterator[Change]:
        for each in node.ifs:
            test = self.at(each)
            yield test._replace(kind="turn", after=f"not ({test.before})")

    @of.register
    def _(self, node: ast.Name) -> Iterator[Change]:
        if node.id in NAMES and isinstance(node.ctx, ast.Load):
            kind = "severity" if node.id.isupper() else "turn"
            yield self.at(node)._replace(kind=kind, after=NAMES[node.id])

    @of.register
    def _(self, node: ast.Constant) -> Iterator[Change]:
        whole = self.at(node)
        if isinstance(node.value, bool):
            yield whole._replace(kind="turn", after=str(not node.value))
        elif isinstance(node.value, int | float):
            yield whole._replace(kind="figure", after=str(node.value + 1 if node.value in (0, 1) else node.value * 1.1))
        elif isinstance(node.value, str) and node.value in LIFTS:
            yield whole._replace(kind="severity", after=repr(LIFTS[node.value]))
        elif isinstance(node.value, str) and whole.before[:1] in "\"'" and (less := less_a_word(whole.before)):
            yield whole._replace(kind="word", after=less)

    def at(self, node: ast.expr) -> Change:
        """A change of a node that leaves it as it is."""
        assert node.end_lineno is not None and node.end_col_offset is not None
        return self.piece(self.place(node.lineno, node.col_offset), self.place(node.end_lineno, node.end_col_offset))

    def between(self, left: ast.expr, right: ast.expr) -> Change:
        """A change of what stands between two nodes that leaves it as it is."""
        assert left.end_lineno is not None and left.end_col_offset is not None
        return self.piece(self.place(left.end_lineno, left.end_col_offset), self.place(right.lineno, right.col_offset))

    def piece(self, start: int, end: int) -> Change:
        """A change of a piece that leaves it as it is."""
        before = self.data[start:end].decode()
        return Change("", self.file, len(self.data[:start].decode()), before, before)

    def place(self, line: int, column: int) -> int:
        """Where a line and column of the parser stand, in bytes."""
        return self.lines[line - 1] + column


def is_strict(node: ast.AST) -> bool:
    """Whether a node is the word by which `zip` asks for rows of one length, which changes nothing where they are."""
    return isinstance(node, ast.keyword) and node.arg == "strict"


def is_docstring(node: ast.AST) -> bool:
    """Whether a statement is text alone."""
    return isinstance(node, ast.Expr) and is_text(node.value)


def is_text(node: ast.AST) -> bool:
    """Whether a node is text: text is joined, not summed."""
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))
