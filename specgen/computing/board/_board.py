"""What the sums of the insulation board share: what an aesthetic joint, rasping and a drainage groove take off it."""

from specgen.computing.inputs import Inputs, given_input, limit_input
from specgen.model.source import InForce
from specgen.model.typed_views import Wall
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

NOTHING = Quantity.of(0, "in")
UNGROOVED = "no grooves in the board"
# A groove is read by hand, for only a grooved board has one.
READS = ("walls.*.drainage.kind",)


class Deductions(Inputs):
    """What is taken off a board, and what must stay under a joint."""

    joint_depth: Quantity | None = given_input(
        "d",
        "aesthetic joint depth",
        "length",
        "aesthetic_joint.depth",
        "depth of the aesthetic joint; left out where there is none",
        default=None,
        least=0,
    )
    rasp: Quantity = given_input(
        "p", "rasping allowance", "length", "walls.*.insulation.rasp_allowance", default=NOTHING, least=0
    )
    groove: Quantity = given_input(
        "g",
        "drainage groove depth",
        "length",
        default=NOTHING,
        origin="walls.*.drainage.groove_depth",
        about="depth of a drainage groove in the back",
        least=0,
        span="walls.*.drainage.groove_depth",
    )
    left: InForce = limit_input(
        "board.left_under_joint", "B", "remaining board", says="{left} of board stays under an aesthetic joint"
    )


def tell_groove(working: Working, wall: Wall) -> Working:
    """The working of a wall with what is said of a groove of nothing: its board has none."""
    if wall.drainage.kind == "grooved_board":
        return working
    rows = (row._replace(origin=UNGROOVED) if row.symbol == "g" else row for row in working.inputs)
    return working._replace(inputs=tuple(rows))


def read_groove(wall: Wall) -> Quantity:
    """The depth of the groove in the board of a wall; 0 in for a board without grooves. Raises Absent."""
    return wall.drainage.groove_depth if wall.drainage.kind == "grooved_board" else NOTHING
