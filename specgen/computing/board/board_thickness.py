"""Least insulation board: what must stay under an aesthetic joint, and the R-value asked for."""

from typing import Any

from specgen.computing.board._board import GUIDE, LEFT, NOTHING, READS, THICKEST, TRADE, taken_off
from specgen.computing.guards import refuse_negative, refuse_none_of
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.working import UNIT_CHANGE, Given, Sum, Working
from specgen.quantities.format import printed
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (TRADE, GUIDE, Source(Kind.COMPUTED, "R-value over R-value of one inch, rasping added"), PRACTICE)
NOTES = (
    "Boards are taken in steps of 1/4 in or 5 mm: common practice, no source.",
    "Drainage grooves are taken off what stays under the joint and are not taken off the R-value.",
)
THIN = Quantity.of(1, "in")


def read_per_inch(text: str) -> Quantity:
    """The R-value of one inch of board, of `R-4`, `0.7 RSI` or a bare `4`; raises QuantityError."""
    bare = text.strip().replace(".", "", 1).isdigit()
    try:
        return parse_quantity(f"R-{text.strip()}" if bare else text, "thermal_resistance", ("R",))
    except QuantityError as error:
        raise QuantityError(error.message, "write R-4 for R-4 per inch") from None


def board_thickness(
    joint_depth: Quantity | None = None,
    rasp: Quantity = NOTHING,
    groove: Quantity = NOTHING,
    r_value: Quantity | None = None,
    r_per_inch: Quantity | None = None,
    system: str = "ip",
) -> Working:
    """Least thickness of board, in inches or millimeters, the next one made beside it; source: `SOURCES`.

    `r_per_inch` is the R-value of one inch of it. Without `joint_depth` there is no joint. Raises Refused.
    """
    refuse_negative(joint_depth=joint_depth, rasp=rasp, groove=groove, r_value=r_value)
    refuse_none_of(r_per_inch=r_per_inch)
    _refuse_halves(joint_depth, r_value, r_per_inch)
    unit, resistance = ("in", "R") if system == "ip" else ("mm", "RSI")
    lengths = (
        ("d", "depth of the aesthetic joint", joint_depth or NOTHING),
        ("p", "taken off by rasping", rasp),
        ("g", "depth of the drainage groove", groove),
    )
    given = [Given(symbol, name, quantity.number(unit), unit) for symbol, name, quantity in lengths]
    given.append(Given("B", "board that stays", LEFT.number(unit), unit, source=TRADE))
    if r_value is not None and r_per_inch is not None:
        given += [
            Given("R", "R-value asked for", r_value.number(resistance), resistance),
            Given("R_1", "R-value of one inch", r_per_inch.number(resistance), resistance),
            Given("u", "one inch", Quantity.of(1, "in").number(unit), unit, UNIT_CHANGE),
        ]
    return _sum(Sum(tuple(given)), unit, bool(joint_depth and joint_depth.amount))


def _refuse_halves(joint_depth: Any, r_value: Any, r_per_inch: Any) -> None:
    if (r_value is None) != (r_per_inch is None):
        missing, other = ("r_per_inch", "r_value") if r_per_inch is None else ("r_value", "r_per_inch")
        raise refuse(f"{missing} must be given with {other}", "or leave both out")
    if joint_depth is None and r_value is None:
        raise refuse("nothing asks for a board", "give joint_depth, or r_value and r_per_inch, or all")


def _sum(made: Sum, unit: str, has_joint: bool) -> Working:
    under = "the aesthetic joint" if has_joint else "the board that stays"
    made.step("T_j", f"board for {under}", "d + p + g + B", unit)
    parts = "T_j"
    if "R" in made.known:
        made.step("T_r", "board for the R-value", "R / R_1 * u + p", unit)
        parts = "max(T_j, T_r)"
    least = made.step("T", "least board", parts, unit)
    made.give(Given("r", "step of the boards that are made", 0.25 if unit == "in" else 5.0, unit, source=PRACTICE))
    made.step("T_s", "next board made", "ceil(T / r - 1e-9) * r", unit)
    governs = "the R-value" if made.known.get("T_r", 0) > made.known["T_j"] else under
    notes: tuple[str, ...] = NOTES
    thickness = Quantity.of(repr(least), unit)
    if has_joint and thickness < THIN:
        notes += (f"A board into which a joint is cut is {printed(THIN, unit)} thick or more: trade columns.",)
    if thickness > THICKEST:
        notes += (f"More than {printed(THICKEST, unit)} of board: put the rest of the insulation inside the wall.",)
    return Working("board-thickness", made.given, tuple(made.steps), least, unit, SOURCES, notes, governs, ("T_s",))


def for_wall(wall: View, ask: Ask) -> Working:
    """The least board of a wall; its R-value counts where the description says what the code asks for."""
    asked = wall.project.get(("code", "required_r_value"))
    per_inch = None
    if asked is not None:
        board = wall.insulation
        per_inch = Quantity(board.r_value.amount / board.thickness.to("in"), "thermal_resistance", "R")
    off = taken_off(wall)
    return board_thickness(*off, asked, per_inch, wall.project.system)


PROVIDER = Provider(
    "board-thickness",
    "Least thickness of the board",
    ("walls",),
    for_wall,
    reads=READS,
    direct=board_thickness,
    units=("in", "mm"),
    order=20,
    origins={
        "d": "aesthetic_joint.depth",
        "p": "walls.*.insulation.rasp_allowance",
        "g": "walls.*.drainage.groove_depth",
        "R": "code.required_r_value",
        "R_1": "R-value over thickness of the board",
    },
    keys=(
        Key("joint_depth", "length", "depth of the aesthetic joint; left out where there is none", ""),
        Key("rasp", "length", "taken off by rasping", "0 in"),
        Key("groove", "length", "depth of a drainage groove in the back", "0 in"),
        Key("r_value", "thermal_resistance", "R-value asked for, such as R-7.5", ""),
        Key("r_per_inch", "thermal_resistance", "R-value of one inch of board, such as R-4", "", read=read_per_inch),
    ),
)
