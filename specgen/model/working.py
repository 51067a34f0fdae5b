"""A calculation with its working: every step with symbol, expression, substitution, value and unit."""

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from specgen.model.source import Source
from specgen.quantities.format import format_decimal, format_unit
from specgen.quantities.quantity import Quantity, round_quantity

# Where an input comes from that no project gives: the method itself, or a figure that only turns one unit into another.
METHOD, UNIT_CHANGE = "figure of the method", "change of units"


@dataclass(frozen=True, slots=True)
class InputRow:
    """An input of a calculation, in the unit it is computed in, and where it comes from.

    `origin` is the path of a field (stars for the member), the name of a calculation or words; `source` is that of a
    figure no project gives.
    """

    symbol: str
    name: str
    value: float
    unit: str
    origin: str = METHOD
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
    text = format_decimal(value, 6)
    return f"({text})" if value < 0 else text


@cache
def _tokens(expression: str) -> tuple[str, ...]:
    return tuple(re.findall(r"[A-Za-z_][A-Za-z_0-9]*|[\d.]+|\s+|.", expression))


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
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

    @property
    def secondary_steps(self) -> tuple[Step, ...]:
        """The steps named by `secondary_results`, in their order."""
        return tuple(step for symbol in self.secondary_results for step in self.steps if step.symbol == symbol)

    @property
    def quantity(self) -> Quantity:
        """The result as a quantity, to hold against a limit; KeyError where it has no unit."""
        return Quantity.of(repr(float(self.result)), self.unit)

    @property
    def rounded(self) -> Quantity:
        """The result as a sentence shows it, to four digits."""
        return round_quantity(self.quantity)

    @property
    def printed_unit(self) -> str:
        """The unit as a reader expects it."""
        return format_unit(self.unit)


@dataclass(frozen=True, slots=True)
class Lookup:
    """The answer of a look-up in a code: yes or no, and why."""

    name: str
    result: bool
    why: str
    source: tuple[Source, ...]
