"""The fasteners of the sheathing and the stiffness of the framing carry the wind on the glued wall.

Why: the glue seldom gives way first. In a storm the screws of the sheathing pull out or through, and studs
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

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from specgen.judging.choice_groups import BOARDS, WOOD
from specgen.judging.rule import CAUTION, STOP, Found, Rule, draft, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity, rounded

RULE = Rule(
    "ATT-09",
    "Sheathing and framing carry the wind",
    remedy="Engineer's signed check, closer sheathing fasteners, stiffer studs.",
    steps="substrate boards",
    documents="D06",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Wind pulls with {found}; the glued wall may be loaded with {wanted}.",
    each="elevations",
    needs="calc.wall_wind walls.*.attachment.ultimate_strength walls.*.attachment.safety_factor",
    at="elevations.*.wall",
    basis="computed",
)
def wind_pulls_too_hard(elevation: Any, resolve: Any) -> Iterator[Found]:
    """The wind pulls harder than the glued wall may be loaded."""
    attachment = elevation.wall.attachment
    allowed = attachment.ultimate_strength * (1 / Fraction(attachment.safety_factor))
    wind = resolve("wall-wind")
    pull = Quantity.of(abs(Fraction(repr(float(wind.result)))), wind.unit)
    if more(pull, allowed):
        yield found(rounded(pull), wanted=rounded(allowed), at=(*attachment.path, "ultimate_strength"))


@RULE.clause(
    "b",
    STOP,
    "The fasteners of the sheathing usually govern wind, and their schedule is not shown.",
    each="walls",
    needs="package.purpose walls.*.framing.kind walls.*.substrate.kind walls.*.substrate.fastener_schedule",
    basis="trade_columns",
)
def fasteners_not_shown(wall: Any, project: Any) -> Iterator[Found]:
    """No paper shows how the sheathing is fastened to its framing."""
    if draft(project) or wall.get("substrate.fastener_schedule") is not None:
        return
    if every(lambda: wall.substrate.kind in (*WOOD, *BOARDS), lambda: wall.framing.kind != "none"):
        yield found()


@RULE.clause(
    "c",
    CAUTION,
    "Framing may bend {found}; {wanted} or stiffer is usual under EIFS: confirm.",
    each="walls",
    needs="walls.*.framing.deflection_limit",
    limit="framing.deflection",
)
def framing_bends(wall: Any, limit: Any) -> Iterator[Found]:
    """The framing may bend more than is usual under EIFS."""
    if _part(wall.framing.deflection_limit) < _part(limit):
        yield found(wall.framing.deflection_limit, wanted=limit)


def _part(limit: str) -> int:
    """The part of its length a member may bend by: 240 for `L/240`."""
    return int(limit.removeprefix("L/"))
