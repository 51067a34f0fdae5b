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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, draft, found
from specgen.judging.three_valued import every, signed
from specgen.quantities.comparison import less

RULE = Rule(
    "ATT-05",
    "Old coating or bare metal proved by pull tests",
    remedy="Strip and name the bared wall as substrate; or overlay with fastened sheathing and "
    "fluid-applied barrier; or tension test on the wall.",
    steps="substrate",
    documents="D02 D11 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The old coating pulled off at {found}, below the {wanted} set for this wall.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.coating_removed walls.*.substrate.bond_limit "
    "walls.*.substrate.bond_result",
    basis="adhesion_tests_memory",
)
def old_coating_weak(wall: Any) -> Iterator[Found]:
    """The old coating stays and held less than the limit of this wall."""
    old = wall.substrate
    if old.kind == "existing_coated" and every(lambda: not old.coating_removed, lambda: _weak(old)):
        yield found(old.bond_result, wanted=old.bond_limit)


@RULE.clause(
    "b",
    STOP,
    "Bond to the bare metal failed at {found}, below the {wanted} set for this wall.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.bond_limit walls.*.substrate.bond_result",
    basis="adhesion_tests_memory",
)
def metal_weak(wall: Any) -> Iterator[Found]:
    """Bare metal held less than the limit of this wall."""
    if wall.substrate.kind == "metal" and _weak(wall.substrate):
        yield found(wall.substrate.bond_result, wanted=wall.substrate.bond_limit)


@RULE.clause(
    "c",
    STOP,
    "The bond report does not say what failed, and the place of failure counts as much as the number.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.coating_removed walls.*.substrate.bond_failure",
    basis="adhesion_tests_memory",
)
def failure_not_stated(wall: Any) -> Iterator[Found]:
    """The report leaves open which layer let go."""
    old = wall.substrate
    if every(lambda: _doubtful(old), lambda: old.bond_failure == "not_stated"):
        yield found(old.bond_failure)


@RULE.clause(
    "d",
    STOP,
    "No signed bond report shows that the old surface holds.",
    each="walls",
    needs="package.purpose walls.*.substrate.kind walls.*.substrate.coating_removed "
    "walls.*.substrate.bond_report attachments.*.signed",
    at="walls.*.substrate.bond_report",
    basis="adhesion_tests_memory",
)
def no_signed_report(wall: Any, project: Any) -> Iterator[Found]:
    """No signed paper shows that the old surface holds."""
    old, report = wall.substrate, wall.get("substrate.bond_report")
    if not draft(project) and every(lambda: _doubtful(old), lambda: report is None or not signed(report)):
        yield found()


@RULE.clause(
    "e",
    CAUTION,
    "A glued wall is no stronger than the old coating beneath it: pull tests on the wall decide, confirm.",
    each="walls",
    needs="walls.*.substrate.kind walls.*.substrate.coating_removed",
    basis="adhesion_tests_memory",
)
def old_coating_stays(wall: Any) -> Iterator[Found]:
    """The old coating stays beneath the glue."""
    if wall.substrate.kind == "existing_coated" and not wall.substrate.coating_removed:
        yield found(wall.substrate.coating_removed)


@RULE.clause(
    "f",
    CAUTION,
    "A glued wall is no stronger than its bond to bare metal: pull tests on the wall decide, confirm.",
    each="walls",
    needs="walls.*.substrate.kind",
    basis="adhesion_tests_memory",
)
def bare_metal(wall: Any) -> Iterator[Found]:
    """The board is glued to bare metal."""
    if wall.substrate.kind == "metal":
        yield found(wall.substrate.kind)


def _doubtful(old: Any) -> bool:
    """Whether the surface is one that must be proved: bare metal, or a coating that stays."""
    return bool(old.kind == "metal" or (old.kind == "existing_coated" and not old.coating_removed))


def _weak(old: Any) -> bool:
    """Whether the lowest pull lies below the limit set for the wall."""
    return less(old.bond_result, old.bond_limit)
