"""What the sums of the insulation board share: what an aesthetic joint, rasping and a drainage groove take off it."""

from typing import NamedTuple

from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.quantities.quantity import Quantity

LEFT = Quantity.of("3/4", "in")
THICKEST = Quantity.of(4, "in")
NOTHING = Quantity.of(0, "in")
TRADE = Source(Kind.PUBLISHED, "wall-and-ceiling trade columns: 3/4 in of board stays under an aesthetic joint")
GUIDE = Source(Kind.PUBLISHED, "UFGS 07 24 00, page 20: board in the EIFS at most 4 in thick")
READS = (
    "aesthetic_joint.depth",
    "walls.*.insulation.rasp_allowance",
    "walls.*.drainage.kind",
)


class TakenOff(NamedTuple):
    """What is taken off a board, as lengths: the joint, the rasp, the groove."""

    joint_depth: Quantity
    rasp: Quantity
    groove: Quantity


def taken_off(wall: View) -> TakenOff:
    """What is taken off the board of a wall; only a grooved board has a groove. Raises Absent."""
    grooved = wall.drainage.kind == "grooved_board"
    depth = wall.project.root().aesthetic_joint.depth
    groove = wall.drainage.groove_depth if grooved else NOTHING
    return TakenOff(depth, wall.insulation.rasp_allowance, groove)
