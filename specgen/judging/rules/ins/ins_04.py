"""The board is thick enough for its joints and thin enough for the system.

Why: A joint cut into thin board leaves too little under it, and a thick board hangs its weight on the glue.

passes
    {walls: {W1: {insulation: {thickness: 2 in}}}, aesthetic_joint: {depth: 1/2 in}}
fails INS-04a at walls.W1.insulation.thickness
    {walls: {W1: {insulation: {thickness: 4-1/2 in}}}}
fails INS-04b at walls.W1.insulation.thickness
    {walls: {W1: {insulation: {thickness: 3/4 in}}}, aesthetic_joint: {depth: 1/4 in}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less, more
from ...rule import STOP, Found, Rule, found
from ...settling import every

RULE = Rule(
    "INS-04",
    "Thickness of the board",
    remedy="Thicker board or shallower joint (3/4 in deep joint: 1-1/2 in board plus rasping); over 4 in: move insulation inside, or declare it with a fire report of that thickness.",
    steps="boards aesthetic_joints",
    documents="D06 D07",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The board is {found} thick; {wanted} is the most in the outside system.",
    needs="walls.*.insulation.thickness",
    each="walls",
    limit="board.thickness_most",
)
def too_thick(wall: Any, limit: Any) -> Iterator[Found]:
    """The board is thicker than the system allows."""
    if more(wall.insulation.thickness, limit):
        yield found(wall.insulation.thickness, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "The board is {found} thick; no aesthetic joint may be cut into less than {wanted}.",
    needs="walls.*.insulation.thickness aesthetic_joint.depth",
    each="walls",
    limit="board.thickness_for_joints",
    at="walls.*.insulation.thickness",
)
def too_thin_for_joints(wall: Any, limit: Any, project: Any) -> Iterator[Found]:
    """Joints are cut into a board too thin for any."""
    if every(
        lambda: less(wall.insulation.thickness, limit),
        lambda: project.aesthetic_joint.depth.amount > 0,
    ):
        yield found(wall.insulation.thickness, wanted=limit)
