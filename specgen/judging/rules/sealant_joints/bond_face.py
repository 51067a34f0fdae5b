"""Sealant is bonded to base coat or primer, never to the gloss coat.

Why: a sealant pulls on its bond face at every movement of the joint. A film of gloss on the return
lets go first and leaves the joint open; a smoothing coat is as weak, unless a report shows that it holds.

passes
    joints: {J1: {bond_face: primer}}
fails SLT-05a at joints.J1.bond_face
    joints: {J1: {bond_face: gloss}}
fails SLT-05c at joints.J1.bond_face
    sealants: {S1: {reported_face: primer}}
    joints: {J1: {bond_face: smoothing_coat}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "SLT-05",
    "No sealant on gloss",
    remedy="Mask the joint returns after the primer, and keep gloss off every bond face.",
    steps="primer gloss sealant",
    documents="D07 D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Sealant is bonded to the gloss coat, which lets go before the sealant does.",
    when="joint.bond_face = gloss",
    basis="practice guide_eifs_p24",
    step="gloss",
)

RULE.clause(
    "c",
    STOP,
    "Sealant is bonded to the smoothing coat, and no adhesion report names that face.",
    when="joint.sealant.reported_face != smoothing_coat or joint.sealant.adhesion_report is not given",
    under="joint.bond_face = smoothing_coat",
    at="joint.bond_face",
    found="joint.bond_face",
    wanted="",
    basis="practice",
    step="sealant",
    remedy="Bond the sealant to the tinted primer or the base coat, as the sealant manufacturer requires, or "
    "submit an adhesion report on the smoothing coat.",
)
