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
    "Base coat in two passes, within its thickness",
    remedy="Two passes within {base_coat.dry_thickness_least} to {base_coat.dry_thickness_most}.",
    steps="mesh second_pass",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "The base coat has {found} pass and lacks its leveling pass; {wanted} are due.",
    when="wall.base_coat.passes < limit",
    limit="base_coat.passes",
)

RULE.clause(
    "b",
    STOP,
    "The base coat is {found} thick when dry; {wanted} is the least.",
    when="wall.base_coat.dry_thickness < limit",
    limit="base_coat.dry_thickness_least",
)

RULE.clause(
    "c",
    STOP,
    "The base coat is {found} thick when dry; {wanted} is the most.",
    when="wall.base_coat.dry_thickness > limit",
    limit="base_coat.dry_thickness_most",
)
