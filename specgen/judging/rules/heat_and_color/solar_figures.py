"""Solar reflectance and emittance are measured figures, and the method is told.

Why: light reflectance counts only what the eye sees, which is about half of the sun. A figure copied from it,
or of no known method, puts the heat at the board wrong.

passes
    colors: {C1: {solar_reflectance: 0.42, lrv: 34, solar_reflectance_method: C1549, emittance_method: C1371}}
fails HEA-06a at colors.C1.solar_reflectance
    colors: {C1: {solar_reflectance: 0.34, lrv: 34}}
fails HEA-06b at colors.C1.solar_reflectance_method
    colors: {C1: {solar_reflectance_method: not_stated}}
fails HEA-06c at colors.C1.emittance_method
    colors: {C1: {emittance_method: not_stated}}
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-06",
    "Solar figures measured, by a known method",
    remedy="Get the solar test report.",
    steps="mockup",
    documents="D06 D19",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Solar reflectance {found} looks copied from light reflectance.",
    each="colors",
    needs="colors.*.lrv colors.*.solar_reflectance",
    limit="color.reflectance_apart",
)
def copied(color: Any, limit: Any) -> Iterator[Found]:
    """The solar figure is the light one, rounded."""
    if less(abs(color.solar_reflectance - Fraction(color.lrv, 100)), limit):
        yield found(color.solar_reflectance)


@RULE.clause(
    "b",
    CAUTION,
    "Solar reflectance has no test method.",
    each="colors",
    needs="colors.*.solar_reflectance_method",
    basis="reflectance_tests_memory",
)
def reflectance_method_not_stated(color: Any) -> Iterator[Found]:
    """Nobody says how the solar reflectance was measured."""
    if color.solar_reflectance_method == "not_stated":
        yield found(color.solar_reflectance_method)


@RULE.clause(
    "c",
    CAUTION,
    "Emittance has no test method.",
    each="colors",
    needs="colors.*.emittance_method",
    basis="reflectance_tests_memory",
)
def emittance_method_not_stated(color: Any) -> Iterator[Found]:
    """Nobody says how the emittance was measured."""
    if color.emittance_method == "not_stated":
        yield found(color.emittance_method)
