"""A calculation with its working: every step with symbol, expression, substitution, value and unit."""

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import CodeType
from typing import Any

from specgen.model.source import Source
from specgen.quantities.format import decimal, printed_unit
from specgen.quantities.quantity import Quantity, rounded

FUNCTIONS: dict[str, Any] = {
    "sqrt": math.sqrt,
    "max": max,
    "min": min,
    "ceil": math.ceil,
    "floor": math.floor,
    "abs": abs,
    "exp": math.exp,
    "ln": math.log,
    "sin": math.sin,
    "cos": math.cos,
    "atan2": math.atan2,
    "__builtins__": {},
}


# The origin of a figure that only turns one unit into another.
UNIT_CHANGE = "change of units"


@dataclass(frozen=True, slots=True)
class Given:
    """An input of a calculation, in the unit it is computed in, and where it comes from.

    `origin` is the path of a field, the name of a calculation or words; `source` is that of a figure of the method.
    """

    symbol: str
    name: str
    value: float
    unit: str
    origin: str = ""
    source: Source | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One line of the sum; `substitution` is the expression with its figures."""

    symbol: str
    name: str
    expression: str
    values: tuple[tuple[str, float], ...]
    value: float
    unit: str

    @property
    def substitution(self) -> str:
        """The expression with the printed figures in place of its symbols."""
        figures = dict(self.values)
        return "".join(_figure(figures[w]) if w in figures else w for w in _tokens(self.expression))


def _figure(value: float) -> str:
    text = decimal(value, 6)
    return f"({text})" if value < 0 else text


@cache
def _tokens(expression: str) -> tuple[str, ...]:
    return tuple(re.findall(r"[A-Za-z_][A-Za-z_0-9]*|[\d.]+|\s+|.", expression))


@cache
def _compiled(expression: str) -> tuple[CodeType, tuple[str, ...]]:
    code = compile(expression.replace("^", "**"), expression, "eval")
    return code, tuple(name for name in code.co_names if name not in FUNCTIONS)


@dataclass(frozen=True, slots=True)
class Working:
    """A result and how it was reached; `result` is a bare number in `unit`.

    `beside` names the symbols of further lines that a reader wants with the result: a stock size, a reserve.
    """

    name: str
    given: tuple[Given, ...]
    steps: tuple[Step, ...]
    result: Any
    unit: str
    source: tuple[Source, ...]
    notes: tuple[str, ...] = ()
    governs: str = ""
    beside: tuple[str, ...] = ()

    @property
    def lines_beside(self) -> tuple[Step, ...]:
        """The lines named by `beside`, in their order."""
        return tuple(step for symbol in self.beside for step in self.steps if step.symbol == symbol)

    @property
    def quantity(self) -> Quantity:
        """The result as a quantity, to hold against a limit; KeyError where it has no unit."""
        return Quantity.of(repr(float(self.result)), self.unit)

    @property
    def shown(self) -> Quantity:
        """The result as a sentence shows it, to four digits."""
        return rounded(self.quantity)

    @property
    def printed_unit(self) -> str:
        """The unit as a reader expects it."""
        return printed_unit(self.unit)


@dataclass(frozen=True, slots=True)
class Lookup:
    """The answer of a look-up in a code: yes or no, and why."""

    name: str
    result: bool
    why: str
    source: tuple[Source, ...]


class Sum:
    """Builds a Working: `step` evaluates an expression once, so that what is printed is what was computed."""

    def __init__(self, given: tuple[Given, ...]) -> None:
        self.given = given
        self.known: dict[str, float] = {g.symbol: g.value for g in given}
        self.steps: list[Step] = []

    def give(self, given: Given) -> None:
        """Adds an input that is known only after the first lines."""
        self.given = (*self.given, given)
        self.known[given.symbol] = given.value

    def step(self, symbol: str, name: str, expression: str, unit: str) -> float:
        """The value of `expression` over the symbols known so far; it is then known as `symbol`."""
        code, names = _compiled(expression)
        value = eval(code, FUNCTIONS, self.known)  # noqa: S307  expressions are our own constants
        self.steps.append(Step(symbol, name, expression, tuple((n, self.known[n]) for n in names), value, unit))
        self.known[symbol] = value
        return float(value)


def exact(number: float | Fraction) -> Fraction:
    """A float as the fraction its shortest decimal print stands for: 0.1 is 1/10."""
    return number if isinstance(number, Fraction) else Fraction(repr(float(number)))
