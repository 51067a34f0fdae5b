"""The substrate is cured, dry, sound and repaired before board is adhered to it.

Why: adhesive holds no better than the skin it is spread on. Fresh lime, dust, oil and salts keep it
from the wall, and wet wood or open joints move behind the board. Each fault is mended in its own way.

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
fails ATT-06h at walls.W1.substrate.condition
    walls: {W1: {substrate: {kind: existing_brick, condition: [damp, frost_damage]}}}
"""

from specgen.judging.choice_groups import BOARDS, LAID_IN_MORTAR, OLD_FACES, WOOD
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, is_draft, violation
from specgen.model.absence import all_known, if_given
from specgen.model.finding import Severity
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, Wall

RULE = Rule(
    "ATT-06",
    "Substrate cured, dry, sound, and repaired",
    remedy="Repair each fault in its own way, and adhere no board before the wall is cured, dry, and sound.",
    steps="substrate",
    documents="D08 D11",
)

RULE.clause(
    "a",
    CAUTION,
    "Substrate age is {found} d; usual minimum {wanted} d before board is adhered.",
    when="wall.substrate.kind in poured_or_laid and wall.substrate.age_days < limit",
    limit="substrate.age",
    remedy="Let the substrate cure for {substrate.age}, or submit the EIFS manufacturer's written acceptance of "
    "a younger wall.",
    why="young concrete and mortar still shrink and give off water and alkali",
)


@RULE.test(
    "b",
    CAUTION,
    "Substrate condition: {found}. Prepare before board is adhered.",
    at="wall.substrate.condition",
    basis="practice",
)
def needs_preparing(wall: Wall, standards: Standards) -> Violations:
    """The wall has a fault that is mended as part of the work."""
    return _faults(wall, standards, CAUTION)


@RULE.test(
    "c",
    CAUTION,
    "Mortar joints are open, so board adhered over them is not fully supported.",
    at="wall.substrate.condition",
    basis="memory",
)
def mortar_joints_open(wall: Wall, standards: Standards) -> Violations:
    """The brick or stone has open joints."""
    return _fault_of_kind(wall, standards, "open_joints", LAID_IN_MORTAR)


@RULE.test(
    "d",
    CAUTION,
    "No bond report shows that the existing face holds.",
    at="wall.substrate.bond_report",
    basis="memory",
    remedy="Pull-test the existing face, and submit the signed report; level an uneven face first.",
)
def face_unproved(wall: Wall, project: Description) -> Violations:
    """No document shows that the face of brick, stone or stucco holds."""
    if is_draft(project) or wall.substrate.kind not in OLD_FACES:
        return
    if if_given(lambda: wall.substrate.bond_report) is None:
        yield violation()


RULE.clause(
    "e",
    CAUTION,
    "Moisture content of the wood panels is {found} %; maximum {wanted} %.",
    when="wall.substrate.kind in wood and wall.substrate.moisture > limit",
    limit="substrate.wood_moisture",
    remedy="Dry the panels to a maximum of {substrate.wood_moisture}, and measure again before they are covered.",
    why="wet wood shrinks as it dries and strains the board on it",
)


@RULE.test(
    "f",
    CAUTION,
    "Edges and joints of the wood panels are untreated, so water enters there.",
    at="wall.substrate.condition",
    basis="memory",
    why="water that enters at an edge or a joint swells the wood under the board",
)
def wood_joints_untreated(wall: Wall, standards: Standards) -> Violations:
    """The wood panels have untreated joints."""
    return _fault_of_kind(wall, standards, "untreated_panel_joints", WOOD)


@RULE.test(
    "g",
    CAUTION,
    "Sheathing joints are untreated, so water enters there.",
    at="wall.substrate.condition",
    basis="memory",
    why="water that enters at a joint weakens the sheathing under the board",
)
def board_joints_untreated(wall: Wall, standards: Standards) -> Violations:
    """The sheathing boards have untreated joints."""
    return _fault_of_kind(wall, standards, "untreated_panel_joints", BOARDS)


@RULE.test(
    "h",
    STOP,
    "Substrate condition: {found}. The substrate cannot hold adhered board until it is repaired.",
    at="wall.substrate.condition",
    basis="practice",
)
def needs_mending_first(wall: Wall, standards: Standards) -> Violations:
    """The wall has a fault from which adhered boards may come off."""
    return _faults(wall, standards, STOP)


# Faults that a clause of their own tells on these substrates.
_TOLD_APART = {"open_joints": LAID_IN_MORTAR, "untreated_panel_joints": (*WOOD, *BOARDS)}


def _faults(wall: Wall, standards: Standards, severity: Severity) -> Violations:
    """The faults of one severity, but for those that a clause of their own tells, each with its own remedy."""
    old = wall.substrate
    for name in old.condition:
        fault = standards.faults[name]
        if fault.severity is severity and not (name in _TOLD_APART and old.kind in _TOLD_APART[name]):
            yield violation(name, remedy=_wait_for_reports(old.kind, name, fault.mend))


# What a report must not find in a wall that stands before its faults are mended.
_HAZARDS = {
    "existing_coated": "the laboratory reports on lead and asbestos; where either is found, by a licensed abatement "
    "contractor, per D05",
    "existing_brick": "the asbestos survey, and abatement where asbestos is found, per D05",
}


def _wait_for_reports(kind: str, fault: str, mend: str) -> str:
    """How a fault is mended: what disturbs a wall that stands waits for the reports on its hazards.

    The mending of a loose coating says so itself.
    """
    if kind not in _HAZARDS or fault == "loose_coating":
        return mend
    return f"Only after {_HAZARDS[kind]}: {mend[0].lower()}{mend[1:]}"


def _fault_of_kind(wall: Wall, standards: Standards, name: str, kinds: tuple[str, ...]) -> Violations:
    """One fault on substrates of some kinds."""
    if all_known(lambda: wall.substrate.kind in kinds, lambda: name in wall.substrate.condition):
        mend = _wait_for_reports(wall.substrate.kind, name, standards.faults[name].mend)
        yield violation(tuple(wall.substrate.condition), remedy=mend)
