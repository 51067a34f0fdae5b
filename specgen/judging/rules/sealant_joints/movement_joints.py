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

from functools import partial

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.three_valued import members_where
from specgen.model.absence import all_known, any_of
from specgen.model.typed_views import Description, Elevation, FloorLine, Joint

RULE = Rule(
    "SLT-01",
    "Movement joints where movement occurs",
    remedy="Add a movement joint through the full lamina and board at this place; an aesthetic joint does not count.",
    steps="board_layout sealant",
    documents="D07",
)


@RULE.test(
    "a",
    STOP,
    "A place that moves has no movement joint: {found}.",
    at="elevation.joint_needs.*.kind",
    basis="memory",
)
def place_without_joint(elevation: Elevation, project: Description) -> Violations:
    """A place that was named as moving is served by no joint."""
    for place in members_where(elevation.joint_needs, lambda place: not _served(project, elevation, place.mark)):
        yield violation(place.mark, at=place.path)


@RULE.test(
    "b",
    STOP,
    "A floor line that deflects has no movement joint: {found}.",
    at="elevation.floor_lines.*.deflects",
    basis="memory",
    remedy="Add a movement joint through the full lamina and board at the floor line; an aesthetic joint does "
    "not count.",
)
def floor_without_joint(elevation: Elevation, project: Description) -> Violations:
    """A floor that deflects is served by no joint."""

    def moves(line: FloorLine) -> bool:
        return all_known(lambda: line.deflects, lambda: not _served(project, elevation, line.mark))

    for line in members_where(elevation.floor_lines, moves):
        yield violation(line.mark, at=line.path)


def bare_end(end: str, elevation: Elevation, project: Description) -> Violations:
    """An end meets another material and no joint serves it."""
    if all_known(
        lambda: elevation[end] == "other_material",
        lambda: not _served(project, elevation, end),
    ):
        yield violation(elevation[end])


for letter, side in (("c", "left"), ("d", "right")):
    RULE.test(
        letter,
        STOP,
        f"The {side} end meets another material and has no movement joint.",
        at=f"elevation.{side}_end",
        basis="memory",
        remedy=f"Add a movement joint through the full lamina and board at the {side} end.",
    )(partial(bare_end, f"{side}_end"))


@RULE.test(
    "e",
    STOP,
    "The perimeter of an opening has no movement joint: {found}.",
    at="elevation.openings.*.kind",
    basis="memory",
    remedy="Add a sealant joint around the opening; an aesthetic joint does not count.",
)
def opening_without_joint(elevation: Elevation, project: Description) -> Violations:
    """The perimeter of an opening is served by no joint."""
    for opening in members_where(elevation.openings, lambda opening: not _served(project, elevation, opening.mark)):
        yield violation(opening.mark, at=opening.path)


def _served(project: Description, elevation: Elevation, place: str) -> bool:
    """Whether a joint of this elevation serves a place."""
    return any_of(project.joints.find_referring("elevation", elevation.mark), partial(_serves, elevation, place))


def _serves(elevation: Elevation, place: str, joint: Joint) -> bool:
    return all_known(lambda: place in joint.serves, lambda: joint.elevation == elevation)
