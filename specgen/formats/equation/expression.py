"""An expression of a working as a small tree of what stands on paper; MathML and OMML are two walks over it."""

import ast
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from specgen.model.block import Equation


@dataclass(frozen=True, slots=True)
class Words:
    """Signs in a row: a number, a variable (slanted), upright words, or an operator."""

    text: str
    kind: Literal["number", "variable", "upright", "operator"]


@dataclass(frozen=True, slots=True)
class Row:
    """Parts side by side."""

    parts: tuple["Node", ...]


@dataclass(frozen=True, slots=True)
class Ratio:
    """One over the other, with a bar between."""

    over: "Node"
    under: "Node"


@dataclass(frozen=True, slots=True)
class Script:
    """A base with what stands below or above behind it."""

    base: "Node"
    below: "Node | None" = None
    above: "Node | None" = None


@dataclass(frozen=True, slots=True)
class Root:
    """A square root."""

    of: "Node"


@dataclass(frozen=True, slots=True)
class Fence:
    """Something between two signs that grow with it."""

    of: "Node"
    begin: str = "("
    end: str = ")"


@dataclass(frozen=True, slots=True)
class Applied:
    """A function by name, and what it is taken of."""

    name: Words
    of: Fence


Node = Words | Row | Ratio | Script | Root | Fence | Applied

MINUS, DOT, TIMES = "\u2212", "\u22c5", "\u00d7"
_SIGNS = {ast.Add: "+", ast.Sub: MINUS, ast.Mult: DOT}
# How tightly a kind of expression holds together; what holds less than its place asks for is fenced.
_SUM, _PRODUCT, _SIGN, _POWER, _WHOLE = range(5)


@lru_cache(maxsize=8192)
def tree(expression: str) -> Node:
    """The tree of an expression such as `max(W_c, W_o) + C`; raises ValueError for what no working prints."""
    source = expression.strip().replace("^", "**")
    try:
        return _Setting(source).node(ast.parse(source, mode="eval").body)
    except SyntaxError:
        raise ValueError(f"{expression!r} is no expression") from None


LONG = 72  # signs of figures beside which a page has no room for the result


def lines(equation: Equation) -> tuple[Row, ...]:
    """An equation as it is set: symbol and formula, then the figures and the result, in one line where they fit."""
    sign = Words("=", "operator")
    result = (sign, tree(equation.result), *_unit(equation.unit))
    formula = (symbol(equation.symbol), sign, tree(equation.expression))
    if equation.substitution == equation.result:
        return (Row((*formula, *result)),)
    figures = (sign, tree(equation.substitution))
    if len(equation.substitution) > LONG:
        return Row(formula), Row(figures), Row(result)
    return Row(formula), Row((*figures, *result))


def _unit(unit: str) -> Iterator[Words]:
    if unit:
        yield Words(unit if unit in "°%" or unit.startswith("/") else f"\u00a0{unit}", "upright")


def symbol(name: str) -> Node:
    """A symbol: `T_a` with a subscript, `alpha` as its letter, `dT` as a difference, `SR` upright."""
    base, _, below = name.partition("_")
    numbered = re.fullmatch(r"([A-Za-z])(\d+)", base)
    if numbered and not below:
        base, below = numbered.groups()
    return Script(_letters(base), Words(_lower(below), "upright")) if below else _letters(base)


def _letters(text: str) -> Node:
    if re.fullmatch(r"d[A-Z]", text):
        return Row((Words("Δ", "upright"), Words(text[1], "variable")))
    text = _greek(text)
    return Words(text, "variable" if len(text) == 1 else "upright")


def _lower(text: str) -> str:
    return ",".join(map(_greek, text.split("_")))


def _greek(word: str) -> str:
    """The letter that a word names: `alpha` is α, `Delta` is Δ (`lamda` is spelled as the character tables do)."""
    size = {word.lower(): "SMALL", word.capitalize(): "CAPITAL"}.get(word, "NO")
    try:
        return unicodedata.lookup(f"GREEK {size} LETTER {word.upper()}")
    except KeyError:
        return word


class _Setting:
    """Sets the nodes of one parsed expression; `source` is its text, for numbers as they were written."""

    def __init__(self, source: str) -> None:
        self.source = source

    def node(self, node: ast.expr) -> Node:
        """The tree below a node."""
        match node:
            case ast.Constant(value=int() | float()):
                return _number(ast.get_source_segment(self.source, node) or repr(node.value))
            case ast.Name(id=name):
                return symbol(name)
            case ast.UnaryOp(op=ast.USub(), operand=of):
                return Row((Words(MINUS, "operator"), self.held(of, _POWER)))
            case ast.BinOp(left=over, op=ast.Div(), right=under):
                return Ratio(self.node(over), self.node(under))
            case ast.BinOp(left=base, op=ast.Pow(), right=above):
                return self.power(base, self.node(above))
            case ast.BinOp(left=left, op=op, right=right) if type(op) in _SIGNS:
                least = _PRODUCT if isinstance(op, ast.Mult) else _SUM
                # `a - (b + c)`: what is taken away holds together; no sign follows another.
                behind = _POWER if _signed(right) else _PRODUCT if isinstance(op, ast.Sub) else least
                sign = Words(_SIGNS[type(op)], "operator")
                return Row((*_parts(self.held(left, least)), sign, *_parts(self.held(right, behind))))
            case ast.Call(func=ast.Name(id=name), args=of, keywords=[]):
                return self.applied(name, of)
        raise ValueError(f"{self.source!r} holds what no working prints")

    def held(self, node: ast.expr, least: int) -> Node:
        """A node, in parentheses where it holds together less than its place asks for."""
        return Fence(self.node(node)) if _hold(node) < least else self.node(node)

    def power(self, base: ast.expr, above: Node) -> Node:
        """A power; the exponent of a symbol stands over its subscript."""
        set_base = self.held(base, _WHOLE)
        if isinstance(base, ast.Name) and isinstance(set_base, Script):
            return Script(set_base.base, set_base.below, above)
        return Script(Fence(set_base) if isinstance(set_base, (Row, Script)) else set_base, None, above)

    def applied(self, name: str, of: list[ast.expr]) -> Node:
        """A root as its sign, an absolute value between bars, any other function by its name."""
        if name == "sqrt" and len(of) == 1:
            return Root(self.node(of[0]))
        if name == "abs" and len(of) == 1:
            return Fence(self.node(of[0]), "|", "|")
        parts: list[Node] = []
        for argument in of:
            parts += [Words(",", "operator")] if parts else []
            parts += _parts(self.node(argument))
        return Applied(Words(name, "upright"), Fence(Row(tuple(parts))))


def _parts(node: Node) -> tuple[Node, ...]:
    return node.parts if isinstance(node, Row) else (node,)


def _signed(node: ast.expr) -> bool:
    """Whether an expression begins with a minus sign."""
    while isinstance(node, ast.BinOp) and not isinstance(node.op, (ast.Div, ast.Pow)):
        node = node.left
    return isinstance(node, ast.UnaryOp)


def _hold(node: ast.expr) -> int:
    if isinstance(node, ast.BinOp):
        kinds = {ast.Add: _SUM, ast.Sub: _SUM, ast.Mult: _PRODUCT, ast.Div: _POWER, ast.Pow: _POWER}
        return kinds.get(type(node.op), _SUM)
    if isinstance(node, ast.UnaryOp):
        return _SIGN
    return _WHOLE if isinstance(node, (ast.Name, ast.Constant)) else _POWER


def _number(text: str) -> Node:
    """A number; one with an exponent as a power of ten: 5.66961e-8 is 5.66961 × 10⁻⁸."""
    digits, _, power = text.lower().partition("e")
    if not power:
        return Words(text, "number")
    sign = (Words(MINUS, "operator"),) if power.startswith("-") else ()
    ten = Script(Words("10", "number"), None, Row((*sign, Words(power.lstrip("+-").lstrip("0") or "0", "number"))))
    return ten if digits == "1" else Row((Words(digits, "number"), Words(TIMES, "operator"), ten))
