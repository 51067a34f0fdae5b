"""A report shows that the sealant holds on the very face it will be bonded to, dry and wet.

Why: a sealant that grips one coat peels off another. A report on some other face, or in the dry only, says
nothing of this joint after its first winter.

passes
    package: {purpose: mockup_submittal}
    sealants: {S1: {adhesion_report: A10, reported_conditions: [dry, wet], reported_face: primer}}
    joints: {J1: {bond_face: primer}}
    attachments: {A10: {kind: test_report}}
fails SLT-06a at sealants.S1.adhesion_report
    package: {purpose: mockup_submittal}
    sealants: {S1: {c920_class: 50}}
fails SLT-06b at sealants.S1.reported_conditions
    sealants: {S1: {reported_conditions: [dry]}}
fails SLT-06c at joints.J1.bond_face
    sealants: {S1: {reported_face: base_coat}}
    joints: {J1: {bond_face: primer}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, lacks, violation
from specgen.model.typed_views import Sealant

RULE = Rule(
    "SLT-06",
    "Sealant adhesion report",
    remedy="Submit an adhesion test of this sealant in EIFS joints, on the bond face of this project.",
    steps="sealant",
    documents="D02 D18",
)

RULE.clause(
    "a",
    STOP,
    "No report shows the adhesion of this sealant to this build-up.",
    when="package.purpose != design_draft and sealant.adhesion_report is not given",
    basis="guide_eifs_p24 astm_c1382_memory",
)


@RULE.test(
    "b",
    CAUTION,
    "Adhesion is reported for these conditions only: {found}; dry and wet are usual.",
    at="sealant.reported_conditions",
    basis="astm_c1382_memory",
    remedy="Submit adhesion results for both dry and wet conditions.",
)
def dry_or_wet_left_out(sealant: Sealant) -> Violations:
    """The report leaves out the dry or the wet condition."""
    if lacks(sealant.reported_conditions, ("dry", "wet")):
        yield violation(sealant.reported_conditions)


RULE.clause(
    "c",
    STOP,
    "Adhesion was tested on {found}; the bond face of this joint is {wanted}.",
    when="joint.sealant.reported_face != joint.bond_face",
    at="joint.bond_face",
    basis="guide_eifs_p24 astm_c1382_memory",
    remedy="Test adhesion on {wanted}, or mask the joint back to {found}.",
)
