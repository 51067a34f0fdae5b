"""Solar reflectance index: where a face lies between a standard black (0) and a standard white (100) in the sun."""

from specgen.computing.guards import refuse_outside
from specgen.computing.heat._heat_balance import SIGMA, balanced
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (
    Source(Kind.PUBLISHED, "ASTM E1980: heat balance, standard sun, air, sky and wind, reference faces, and chi"),
    Source(Kind.MEMORY, "ASTM E1980: the polynomial in chi of the closed form"),
)
# ASTM E1980: W/(m2·K) passed to the air at low (0 to 2 m/s), medium (2 to 6) and high (6 to 10) wind.
WINDS = {"low": 5.0, "medium": 12.0, "high": 30.0}
SUN, AIR, SKY = 1000.0, 310.0, 300.0  # W/m2 and kelvin, the standard conditions
# Reflectance and emittance of the reference faces, 0 and 100 by definition.
BLACK, WHITE = (0.05, 0.90), (0.80, 0.90)
LEAST_EMITTANCE = 0.1
NOTES = (
    "The index is defined for level and low-sloped roofs under the open sky. For a wall it ranks one coat against "
    "another and says no temperature.",
    "The standard gives its closed form a mean error of 0.9 and a largest of 2; at low wind dark faces miss by more.",
)
NO_CLOSED_FORM = (
    "The closed form is not printed: it holds for an absorptance above 0.1, and not for one above 0.8 with an "
    "emittance below 0.2.",
)


def solar_reflectance_index(
    solar_reflectance: float, emittance: float, wind: str = "medium", system: str = "ip"
) -> Working:
    """The index by heat balance, a bare number; the closed form beside it; source: `SOURCES`. Raises Refused.

    `wind` is low, medium or high; reflectance runs from 0 to 1, emittance from above 0.1 to 1.
    """
    refuse_outside("solar_reflectance", solar_reflectance, 0, 1)
    if not LEAST_EMITTANCE < emittance <= 1:
        raise refuse(f"emittance is {float(emittance):g}", f"it lies above {LEAST_EMITTANCE} and up to 1")
    made = Sum(_given(float(solar_reflectance), float(emittance), WINDS[wind]))
    for mark, name in (("b", "black"), ("w", "white"), ("s", "this face")):
        made.step(f"G_{mark}", f"sun taken up, {name}", f"(1 - SR_{mark}) * I", "W/m2")
        _face(made, mark, name)
    index = made.step("SRI", "index by heat balance", "100 * (K_b - K_s) / (K_b - K_w)", "")
    closed = _closed_form(made)
    notes, beside = (NOTES, ("SRI_c",)) if closed else (NOTES + NO_CLOSED_FORM, ())
    return Working("solar-reflectance-index", made.given, tuple(made.steps), index, "", SOURCES, notes, beside=beside)


def _given(reflectance: float, emittance: float, h_c: float) -> tuple[Given, ...]:
    return (
        Given("SR_s", "solar reflectance", reflectance, ""),
        Given("e_s", "emittance", emittance, ""),
        Given("SR_b", "solar reflectance, black", BLACK[0], ""),
        Given("e_b", "emittance, black", BLACK[1], ""),
        Given("SR_w", "solar reflectance, white", WHITE[0], ""),
        Given("e_w", "emittance, white", WHITE[1], ""),
        Given("I", "standard sun", SUN, "W/m2"),
        Given("K_a", "standard air", AIR, "K"),
        Given("K_r", "standard sky", SKY, "K"),
        Given("h", "heat passed to the air by wind", h_c, "W/(m2.K)"),
        Given("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)"),
    )


def _face(made: Sum, mark: str, name: str) -> None:
    """Adds a face in kelvin. It was found by trial, and its line shows that the balance closes at it."""
    known = made.known
    known[f"K_{mark}"] = balanced(known[f"G_{mark}"], known[f"e_{mark}"], AIR, known["h"], SKY)
    expression = f"K_a + (G_{mark} - e_{mark} * s * (K_{mark}^4 - K_r^4)) / h"
    made.step(f"K_{mark}", f"face where heat given off equals G_{mark}, {name}", expression, "K")


def _closed_form(made: Sum) -> bool:
    """Adds the closed form, where this face lies in its range."""
    absorbed, emittance = 1 - made.known["SR_s"], made.known["e_s"]
    if absorbed <= 0.1 or (absorbed > 0.8 and emittance < 0.2):
        return False
    made.step("chi", "chi of the closed form", "(1 - SR_s - 0.029 * e_s) * (8.797 + h) / (9.5205 * e_s + h)", "")
    made.step("SRI_c", "index by the closed form", "123.97 - 141.35 * chi + 9.655 * chi^2", "")
    return True


def for_color(color: View, ask: Ask) -> Working:
    """The index of a color of the project, at medium wind."""
    return solar_reflectance_index(color.solar_reflectance, color.emittance)


PROVIDER = Provider(
    "solar-reflectance-index",
    "Solar reflectance index",
    ("colors",),
    for_color,
    direct=solar_reflectance_index,
    reads=("colors.*.solar_reflectance", "colors.*.emittance"),
    printed=False,  # a relative index: no wall is promised one
    keys=(
        Key("solar_reflectance", "number", "0 to 1"),
        Key("emittance", "number", "above 0.1 to 1"),
        Key("wind", "word", "low, medium or high", "medium", choices=tuple(WINDS)),
    ),
)
