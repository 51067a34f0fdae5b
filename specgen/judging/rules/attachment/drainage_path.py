"""Behind a drained board water runs down freely and finds its way out.

Why: water gets behind every board sooner or later. A full bed or a level ribbon of adhesive holds it there,
and a path without an outlet only stores it.

passes
    walls:
      W1:
        attachment: {method: adhesive_notched_trowel, ribbon_direction: vertical}
        drainage: {kind: adhesive_ribbons, efficiency: 94, outlets: [base, heads]}
fails ATT-08a at walls.W1.attachment.method
    walls: {W1: {attachment: {method: adhesive_ribbon_and_dab}, drainage: {kind: adhesive_ribbons}}}
fails ATT-08b at walls.W1.attachment.ribbon_direction
    walls:
      W1:
        attachment: {method: adhesive_notched_trowel, ribbon_direction: horizontal}
        drainage: {kind: adhesive_ribbons}
fails ATT-08c at walls.W1.drainage.efficiency
    walls: {W1: {drainage: {kind: grooved_board, efficiency: 85}}}
fails ATT-08d at walls.W1.drainage.outlets
    walls: {W1: {drainage: {kind: drainage_mat, outlets: []}}}
"""

from specgen.judging.rule import CAUTION, STOP, LookedUp, Rule, Violations, violation
from specgen.model.absence import all_known, any_known
from specgen.model.typed_views import Wall

RULE = Rule(
    "ATT-08",
    "Drainage behind the board",
    remedy="Apply the adhesive in vertical ribbons with a notched trowel, or use grooved board or a drainage mat.",
    steps="boards",
    documents="D08 D11",
)

DAMMING = ("adhesive_full_bed", "adhesive_ribbon_and_dab")
# Boards and mats that drain whatever the adhesive does.
DRAINING = ("grooved_board", "drainage_mat")


@RULE.test(
    "a",
    CAUTION,
    "The board is set in {found}, which dams the drainage path.",
    at="wall.attachment.method",
    basis="astm_e2273_memory",
)
def pattern_dams(wall: Wall, drainage_due: LookedUp) -> Violations:
    """The pattern of the adhesive leaves no way down for the water."""
    if all_known(lambda: wall.attachment.method in DAMMING, lambda: _drains_by_adhesive(wall, drainage_due)):
        yield violation(wall.attachment.method)


@RULE.test(
    "b",
    CAUTION,
    "The adhesive ribbons are horizontal and dam the drainage path.",
    at="wall.attachment.ribbon_direction",
    basis="astm_e2273_memory",
    remedy="Run the ribbons vertically, or use grooved board or a drainage mat.",
)
def ribbons_dam(wall: Wall, drainage_due: LookedUp) -> Violations:
    """The ribbons of adhesive run across the way of the water."""
    if all_known(
        lambda: wall.attachment.ribbon_direction == "horizontal", lambda: _drains_by_adhesive(wall, drainage_due)
    ):
        yield violation(wall.attachment.ribbon_direction)


RULE.clause(
    "c",
    STOP,
    "Drainage efficiency is {found} %; minimum {wanted} % for a drained wall.",
    when="wall.drainage.kind != none and wall.drainage.efficiency < limit",
    limit="drainage.efficiency",
    remedy="Use a drainage layer tested to a minimum of {drainage.efficiency}, and submit its report.",
)

RULE.clause(
    "d",
    CAUTION,
    "The drained wall has no outlet, so water stays behind the board.",
    when="wall.drainage.kind != none and wall.drainage.outlets is empty",
    found="",
    basis="astm_e2273_memory",
    remedy="Provide weeps at the base of the wall and at each opening head.",
)


def _drains_by_adhesive(wall: Wall, drainage_due: LookedUp) -> bool:
    """Whether the wall is drained, or must be, with nothing but the adhesive to leave the water its way."""
    return all_known(
        lambda: wall.drainage.kind not in DRAINING,
        lambda: any_known(lambda: wall.drainage.kind != "none", lambda: drainage_due().result),
    )
