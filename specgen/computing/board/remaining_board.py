"""Insulation board that stays under the aesthetic joints of a wall."""

from specgen.computing.board._board import READS, Deductions, read_groove, tell_groove
from specgen.computing.inputs import given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_least
from specgen.model.typed_views import Wall
from specgen.model.working import Working
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask


class RemainingInputs(Deductions):
    """A board, and what is taken off it."""

    thickness: Quantity = given_input("T", "board", "length", "walls.*.insulation.thickness")


def remaining_board(inputs: RemainingInputs) -> Working:
    """The board left at the bottom of an aesthetic joint, in inches or millimeters; below zero it is cut through."""
    unit = "in" if inputs.system == "ip" else "mm"
    working = WorkingBuilder(inputs.rows("thickness", "rasp", "groove", "joint_depth"))
    left = working.step("B", "remaining board", "T - p - g - d", unit)
    notes: tuple[str, ...] = (f"Minimum remaining board: {format_quantity(inputs.left.value, unit)}.",)
    if left < 0:
        notes += ("The joint cuts through the board.",)
    return working.build("remaining-board", "B", (inputs.limit_source("left"),), notes)


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The board left on a wall of the project."""
    return tell_groove(remaining_board(RemainingInputs.from_project(wall, ask, groove=read_groove(wall))), wall)


def compare_left(wall: Wall, ask: Ask) -> Comparison:
    """The board left against the least that must stay."""
    return at_least(ask("remaining-board").quantity, find_limit("board.left_under_joint", wall.project).value)


PROVIDER = provide(
    "Remaining board at aesthetic joints",
    RemainingInputs,
    remaining_board,
    each=("walls",),
    by_keys=False,
    for_member=for_wall,
    reads=READS,
    checks=(Check("remaining board", "minimum", ("INS-04c",), compare_left),),
    columns=("B",),
    order=10,
)
