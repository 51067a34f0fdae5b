"""Hottest face of the coated wall: the greater of a rule of thumb for joints and a heat balance."""

from fractions import Fraction

from specgen.computing.heat._face import (
    READS,
    Inputs,
    face_by_balance,
    found_by_trial,
    given,
    margin_note,
    of_elevation,
    sources,
)
from specgen.computing.heat._heat_balance import H_C, NOTES, from_kelvin, refuse_unfit_face, to_kelvin
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.resolving.provider import Key, Provider

JOINT_RULE = Source(Kind.MEMORY, "ASTM C1472: hot air plus absorption times a heat capacity constant")
# Heat capacity constant of a light skin, in kelvin apart: 100 F, 130 F with reflected sun; from memory.
CONSTANT, CONSTANT_REFLECTED = Fraction(500, 9), Fraction(650, 9)
LEAST_NOTE = "At the least reflectance the face just reaches the limit; a coat that passes reflects more."
NONE_NOTE = "No reflectance passes: the hot air alone reaches the limit."


def face_heat(inputs: Inputs) -> Working:
    """Temperature of the face, in °F or °C: the hotter of two methods, each with its source. Raises Refused.

    With a limit, the margin to it and the least reflectance that passes both methods stand beside.
    """
    refuse_unfit_face(inputs.solar_reflectance, inputs.emittance, inputs.irradiance, hot_air=inputs.hot_air)
    degree = inputs.degree
    made = Sum((*given(inputs, H_C), _constant(inputs)))
    made.step("T_1", "face by the joint rule", "T_a + (1 - SR) * H", degree)
    face_by_balance(made, degree)
    hottest = made.step("T_f", "hottest face", "max(T_1, T_2)", degree)
    governs = "joint rule" if made.known["T_1"] >= made.known["T_2"] else "heat balance"
    beside, notes = _held_to_limit(made, inputs, hottest)
    told, told_by = NOTES + notes, sources(inputs, JOINT_RULE)
    return Working("face-heat", made.given, tuple(made.steps), hottest, degree, told_by, told, governs, beside)


def _constant(inputs: Inputs) -> Given:
    constant = (CONSTANT_REFLECTED if inputs.reflected else CONSTANT) * (Fraction(9, 5) if inputs.degree == "F" else 1)
    return Given("H", "heat capacity constant", float(constant), inputs.degree, source=JOINT_RULE)


def _held_to_limit(made: Sum, inputs: Inputs, hottest: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Adds what a limit asks for; returns the lines that stand beside the result, and the notes."""
    if inputs.limit is None:
        return (), ()
    margin = margin_note(hottest, inputs.limit, inputs.degree)
    made.step("M", "margin below the limit", "T_b - T_f", f"{inputs.degree} apart")
    if inputs.limit <= inputs.hot_air:
        return ("M",), (NONE_NOTE, margin)
    _least_reflectance(made, inputs.degree)
    return ("M", "SR_m"), (LEAST_NOTE, margin)


def _least_reflectance(made: Sum, degree: str) -> None:
    """Adds SR_m, the least reflectance at which neither method passes the limit, and the face at it."""
    made.step("SR_1", "reflectance that meets the limit by the joint rule", "1 - (T_b - T_a) / H", "")
    made.step("K_b", "limit, absolute", to_kelvin("T_b", degree), "K")
    made.step("Q", "heat given off by a face at the limit", "e * s * (K_b^4 - K_a^4) + h * (K_b - K_a)", "W/m2")
    balance = ""
    if made.known["I"]:  # without sun the balance asks for no reflectance
        made.step("SR_2", "reflectance that meets the limit by heat balance", "1 - Q / (I * r)", "")
        balance = "SR_2, "
    made.step("SR_m", "least reflectance that passes both methods", f"max(SR_1, {balance}0)", "")
    made.step("G_m", "sun taken up at SR_m", "(1 - SR_m) * I * r", "W/m2")
    found_by_trial(made, "K_m", "face where heat given off equals G_m", "G_m")
    back = from_kelvin("K_m", degree)
    # The proof: solved forward from SR_m, the hotter method comes out at the limit, or below it where SR_m is 0.
    made.step("T_m", "hottest face at SR_m, to be held against the limit", f"max(T_a + (1 - SR_m) * H, {back})", degree)


PROVIDER = Provider(
    "face-heat",
    "Hottest face of the wall",
    ("elevations",),
    lambda elevation, ask: face_heat(of_elevation(elevation)),
    direct=lambda **keys: face_heat(Inputs(**keys)),
    reads=READS,
    units=("F", "C"),
    order=10,
    origins={
        "T_a": "climate.hot_air",
        "SR": "elevations.*.color.solar_reflectance",
        "e": "elevations.*.color.emittance",
        "I": "climate.peak_wall_irradiance",
        "r": "elevations.*.reflecting_surface_near",
        "T_b": "elevations.*.wall.insulation.service_limit",
    },
    keys=(
        Key("hot_air", "temperature", "hottest air"),
        Key("solar_reflectance", "number", "0 to 1"),
        Key("emittance", "number", "0 to 1"),
        Key("irradiance", "irradiance", "peak sun on the wall"),
        Key("reflected", "yes_no", "glass or metal sends a second sun", "no"),
        Key("limit", "temperature", "where the board softens", "165 F"),
    ),
)
