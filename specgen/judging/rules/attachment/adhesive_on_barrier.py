"""The adhesive is spread on a barrier it is proved to bond to, never on a loose sheet or on bare sheathing.

Why: wrap and felt hang from a few staples, so a board glued to them is hardly held at all. Bare
sheathing takes in the water that gets behind the board.

passes
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: fluid_applied}}}
fails ATT-07a at walls.W1.wrb.kind
    walls: {W1: {substrate: {kind: plywood}, wrb: {kind: building_wrap}}}
fails ATT-07b at walls.W1.wrb.kind
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: none}}}
fails ATT-07c at walls.W1.wrb.bond_report
    package: {purpose: mockup_submittal}
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: fluid_applied}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import ADHESIVE, SHEETS
from specgen.judging.rule import STOP, Found, Rule, draft, found

RULE = Rule(
    "ATT-07",
    "Adhesive on a barrier it bonds to",
    remedy="Fluid-applied barrier with a bond result for this adhesive.",
    steps="wrb boards",
    documents="D02 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The adhesive would hang on a loose sheet: {found}.",
    each="walls",
    needs="walls.*.attachment.method walls.*.wrb.kind",
    basis="astm_e2570_memory",
)
def loose_sheet(wall: Any) -> Iterator[Found]:
    """The adhesive would hold on to wrap or felt."""
    if wall.attachment.method in ADHESIVE and wall.wrb.kind in ("building_wrap", "felt"):
        yield found(wall.wrb.kind)


@RULE.clause(
    "b",
    STOP,
    "Sheathing without a weather barrier lets water behind the board and gives the adhesive no proven skin.",
    each="walls",
    needs="walls.*.attachment.method walls.*.substrate.kind walls.*.wrb.kind",
    basis="astm_e2570_memory",
)
def bare_sheathing(wall: Any) -> Iterator[Found]:
    """Sheathing has no weather barrier under the adhesive."""
    glued = wall.attachment.method in ADHESIVE and wall.substrate.kind in SHEETS
    if glued and wall.wrb.kind == "none":
        yield found(wall.wrb.kind)


@RULE.clause(
    "c",
    STOP,
    "Bond of this adhesive to this weather barrier is not shown.",
    each="walls",
    needs="package.purpose walls.*.attachment.method walls.*.wrb.kind walls.*.wrb.bond_report",
    basis="astm_e2570_memory",
)
def barrier_unproved(wall: Any, project: Any) -> Iterator[Found]:
    """No paper shows the bond of this adhesive to this barrier."""
    if draft(project) or wall.attachment.method not in ADHESIVE:
        return
    if wall.get("wrb.bond_report") is None and wall.wrb.kind in ("fluid_applied", "self_adhered_sheet"):
        yield found()
