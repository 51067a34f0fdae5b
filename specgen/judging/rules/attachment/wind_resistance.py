"""The fasteners of the sheathing and the stiffness of the framing carry the wind on the adhered wall.

Why: the adhesive seldom gives way first. In a storm the screws of the sheathing pull out or through, and studs
that bend too far crack the lamina.

passes
    package: {purpose: mockup_submittal}
    walls:
      W1:
        framing: {kind: cold_formed_steel, deflection_limit: L/240}
        substrate: {kind: glass_mat_gypsum, fastener_schedule: A9}
    attachments: {A9: {kind: calculation}}
fails ATT-09a at walls.W1.attachment.ultimate_strength
    walls: {W1: {attachment: {ultimate_strength: 90 psf, safety_factor: 3}}}
    elevations: {E1: {wall: W1, design_pressure_outward: 45 psf}}
fails ATT-09b at walls.W1.substrate.fastener_schedule
    package: {purpose: mockup_submittal}
    walls: {W1: {framing: {kind: wood}, substrate: {kind: plywood}}}
fails ATT-09c at walls.W1.framing.deflection_limit
    walls: {W1: {framing: {kind: wood, deflection_limit: L/180}}}
"""

from fractions import Fraction

from specgen.judging.choice_groups import BOARDS, WOOD
from specgen.judging.rule import CAUTION, STOP, Computed, Rule, Violations, is_draft, violation
from specgen.model.absence import all_known, if_given, read_all
from specgen.model.typed_views import Description, Elevation, Wall
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity, round_quantity

RULE = Rule(
    "ATT-09",
    "Wind load on the adhered wall",
    remedy="Submit the sheathing fastener schedule with the engineer's signed check.",
    steps="substrate boards",
    documents="D06",
)


@RULE.test(
    "a",
    STOP,
    "Wind suction is {found}; maximum allowable on the adhered wall {wanted}.",
    at="elevation.wall",
    basis="computed",
    remedy="Use a system tested to a higher strength, or have the engineer design the attachment and sign the check.",
)
def wind_pulls_too_hard(elevation: Elevation, wall_wind: Computed) -> Violations:
    """The wind pulls harder than the adhered wall may be loaded."""
    attachment = elevation.wall.attachment
    wind, strength, factor = read_all(wall_wind, lambda: attachment.ultimate_strength, lambda: attachment.safety_factor)
    allowed = strength * (1 / Fraction(factor))
    pull = Quantity.of(abs(Fraction(repr(float(wind.result)))), wind.unit)
    if more(pull, allowed):
        yield violation(
            round_quantity(pull), wanted=round_quantity(allowed), at=(*attachment.path, "ultimate_strength")
        )


@RULE.test(
    "b",
    STOP,
    "Sheathing fasteners usually govern wind resistance, and their schedule is not submitted.",
    at="wall.substrate.fastener_schedule",
    document="sheathing fastener schedule",
    basis="practice",
)
def fasteners_not_shown(wall: Wall, project: Description) -> Violations:
    """No document shows how the sheathing is fastened to its framing."""
    if is_draft(project) or if_given(lambda: wall.substrate.fastener_schedule) is not None:
        return
    if all_known(lambda: wall.substrate.kind in (*WOOD, *BOARDS), lambda: wall.framing.kind != "none"):
        yield violation()


@RULE.test(
    "c",
    CAUTION,
    "The framing may deflect {found}; usual maximum under EIFS {wanted}.",
    at="wall.framing.deflection_limit",
    limit="framing.deflection",
    remedy="Stiffen the framing to {framing.deflection}, or submit the engineer's and the EIFS manufacturer's "
    "written acceptance.",
    why="a wall that bends farther than the lamina can follow cracks it",
)
def framing_bends(wall: Wall, limit: str) -> Violations:
    """The framing may bend more than is usual under EIFS."""
    if _part(wall.framing.deflection_limit) < _part(limit):
        yield violation(wall.framing.deflection_limit, wanted=limit)


def _part(limit: str) -> int:
    """The part of its length a member may bend by: 240 for `L/240`."""
    return int(limit.removeprefix("L/"))
