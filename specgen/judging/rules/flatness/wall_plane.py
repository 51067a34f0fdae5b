"""The wall keeps within its limit of plane before board is adhered to it.

Why: every layer follows the one beneath it, and a gloss coat shows the last of them. What the wall is out
of plane is cheapest to mend on the bare wall.

passes
    walls: {W1: {substrate: {plane_measured: 1/8 in, plane_limit: 3/16 in}}}
fails PLN-01a at walls.W1.substrate.plane_measured
    walls: {W1: {substrate: {plane_measured: 1/4 in, plane_limit: 3/16 in}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "PLN-01",
    "Wall plane",
    remedy="Correct the substrate before board is adhered; do not build out with base coat.",
    steps="substrate",
    documents="D11",
)

RULE.clause(
    "a",
    STOP,
    "The wall is {found} out of plane under a {straightedge.long} straightedge; maximum {wanted}, as gloss shows more.",
    when="wall.substrate.plane_measured > wall.substrate.plane_limit",
    basis="guide_eifs_p22 practice",
)
