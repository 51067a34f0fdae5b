"""A board is glued to an old coating or to bare metal only where pull tests show that the surface holds.

Why: a glued wall hangs from the weakest layer behind it, and nobody can see whether old paint or
bare metal will hold. Where it broke tells as much as the pull at which it broke.

passes
    walls: {W1: {substrate: {kind: existing_coated, coating_removed: yes}}}
fails ATT-05a at walls.W1.substrate.bond_result
    walls:
      W1: {substrate: {kind: existing_coated, coating_removed: no, bond_limit: 15 psi, bond_result: 9 psi}}
fails ATT-05b at walls.W1.substrate.bond_result
    walls: {W1: {substrate: {kind: metal, bond_limit: 15 psi, bond_result: 9 psi}}}
fails ATT-05c at walls.W1.substrate.bond_failure
    walls: {W1: {substrate: {kind: metal, bond_failure: not_stated}}}
fails ATT-05d at walls.W1.substrate.bond_report
    package: {purpose: mockup_submittal}
    walls: {W1: {substrate: {kind: metal}}}
fails ATT-05e at walls.W1.substrate.coating_removed
    walls: {W1: {substrate: {kind: existing_coated, coating_removed: no}}}
fails ATT-05f at walls.W1.substrate.kind
    walls: {W1: {substrate: {kind: metal}}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_signed
from specgen.model.absence import all_known, if_given
from specgen.model.typed_views import Description, Substrate, Wall

RULE = Rule(
    "ATT-05",
    "Old coating or bare metal proved by pull tests",
    remedy="Strip and name the bared wall as substrate; or overlay with fastened sheathing and "
    "fluid-applied barrier; or tension test on the wall.",
    steps="substrate",
    documents="D02 D11 D18",
)

RULE.clause(
    "a",
    STOP,
    "The old coating pulled off at {found}, below the {wanted} set for this wall.",
    when="wall.substrate.kind = existing_coated and wall.substrate.coating_removed = no and "
    "wall.substrate.bond_result < wall.substrate.bond_limit",
    basis="adhesion_tests_memory",
)

RULE.clause(
    "b",
    STOP,
    "Bond to the bare metal failed at {found}, below the {wanted} set for this wall.",
    when="wall.substrate.kind = metal and wall.substrate.bond_result < wall.substrate.bond_limit",
    basis="adhesion_tests_memory",
)

RULE.clause(
    "c",
    STOP,
    "The bond report does not say what failed, and the place of failure counts as much as the number.",
    when="(wall.substrate.kind = metal or wall.substrate.kind = existing_coated and "
    "wall.substrate.coating_removed = no) and wall.substrate.bond_failure = not_stated",
    basis="adhesion_tests_memory",
)


@RULE.test(
    "d",
    STOP,
    "No signed bond report shows that the old surface holds.",
    at="wall.substrate.bond_report",
    document="signed bond report of the old surface",
    basis="adhesion_tests_memory",
)
def no_signed_report(wall: Wall, project: Description) -> Violations:
    """No signed paper shows that the old surface holds."""
    old, report = wall.substrate, if_given(lambda: wall.substrate.bond_report)
    if not is_draft(project) and all_known(lambda: _doubtful(old), lambda: report is None or not is_signed(report)):
        yield violation()


RULE.clause(
    "e",
    CAUTION,
    "A glued wall is no stronger than the old coating beneath it: pull tests on the wall decide, confirm.",
    when="wall.substrate.kind = existing_coated and wall.substrate.coating_removed = no",
    basis="adhesion_tests_memory",
)

RULE.clause(
    "f",
    CAUTION,
    "A glued wall is no stronger than its bond to bare metal: pull tests on the wall decide, confirm.",
    when="wall.substrate.kind = metal",
    basis="adhesion_tests_memory",
)


def _doubtful(old: Substrate) -> bool:
    """Whether the surface is one that must be proved: bare metal, or a coating that stays."""
    return bool(old.kind == "metal" or (old.kind == "existing_coated" and not old.coating_removed))
