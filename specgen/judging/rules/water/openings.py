"""Windows and doors have a pan under the sill, and openings in a drained wall a flashing over the head.

Why: frames leak at their corners sooner or later. A pan leads that water out; without one it runs into
the wall below. Behind a drained wall water also comes down from above, and the head of an opening stops it
unless a flashing leads it out.

passes
    walls: {W1: {drainage: {kind: grooved_board}}}
    elevations: {E1: {openings: {A: {kind: window, sill_pan: yes, head_flashing: yes}}}}
fails WAT-02a at elevations.E1.openings.A.sill_pan
    elevations: {E1: {openings: {A: {kind: window, sill_pan: no}}}}
fails WAT-02b at elevations.E1.openings.A.head_flashing
    walls: {W1: {drainage: {kind: grooved_board}}}
    elevations: {E1: {openings: {A: {kind: louver, head_flashing: no}}}}
fails WAT-02c at elevations.E1.openings.A.y
    elevations: {E1: {base_above_grade: 8 in, openings: {A: {kind: door, y: 0 ft}}}}
"""

from specgen.judging.rule import CAUTION, NOTE, STOP, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Opening
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "WAT-02",
    "Flashing at openings",
    remedy="Install a sloped sill pan with end dams, lapped over the WRB.",
    steps="flashings",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "The sill has no pan, so water that leaks at the frame enters the wall.",
    when="opening.kind in {window, door} and opening.sill_pan = no",
    found="",
    basis="wall_flashing practice",
)


@RULE.test(
    "b",
    CAUTION,
    "The opening head cuts the drainage path and has no flashing.",
    at="opening.head_flashing",
    basis="wall_flashing practice",
    remedy="Install a head flashing with end dams and weeps.",
    why="water in the drainage path ends behind the head of the opening where the path is cut",
)
def head_cuts_drainage(opening: Opening, project: Description) -> Violations:
    """An opening stands in a drained wall, without a flashing over its head."""
    wall = project.elevations[opening.path[1]].wall
    if all_known(lambda: wall.drainage.kind != "none", lambda: not opening.head_flashing):
        yield violation()


@RULE.test(
    "c",
    NOTE,
    "The door sill stands {found} above grade, and no landing is shown.",
    at="opening.y",
    limit="door.step",
    remedy="Show the landing. Keep it within the width of the opening, or end the board beside it as far above it as "
    "above grade; set no board beside the door until it is shown.",
    why="board that goes on beside a landing stands in what lies and splashes on it",
)
def no_landing(opening: Opening, project: Description, limit: Quantity) -> Violations:
    """A door stands at the base of a wall above grade, and its landing is not told."""
    if opening.kind != "door" or opening.get("landing"):
        return
    sill = opening.y + project.elevations[opening.path[1]].base_above_grade
    if less(limit, sill):
        yield violation(sill, wanted=limit)
