"""An existing wall is surveyed for asbestos, its existing coating tested for lead, before anybody disturbs it.

Why: washing, scraping, pointing, stripping and even pull tests set free what an existing coating, its pointing and
its sealant hold. Lead dust and asbestos fibers harm the crew, the people in the building and the ground below,
and cannot be called back.

passes
    building: {built_year: 1964}
    walls:
      W1:
        substrate: {kind: existing_coated, lead_tested: yes, lead_found: no, asbestos_tested: yes, asbestos_found: no}
fails ATT-10a at walls.W1.substrate.lead_tested
    building: {built_year: 1964}
    walls: {W1: {substrate: {kind: existing_coated, lead_tested: no}}}
fails ATT-10b at walls.W1.substrate.lead_tested
    building: {built_year: 1995}
    walls: {W1: {substrate: {kind: existing_coated, lead_tested: no}}}
fails ATT-10c at walls.W1.substrate.asbestos_tested
    walls: {W1: {substrate: {kind: existing_coated, asbestos_tested: no}}}
fails ATT-10d at walls.W1.substrate.lead_found
    walls: {W1: {substrate: {kind: existing_coated, lead_tested: yes, lead_found: yes}}}
fails ATT-10e at walls.W1.substrate.asbestos_found
    walls: {W1: {substrate: {kind: existing_coated, asbestos_tested: yes, asbestos_found: yes}}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "ATT-10",
    "Existing wall tested for lead and asbestos",
    remedy="Do not disturb the wall until a qualified person has sampled it and an accredited laboratory has "
    "reported; federal, state, and local law and licensed professionals govern.",
    steps="old_coating substrate",
    documents="D05 D08 D15",
)

RULE.clause(
    "a",
    STOP,
    "The building predates {wanted}, and its existing coating is not tested for lead.",
    when="wall.substrate.kind = existing_coated and wall.substrate.lead_tested = no and building.built_year < limit",
    at="wall.substrate.lead_tested",
    found="wall.substrate.lead_tested",
    limit="old_coating.lead_year",
    basis="osha_lead",
    lift="never",
)

RULE.clause(
    "b",
    CAUTION,
    "The existing coating is not tested for lead; the building dates from {wanted} or later, but industrial coatings "
    "contained lead for longer.",
    when="wall.substrate.kind = existing_coated and wall.substrate.lead_tested = no and building.built_year >= limit",
    at="wall.substrate.lead_tested",
    found="wall.substrate.lead_tested",
    limit="old_coating.lead_year",
    basis="osha_lead",
    remedy="Test the coating, or show by its records that it contains no lead, before it is disturbed.",
)

RULE.clause(
    "c",
    STOP,
    "The existing wall is not surveyed for asbestos.",
    when="wall.substrate.kind in {existing_coated, existing_brick} and wall.substrate.asbestos_tested = no",
    basis="osha_asbestos epa_asbestos",
    lift="never",
)

RULE.clause(
    "d",
    CAUTION,
    "The existing coating contains lead.",
    when="wall.substrate.kind = existing_coated and wall.substrate.lead_found = yes",
    basis="osha_lead epa_lead",
    remedy="Only a licensed abatement contractor disturbs it, under the written compliance plan of 29 CFR 1926.62, "
    "certified where 40 CFR 745 or state law requires it: wet methods, containment below, no dry sanding, no open "
    "flame.",
)

RULE.clause(
    "e",
    STOP,
    "The existing wall contains asbestos.",
    when="wall.substrate.kind in {existing_coated, existing_brick} and wall.substrate.asbestos_found = yes",
    basis="osha_asbestos",
    remedy="Have a licensed abatement contractor remove it; or have a licensed professional design a method "
    "that leaves it undisturbed, and submit that as a deviation.",
)
