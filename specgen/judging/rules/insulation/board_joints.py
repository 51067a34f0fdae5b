"""Joints between boards keep clear of aesthetic joints, sheathing joints and opening corners.

Why: at each of these lines the lamina is weak or strained already. A board joint beneath it is where the
crack begins.

passes
    walls: {W1: {insulation: {board_joint_to_reveal: 4 in, board_joint_to_opening_corner: 8 in}}}
fails INS-06a at walls.W1.insulation.board_joint_to_reveal
    walls: {W1: {insulation: {board_joint_to_reveal: 1 in}}}
fails INS-06b at walls.W1.insulation.board_joint_to_opening_corner
    walls: {W1: {insulation: {board_joint_to_opening_corner: 4 in}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "INS-06",
    "Board joints clear of other joints and corners",
    remedy="Re-set the board pattern; L-cut boards round openings.",
    steps="board_layout boards",
    documents="D07 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Board joints come within {found} of an aesthetic joint or sheathing joint; {wanted} is usual, since cracks "
    "begin there: confirm.",
    each="walls",
    needs="walls.*.insulation.board_joint_to_reveal",
    limit="board.joint_to_aesthetic_joint",
)
def near_other_joint(wall: Any, limit: Any) -> Iterator[Found]:
    """A board joint comes close to an aesthetic joint or a sheathing joint."""
    if less(wall.insulation.board_joint_to_reveal, limit):
        yield found(wall.insulation.board_joint_to_reveal, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "Board joints come within {found} of an opening corner; {wanted} is usual, since cracks begin there: confirm.",
    each="walls",
    needs="walls.*.insulation.board_joint_to_opening_corner",
    limit="board.joint_to_opening_corner",
)
def near_corner(wall: Any, limit: Any) -> Iterator[Found]:
    """A board joint comes close to the corner of an opening."""
    if less(wall.insulation.board_joint_to_opening_corner, limit):
        yield found(wall.insulation.board_joint_to_opening_corner, wanted=limit)
