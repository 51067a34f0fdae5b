"""Sealant is placed at a time when neither it nor the coats spoil one another.

Why: silicone sheds traces of oil onto whatever is near, and a coat sprayed over them draws back in craters.
Any sealant gives off vapor until it has cured, and takes up dust and mist on its skin.

passes
    sealants: {S1: {chemistry: silicone, sequence: after_gloss}}
passes
    sealants: {S1: {chemistry: hybrid, sequence: before_gloss, cure_hours: 72}}
fails SLT-07e at sealants.S1.sequence
    sealants: {S1: {chemistry: silicone, sequence: before_gloss}}
fails SLT-07f at sealants.S1.sequence
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss}}
fails SLT-07g at sealants.S1.cure_hours
    sealants: {S1: {chemistry: polyurethane, sequence: before_gloss, cure_hours: 12}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "SLT-07",
    "Sealant in its turn",
    remedy="Wait (48 to 72 h common); seal after the gloss, unmask first.",
    steps="sealant",
    documents="D08 D14",
)

RULE.clause(
    "e",
    CAUTION,
    "Silicone placed ahead of the spray can spoil the coat: confirm.",
    when="sealant.chemistry = silicone and sealant.sequence = before_gloss",
    basis="memory",
)

RULE.clause(
    "f",
    CAUTION,
    "The sealant goes in ahead of the gloss, and no curing time is planned for it.",
    when="sealant.cure_hours is not given and sealant.sequence = before_gloss",
    basis="practice",
)

RULE.clause(
    "g",
    CAUTION,
    "The sealant cures for {found} h before the gloss is sprayed; {wanted} h is the usual minimum, and the sealant "
    "manufacturer's time governs.",
    when="sealant.sequence = before_gloss and sealant.cure_hours < limit",
    limit="sealant.before_gloss",
)
