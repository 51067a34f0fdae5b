"""Insulation board that stays under the aesthetic joints of a wall."""

from specgen.computing.board._board import LEFT, READS, TRADE, taken_off
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider


def for_wall(wall: View, ask: Ask) -> Working:
    """The board left at the bottom of an aesthetic joint, in inches or millimeters; below zero it is cut through."""
    unit = "in" if wall.project.system == "ip" else "mm"
    off = taken_off(wall)
    lengths = (
        ("T", "board", wall.insulation.thickness),
        ("p", "taken off by rasping", off.rasp),
        ("g", "depth of the drainage groove", off.groove),
        ("d", "depth of the aesthetic joint", off.joint_depth),
    )
    made = Sum(tuple(Given(symbol, name, quantity.number(unit), unit) for symbol, name, quantity in lengths))
    left = made.step("B", "board that stays", "T - p - g - d", unit)
    notes: tuple[str, ...] = (f"At least {printed(LEFT, unit)} must stay.",)
    if Quantity.of(repr(left), unit).amount < 0:
        notes += ("The joint cuts through the board.",)
    return Working("remaining-board", made.given, tuple(made.steps), left, unit, (TRADE,), notes)


PROVIDER = Provider(
    "remaining-board",
    "Board left under an aesthetic joint",
    ("walls",),
    for_wall,
    reads=("walls.*.insulation.thickness", *READS),
    units=("in", "mm"),
    order=10,
    origins={
        "T": "walls.*.insulation.thickness",
        "p": "walls.*.insulation.rasp_allowance",
        "g": "walls.*.drainage.groove_depth",
        "d": "aesthetic_joint.depth",
    },
)
