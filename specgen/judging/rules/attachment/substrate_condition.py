"""The substrate is cured, dry, sound and mended before a board is glued to it.

Why: glue holds no better than the skin it is spread on. Fresh lime, dust, oil and salts keep it
from the wall, and wet wood or open joints move behind the board.

passes
    walls: {W1: {substrate: {kind: concrete, age_days: 28, condition: []}}}
fails ATT-06a at walls.W1.substrate.age_days
    walls: {W1: {substrate: {kind: concrete, age_days: 14}}}
fails ATT-06b at walls.W1.substrate.condition
    walls: {W1: {substrate: {kind: concrete_masonry, condition: [efflorescence]}}}
fails ATT-06c at walls.W1.substrate.condition
    walls: {W1: {substrate: {kind: existing_brick, condition: [open_joints]}}}
fails ATT-06d at walls.W1.substrate.bond_report
    package: {purpose: mockup_submittal}
    walls: {W1: {substrate: {kind: existing_brick}}}
fails ATT-06e at walls.W1.substrate.moisture
    walls: {W1: {substrate: {kind: plywood, moisture: 24}}}
fails ATT-06g at walls.W1.substrate.condition
    walls: {W1: {substrate: {kind: cement_board, condition: [untreated_panel_joints]}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import BOARDS, POURED_OR_LAID, WOOD
from specgen.judging.rule import CAUTION, Found, Rule, draft, found
from specgen.quantities.comparison import less, more

RULE = Rule(
    "ATT-06",
    "Substrate cured, dry, sound and mended",
    remedy="Concrete, masonry: cure, clean, neutralize. Brick: repoint, leveling coat, bond test. Wood: "
    "dry, gap, treat edges. Boards: treat joints.",
    steps="substrate",
    documents="D08 D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The wall is {found} days old; {wanted} days are usual before a board is glued to it.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.age_days",
    limit="substrate.age",
)
def too_young(wall: Any, limit: Any) -> Iterator[Found]:
    """Concrete or masonry has not cured long enough."""
    if wall.substrate.kind in POURED_OR_LAID and less(wall.substrate.age_days, limit):
        yield found(wall.substrate.age_days, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "The wall needs preparing before a board is glued to it: {found}.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.condition",
    basis="memory",
)
def masonry_faults(wall: Any) -> Iterator[Found]:
    """Concrete or masonry has faults that keep the glue from it."""
    if wall.substrate.kind in POURED_OR_LAID and wall.substrate.condition:
        yield found(wall.substrate.condition)


@RULE.clause(
    "c",
    CAUTION,
    "Open joints in the brick must be repointed before a board is glued to it.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.condition",
    basis="memory",
)
def open_joints(wall: Any) -> Iterator[Found]:
    """Joints of the old brick stand open."""
    if wall.substrate.kind == "existing_brick" and "open_joints" in wall.substrate.condition:
        yield found(wall.substrate.condition)


@RULE.clause(
    "d",
    CAUTION,
    "No bond report shows that the brick face holds.",
    each="walls",
    needs="package.purpose walls.*.substrate.kind walls.*.substrate.bond_report",
    basis="memory",
)
def brick_unproved(wall: Any, project: Any) -> Iterator[Found]:
    """No paper shows that the brick face holds."""
    if draft(project) or wall.substrate.kind != "existing_brick":
        return
    if wall.get("substrate.bond_report") is None:
        yield found()


@RULE.clause(
    "e",
    CAUTION,
    "The wood panels hold {found} % water; {wanted} % is the most.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.moisture",
    limit="substrate.wood_moisture",
)
def wet_wood(wall: Any, limit: Any) -> Iterator[Found]:
    """Wood panels are wetter than they may be."""
    if wall.substrate.kind in WOOD and more(wall.substrate.moisture, limit):
        yield found(wall.substrate.moisture, wanted=limit)


@RULE.clause(
    "f",
    CAUTION,
    "Edges and joints of the wood panels are untreated.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.condition",
    basis="memory",
)
def wood_joints(wall: Any) -> Iterator[Found]:
    """Joints of wood panels are untreated."""
    if wall.substrate.kind in WOOD and "untreated_panel_joints" in wall.substrate.condition:
        yield found(wall.substrate.condition)


@RULE.clause(
    "g",
    CAUTION,
    "Joints of the sheathing are untreated.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.condition",
    basis="memory",
)
def sheathing_joints(wall: Any) -> Iterator[Found]:
    """Joints of mineral sheathing are untreated."""
    if wall.substrate.kind in BOARDS and "untreated_panel_joints" in wall.substrate.condition:
        yield found(wall.substrate.condition)
