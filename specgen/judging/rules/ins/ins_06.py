"""Board joints keep away from the places where cracks begin.

Why: A joint of the board under a joint or corner of the face opens there first.

passes
    {walls: {W1: {insulation: {board_joint_to_reveal: 3 in, board_joint_to_opening_corner: 6 in}}}}
fails INS-06a at walls.W1.insulation.board_joint_to_reveal
    {walls: {W1: {insulation: {board_joint_to_reveal: 2 in}}}}
fails INS-06b at walls.W1.insulation.board_joint_to_opening_corner
    {walls: {W1: {insulation: {board_joint_to_opening_corner: 5 in}}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "INS-06",
    "Board joints against joints and corners",
    remedy="Re-set the board pattern; L-cut boards round openings.",
    steps="board_layout boards",
    documents="D07 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Board joints come within {found} of an aesthetic joint or sheathing joint; {wanted} is usual, since cracks begin there: confirm.",
    needs="walls.*.insulation.board_joint_to_reveal",
    each="walls",
    limit="board.joint_to_aesthetic_joint",
)
def near_a_joint(wall: Any, limit: Any) -> Iterator[Found]:
    """Board joints come close to aesthetic or sheathing joints."""
    if less(wall.insulation.board_joint_to_reveal, limit):
        yield found(wall.insulation.board_joint_to_reveal, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "Board joints come within {found} of an opening corner; {wanted} is usual, since cracks begin there: confirm.",
    needs="walls.*.insulation.board_joint_to_opening_corner",
    each="walls",
    limit="board.joint_to_opening_corner",
)
def near_a_corner(wall: Any, limit: Any) -> Iterator[Found]:
    """Board joints come close to the corner of an opening."""
    if less(wall.insulation.board_joint_to_opening_corner, limit):
        yield found(wall.insulation.board_joint_to_opening_corner, wanted=limit)
