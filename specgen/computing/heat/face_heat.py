"""Hottest face of the coated wall: the greater of a rule of thumb for joints and a heat balance."""

from specgen.computing.heat._face import FaceInputs, add_face, add_face_by_trial, balance_rows, tell_margin
from specgen.computing.heat._heat_balance import H_C, NOTES, from_kelvin, to_kelvin
from specgen.computing.heat.wall_sun import share_of
from specgen.computing.inputs import provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_least, at_most
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Elevation
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import subtract_temperatures
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask

JOINT_RULE = Source(Kind.MEMORY, "ASTM C1472: hot air plus absorption times a heat capacity constant")
# Heat capacity constant of a light skin, and with reflected sun, from memory; in metric work rounded to the safe side.
CONSTANTS = {"F": (100, 130), "C": (56, 73)}
SHARE_RULE = Source(Kind.PRACTICE, "the constant of the joint rule is for full sun: scaled by the sun of this face")
LEAST_NOTE = "Minimum reflectances are rounded up; the still-air calculation may require a higher one."
NONE_NOTE = "No reflectance meets the limit: the hot air alone reaches it."
NO_MARGIN_NOTE = "No reflectance keeps the margin: the hot air alone exceeds it."
# The last digit of a printed face: one that lies nearer to the limit prints as the limit, and does not pass.
LAST_DIGIT = {"F": 0.1, "C": 0.01}


def face_heat(inputs: FaceInputs) -> Working:
    """Temperature of the face, in °F or °C: the hotter of two methods, each with its source. Raises Refused.

    With a limit, the margin to it and the least reflectance that passes stand beside, and that which keeps the margin
    wanted.
    """
    degree = inputs.degree
    working = WorkingBuilder((*balance_rows(inputs, H_C), _constant_row(inputs), inputs.row("share")))
    working.step("T_1", "face temperature, joint rule", "T_a + (1 - SR) * H * f", degree)
    add_face(working, degree)
    hottest = working.step("T_f", "hot face temperature", "max(T_1, T_2)", degree)
    case = "joint rule" if working.known["T_1"] >= working.known["T_2"] else "heat balance"
    beside, notes = _hold_to_limit(working, inputs, hottest)
    sources = (JOINT_RULE, *((SHARE_RULE,) if inputs.share < 1 else ()), *inputs.sources)
    return working.build("face-heat", "T_f", sources, NOTES + notes, case, beside)


def _constant_row(inputs: FaceInputs) -> InputRow:
    constant = CONSTANTS[inputs.degree][inputs.reflected]
    return InputRow("H", "heat capacity constant", float(constant), inputs.degree, source=JOINT_RULE)


def _hold_to_limit(
    working: WorkingBuilder, inputs: FaceInputs, hottest: float
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Adds what a limit asks for; returns the lines that stand beside the result, and the notes."""
    if inputs.limit is None:
        return (), ()
    margin = tell_margin(hottest, inputs.limit, inputs.degree)
    working.step("M", "margin to limit", "T_b - T_f", f"{inputs.degree} apart")
    beside, notes = ["M"], list[str]()
    for tail, told, row in (("p", NONE_NOTE, _last_digit_row(inputs)), ("w", NO_MARGIN_NOTE, _wanted_row(inputs))):
        working.add_inputs(row)
        target = working.step(f"T_{tail}", f"limit less {row.name}", f"T_b - {row.symbol}", inputs.degree)
        if target <= working.known["T_a"]:
            notes.append(told)
            continue
        _add_least_reflectance(working, inputs.degree, tail, "for the limit" if tail == "p" else "for the margin")
        beside.append(f"SR_{tail}")
    return tuple(beside), (*notes, *((LEAST_NOTE,) if len(beside) > 1 else ()), margin)


def _last_digit_row(inputs: FaceInputs) -> InputRow:
    return InputRow("q", "print increment", LAST_DIGIT[inputs.degree], f"{inputs.degree} apart")


def _wanted_row(inputs: FaceInputs) -> InputRow:
    wanted = inputs.limits("board.heat_margin")
    unit = f"{inputs.degree} apart"
    return InputRow("m", "required margin", wanted.value.number(unit), unit, source=wanted.source)


def _add_least_reflectance(working: WorkingBuilder, degree: str, tail: str, words: str) -> None:
    """Adds SR with a tail, the least reflectance at which neither method passes T with that tail."""
    bounds = []
    if working.known["f"]:  # without sun neither method asks for a reflectance
        bounds.append(f"SR_{tail}1")
        working.step(bounds[-1], "reflectance by the joint rule", f"1 - (T_{tail} - T_a) / (H * f)", "")
    working.step(f"K_{tail}", "this face, absolute", to_kelvin(f"T_{tail}", degree), "K")
    given_off = f"e * s * (K_{tail}^4 - K_a^4) + h * (K_{tail} - K_a)"
    working.step(f"Q_{tail}", "heat given off by this face", given_off, "W/m2")
    if working.known["I"]:
        bounds.append(f"SR_{tail}2")
        working.step(bounds[-1], "reflectance by heat balance", f"1 - Q_{tail} / (I * r)", "")
    # What the rounding of the machine leaves over a whole hundredth asks for no further one.
    hundredths = f"ceil(100 * max({', '.join([*bounds, '0'])}) - 0.000001)" if bounds else "0"
    working.step(f"n_{tail}", "hundredths, rounded up", hundredths, "")
    working.step(f"SR_{tail}", f"minimum reflectance {words}", f"n_{tail} / 100", "")
    _add_proof(working, degree, tail)


def _add_proof(working: WorkingBuilder, degree: str, tail: str) -> None:
    """Adds the face at the least reflectance, solved forward: it comes out at T with the tail, or below it."""
    working.step(f"G_{tail}", "sun taken up at this reflectance", f"(1 - SR_{tail}) * I * r", "W/m2")
    add_face_by_trial(working, f"J_{tail}", f"face where heat given off equals G_{tail}", f"G_{tail}")
    balance = from_kelvin(f"J_{tail}", degree)
    hottest = f"max(T_a + (1 - SR_{tail}) * H * f, {balance})"
    working.step(f"F_{tail}", "hottest face at this reflectance", hottest, degree)


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The face of an elevation in the sun of its facing."""
    return face_heat(FaceInputs.from_project(elevation, ask, share=share_of(ask("wall-sun"))))


def compare_face(elevation: Elevation, ask: Ask) -> Comparison:
    """The hottest face against the heat at which the board softens."""
    return at_most(ask("face-heat").rounded, elevation.wall.insulation.service_limit, strict=True)


def compare_margin(elevation: Elevation, ask: Ask) -> Comparison:
    """The margin below that heat against the margin wanted."""
    margin = subtract_temperatures(elevation.wall.insulation.service_limit, ask("face-heat").rounded)
    return at_least(margin, find_limit("board.heat_margin", elevation.project).value)


PROVIDER = provide(
    "Wall face temperature",
    FaceInputs,
    face_heat,
    each=("elevations",),
    for_member=for_elevation,
    checks=(
        Check("face temperature", "board service limit", ("HEA-02a",), compare_face),
        Check("face temperature margin", "minimum margin", ("HEA-03a",), compare_margin, "board.heat_margin"),
    ),
    order=10,
)
