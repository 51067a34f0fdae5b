"""A calculation with its working: every step with symbol, expression, substitution, value and unit."""

import re
from functools import cache
from typing import Any, NamedTuple

from specgen.model.source import Source
from specgen.quantities.format import format_decimal, format_unit
from specgen.quantities.quantity import Quantity, round_quantity

# Origins of inputs that no project gives: a figure of the method itself, or a factor between units.
METHOD, UNIT_CHANGE = "method constant", "unit conversion"
# Units that print to a tenth: nobody reads a face closer.
DEGREES = ("F", "C")


class InputRow(NamedTuple):
    """An input of a calculation, in the unit of the calculation, and where it comes from."""

    symbol: str  # as in the expressions of the steps
    name: str  # in words
    value: float  # in `unit`
    unit: str  # by its name
    origin: str = METHOD  # the path of a field (stars for the member), the name of a calculation, or words
    source: Source | None = None  # of a figure that no project gives
    limit: str = ""  # the row of the limits it is of


class Step(NamedTuple):
    """One step of a calculation; `substitution` is the expression with its figures."""

    symbol: str  # of the result
    name: str  # in words
    expression: str  # with symbols and operators, such as `L * dT`
    values: tuple[tuple[str, float], ...]  # symbols in the expression and their values
    value: float  # the result, in `unit`
    unit: str  # by its name

    @property
    def substitution(self) -> str:
        """The expression with the printed figures in place of its symbols."""
        figures = dict(self.values)
        return "".join(_figure(figures[w]) if w in figures else w for w in _tokens(self.expression))


def _figure(value: float) -> str:
    text = format_decimal(value, 6)
    return f"({text})" if value < 0 else text


@cache
def _tokens(expression: str) -> tuple[str, ...]:
    return tuple(re.findall(r"[A-Za-z_][A-Za-z_0-9]*|[\d.]+|\s+|.", expression))


class Working(NamedTuple):
    """A result and how it was reached; `result` is a bare number in `unit`."""

    name: str  # of the calculation
    inputs: tuple[InputRow, ...]
    steps: tuple[Step, ...]
    result: Any  # the value of one of the steps
    unit: str
    source: tuple[Source, ...]  # of the method
    notes: tuple[str, ...] = ()  # limits of use, one sentence or a few each
    governing_case: str = ""  # which of several cases gave the result, in words
    secondary_results: tuple[str, ...] = ()  # symbols of further steps wanted with the result: a stock size, a reserve
    moment: str = ""  # the result as a day or a moment in ISO 8601, where it stands for one
    said: tuple[tuple[str, str], ...] = ()  # what it rests on in words, each with its head: a category, a list of sizes

    @property
    def secondary_steps(self) -> tuple[Step, ...]:
        """The steps named by `secondary_results`, in their order."""
        return tuple(step for symbol in self.secondary_results for step in self.steps if step.symbol == symbol)

    @property
    def quantity(self) -> Quantity:
        """The result as a quantity, to compare with a limit; KeyError if it has no unit."""
        return Quantity.of(repr(float(self.result)), self.unit)

    @property
    def rounded(self) -> Quantity:
        """The result rounded to four digits, a temperature to a tenth, as sentences print it."""
        if self.unit in DEGREES:
            return Quantity.of(format_decimal(float(self.result), 4, 1), self.unit)
        return round_quantity(self.quantity)

    @property
    def printed_unit(self) -> str:
        """The unit as a reader expects it."""
        return format_unit(self.unit)


class Lookup(NamedTuple):
    """The answer of a look-up in a code: yes or no, and why."""

    name: str
    result: bool
    why: str
    source: tuple[Source, ...]
