"""The base coat is laid in two passes and keeps within its dry thickness.

Why: the first pass buries the mesh, and only a second one levels what the first leaves. A thin coat
shows the weave and a thick one may crack.

passes
    walls: {W1: {base_coat: {passes: 2, dry_thickness: 1/8 in}}}
fails BAS-01a at walls.W1.base_coat.passes
    walls: {W1: {base_coat: {passes: 1}}}
fails BAS-01b at walls.W1.base_coat.dry_thickness
    walls: {W1: {base_coat: {dry_thickness: 3/64 in}}}
fails BAS-01c at walls.W1.base_coat.dry_thickness
    walls: {W1: {base_coat: {dry_thickness: 5/16 in}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "BAS-01",
    "Base coat passes and thickness",
    remedy="Embed the mesh in the first pass, and level with a second.",
    steps="mesh second_pass",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Base coat passes: {found}; minimum {wanted}, the last one for leveling.",
    when="wall.base_coat.passes < limit",
    limit="base_coat.passes",
)

RULE.clause(
    "b",
    STOP,
    "Base coat dry thickness is {found}; minimum {wanted}, or the mesh shows.",
    when="wall.base_coat.dry_thickness < limit",
    limit="base_coat.dry_thickness_least",
    remedy="Apply the base coat to a minimum dry thickness of {base_coat.dry_thickness_least}.",
)

RULE.clause(
    "c",
    STOP,
    "Base coat dry thickness is {found}; maximum {wanted}, or the base coat cracks.",
    when="wall.base_coat.dry_thickness > limit",
    limit="base_coat.dry_thickness_most",
    remedy="Apply the base coat to a maximum dry thickness of {base_coat.dry_thickness_most}, and correct plane "
    "in the board.",
    why="a base coat that is too thick shrinks and cracks",
)
