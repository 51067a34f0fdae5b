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

from fractions import Fraction

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Color, Number
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-06",
    "Measured solar figures",
    remedy="Enter the test method of the solar reflectance, and submit the report: ASTM C1549 or E903.",
    steps="mockup",
    documents="D06 D19",
)


@RULE.test(
    "a",
    CAUTION,
    "Solar reflectance {found} looks copied from light reflectance.",
    at="color.solar_reflectance",
    limit="color.reflectance_apart",
    remedy="Enter the measured solar reflectance, and submit the report: ASTM C1549 or E903.",
)
def copied(color: Color, limit: Number) -> Violations:
    """The solar figure is the light one, rounded."""
    light, solar = read_all(lambda: color.lrv, lambda: color.solar_reflectance)
    if less(abs(solar - Fraction(light, 100)), limit):
        yield violation(solar)


RULE.clause(
    "b",
    CAUTION,
    "Solar reflectance has no test method.",
    when="color.solar_reflectance_method = not_stated",
    basis="reflectance_tests_memory",
)

RULE.clause(
    "c",
    CAUTION,
    "Emittance has no test method.",
    when="color.emittance_method = not_stated",
    basis="emittance_tests_memory",
    remedy="Enter the test method of the emittance, and submit the report: ASTM C1371 or E408.",
)
