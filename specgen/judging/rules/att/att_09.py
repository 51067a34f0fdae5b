"""The sheathing and its framing can hold what is glued to them.

Why: Wind pulls through the glue on the fasteners of the sheathing, and a soft frame bends the lamina until it cracks.

passes
    {walls: {W1: {substrate: {kind: glass_mat_gypsum}, framing: {kind: cold_formed_steel, deflection_limit: L/240}}}}
fails ATT-09b at walls.W1.substrate.fastener_schedule
    {package: {purpose: mockup_submittal}, walls: {W1: {substrate: {kind: osb}, framing: {kind: wood}}}}
fails ATT-09c at walls.W1.framing.deflection_limit
    {walls: {W1: {framing: {kind: wood, deflection_limit: L/180}}}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import CAUTION, STOP, Found, Rule, draft, found
from ...settling import every
from ...words import BOARDS, WOOD

RULE = Rule(
    "ATT-09",
    "Sheathing and framing behind the board",
    remedy="Engineer's signed check, closer sheathing fasteners, stiffer studs.",
    steps="substrate boards",
    documents="D06",
    manual=__doc__,
)


@RULE.clause(
    "b",
    STOP,
    "The fasteners of the sheathing usually govern wind, and their schedule is not shown.",
    needs="package.purpose walls.*.framing.kind walls.*.substrate.kind walls.*.substrate.fastener_schedule",
    each="walls",
    basis="trade_columns",
)
def no_schedule(wall: Any, project: Any) -> Iterator[Found]:
    """No paper shows how the sheathing is fastened."""
    if draft(project):
        return
    if every(
        lambda: wall.framing.kind != "none",
        lambda: wall.substrate.kind in (*BOARDS, *WOOD) and wall.get("substrate.fastener_schedule") is None,
    ):
        yield found()


@RULE.clause(
    "c",
    CAUTION,
    "Framing may bend {found}; {wanted} or stiffer is usual under EIFS: confirm.",
    needs="walls.*.framing.deflection_limit",
    each="walls",
    limit="framing.deflection",
)
def soft_framing(wall: Any, limit: Any) -> Iterator[Found]:
    """The framing bends more than is usual."""
    if wall.framing.deflection_limit in ("L/120", "L/180"):
        yield found(wall.framing.deflection_limit, wanted=limit)
