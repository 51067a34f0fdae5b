"""Local code lets the board stand without fasteners.

Why: an official who wants fasteners and a finish that shows them cannot both be served. The answer
is needed before the design goes on, for it may change the finish.

passes
    code: {local_fasteners_required: no}
fails ATT-03a at code.local_fasteners_required
    code: {local_fasteners_required: yes}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-03",
    "No fasteners asked for by local code",
    remedy="Written alternative from the building official before design goes on, else another finish.",
    steps="site_conditions",
    documents="D03 D02",
)

RULE.clause(
    "a",
    STOP,
    "Local code wants fasteners where this finish forbids them.",
    when="code.local_fasteners_required = yes",
    basis="city_fasteners practice",
)
