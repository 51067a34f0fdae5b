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
    "Drying time of each coat",
    remedy="Allow the full drying time, and more in cool or damp air.",
    steps="boards second_pass smoothing_2 primer gloss",
    documents="D08 D14",
)

RULE.clause(
    "a",
    STOP,
    "The adhesive cures {found} h; minimum {wanted} h.",
    when="wall.attachment.cure_hours < limit",
    limit="adhesive.cure",
    step="boards",
    remedy=("Do not rasp or coat the boards until the adhesive has cured {adhesive.cure}; longer in cool or damp air."),
)

RULE.clause(
    "b",
    STOP,
    "The base coat cures {found} h; minimum {wanted} h.",
    when="wall.base_coat.cure_hours < limit",
    limit="base_coat.cure",
    step="second_pass",
    remedy="Do not apply smoothing until the base coat has cured {base_coat.cure}; longer in cool or damp air.",
)

RULE.clause(
    "c",
    STOP,
    "The smoothing dries {found} h; minimum {wanted} h.",
    when="smoothing.dry_hours < limit",
    limit="smoothing.dry",
    step="smoothing_2",
    remedy="Do not prime until the smoothing has dried {smoothing.dry}; longer in cool or damp air.",
)

RULE.clause(
    "d",
    STOP,
    "The primer dries {found} h; minimum {wanted} h.",
    when="primer.dry_hours < limit",
    limit="primer.dry",
    step="primer",
    remedy="Do not apply gloss until the primer has dried {primer.dry}; longer in cool or damp air.",
)

RULE.clause(
    "e",
    STOP,
    "The gloss dries {found} h; minimum {wanted} h.",
    when="gloss.dry_hours < limit",
    limit="gloss.dry",
    step="gloss",
    remedy="Do not recoat, wet, or seal until the gloss has dried {gloss.dry}; longer in cool or damp air.",
)
