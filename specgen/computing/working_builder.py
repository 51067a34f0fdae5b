"""Builds a working line by line, so that what is printed is what was computed."""

import math
from collections.abc import Iterable
from functools import cache
from types import CodeType
from typing import Any

from specgen.model.source import Source
from specgen.model.working import InputRow, Step, Working

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
    "asin": math.asin,
    "atan2": math.atan2,
    "__builtins__": {},
}


@cache
def _compile(expression: str) -> tuple[CodeType, tuple[str, ...]]:
    code = compile(expression.replace("^", "**"), expression, "eval")
    return code, tuple(name for name in code.co_names if name not in FUNCTIONS)


class WorkingBuilder:
    """A working in the making; `known` holds the values of inputs and steps by symbol."""

    def __init__(self, inputs: Iterable[InputRow]) -> None:
        self.inputs = tuple(inputs)
        self.known: dict[str, float] = {row.symbol: row.value for row in self.inputs}
        self.steps: list[Step] = []

    def add_inputs(self, *rows: InputRow) -> None:
        """Adds inputs that are known only after the first steps."""
        self.inputs += rows
        self.known |= {row.symbol: row.value for row in rows}

    def step(self, symbol: str, name: str, expression: str, unit: str) -> float:
        """The value of `expression` over the symbols known so far; it is then known as `symbol`."""
        code, names = _compile(expression)
        value = eval(code, FUNCTIONS, self.known)  # noqa: S307  expressions are our own constants
        self.steps.append(
            Step(
                symbol=symbol,
                name=name,
                expression=expression,
                values=tuple((n, self.known[n]) for n in names),
                value=value,
                unit=unit,
            )
        )
        self.known[symbol] = value
        return float(value)

    def build(
        self,
        name: str,
        result: str,
        source: tuple[Source, ...],
        notes: tuple[str, ...] = (),
        governing_case: str = "",
        secondary_results: tuple[str, ...] = (),
    ) -> Working:
        """The working of the calculation `name`; `result` is the symbol of the step that is its result."""
        last = next(step for step in self.steps if step.symbol == result)
        return Working(
            name=name,
            inputs=self.inputs,
            steps=tuple(self.steps),
            result=float(last.value),
            unit=last.unit,
            source=source,
            notes=notes,
            governing_case=governing_case,
            secondary_results=secondary_results,
        )
