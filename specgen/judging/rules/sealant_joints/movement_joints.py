"""Every place that moves has a movement joint through the whole lamina and board.

Why: a building moves where it changes, and the wall cracks there if nobody has left it room. An aesthetic
joint is cut into the board and opens nothing.

passes
    elevations:
      E1:
        joint_needs: {N1: {kind: building_expansion}}
        floor_lines: {F2: {deflects: yes}}
        left_end: other_material
        right_end: outside_corner
        openings: {A: {kind: window}}
    joints: {J1: {elevation: E1, serves: [N1, F2, left_end]}, J2: {elevation: E1, serves: [A]}}
fails SLT-01a at elevations.E1.joint_needs.N1
    elevations: {E1: {joint_needs: {N1: {kind: substrate_change}}}}
    joints: {J1: {elevation: E1, serves: []}}
fails SLT-01b at elevations.E1.floor_lines.F2
    elevations: {E1: {floor_lines: {F2: {deflects: yes}}}}
    joints: {J1: {elevation: E1, serves: []}}
fails SLT-01c at elevations.E1.left_end
    elevations: {E1: {left_end: other_material}}
    joints: {J1: {elevation: E1, serves: [right_end]}}
fails SLT-01d at elevations.E1.right_end
    elevations: {E1: {right_end: other_material}}
    joints: {J1: {elevation: E1, serves: [left_end]}}
fails SLT-01e at elevations.E1.openings.A
    elevations: {E1: {openings: {A: {kind: window}}}}
    joints: {J1: {elevation: E1, serves: [left_end]}}
"""

from collections.abc import Iterator
from functools import partial
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import every, some, which

RULE = Rule(
    "SLT-01",
    "A movement joint at every place that moves",
    remedy="Add a movement joint through the whole lamina and board; an aesthetic joint does not count.",
    steps="board_layout sealant",
    documents="D07",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "A place that moves has no movement joint: {found}; confirm.",
    each="elevations",
    needs="joints.*.serves elevations.*.joint_needs.*.kind",
    basis="memory",
)
def place_without_joint(elevation: Any, project: Any) -> Iterator[Found]:
    """A place that was named as moving is served by no joint."""
    for place in which(elevation.joint_needs, lambda place: not _served(project, elevation, place.mark)):
        yield found(place.mark, at=place.path)


@RULE.clause(
    "b",
    STOP,
    "A floor line that deflects has no movement joint: {found}; confirm.",
    each="elevations",
    needs="joints.*.serves elevations.*.floor_lines.*.deflects",
    basis="memory",
)
def floor_without_joint(elevation: Any, project: Any) -> Iterator[Found]:
    """A floor that deflects is served by no joint."""

    def moves(line: Any) -> bool:
        return every(lambda: line.deflects, lambda: not _served(project, elevation, line.mark))

    for line in which(elevation.floor_lines, moves):
        yield found(line.mark, at=line.path)


@RULE.clause(
    "c",
    STOP,
    "The left end meets another material and has no movement joint.",
    each="elevations",
    needs="joints.*.serves elevations.*.left_end",
    basis="memory",
)
def left_end_without_joint(elevation: Any, project: Any) -> Iterator[Found]:
    """The left end meets another material without a joint."""
    if _bare_end(project, elevation, "left_end"):
        yield found(elevation.left_end)


@RULE.clause(
    "d",
    STOP,
    "The right end meets another material and has no movement joint.",
    each="elevations",
    needs="joints.*.serves elevations.*.right_end",
    basis="memory",
)
def right_end_without_joint(elevation: Any, project: Any) -> Iterator[Found]:
    """The right end meets another material without a joint."""
    if _bare_end(project, elevation, "right_end"):
        yield found(elevation.right_end)


@RULE.clause(
    "e",
    STOP,
    "The perimeter of an opening has no movement joint: {found}; confirm.",
    each="elevations",
    needs="joints.*.serves elevations.*.openings.*.kind",
    basis="memory",
)
def opening_without_joint(elevation: Any, project: Any) -> Iterator[Found]:
    """The perimeter of an opening is served by no joint."""
    for opening in which(elevation.openings, lambda opening: not _served(project, elevation, opening.mark)):
        yield found(opening.mark, at=opening.path)


def _bare_end(project: Any, elevation: Any, end: str) -> bool:
    """Whether an end meets another material and no joint serves it."""
    return every(
        lambda: getattr(elevation, end) == "other_material",
        lambda: not _served(project, elevation, end),
    )


def _served(project: Any, elevation: Any, place: str) -> bool:
    """Whether a joint of this elevation serves a place."""
    joints = project.project.referring(("joints",), "elevation", elevation.mark)
    return some(*(partial(_serves, joint, elevation, place) for joint in joints))


def _serves(joint: Any, elevation: Any, place: str) -> bool:
    return every(lambda: place in joint.serves, lambda: joint.elevation == elevation)
