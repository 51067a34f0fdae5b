"""Every coat has its drying time before the next goes on.

Why: water shut in by the next coat comes out later as blisters, dull patches or a soft film. The
hours given are the least; cool or damp weather asks for more.

passes
    smoothing: {dry_hours: 24}
    primer: {dry_hours: 12}
    gloss: {dry_hours: 24}
fails FIN-03a at walls.W1.attachment.cure_hours
    walls: {W1: {attachment: {cure_hours: 12}}}
fails FIN-03b at walls.W1.base_coat.cure_hours
    walls: {W1: {base_coat: {cure_hours: 16}}}
fails FIN-03c at smoothing.dry_hours
    smoothing: {dry_hours: 12}
fails FIN-03d at primer.dry_hours
    primer: {dry_hours: 4}
fails FIN-03e at gloss.dry_hours
    gloss: {dry_hours: 12}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "FIN-03",
    "Drying time for every coat",
    remedy="Restore it; longer if cool or damp.",
    steps="boards second_pass smoothing_2 primer gloss",
    documents="D08 D14",
)

RULE.clause(
    "a",
    STOP,
    "Adhesive is given {found} h; {wanted} h is the least.",
    when="wall.attachment.cure_hours < limit",
    limit="adhesive.cure",
    step="boards",
)

RULE.clause(
    "b",
    STOP,
    "Base coat is given {found} h; {wanted} h is the least.",
    when="wall.base_coat.cure_hours < limit",
    limit="base_coat.cure",
    step="second_pass",
)

RULE.clause(
    "c",
    STOP,
    "Smoothing is given {found} h; {wanted} h is the least.",
    when="smoothing.dry_hours < limit",
    limit="smoothing.dry",
    step="smoothing_2",
)

RULE.clause(
    "d",
    STOP,
    "Primer is given {found} h; {wanted} h is the least.",
    when="primer.dry_hours < limit",
    limit="primer.dry",
    step="primer",
)

RULE.clause(
    "e",
    STOP,
    "Gloss is given {found} h; {wanted} h is the least.",
    when="gloss.dry_hours < limit",
    limit="gloss.dry",
    step="gloss",
)
