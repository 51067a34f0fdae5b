"""Width of a sealant joint: the movement of each direction over what the sealant class bears, plus tolerance."""

from fractions import Fraction
from typing import Any

from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, at_most
from specgen.model.problem import refuse
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.typed_views import Joint
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.standards import find_source

SHEAR = Source(Kind.MEMORY, "ASTM C1472: shear and extension acting together, taken from the geometry of the bead")
# Share of the width a class may extend and be compressed.
BORNE = "share of the width that a class bears"
READ_CLASSES = ("12.5", "25")
# The number of a class is its movement in percent of the width; that of another class is read the same way.
BY_NUMBER = f"{BORNE}: its number in percent"
# Which of the two numbers of a class is the extension was not read.
TWO_NUMBERS = Source(Kind.MEMORY, f"ASTM C920: {BORNE}")
CLASSES = {"12.5": (0.125, 0.125), "25": (0.25, 0.25), "35": (0.35, 0.35), "50": (0.5, 0.5), "100/50": (1.0, 0.5)}
NOTES = (
    "Sized for the movements given. Building movements are by the structural engineer.",
    "Moisture strain is treated as growth, which closes the joint.",
)
HOT_NOTES = (
    "Sealing temperatures are of the joint surface, measured at the joint, not of the air.",
    "The hot face is that of ASTM C1472, the method of joint width, or of the heat balance with wind where hotter. The "
    "face in still air bounds the board, which softens at once; the joint moves with the mean of its panel, which wind "
    "cools (common practice, no source).",
)
ZERO = Quantity.of(0, "in")
# The width is rounded up to what a tape or a rule shows.
SIXTEENTH = Quantity.of("1/16", "in")  # method's own: a step of rounding, no tolerance
MILLIMETER = Quantity.of(1, "mm")
FOUR = ("hot", "cold", "install_low", "install_high")
# The declarations stand as the fields are asked for, the keys as a sum is thought through.
KEYS_FIRST = ("length", "alpha", "movement_class", "tolerance", "temperature_range", *FOUR)


def _building_movement(symbol: str, kind: str, way: str) -> Any:
    field, about = f"joints.*.structural_{kind}", f"movement of the building {way}"
    return given_input(symbol, f"structural {kind}", "length", field, about, default=ZERO, least=0)


class JointInputs(Inputs):
    """A stretch of wall, its sealant, and its movements; `temperature_range` stands for the four temperatures."""

    cold: Quantity | None = given_input(
        "T_cold", "cold face temperature", "temperature", "climate.cold_air", default=None
    )
    movement_class: str = option_input(
        "movement class of the sealant, ASTM C920", tuple(CLASSES), field="joints.*.sealant.c920_class"
    )
    length: Quantity = given_input(
        "L",
        "moving length",
        "length",
        "joints.*.panel_length",
        "stretch whose movement the joint takes",
        least=0,
        measured="moving-run",
    )
    alpha: Quantity = given_input(
        "alpha",
        "thermal expansion",
        "expansion",
        "joints.*.thermal_expansion",
        "thermal expansion of that stretch",
        least=0,
    )
    moisture_strain: Fraction | int = given_input(
        "k", "moisture strain", "number", "joints.*.moisture_strain", "length per length", default=0, least=0
    )
    structural_closing: Quantity = _building_movement("d_c", "closing", "that closes")
    structural_opening: Quantity = _building_movement("d_o", "opening", "that opens")
    structural_shear: Quantity = _building_movement("d_s", "shear", "along the joint")
    tolerance: Quantity = given_input(
        "C", "tolerance", "length", "joints.*.tolerance", "building tolerance, added last", least=0
    )
    install_low: Quantity | None = given_input(
        "T_low", "minimum sealing temperature", "temperature", "joints.*.install_low", default=None
    )
    install_high: Quantity | None = given_input(
        "T_high", "maximum sealing temperature", "temperature", "joints.*.install_high", default=None
    )
    temperature_range: Quantity | None = given_input(
        "dT",
        "temperature range",
        "temperature_difference",
        default=None,
        about="difference for both directions",
        least=0,
        span=("0 F", "400 F"),
    )
    hot: Quantity | None = given_input(
        "T_hot", "hot face temperature", "temperature", computed="face-heat", default=None, span=("-80 F", "300 F")
    )
    round_up: Quantity | None = given_input(
        "",
        "",
        "length",
        default=SIXTEENTH,
        about="the width is rounded up to a multiple; none for no rounding",
        span=("1/64 in", "1 in"),  # method's own: steps of rounding
    )


def joint_width(inputs: JointInputs) -> Working:
    """Least width of a sealant joint, in inches or millimeters. Raises Refused."""
    temperatures = _temperatures(inputs)
    working = WorkingBuilder(
        (
            *inputs.rows("length", "structural_closing", "structural_opening", "structural_shear", "tolerance"),
            *inputs.rows("alpha", "moisture_strain"),
            *_class_rows(inputs),
            *inputs.rows(*temperatures),
        )
    )
    unit, degree = ("in", "F") if inputs.system == "ip" else ("mm", "C")
    _add_movements(working, len(temperatures) > 1, unit, degree)
    _add_widths(working, unit)
    result, case = "W", _name_case(working.known)
    if inputs.round_up is not None and inputs.round_up.amount > 0:
        step = inputs.round_up.number(unit)
        working.add_inputs(InputRow("r", "rounding increment", step, unit, source=PRACTICE))
        # A width that lies on a sixteenth but for the last bit of a float is not rounded to the next.
        working.step(result := "W_r", "width, rounded up", "ceil(W / r - 1e-9) * r", unit)
    return working.build(
        "joint-width", result, _name_sources(), NOTES + (HOT_NOTES if len(temperatures) > 1 else ()), case
    )


def _class_rows(inputs: JointInputs) -> tuple[InputRow, ...]:
    """What the class bears; raises Refused for an unknown one."""
    if inputs.movement_class not in CLASSES:
        raise refuse(f"movement class {inputs.movement_class!r} is not known", f"known: {', '.join(CLASSES)}")
    extend, compress = CLASSES[inputs.movement_class]
    origin = inputs.origin("movement_class")
    told = BORNE if inputs.movement_class in READ_CLASSES else BY_NUMBER
    source = TWO_NUMBERS if extend != compress else find_source("guide_sealants_p6").quote(told)
    return (
        InputRow("S_e", "extension capacity", extend, "", origin, source),
        InputRow("S_c", "compression capacity", compress, "", origin, source),
    )


def _temperatures(inputs: JointInputs) -> tuple[str, ...]:
    """The names of the temperatures that are given: the range alone, or all four. Raises Refused."""
    missing = [name for name in FOUR if getattr(inputs, name) is None]
    if inputs.temperature_range is not None:
        if len(missing) < len(FOUR):
            raise refuse("both temperature_range and single temperatures are given", "give one or the other")
        return ("temperature_range",)
    if missing:
        raise refuse(f"{', '.join(missing)} must be given", "or give temperature_range in their place")
    hot, cold, low, high = (getattr(inputs, name) for name in FOUR)
    if hot < cold or high < low:
        raise refuse("a hot temperature lies below its cold one", "cold below hot, install_low below install_high")
    return FOUR


def _add_movements(working: WorkingBuilder, four: bool, unit: str, degree: str) -> None:
    if four:
        working.step("dT_c", "temperature rise after sealing", "max(T_hot - T_low, 0)", degree)
        working.step("dT_o", "temperature drop after sealing", "max(T_high - T_cold, 0)", degree)
    close, opens = ("dT_c", "dT_o") if four else ("dT", "dT")
    working.step("D_c", "closing movement", f"L * alpha * {close} + L * k + d_c", unit)
    working.step("D_o", "opening movement", f"L * alpha * {opens} + d_o", unit)


def _add_widths(working: WorkingBuilder, unit: str) -> None:
    working.step("W_c", "width for closing", "D_c / S_c", unit)
    if working.known["d_s"]:
        working.step("q", "bead stretch term", "2 * S_e + S_e^2", "")
        working.step("W_o", "width for opening with shear", "(D_o + sqrt(D_o^2 + q * (D_o^2 + d_s^2))) / q", unit)
    else:
        working.step("W_o", "width for opening", "D_o / S_e", unit)
    working.step("W", "width with tolerance", "max(W_c, W_o) + C", unit)


def _name_case(known: dict[str, float]) -> str:
    if known["W"] <= known["C"]:
        return "the tolerance alone"
    if known["W_c"] >= known["W_o"]:
        return "closing"
    return "opening with shear" if known["d_s"] else "opening"


def _name_sources() -> tuple[Source, ...]:
    method = "movement of each direction, division by the movement class, tolerance added last"
    return (find_source("joint_width_course").quote(method), SHEAR)


def for_joint(joint: Joint, ask: Ask) -> Working:
    """The width a joint of the project needs; hot is its elevation's face heat, cold the design cold air."""
    step = MILLIMETER if joint.project.system == "si" else SIXTEENTH
    return joint_width(JointInputs.from_project(joint, ask, round_up=step))


CHECKS = (
    Check(
        "required width",
        "width given",
        ("SLT-02a",),
        lambda joint, ask: at_most(ask("joint-width").quantity, joint.width),
    ),
)

PROVIDER = provide(
    "Sealant joint width",
    JointInputs,
    joint_width,
    each=("joints",),
    for_member=for_joint,
    keys_first=KEYS_FIRST,
    checks=CHECKS,
    order=10,
    example="length=30ft alpha=3.6e-6/F movement_class=50 tolerance=1/8in "
    "hot=105F cold=-15F install_low=60F install_high=75F "
    "moisture_strain=0.0002 structural_closing=1/4in structural_opening=1/4in",
)
