"""Difference of two colors measured as L*, a*, b*: CIEDE2000, or the plain distance of 1976."""

import math
import re
from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from specgen.computing.color._ciede2000 import add_ciede2000
from specgen.computing.guards import require_in_range
from specgen.computing.inputs import Inputs, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow, Working
from specgen.quantities.number import QuantityError, is_number, parse_number, quote
from specgen.standards import find_source

SOURCES = {
    "2000": find_source("ciede_2000"),
    "1976": Source(Kind.MEMORY, "CIE 15, Colorimetry: distance in L*, a*, b*"),
}
NOTES = (
    "Both colors are measured with one instrument, at one angle, under one light.",
    "One angle does not judge a flake finish: the difference is taken at each angle, and by eye at the sample.",
)
FARTHEST = 200  # no surface lies farther out on a* or b*
_WANTED = "write L, a and b with commas: 50,2.5,-3.1"

Lab = Sequence[Any]


def read_lab(text: str) -> tuple[Fraction, ...]:
    """L*, a* and b* of `50,2.5,-3.1`; raises QuantityError."""
    parts = re.split(r"\s*[,;]\s*|\s+", text.replace("\u2212", "-").strip())
    if len(parts) != 3 or not all(is_number(part) for part in parts):
        raise QuantityError(f"{quote(text)} is no color", _WANTED)
    return tuple(parse_number(part) for part in parts)


class ColorInputs(Inputs):
    """Two colors and the year of the formula."""

    lab1: Lab = option_input("first color as L,a,b", read=read_lab)
    lab2: Lab = option_input("second color as L,a,b", read=read_lab)
    method: str = option_input("year of the formula", ("2000", "1976"), default="2000")


def colour_difference(inputs: ColorInputs) -> Working:
    """Difference of two colors, a bare number. Raises Refused for what is no color."""
    working = WorkingBuilder((*_color_rows("1", "first", inputs.lab1), *_color_rows("2", "second", inputs.lab2)))
    if inputs.method == "1976":
        beside = ("dL", "da", "db")
        for letter, symbol in zip("Lab", beside, strict=True):
            working.step(symbol, f"difference of {letter}*", f"{letter}_2 - {letter}_1", "")
        working.step("E", "color difference", "sqrt(dL^2 + da^2 + db^2)", "")
    else:
        beside = ("dL", "dC", "dH")
        working.add_inputs(InputRow("q", "degrees of a radian", math.degrees(1), ""))
        add_ciede2000(working)
    return working.build("colour-difference", "E", (SOURCES[inputs.method],), NOTES, secondary_results=beside)


def _color_rows(number: str, which: str, lab: Lab) -> list[InputRow]:
    for letter, value in zip("Lab", lab, strict=True):
        least, most = (0, 100) if letter == "L" else (-FARTHEST, FARTHEST)
        require_in_range(f"{letter} of lab{number}", value, least, most)
    values = zip("Lab", lab, strict=True)
    return [InputRow(f"{letter}_{number}", f"{letter}* of the {which} color", float(v), "") for letter, v in values]


PROVIDER = provide(
    "Difference of two colors",
    ColorInputs,
    colour_difference,
    example="lab1=50,2.6772,-79.7751 lab2=50,0,-82.7485",
)
