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
fails ATT-05f at walls.W1.substrate.bond_limit
    walls: {W1: {substrate: {kind: existing_coated, coating_removed: no, bond_limit: 2 psi}}}
fails ATT-05g at walls.W1.substrate.bond_result
    walls: {W1: {substrate: {kind: metal, bond_result: 1 psi}, attachment: {safety_factor: 4}}}
    elevations: {E1: {wall: W1, design_pressure_outward: 90 psf}}
fails ATT-05h at walls.W1.substrate.bond_pulls
    walls: {W1: {substrate: {kind: metal, bond_pulls: 3}}}
    elevations: {E1: {wall: W1, width: 60 ft, height: 20 ft}}
fails ATT-05i at walls.W1.substrate.kind
    walls: {W1: {substrate: {kind: metal}}}
"""

from specgen.computing.old_surface import is_old_surface
from specgen.judging.rule import CAUTION, STOP, Computed, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_signed
from specgen.model.absence import all_known, if_given, read_all
from specgen.model.typed_views import Description, Substrate, Wall
from specgen.quantities.comparison import less

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
    STOP,
    "The bond set for the old surface is {found}; the standard for the system asks for {wanted} minimum.",
    when="(wall.substrate.kind in {metal, existing_brick} or wall.substrate.kind = existing_coated and "
    "wall.substrate.coating_removed = no) and wall.substrate.bond_limit < limit",
    limit="substrate.bond",
    remedy="Set the minimum bond at or above that of the standard, or strip the surface, or fasten an overlay.",
)


@RULE.test(
    "g",
    STOP,
    "The old surface held {found}; the wind on it times the factor of safety is {wanted}.",
    at="wall.substrate.bond_result",
    basis="computed",
    remedy="Strip the surface, or fasten an overlay to the structure, and test again.",
)
def weaker_than_wind(wall: Wall, bond_demand: Computed) -> Violations:
    """The old surface holds less than the wind pulls, times the factor of safety."""
    if not is_old_surface(wall.substrate):
        return
    demand, result = read_all(bond_demand, lambda: wall.substrate.bond_result)
    if demand is not None and less(result, demand.quantity):
        yield violation(result, wanted=demand.rounded)


@RULE.test(
    "h",
    CAUTION,
    "{found} pull tests were made; {wanted} minimum stand for this surface.",
    at="wall.substrate.bond_pulls",
    limit="substrate.pulls",
    remedy="Make the missing pull tests, spread over the wall, on each kind of surface.",
)
def few_pulls(wall: Wall, limit: int, bond_pulls: Computed) -> Violations:
    """Fewer pull tests than the area of the old surface asks for."""
    if not is_old_surface(wall.substrate):
        return
    made = wall.substrate.bond_pulls
    wanted = limit if made < limit else round(bond_pulls().result)
    if made < wanted:
        yield violation(made, wanted=wanted)


RULE.clause(
    "i",
    CAUTION,
    "A glued wall is no stronger than its bond to bare metal: pull tests on the wall decide, confirm.",
    when="wall.substrate.kind = metal",
    basis="adhesion_tests_memory",
)


def _doubtful(old: Substrate) -> bool:
    """Whether the surface is one that must be proved: bare metal, or a coating that stays."""
    return bool(old.kind == "metal" or (old.kind == "existing_coated" and not old.coating_removed))
