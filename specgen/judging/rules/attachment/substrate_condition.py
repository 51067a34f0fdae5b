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

from specgen.judging.choice_groups import OLD_FACES
from specgen.judging.rule import CAUTION, Rule, Violations, is_draft, violation
from specgen.model.absence import if_given
from specgen.model.typed_views import Description, Wall

RULE = Rule(
    "ATT-06",
    "Substrate cured, dry, sound and mended",
    remedy="Concrete, masonry: cure, clean, neutralize. Brick, stone: repoint, "
    "leveling coat, bond test. Stucco: remove what is loose, patch, bond test. Wood: "
    "dry, gap, treat edges. Boards: treat joints.",
    steps="substrate",
    documents="D08 D11",
)

RULE.clause(
    "a",
    CAUTION,
    "The wall is {found} days old; {wanted} days are usual before a board is glued to it.",
    when="wall.substrate.kind in poured_or_laid and wall.substrate.age_days < limit",
    limit="substrate.age",
)

RULE.clause(
    "b",
    CAUTION,
    "The wall needs preparing before a board is glued to it: {found}.",
    when="wall.substrate.kind in poured_or_laid and wall.substrate.condition is not empty",
    basis="memory",
)

RULE.clause(
    "c",
    CAUTION,
    "Open joints must be repointed before a board is glued to the wall.",
    when="wall.substrate.kind in laid_in_mortar and wall.substrate.condition has open_joints",
    basis="memory",
)


@RULE.test(
    "d",
    CAUTION,
    "No bond report shows that the old face holds.",
    at="wall.substrate.bond_report",
    basis="memory",
)
def face_unproved(wall: Wall, project: Description) -> Violations:
    """No paper shows that the face of brick, stone or stucco holds."""
    if is_draft(project) or wall.substrate.kind not in OLD_FACES:
        return
    if if_given(lambda: wall.substrate.bond_report) is None:
        yield violation()


RULE.clause(
    "e",
    CAUTION,
    "The wood panels hold {found} % water; {wanted} % is the most.",
    when="wall.substrate.kind in wood and wall.substrate.moisture > limit",
    limit="substrate.wood_moisture",
)

RULE.clause(
    "f",
    CAUTION,
    "Edges and joints of the wood panels are untreated.",
    when="wall.substrate.kind in wood and wall.substrate.condition has untreated_panel_joints",
    basis="memory",
)

RULE.clause(
    "g",
    CAUTION,
    "Joints of the sheathing are untreated.",
    when="wall.substrate.kind in boards and wall.substrate.condition has untreated_panel_joints",
    basis="memory",
)
