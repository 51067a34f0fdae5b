"""Local code lets the board stand without fasteners.

Why: an official who wants fasteners and a finish that shows them cannot both be served. The answer
is needed before the design goes on, for it may change the finish.

passes
    code: {local_fasteners_required: no}
fails ATT-03a at code.local_fasteners_required
    code: {local_fasteners_required: yes}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found

RULE = Rule(
    "ATT-03",
    "No fasteners asked for by local code",
    remedy="Written alternative from the building official before design goes on, else another finish.",
    steps="site_conditions",
    documents="D03 D02",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Local code wants fasteners where this finish forbids them.",
    needs="code.local_fasteners_required",
    basis="city_fasteners practice",
)
def fasteners_wanted(project: Any) -> Iterator[Found]:
    """Local code asks for fasteners through the board."""
    if project.code.local_fasteners_required:
        yield found(project.code.local_fasteners_required)
