"""A prominent face, or one in raking light, has a tighter limit of plane than the usual one.

Why: the usual gap does for a dull wall. Under gloss it is a wave that every passer-by sees, most of all
where light comes along the wall.

passes
    walls: {W1: {substrate: {plane_limit: 1/8 in}}}
    elevations: {E1: {prominent: yes, critical_light: yes}}
fails PLN-02a at walls.W1.substrate.plane_limit
    walls: {W1: {substrate: {plane_limit: 1/4 in}}}
    elevations: {E1: {prominent: yes}}
fails PLN-02b at walls.W1.substrate.plane_limit
    elevations: {E1: {critical_light: yes}}
"""

from specgen.judging.rule import CAUTION, Rule, Violation, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Elevation, Wall
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity

# What is found of a wall whose limit nobody has set.
_NOT_GIVEN = (
    "The plane limit of the substrate is not known; the guide's {found} in {straightedge.long} would be too loose"
)
_READ_FIRST = (
    "Where the limit in the specification is too loose for this face, or none is given, set a tighter one; "
    "proposed: maximum {substrate.plane_prominent} in {straightedge.long}. Level a wall beyond it before boards."
)

RULE = Rule(
    "PLN-02",
    "Tighter plane on prominent faces and in raking light",
    remedy="Set a tighter substrate limit for this face; proposed: maximum {substrate.plane_prominent} in "
    "{straightedge.long}.",
    steps="substrate",
    documents="D05 D09",
)


@RULE.test(
    "a",
    CAUTION,
    "A plane limit of the substrate of {found} in {straightedge.long} is too loose for a prominent face.",
    each="elevations",
    at="walls.*.substrate.plane_limit",
    limit="substrate.plane",
)
def loose_for_prominent_face(elevation: Elevation, project: Description, limit: Quantity) -> Violations:
    """The face is prominent and its wall has no tighter limit than the usual one."""
    if all_known(lambda: elevation.prominent, lambda: _loose(elevation.wall, limit)):
        yield _found(project, elevation.wall, f"{_NOT_GIVEN} for a prominent face.")


@RULE.test(
    "b",
    CAUTION,
    "A plane limit of the substrate of {found} in {straightedge.long} is too loose where light rakes the face.",
    each="elevations",
    at="walls.*.substrate.plane_limit",
    limit="substrate.plane",
)
def loose_for_raking_light(elevation: Elevation, project: Description, limit: Quantity) -> Violations:
    """Light rakes the face and its wall has no tighter limit than the usual one."""
    if all_known(lambda: elevation.critical_light, lambda: _loose(elevation.wall, limit)):
        yield _found(project, elevation.wall, f"{_NOT_GIVEN} where light rakes the face.")


def _loose(wall: Wall, limit: Quantity) -> bool:
    """Whether the limit of a wall is the usual one, or looser."""
    return not less(wall.substrate.plane_limit, limit)


def _found(project: Description, wall: Wall, if_not_given: str) -> Violation:
    """The limit of the wall, at its own place; where none is given, that it is the usual one."""
    at = (*wall.path, "substrate", "plane_limit")
    if project.project.is_given(at):
        return violation(wall.substrate.plane_limit, at=at)
    return violation(wall.substrate.plane_limit, at=at, say=if_not_given, remedy=_READ_FIRST)
