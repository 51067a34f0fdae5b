"""Hottest face of the coated wall: the greater of a rule of thumb for joints and a heat balance."""

from fractions import Fraction

from specgen.computing.heat._face import FaceInputs, add_face, add_face_by_trial, balance_rows, tell_margin
from specgen.computing.heat._heat_balance import H_C, NOTES, from_kelvin, to_kelvin
from specgen.computing.inputs import provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow, Working

JOINT_RULE = Source(Kind.MEMORY, "ASTM C1472: hot air plus absorption times a heat capacity constant")
# Heat capacity constant of a light skin, in kelvin apart: 100 F, 130 F with reflected sun; from memory.
CONSTANT, CONSTANT_REFLECTED = Fraction(500, 9), Fraction(650, 9)
LEAST_NOTE = "At the least reflectance the face just reaches the limit; a coat that passes reflects more."
NONE_NOTE = "No reflectance passes: the hot air alone reaches the limit."


def face_heat(inputs: FaceInputs) -> Working:
    """Temperature of the face, in °F or °C: the hotter of two methods, each with its source. Raises Refused.

    With a limit, the margin to it and the least reflectance that passes both methods stand beside.
    """
    degree = inputs.degree
    working = WorkingBuilder((*balance_rows(inputs, H_C), _constant_row(inputs)))
    working.step("T_1", "face by the joint rule", "T_a + (1 - SR) * H", degree)
    add_face(working, degree)
    hottest = working.step("T_f", "hottest face", "max(T_1, T_2)", degree)
    case = "joint rule" if working.known["T_1"] >= working.known["T_2"] else "heat balance"
    beside, notes = _hold_to_limit(working, inputs, hottest)
    return working.build("face-heat", "T_f", (JOINT_RULE, *inputs.sources), NOTES + notes, case, beside)


def _constant_row(inputs: FaceInputs) -> InputRow:
    constant = (CONSTANT_REFLECTED if inputs.reflected else CONSTANT) * (Fraction(9, 5) if inputs.degree == "F" else 1)
    return InputRow("H", "heat capacity constant", float(constant), inputs.degree, source=JOINT_RULE)


def _hold_to_limit(
    working: WorkingBuilder, inputs: FaceInputs, hottest: float
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Adds what a limit asks for; returns the lines that stand beside the result, and the notes."""
    if inputs.limit is None:
        return (), ()
    margin = tell_margin(hottest, inputs.limit, inputs.degree)
    working.step("M", "margin below the limit", "T_b - T_f", f"{inputs.degree} apart")
    if inputs.limit <= inputs.hot_air:
        return ("M",), (NONE_NOTE, margin)
    _add_least_reflectance(working, inputs.degree)
    return ("M", "SR_m"), (LEAST_NOTE, margin)


def _add_least_reflectance(working: WorkingBuilder, degree: str) -> None:
    """Adds SR_m, the least reflectance at which neither method passes the limit, and the face at it."""
    working.step("SR_1", "reflectance that meets the limit by the joint rule", "1 - (T_b - T_a) / H", "")
    working.step("K_b", "limit, absolute", to_kelvin("T_b", degree), "K")
    working.step("Q", "heat given off by a face at the limit", "e * s * (K_b^4 - K_a^4) + h * (K_b - K_a)", "W/m2")
    balance = ""
    if working.known["I"]:  # without sun the balance asks for no reflectance
        working.step("SR_2", "reflectance that meets the limit by heat balance", "1 - Q / (I * r)", "")
        balance = "SR_2, "
    working.step("SR_m", "least reflectance that passes both methods", f"max(SR_1, {balance}0)", "")
    working.step("G_m", "sun taken up at SR_m", "(1 - SR_m) * I * r", "W/m2")
    add_face_by_trial(working, "K_m", "face where heat given off equals G_m", "G_m")
    back = from_kelvin("K_m", degree)
    # The proof: solved forward from SR_m, the hotter method comes out at the limit, or below it where SR_m is 0.
    working.step(
        "T_m", "hottest face at SR_m, to be held against the limit", f"max(T_a + (1 - SR_m) * H, {back})", degree
    )


PROVIDER = provide("Hottest face of the wall", FaceInputs, face_heat, each=("elevations",), order=10)
