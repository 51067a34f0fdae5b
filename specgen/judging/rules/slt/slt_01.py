"""Every place that moves has a movement joint.

Why: Where two parts move apart, the face opens by itself unless a joint was made for it.

passes
    {elevations: {E1: {openings: {A: {kind: window}}}}, joints: {J1: {elevation: E1, serves: [A]}}}
fails SLT-01a at elevations.E1.joint_needs
    {elevations: {E1: {joint_needs: {N1: {kind: penetration}}}}, joints: {J1: {elevation: E1, serves: []}}}
fails SLT-01b at elevations.E1.floor_lines
    {elevations: {E1: {floor_lines: {F1: {deflects: yes}}}}, joints: {J1: {elevation: E1, serves: []}}}
fails SLT-01c at elevations.E1.left_end
    {elevations: {E1: {left_end: other_material}}, joints: {J1: {elevation: E1, serves: []}}}
fails SLT-01d at elevations.E1.right_end
    {elevations: {E1: {right_end: other_material}}, joints: {J1: {elevation: E1, serves: []}}}
fails SLT-01e at elevations.E1.openings
    {elevations: {E1: {openings: {A: {kind: window}}}}, joints: {J1: {elevation: E1, serves: []}}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import STOP, Found, Rule, found

RULE = Rule(
    "SLT-01",
    "A joint at every moving place",
    remedy="Add a movement joint through the whole lamina and board; an aesthetic joint does not count.",
    steps="board_layout sealant",
    documents="D07",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "A place that moves has no movement joint: {found}; confirm.",
    needs="elevations.*.joint_needs.*.kind joints.*.serves",
    each="elevations",
    basis="memory",
    at="elevations.*.joint_needs",
)
def needed_place(elevation: Any, project: Any) -> Iterator[Found]:
    """A place where a joint is due is served by none."""
    for need in elevation.joint_needs:
        if need.mark not in _served(elevation, project):
            yield found(need.mark)


@RULE.clause(
    "b",
    STOP,
    "A floor line that deflects has no movement joint: {found}; confirm.",
    needs="elevations.*.floor_lines.*.deflects joints.*.serves",
    each="elevations",
    basis="memory",
    at="elevations.*.floor_lines",
)
def moving_floor(elevation: Any, project: Any) -> Iterator[Found]:
    """A floor line that deflects is served by none."""
    for floor in elevation.floor_lines:
        if floor.deflects and floor.mark not in _served(elevation, project):
            yield found(floor.mark)


@RULE.clause(
    "c",
    STOP,
    "The left end meets another material and has no movement joint.",
    needs="elevations.*.left_end joints.*.serves",
    each="elevations",
    basis="memory",
    at="elevations.*.left_end",
)
def left_end(elevation: Any, project: Any) -> Iterator[Found]:
    """The left end meets another material without a joint."""
    if elevation.left_end == "other_material" and "left_end" not in _served(elevation, project):
        yield found()


@RULE.clause(
    "d",
    STOP,
    "The right end meets another material and has no movement joint.",
    needs="elevations.*.right_end joints.*.serves",
    each="elevations",
    basis="memory",
    at="elevations.*.right_end",
)
def right_end(elevation: Any, project: Any) -> Iterator[Found]:
    """The right end meets another material without a joint."""
    if elevation.right_end == "other_material" and "right_end" not in _served(elevation, project):
        yield found()


@RULE.clause(
    "e",
    STOP,
    "The perimeter of an opening has no movement joint: {found}; confirm.",
    needs="elevations.*.openings.*.kind joints.*.serves",
    each="elevations",
    basis="memory",
    at="elevations.*.openings",
)
def opening(elevation: Any, project: Any) -> Iterator[Found]:
    """The perimeter of an opening is served by none."""
    for opening in elevation.openings:
        if opening.mark not in _served(elevation, project):
            yield found(opening.mark)


def _served(elevation: Any, project: Any) -> set[str]:
    """The places on an elevation that its joints serve."""
    return {mark for joint in project.joints if joint.elevation == elevation for mark in joint.serves}
