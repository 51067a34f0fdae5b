"""Board is adhered to an existing coating, brick, or bare metal only where pull tests show that the surface holds.

Why: an adhered wall hangs from the weakest layer behind it, and nobody can see whether existing paint or
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
fails ATT-05j at walls.W1.substrate.kind
    walls: {W1: {substrate: {kind: existing_brick}}}
"""

from specgen.computing.old_surface import is_old_surface
from specgen.judging.papers import is_signed
from specgen.judging.rule import CAUTION, STOP, Computed, Rule, Violations, is_draft, violation
from specgen.model.absence import all_known, if_given, read_all
from specgen.model.typed_views import Description, Substrate, Wall
from specgen.quantities.comparison import less

RULE = Rule(
    "ATT-05",
    "Pull tests on the existing wall",
    remedy="Have pull tests made on the wall, and submit the signed report.",
    steps="substrate",
    documents="D02 D11 D18",
)

PULLS = (
    "Have an independent testing agency make a minimum of {substrate.pulls} pull tests in each {substrate.pulls_area} "
    "of each kind of surface, minimum {substrate.bond}, or the engineer's figure where higher; the engineer accepts "
    "the report."
)

RULE.clause(
    "a",
    STOP,
    "The existing coating failed at {found}; minimum bond for this wall {wanted}.",
    when="wall.substrate.kind = existing_coated and wall.substrate.coating_removed = no and "
    "wall.substrate.bond_result < wall.substrate.bond_limit",
    basis="adhesion_tests_memory",
    remedy="Strip the coating and enter the exposed wall as the substrate, or install fastened sheathing with a "
    "fluid-applied WRB over it; then repeat the pull tests.",
)

RULE.clause(
    "b",
    STOP,
    "Bond to the bare metal failed at {found}; minimum bond for this wall {wanted}.",
    when="wall.substrate.kind = metal and wall.substrate.bond_result < wall.substrate.bond_limit",
    basis="adhesion_tests_memory",
    remedy="Prepare the metal as the adhesive manufacturer requires and repeat the pull tests, or install "
    "fastened sheathing with a fluid-applied WRB over it.",
)

RULE.clause(
    "c",
    STOP,
    "The bond report does not state what failed, and a pull without its mode of failure proves nothing.",
    when="(wall.substrate.kind in {metal, existing_brick} or wall.substrate.kind = existing_coated and "
    "wall.substrate.coating_removed = no) and wall.substrate.bond_failure = not_stated",
    basis="adhesion_tests_memory",
    remedy="Have the testing laboratory state what failed at each pull: adhesive, coating, metal, or substrate.",
)


@RULE.test(
    "d",
    STOP,
    "No signed bond report shows that the existing surface holds.",
    at="wall.substrate.bond_report",
    document="signed bond report of the existing surface",
    basis="adhesion_tests_memory",
)
def no_signed_report(wall: Wall, project: Description) -> Violations:
    """No signed document shows that the existing surface holds."""
    old, report = wall.substrate, if_given(lambda: wall.substrate.bond_report)
    if not is_draft(project) and all_known(lambda: _doubtful(old), lambda: report is None or not is_signed(report)):
        yield violation()


RULE.clause(
    "e",
    CAUTION,
    "The existing coating stays, and adhered board is no stronger than the coating beneath it.",
    when="wall.substrate.kind = existing_coated and wall.substrate.coating_removed = no",
    basis="astm_d7234",
    remedy="Disturb no coating before the laboratory reports on lead and asbestos. Then: "
    f"{PULLS[0].lower()}{PULLS[1:]} If a pull fails, strip the coating and repeat the pull tests on the exposed "
    "wall, or install fastened sheathing with a fluid-applied WRB over it, a new wall type. Where lead "
    "or asbestos is found, only a licensed abatement contractor prepares and strips, per D05.",
)

RULE.clause(
    "f",
    STOP,
    "Minimum bond set for the existing surface is {found}; the standard for the system requires minimum {wanted}.",
    when="(wall.substrate.kind in {metal, existing_brick} or wall.substrate.kind = existing_coated and "
    "wall.substrate.coating_removed = no) and wall.substrate.bond_limit < limit",
    limit="substrate.bond",
    remedy="Set the bond for this wall at a minimum of {substrate.bond}, or strip the surface or fasten an overlay.",
)


@RULE.test(
    "g",
    STOP,
    "The existing surface held {found}; minimum {wanted}, the wind suction times the factor of safety.",
    at="wall.substrate.bond_result",
    basis="computed",
    remedy="Strip the surface or fasten an overlay to the structure, and repeat the pull tests to a minimum of "
    "{wanted}.",
)
def weaker_than_wind(wall: Wall, bond_demand: Computed) -> Violations:
    """The existing surface holds less than the wind pulls, times the factor of safety."""
    if not is_old_surface(wall.substrate):
        return
    demand, result = read_all(bond_demand, lambda: wall.substrate.bond_result)
    if demand is not None and less(result, demand.quantity):
        yield violation(result, wanted=demand.rounded)


@RULE.test(
    "h",
    CAUTION,
    "Pull tests made: {found}; minimum {wanted} for this surface.",
    at="wall.substrate.bond_pulls",
    limit="substrate.pulls",
    remedy="Make a minimum of {wanted} pull tests in all, distributed over the wall and on each kind of surface.",
)
def few_pulls(wall: Wall, limit: int, bond_pulls: Computed) -> Violations:
    """Fewer pull tests than the area of the existing surface asks for."""
    if not is_old_surface(wall.substrate):
        return
    made = wall.substrate.bond_pulls
    wanted = limit if made < limit else round(bond_pulls().result)
    if made < wanted:
        yield violation(made, wanted=wanted)


RULE.clause(
    "i",
    CAUTION,
    "The substrate is bare metal, and adhered board is no stronger than its bond to the metal.",
    when="wall.substrate.kind = metal",
    basis="adhesion_tests_memory",
    remedy=f"{PULLS} Otherwise install fastened sheathing with a fluid-applied WRB over it.",
)

RULE.clause(
    "j",
    CAUTION,
    "The board is adhered to existing brick, and holds no better than its face and the new pointing.",
    when="wall.substrate.kind = existing_brick",
    basis="astm_d7234",
    remedy="Disturb nothing before the laboratory report on asbestos. Then: "
    f"{PULLS[0].lower()}{PULLS[1:]} Pull brick, and new pointing with the disc centered on the joint. If "
    "a pull fails, remove the weak face or pointing, repair, and repeat the pull tests, or install fastened sheathing "
    "with a fluid-applied WRB over it, a new wall type.",
)


def _doubtful(old: Substrate) -> bool:
    """Whether the surface is one that must be proved: bare metal, or a coating that stays."""
    return bool(old.kind == "metal" or (old.kind == "existing_coated" and not old.coating_removed))
