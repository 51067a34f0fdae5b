"""Sealant is placed at a time when neither it nor the coats spoil one another.

Why: silicone sheds traces of oil onto whatever is near, and a coat sprayed over them draws back in craters.
Any sealant gives off vapor until it has cured, and takes up dust and mist on its skin.

passes
    sealants: {S1: {chemistry: silicone, sequence: after_gloss}}
passes
    sealants: {S1: {chemistry: hybrid, sequence: before_gloss, cure_hours: 72}}
passes
    primer: {dry_hours: 12}
    schedule: {gaps: [{from_step: primer, to_step: sealant, hours: 48}]}
fails SLT-07a at schedule.gaps.0.hours
    schedule: {gaps: [{from_step: second_pass, to_step: sealant, hours: 12}]}
fails SLT-07b at schedule.gaps.0.hours
    primer: {dry_hours: 12}
    schedule: {gaps: [{from_step: primer, to_step: sealant, hours: 4}]}
fails SLT-07e at sealants.S1.sequence
    sealants: {S1: {chemistry: silicone, sequence: before_gloss}}
fails SLT-07f at sealants.S1.sequence
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss}}
fails SLT-07g at sealants.S1.cure_hours
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss, cure_hours: 12}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "SLT-07",
    "Sealant sequence",
    remedy="Install the sealant after the gloss, with the masking removed first.",
    steps="sealant",
    documents="D08 D14",
)

RULE.clause(
    "a",
    CAUTION,
    "Sealant is planned {found} h after the base coat; usual minimum {wanted} h: confirm.",
    when="planned_wait.from_step = second_pass and planned_wait.to_step = sealant and planned_wait.hours < limit",
    limit="sealant.after_base_coat",
    remedy="Wait a minimum of {sealant.after_base_coat}, or the sealant manufacturer's time where that is longer.",
    why="sealant does not bond to a base coat that still gives off water",
)

RULE.clause(
    "b",
    STOP,
    "Sealant is planned {found} h after the primer; the primer dries for a minimum of {wanted} h.",
    when="planned_wait.from_step = primer and planned_wait.to_step = sealant and planned_wait.hours < primer.dry_hours",
    basis="practice",
    remedy="Plan the sealant after the drying time of the primer.",
    why="sealant does not bond to a primer that still gives off water",
)

RULE.clause(
    "e",
    CAUTION,
    "Silicone is installed before the gloss and can cause craters in it.",
    when="sealant.chemistry = silicone and sealant.sequence = before_gloss",
    basis="memory",
)

RULE.clause(
    "f",
    CAUTION,
    "Sealant is installed before the gloss, and no cure time is planned for it.",
    when="sealant.cure_hours is not given and sealant.sequence = before_gloss",
    basis="practice",
    remedy="Plan the sealant manufacturer's cure time, usually minimum {sealant.before_gloss}, or install the "
    "sealant after the gloss.",
    why="gloss over a sealant that has not cured cracks as the sealant shrinks",
)

RULE.clause(
    "g",
    CAUTION,
    "Sealant cures for {found} h before the gloss is sprayed; usual minimum {wanted} h, and the sealant "
    "manufacturer's time governs.",
    when="sealant.sequence = before_gloss and sealant.cure_hours < limit",
    limit="sealant.before_gloss",
    remedy="Wait a minimum of {sealant.before_gloss} or the sealant manufacturer's cure time before the gloss, "
    "or install the sealant after it.",
    why="gloss over a sealant that has not cured cracks as the sealant shrinks",
)
