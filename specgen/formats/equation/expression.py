"""An expression of a calculation as a small tree of what is printed; MathML and OMML are two walks over it."""

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
    """A run of characters: a number, a variable (italic), upright text, or an operator."""

    text: str
    kind: Literal["number", "variable", "upright", "operator"]


@dataclass(frozen=True, slots=True)
class Row:
    """Parts side by side."""

    parts: tuple["Node", ...]


@dataclass(frozen=True, slots=True)
class Ratio:
    """A fraction with a bar."""

    over: "Node"
    under: "Node"


@dataclass(frozen=True, slots=True)
class Script:
    """A base with a subscript, a superscript or both."""

    base: "Node"
    below: "Node | None" = None
    above: "Node | None" = None


@dataclass(frozen=True, slots=True)
class Root:
    """A square root."""

    of: "Node"


@dataclass(frozen=True, slots=True)
class Fence:
    """An expression between two delimiters that grow with it."""

    of: "Node"
    begin: str = "("
    end: str = ")"


@dataclass(frozen=True, slots=True)
class Applied:
    """A function by name, and its arguments."""

    name: Words
    of: Fence


Node = Words | Row | Ratio | Script | Root | Fence | Applied

MINUS, DOT, TIMES = "\u2212", "\u22c5", "\u00d7"
_SIGNS = {ast.Add: "+", ast.Sub: MINUS, ast.Mult: DOT}
# How tightly a kind of expression binds; what binds less tightly than its place needs is put in parentheses.
_SUM, _PRODUCT, _SIGN, _POWER, _WHOLE = range(5)


@lru_cache(maxsize=8192)
def parse_expression(expression: str) -> Node:
    """The tree of an expression such as `max(W_c, W_o) + C`; raises ValueError for what no calculation prints."""
    source = expression.strip().replace("^", "**")
    try:
        return _TreeBuilder(source).build(ast.parse(source, mode="eval").body)
    except SyntaxError:
        raise ValueError(f"{expression!r} is no expression") from None


LONG = 72  # signs of figures beside which a page has no room for the result


def build_lines(equation: Equation) -> tuple[Row, ...]:
    """The printed lines of an equation: symbol and formula, then figures and result, on one line where they fit."""
    sign = Words("=", "operator")
    result = (sign, parse_expression(equation.result), *_build_unit(equation.unit))
    formula = (build_symbol(equation.symbol), sign, parse_expression(equation.expression))
    if equation.substitution == equation.result:
        return (Row((*formula, *result)),)
    figures = (sign, parse_expression(equation.substitution))
    if len(equation.substitution) > LONG:
        return Row(formula), Row(figures), Row(result)
    return Row(formula), Row((*figures, *result))


def _build_unit(unit: str) -> Iterator[Words]:
    if unit:
        yield Words(unit if unit in "°%" or unit.startswith("/") else f"\u00a0{unit}", "upright")


def build_symbol(name: str) -> Node:
    """A symbol: `T_a` with a subscript, `alpha` as its letter, `dT` as a difference, `SR` upright."""
    base, _, below = name.partition("_")
    numbered = re.fullmatch(r"([A-Za-z])(\d+)", base)
    if numbered and not below:
        base, below = numbered.groups()
    return Script(_build_letters(base), Words(_spell_subscript(below), "upright")) if below else _build_letters(base)


def _build_letters(text: str) -> Node:
    if re.fullmatch(r"d[A-Z]", text):
        return Row((Words("Δ", "upright"), Words(text[1], "variable")))
    text = _spell_greek(text)
    return Words(text, "variable" if len(text) == 1 else "upright")


def _spell_subscript(text: str) -> str:
    return ",".join(map(_spell_greek, text.split("_")))


def _spell_greek(word: str) -> str:
    """The letter that a word names: `alpha` is α, `Delta` is Δ (`lamda` is spelled as the character tables do)."""
    size = {word.lower(): "SMALL", word.capitalize(): "CAPITAL"}.get(word, "NO")
    try:
        return unicodedata.lookup(f"GREEK {size} LETTER {word.upper()}")
    except KeyError:
        return word


class _TreeBuilder:
    """Builds the tree of one parsed expression; `source` is its text, for numbers as they were written."""

    def __init__(self, source: str) -> None:
        self.source = source

    def build(self, node: ast.expr) -> Node:
        """The tree below a node."""
        match node:
            case ast.Constant(value=int() | float()):
                return _build_number(ast.get_source_segment(self.source, node) or repr(node.value))
            case ast.Name(id=name):
                return build_symbol(name)
            case ast.UnaryOp(op=ast.USub(), operand=of):
                return Row((Words(MINUS, "operator"), self.fence_if_loose(of, _POWER)))
            case ast.BinOp(left=over, op=ast.Div(), right=under):
                return Ratio(self.build(over), self.build(under))
            case ast.BinOp(left=base, op=ast.Pow(), right=above):
                return self.build_power(base, self.build(above))
            case ast.BinOp(left=left, op=op, right=right) if type(op) in _SIGNS:
                least = _PRODUCT if isinstance(op, ast.Mult) else _SUM
                # `a - (b + c)`: what is subtracted stays together; no sign follows another.
                behind = _POWER if _begins_with_sign(right) else _PRODUCT if isinstance(op, ast.Sub) else least
                sign = Words(_SIGNS[type(op)], "operator")
                return Row(
                    (
                        *_list_parts(self.fence_if_loose(left, least)),
                        sign,
                        *_list_parts(self.fence_if_loose(right, behind)),
                    )
                )
            case ast.Call(func=ast.Name(id=name), args=of, keywords=[]):
                return self.build_call(name, of)
        raise ValueError(f"{self.source!r} holds what no working prints")

    def fence_if_loose(self, node: ast.expr, least: int) -> Node:
        """A node, in parentheses where it binds less tightly than `least`."""
        return Fence(self.build(node)) if _rank_hold(node) < least else self.build(node)

    def build_power(self, base: ast.expr, above: Node) -> Node:
        """A power; the exponent of a symbol is set above its subscript."""
        set_base = self.fence_if_loose(base, _WHOLE)
        if isinstance(base, ast.Name) and isinstance(set_base, Script):
            return Script(set_base.base, set_base.below, above)
        return Script(Fence(set_base) if isinstance(set_base, (Row, Script)) else set_base, None, above)

    def build_call(self, name: str, of: list[ast.expr]) -> Node:
        """A root with its sign, an absolute value between bars, any other function by name."""
        if name == "sqrt" and len(of) == 1:
            return Root(self.build(of[0]))
        if name == "abs" and len(of) == 1:
            return Fence(self.build(of[0]), "|", "|")
        parts: list[Node] = []
        for argument in of:
            parts += [Words(",", "operator")] if parts else []
            parts += _list_parts(self.build(argument))
        return Applied(Words(name, "upright"), Fence(Row(tuple(parts))))


def _list_parts(node: Node) -> tuple[Node, ...]:
    return node.parts if isinstance(node, Row) else (node,)


def _begins_with_sign(node: ast.expr) -> bool:
    """Whether an expression begins with a minus sign."""
    while isinstance(node, ast.BinOp) and not isinstance(node.op, (ast.Div, ast.Pow)):
        node = node.left
    return isinstance(node, ast.UnaryOp)


def _rank_hold(node: ast.expr) -> int:
    if isinstance(node, ast.BinOp):
        kinds = {ast.Add: _SUM, ast.Sub: _SUM, ast.Mult: _PRODUCT, ast.Div: _POWER, ast.Pow: _POWER}
        return kinds.get(type(node.op), _SUM)
    if isinstance(node, ast.UnaryOp):
        return _SIGN
    return _WHOLE if isinstance(node, (ast.Name, ast.Constant)) else _POWER


def _build_number(text: str) -> Node:
    """A number; one with an exponent as a power of ten: 5.66961e-8 is 5.66961 × 10⁻⁸."""
    digits, _, power = text.lower().partition("e")
    if not power:
        return Words(text, "number")
    sign = (Words(MINUS, "operator"),) if power.startswith("-") else ()
    ten = Script(Words("10", "number"), None, Row((*sign, Words(power.lstrip("+-").lstrip("0") or "0", "number"))))
    return ten if digits == "1" else Row((Words(digits, "number"), Words(TIMES, "operator"), ten))
