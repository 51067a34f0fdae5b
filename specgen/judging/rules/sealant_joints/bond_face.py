"""Sealant is bonded to base coat or primer, never to the gloss coat.

Why: a sealant pulls on its bond face at every movement of the joint. A film of gloss on the return
lets go first and leaves the joint open.

passes
    joints: {J1: {bond_face: primer}}
fails SLT-05a at joints.J1.bond_face
    joints: {J1: {bond_face: gloss}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "SLT-05",
    "No sealant on the gloss coat",
    remedy="Mask returns: primer only, no gloss.",
    steps="primer gloss sealant",
    documents="D07 D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Sealant may never be bonded to the gloss coat.",
    when="joint.bond_face = gloss",
    basis="practice guide_eifs_p24",
    step="gloss",
)
