"""Least insulation board: what must stay under an aesthetic joint, and the R-value asked for."""

from specgen.computing.board._board import NOTHING, READS, Deductions, read_groove, tell_groove
from specgen.computing.inputs import given_input, limit_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.problem import refuse
from specgen.model.source import PRACTICE, InForce, Kind, Source
from specgen.model.typed_views import Wall, root_of
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.format import format_quantity
from specgen.quantities.number import is_number
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask

THICKNESS = Source(Kind.COMPUTED, "R-value over R-value of one inch, rasping added")
NOTES = (
    "Stock board thicknesses: increments of {1/4 in|5 mm}; common practice, no source.",
    "The R-value is that of the field of the board; an aesthetic joint or a groove reduces it along its line.",
)
ONE_INCH = Quantity.of(1, "in")  # method's own: an R-value is told by the inch
STEPS = {"in": 0.25, "mm": 5.0}  # method's own: steps in which boards are made


def read_per_inch(text: str) -> Quantity:
    """The R-value of one inch of board, of `R-4`, `0.7 RSI` or a bare `4`; raises QuantityError."""
    try:
        return parse_quantity(f"R-{text.strip()}" if is_number(text) else text, "thermal_resistance", ("R",))
    except QuantityError as error:
        raise QuantityError(error.message, "write R-4 for R-4 per inch") from None


class BoardInputs(Deductions):
    """What a board must have room for; without `joint_depth` there is no joint."""

    r_value: Quantity | None = given_input(
        "R",
        "required R-value",
        "thermal_resistance",
        "code.required_r_value",
        "R-value asked for, such as R-7.5",
        optional=True,
        default=None,
        least=0,
    )
    r_per_inch: Quantity | None = given_input(
        "R_1",
        "R-value of one inch",
        "thermal_resistance",
        default=None,
        origin="R-value over thickness of the board",
        about="R-value of one inch of board, such as R-4",
        read=read_per_inch,
        above=0,
        span=("R-0.5", "R-20"),
    )
    thinnest: InForce = limit_input("board.thickness_for_joints")
    thickest: InForce = limit_input("board.thickness_most")


def board_thickness(inputs: BoardInputs) -> Working:
    """Least thickness of board, in inches or millimeters, the next one made beside it. Raises Refused."""
    _refuse_halves(inputs)
    unit = "in" if inputs.system == "ip" else "mm"
    has_joint = inputs.joint_depth is not None and inputs.joint_depth.amount != 0
    working = WorkingBuilder(inputs.change(joint_depth=inputs.joint_depth or NOTHING).rows())
    under = "the aesthetic joint" if has_joint else "the remaining board"
    working.step("T_j", f"board for {under}", "d + p + g + B", unit)
    parts = "T_j"
    if inputs.r_value is not None:
        working.add_inputs(InputRow("u", "one inch", ONE_INCH.number(unit), unit, UNIT_CHANGE))
        working.step("T_r", "board for the R-value", "R / R_1 * u + p", unit)
        parts = "max(T_j, T_r)"
    least = working.step("T", "minimum board", parts, unit)
    working.add_inputs(InputRow("r", "stock board increment", STEPS[unit], unit, source=PRACTICE))
    working.step("T_s", "stock board", "ceil(T / r - 1e-9) * r", unit)
    case = "the R-value" if working.known.get("T_r", 0) > working.known["T_j"] else under
    sources = (inputs.limit_source("left"), THICKNESS, PRACTICE)
    notes = NOTES + _bounds(inputs, Quantity.of(repr(least), unit), has_joint)
    return working.build("board-thickness", "T", sources, notes, case, ("T_s",))


def _bounds(inputs: BoardInputs, thickness: Quantity, has_joint: bool) -> tuple[str, ...]:
    """What is said of a board thinner or thicker than the trade takes."""
    unit, thinnest, thickest = thickness.unit, inputs.thinnest.value, inputs.thickest.value
    notes: tuple[str, ...] = ()
    if has_joint and thickness < thinnest:
        text = inputs.thinnest.source.short or inputs.thinnest.source.reference
        notes += (f"Minimum thickness of board with aesthetic joints: {format_quantity(thinnest, unit)} ({text}).",)
    if thickness > thickest:
        notes += (f"Board exceeds {format_quantity(thickest, unit)}: place the remaining insulation inside the wall.",)
    return notes


def _refuse_halves(inputs: BoardInputs) -> None:
    if (inputs.r_value is None) != (inputs.r_per_inch is None):
        missing, other = ("r_per_inch", "r_value") if inputs.r_per_inch is None else ("r_value", "r_per_inch")
        raise refuse(f"{missing} must be given with {other}", "or leave both out")
    if inputs.joint_depth is None and inputs.r_value is None:
        raise refuse("nothing asks for a board", "give joint_depth, or r_value and r_per_inch, or all")


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The least board of a wall; its R-value counts where the description says what the code asks for."""
    required, per_inch = required_r_value(wall), None
    if required is not None:
        board = wall.insulation
        per_inch = Quantity(board.r_value.amount / board.thickness.to("in"), "thermal_resistance", "R")
    inputs = BoardInputs.from_project(wall, ask, groove=read_groove(wall), r_value=required, r_per_inch=per_inch)
    working = tell_groove(board_thickness(inputs), wall)
    if required is None:
        return working
    kind = wall.get("required_r_value_basis")
    told = (("Basis of the R-value", tell_basis(wall)), *((("Wall class", kind),) if kind else ()))
    return working._replace(said=told)


def required_r_value(wall: Wall) -> Quantity | None:
    """The continuous insulation that the energy code asks of a wall: its own figure, else that of the project."""
    own: Quantity | None = wall.get("required_r_value")
    return root_of(wall).code.get("required_r_value") if own is None else own


def tell_basis(wall: Wall) -> str:
    """The text that asks for continuous insulation, as the project names it."""
    project = root_of(wall)
    basis: str | None = project.code.get("required_r_value_basis")
    if basis:
        return basis
    zone, place = project.climate.get("zone"), project.code.get("jurisdiction")
    return ", ".join(filter(None, ("energy code", place, f"climate zone {zone}" if zone else None)))


def rasped_r_value(wall: Wall) -> Quantity:
    """The R-value of the board of a wall less what rasping takes off. Raises Absent."""
    board = wall.insulation
    return board.r_value * (1 - board.rasp_allowance.amount / board.thickness.amount)


def compare_thickness(wall: Wall, ask: Ask) -> Comparison:
    """The least board against the board given."""
    return at_most(ask("board-thickness").quantity, wall.insulation.thickness)


def compare_thickest(wall: Wall, ask: Ask) -> Comparison:
    """The board given against the thickest of the trade."""
    return at_most(wall.insulation.thickness, find_limit("board.thickness_most", wall.project).value)


def compare_r_value(wall: Wall, ask: Ask) -> Comparison | None:
    """The R-value the code asks for against that of the rasped board; none where it asks for none."""
    required = required_r_value(wall)
    return None if required is None else at_most(required, rasped_r_value(wall))


PROVIDER = provide(
    "Minimum board thickness",
    BoardInputs,
    board_thickness,
    each=("walls",),
    for_member=for_wall,
    reads=READS,
    checks=(
        Check("required thickness", "thickness given", (), compare_thickness, "walls.*.insulation.thickness"),
        Check("board given", "maximum thickness", ("INS-04a",), compare_thickest, limit_from="board.thickness_most"),
        Check("required board R-value", "board R-value after rasping", ("INS-05a",), compare_r_value),
    ),
    buy="T_s",
    order=20,
    example="joint_depth=3/4in rasp=1/16in groove=1/4in",
)
