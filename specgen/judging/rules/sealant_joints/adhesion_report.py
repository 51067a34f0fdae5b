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
from specgen.model.absence import read_all
from specgen.model.typed_views import Joint, Sealant

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
    conditions = sealant.reported_conditions
    if lacks(conditions, ("dry", "wet")):
        yield violation(conditions, say="" if conditions else _NO_CONDITION)


_NO_CONDITION = "The adhesion report names no condition; dry and wet are usual."
# The face under each coat: masking leaves a deeper one bare, and a sealant primer is applied to the base coat.
_DEPTHS = {"base_coat": 0, "sealant_primer_on_base_coat": 0, "smoothing_coat": 1, "primer": 2, "gloss": 3}


@RULE.test(
    "c",
    STOP,
    "Adhesion was tested on {found}; the bond face of this joint is {wanted}.",
    at="joint.bond_face",
    basis="guide_eifs_p24 astm_c1382_memory",
    remedy="Test adhesion on {wanted}.",
)
def other_face(joint: Joint) -> Violations:
    """The report tells of another face than the bond face of the joint."""
    tested, face = read_all(lambda: joint.sealant.reported_face, lambda: joint.bond_face)
    if tested != face:
        yield violation(tested, wanted=face, remedy=_tell_way_out(tested, face))


def _tell_way_out(tested: str, face: str) -> str:
    """A test of the bond face, unless that is gloss; masking where the face tested lies under it."""
    ways = [] if face == "gloss" else ["test adhesion on {wanted}"]
    if _DEPTHS[tested] < _DEPTHS[face]:
        primed = tested == "sealant_primer_on_base_coat"
        back = "base coat and apply the sealant primer of the report" if primed else "{found}"
        ways.append(f"mask the joint back to {back}")
    told = ", or ".join(ways)
    return f"{told[0].upper()}{told[1:]}."
