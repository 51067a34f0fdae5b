"""Sealant comes at its time in the order of work.

Why: Sealant sprayed over, or laid on a wet film, spoils both.

passes
    {sealants: {S1: {sequence: after_gloss, chemistry: silicone}}}
fails SLT-07e at sealants.S1.chemistry
    {sealants: {S1: {sequence: before_gloss, chemistry: silicone}}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import CAUTION, Found, Rule, found
from ...settling import every

RULE = Rule(
    "SLT-07",
    "Sealant in the order of work",
    remedy="Wait (48 to 72 h common); seal after the gloss, unmask first.",
    steps="sealant",
    documents="D08 D14",
    manual=__doc__,
)


@RULE.clause(
    "e",
    CAUTION,
    "Silicone placed ahead of the spray can spoil the coat: confirm.",
    needs="sealants.*.sequence sealants.*.chemistry",
    each="sealants",
    basis="memory",
)
def silicone_first(sealant: Any) -> Iterator[Found]:
    """Silicone lies in reach of the spray."""
    if every(lambda: sealant.sequence == "before_gloss", lambda: sealant.chemistry == "silicone"):
        yield found()
