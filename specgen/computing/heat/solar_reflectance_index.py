"""Solar reflectance index: where a face lies between a standard black (0) and a standard white (100) in the sun."""

from specgen.computing.heat_balance import SIGMA, WINDS, balance_face
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.working import InputRow, Working
from specgen.standards import find_source

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


class IndexInputs(Inputs):
    """The properties of a face, from 0 to 1, and the wind it is taken at."""

    solar_reflectance: float = given_input(
        "SR_s", "solar reflectance", "number", "colors.*.solar_reflectance", "0 to 1", within=(0, 1)
    )
    emittance: float = given_input("e_s", "emittance", "number", "colors.*.emittance", "above 0.1 to 1")
    wind: str = option_input("low, medium or high", tuple(WINDS), default="medium")


def solar_reflectance_index(inputs: IndexInputs) -> Working:
    """The index by heat balance, a bare number; the closed form beside it. Raises Refused."""
    emittance = inputs.emittance
    if not LEAST_EMITTANCE < emittance <= 1:
        raise refuse(f"emittance is {float(emittance):g}", f"it lies above {LEAST_EMITTANCE} and up to 1")
    working = WorkingBuilder((*inputs.rows(), *_standard_rows(WINDS[inputs.wind])))
    for mark, name in (("b", "black"), ("w", "white"), ("s", "this face")):
        working.step(f"G_{mark}", f"sun taken up, {name}", f"(1 - SR_{mark}) * I", "W/m2")
        _add_face(working, mark, name)
    working.step("SRI", "index by heat balance", "100 * (K_b - K_s) / (K_b - K_w)", "")
    closed = _add_closed_form(working)
    notes, beside = (NOTES, ("SRI_c",)) if closed else (NOTES + NO_CLOSED_FORM, ())
    balance = find_source("astm_e1980").quote("heat balance, standard sun, air, sky and wind, reference faces, and chi")
    closed_form = find_source("astm_e1980_closed_form_memory").quote("the polynomial in chi of the closed form")
    return working.build("solar-reflectance-index", "SRI", (balance, closed_form), notes, secondary_results=beside)


def _standard_rows(h_c: float) -> tuple[InputRow, ...]:
    return (
        InputRow("SR_b", "solar reflectance, black", BLACK[0], ""),
        InputRow("e_b", "emittance, black", BLACK[1], ""),
        InputRow("SR_w", "solar reflectance, white", WHITE[0], ""),
        InputRow("e_w", "emittance, white", WHITE[1], ""),
        InputRow("I", "standard sun", SUN, "W/m2"),
        InputRow("K_a", "standard air", AIR, "K"),
        InputRow("K_r", "standard sky", SKY, "K"),
        InputRow("h", "wind convection coefficient", h_c, "W/(m2.K)"),
        InputRow("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)"),
    )


def _add_face(working: WorkingBuilder, mark: str, name: str) -> None:
    """Adds a face in kelvin. It was found by trial, and its line shows that the balance closes at it."""
    known = working.known
    known[f"K_{mark}"] = balance_face(known[f"G_{mark}"], known[f"e_{mark}"], AIR, known["h"], SKY)
    expression = f"K_a + (G_{mark} - e_{mark} * s * (K_{mark}^4 - K_r^4)) / h"
    working.step(f"K_{mark}", f"face where heat given off equals G_{mark}, {name}", expression, "K")


def _add_closed_form(working: WorkingBuilder) -> bool:
    """Adds the closed form, where this face lies in its range."""
    absorbed, emittance = 1 - working.known["SR_s"], working.known["e_s"]
    if absorbed <= 0.1 or (absorbed > 0.8 and emittance < 0.2):
        return False
    working.step("chi", "chi of the closed form", "(1 - SR_s - 0.029 * e_s) * (8.797 + h) / (9.5205 * e_s + h)", "")
    working.step("SRI_c", "index by the closed form", "123.97 - 141.35 * chi + 9.655 * chi^2", "")
    return True


PROVIDER = provide(
    "Solar reflectance index",
    IndexInputs,
    solar_reflectance_index,
    each=("colors",),
    printed=False,  # a relative index: no wall is promised one
    example="solar_reflectance=0.4 emittance=0.3",
)
