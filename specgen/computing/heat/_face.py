"""The face of an elevation in the sun: its inputs, the hotter of two methods, and what a limit asks of it."""

from fractions import Fraction

from specgen.computing.heat._balance_steps import add_face
from specgen.computing.heat._least_reflectance import Target, add_least_reflectance
from specgen.computing.heat.wall_sun import share_of
from specgen.computing.heat_balance import AIR, NOTES, REFLECTED_SUN, SIGMA, SUN
from specgen.computing.inputs import Inputs, given_input, option_input
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import read_all
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Elevation
from specgen.model.working import InputRow, Working
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.standards import find_source

BALANCE = find_source("astm_e1980").quote(
    "heat balance of a surface, solved here for a wall with surroundings at air temperature; 5 W/(m²·K) at low wind, "
    "12 at medium wind"
)
JOINT_RULE = Source(Kind.MEMORY, "ASTM C1472: hot air plus absorption times a heat capacity constant")
# Heat capacity constant of a light skin, in kelvin apart: 100 F, 130 F with reflected sun; from memory.
CONSTANT, CONSTANT_REFLECTED = Fraction(500, 9), Fraction(650, 9)
SHARE_RULE = Source(Kind.PRACTICE, "the constant of the joint rule is for full sun: scaled by the sun of this face")
LEAST_NOTE = "Minimum reflectance, rounded up to two decimals, binds each batch and the aged face."
SECOND_SUN = Source(Kind.MEMORY, "sun on a wall opposite glass or metal: 1.3 of that of the sun alone")

UNREFLECTED = "No glass, metal, water, or pale paving reflects sun onto the face"
# The project says so of its elevation; of keys nobody has said it.
SAID, UNSAID = f"{UNREFLECTED}, as given for each elevation.", f"{UNREFLECTED}: architect to confirm in writing."


class FaceInputs(Inputs):
    """The face of an elevation, the air and the sun on it; `limit` is where the board behind it softens."""

    hot_air: Quantity = given_input("T_a", "hot air", "temperature", "climate.hot_air", "hottest air", within=AIR)
    solar_reflectance: float = given_input(
        "SR", "solar reflectance", "number", "elevations.*.color.solar_reflectance", "0 to 1", within=(0, 1)
    )
    emittance: float = given_input("e", "emittance", "number", "elevations.*.color.emittance", "0 to 1", within=(0, 1))
    irradiance: Quantity = given_input(
        "I", "irradiance on the wall", "irradiance", computed="wall-sun", about="peak sun on the wall", within=SUN
    )
    share: float = given_input(
        "f",
        "share of sunniest wall",
        "number",
        default=1,
        about="sun on the wall over that of the sunniest wall, 0 to 1; the joint rule is written for 1",
        origin="wall-sun",
        within=(0, 1),
    )
    reflected: bool = option_input(
        "glass or metal sends a second sun",
        field="elevations.*.reflecting_surface_near",
        dimension="yes_no",
        default=False,
    )
    limit: Quantity | None = given_input(
        "T_b",
        "board service limit",
        "temperature",
        "elevations.*.wall.insulation.service_limit",
        optional=True,
        limit="board.softens",
        span=("32 F", "400 F"),
    )

    @property
    def degree(self) -> str:
        """The unit of temperatures: F or C."""
        return "F" if self.system == "ip" else "C"

    @property
    def sources(self) -> tuple[Source, ...]:
        """The sources of the balance."""
        return (BALANCE, *((SECOND_SUN,) if self.reflected else ()))


def read_face(elevation: Elevation, ask: Ask) -> FaceInputs:
    """The face of an elevation in the sun of its facing; raises Absent with all that sun and face wait for."""
    sun, _ = read_all(lambda: ask("wall-sun"), lambda: FaceInputs.from_project(elevation, ask))
    return FaceInputs.from_project(elevation, ask, share=share_of(sun))


def as_given(working: Working) -> Working:
    """The face of an elevation, of which the project says that no sun is reflected onto it."""
    return working._replace(notes=tuple(SAID if note == UNSAID else note for note in working.notes))


def balance_rows(inputs: FaceInputs, h_c: float) -> tuple[InputRow, ...]:
    """The inputs of the balance, with the heat passed to the air in W/(m2·K)."""
    sun = inputs.origin("reflected")
    reflected = InputRow("r", "reflected sun factor", REFLECTED_SUN, "", sun, SECOND_SUN)
    return (
        *inputs.rows("hot_air", "solar_reflectance", "emittance", "irradiance"),
        InputRow("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)", source=BALANCE),
        InputRow("h", "convection coefficient", h_c, "W/(m2.K)", source=BALANCE),
        reflected if inputs.reflected else InputRow("r", "reflected sun factor, no glass or metal near", 1.0, "", sun),
        *inputs.rows("limit"),
    )


def constant_row(inputs: FaceInputs) -> InputRow:
    """The constant of the joint rule, with that of a second sun."""
    constant = (CONSTANT_REFLECTED if inputs.reflected else CONSTANT) * (Fraction(9, 5) if inputs.degree == "F" else 1)
    return InputRow("H", "heat capacity constant", float(constant), inputs.degree, source=JOINT_RULE)


def build_face(name: str, inputs: FaceInputs, h_c: float, target: Target) -> Working:
    """The hotter of both methods in °F or °C, at the heat passed to the air in W/(m2·K). Raises Refused."""
    degree = inputs.degree
    working = WorkingBuilder((*balance_rows(inputs, h_c), constant_row(inputs), inputs.row("share")))
    working.step("T_1", "face temperature, joint rule", "T_a + (1 - SR) * H * f", degree)
    add_face(working, degree)
    hottest = working.step("T_f", "hot face temperature", "max(T_1, T_2)", degree)
    case = "joint rule" if working.known["T_1"] >= working.known["T_2"] else "heat balance"
    beside, notes = _hold_to_limit(working, inputs, hottest, target)
    sources = (JOINT_RULE, *((SHARE_RULE,) if inputs.share < 1 else ()), *inputs.sources)
    unreflected = () if inputs.reflected else (UNSAID,)
    return working.build(name, "T_f", sources, (*NOTES, *unreflected, *notes), case, beside)


def _hold_to_limit(
    working: WorkingBuilder, inputs: FaceInputs, hottest: float, target: Target
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Adds what a limit asks for; returns the lines that stand beside the result, and the notes."""
    if inputs.limit is None:
        return (), ()
    margin = tell_margin(hottest, inputs.limit, inputs.degree)
    working.step("M", "margin to limit", "T_b - T_f", f"{inputs.degree} apart")
    working.add_inputs(target.row)
    symbol = f"T_{target.tail}"
    wanted = working.step(symbol, f"limit less {target.row.name}", f"T_b - {target.row.symbol}", inputs.degree)
    if wanted <= working.known["T_a"]:
        return ("M",), (target.none, margin)
    add_least_reflectance(working, inputs.degree, target.tail, target.words)
    return ("M", f"SR_{target.tail}"), (LEAST_NOTE, margin)


def tell_margin(face: float, limit: Quantity, degree: str) -> str:
    """How far a face, in °F or °C, lies from where the board softens, as a sentence."""
    margin = limit.number(degree) - face
    side = "below" if margin > 0 else "above"
    return (
        f"The face lies {abs(margin):.1f} °{degree} {side} {format_quantity(limit, degree)}, where the board softens."
    )
