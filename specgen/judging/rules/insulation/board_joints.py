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

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "INS-06",
    "Board joint offsets",
    remedy="Lay out the board so that its joints clear aesthetic and sheathing joints by a minimum of "
    "{board.joint_to_aesthetic_joint}.",
    steps="board_layout boards",
    documents="D07 D08",
)

RULE.clause(
    "a",
    CAUTION,
    "Board joints come within {found} of an aesthetic or sheathing joint; usual minimum {wanted}, as cracks "
    "start there.",
    when="wall.insulation.board_joint_to_reveal < limit",
    limit="board.joint_to_aesthetic_joint",
)

RULE.clause(
    "b",
    CAUTION,
    "Board joints come within {found} of an opening corner; usual minimum {wanted}, as cracks start there.",
    when="wall.insulation.board_joint_to_opening_corner < limit",
    limit="board.joint_to_opening_corner",
    remedy="Cut L-shaped boards around openings, with no joint within {board.joint_to_opening_corner} of a corner.",
)
