"""A report shows that the sealant holds on the face it will stick to.

Why: A sealant lets go of the film it was never tested on.

passes
    {sealants: {S1: {reported_face: primer, reported_conditions: [dry, wet]}}, joints: {J1: {bond_face: primer}}}
fails SLT-06a at sealants.S1.adhesion_report
    {package: {purpose: mockup_submittal}, sealants: {S1: {modulus: low}}}
fails SLT-06b at sealants.S1.reported_conditions
    {sealants: {S1: {reported_conditions: [dry, frozen]}}}
fails SLT-06c at joints.J1.bond_face
    {sealants: {S1: {reported_face: base_coat}}, joints: {J1: {bond_face: primer}}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import CAUTION, STOP, Found, Rule, draft, found, lacks

RULE = Rule(
    "SLT-06",
    "Adhesion of the sealant",
    remedy="Test of adhesion in EIFS joints on that face; else mask back to the tested one.",
    steps="sealant",
    documents="D02 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "No report shows that this sealant holds on this build-up.",
    needs="package.purpose sealants.*.adhesion_report",
    each="sealants",
    basis="astm_c1382_memory",
)
def no_report(sealant: Any, project: Any) -> Iterator[Found]:
    """No adhesion report is named."""
    if not draft(project) and sealant.get("adhesion_report") is None:
        yield found()


@RULE.clause(
    "b",
    CAUTION,
    "Adhesion was reported for {found} only; dry and wet are usual: confirm.",
    needs="sealants.*.reported_conditions",
    each="sealants",
    basis="memory",
)
def dry_only(sealant: Any) -> Iterator[Found]:
    """Dry and wet were not both tested."""
    if lacks(sealant.reported_conditions, ("dry", "wet")):
        yield found(sealant.reported_conditions)


@RULE.clause(
    "c",
    STOP,
    "Adhesion was tested on {found}; this joint has {wanted} as its bond face.",
    needs="sealants.*.reported_face joints.*.bond_face",
    each="joints",
    basis="astm_c1382_memory",
)
def other_face(joint: Any) -> Iterator[Found]:
    """The face tested is not the face of the joint."""
    if joint.sealant.reported_face != joint.bond_face:
        yield found(joint.sealant.reported_face, wanted=joint.bond_face)
