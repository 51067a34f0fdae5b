"""Difference of two colors measured as L*, a*, b*: CIEDE2000, or the plain distance of 1976."""

import math
import re
from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from specgen.computing.color._ciede2000 import ciede2000
from specgen.computing.guards import refuse_outside
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.parse import QuantityError
from specgen.resolving.provider import Key, Provider

SOURCES = {
    "2000": Source(
        Kind.PUBLISHED,
        "Sharma, Wu and Dalal, The CIEDE2000 Color-Difference Formula, Color Research and Application, 2005",
    ),
    "1976": Source(Kind.MEMORY, "CIE 15, Colorimetry: distance in L*, a*, b*"),
}
NOTES = (
    "Both colors are measured with one instrument, at one angle, under one light.",
    "One angle does not judge a flake finish: the difference is taken at each angle, and by eye at the sample.",
)
FARTHEST = 200  # no surface lies farther out on a* or b*
_NUMBER = re.compile(r"[+-]?(\d{1,9}(\.\d{0,12})?|\.\d{1,12})")
_WANTED = "write L, a and b with commas: 50,2.5,-3.1"

Lab = Sequence[Any]


def read_lab(text: str) -> tuple[Fraction, ...]:
    """L*, a* and b* of `50,2.5,-3.1`; raises QuantityError."""
    parts = re.split(r"\s*[,;]\s*|\s+", text.replace("\u2212", "-").strip())
    if len(parts) != 3 or not all(_NUMBER.fullmatch(part) for part in parts):
        raise QuantityError(f"{text!r} is no color", _WANTED)
    return tuple(Fraction(part) for part in parts)


def colour_difference(lab1: Lab, lab2: Lab, method: str = "2000", system: str = "ip") -> Working:
    """Difference of two colors, a bare number; `method` is 2000 or 1976. Raises Refused for what is no color."""
    given = (*_given("1", "first", lab1), *_given("2", "second", lab2))
    if method == "1976":
        return _distance(Sum(given))
    made = Sum((*given, Given("q", "degrees of a radian", math.degrees(1), "")))
    return _working(made, ciede2000(made), "2000", ("dL", "dC", "dH"))


def _given(number: str, which: str, lab: Lab) -> list[Given]:
    for letter, value in zip("Lab", lab, strict=True):
        least, most = (0, 100) if letter == "L" else (-FARTHEST, FARTHEST)
        refuse_outside(f"{letter} of lab{number}", value, least, most)
    values = zip("Lab", lab, strict=True)
    return [Given(f"{letter}_{number}", f"{letter}* of the {which} color", float(v), "") for letter, v in values]


def _distance(made: Sum) -> Working:
    made.step("dL", "difference of L*", "L_2 - L_1", "")
    made.step("da", "difference of a*", "a_2 - a_1", "")
    made.step("db", "difference of b*", "b_2 - b_1", "")
    return _working(
        made, made.step("E", "color difference", "sqrt(dL^2 + da^2 + db^2)", ""), "1976", ("dL", "da", "db")
    )


def _working(made: Sum, difference: float, method: str, beside: tuple[str, ...]) -> Working:
    source = (SOURCES[method],)
    return Working("colour-difference", made.given, tuple(made.steps), difference, "", source, NOTES, "", beside)


PROVIDER = Provider(
    "colour-difference",
    "Difference of two colors",
    (),
    None,
    direct=colour_difference,
    keys=(
        Key("lab1", "word", "first color as L,a,b", read=read_lab),
        Key("lab2", "word", "second color as L,a,b", read=read_lab),
        Key("method", "word", "year of the formula", "2000", choices=("2000", "1976")),
    ),
)
