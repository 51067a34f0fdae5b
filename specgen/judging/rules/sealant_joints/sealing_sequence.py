"""Sealant is placed at a time when neither it nor the coats spoil one another.

Why: silicone sheds traces of oil onto whatever is near, and a coat sprayed over them draws back in craters.

passes
    sealants: {S1: {chemistry: silicone, sequence: after_gloss}}
fails SLT-07e at sealants.S1.sequence
    sealants: {S1: {chemistry: silicone, sequence: before_gloss}}
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
