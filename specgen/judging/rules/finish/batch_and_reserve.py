"""Primer and gloss of the same batch are kept back for recoating a panel.

Why: no second batch of a flake finish looks like the first. A panel damaged later is recoated from what
was kept, or it shows for good.

passes
    primer: {reserve: 10}
    gloss: {reserve: 10}
fails FIN-09b at primer.reserve
    primer: {reserve: 5}
fails FIN-09c at gloss.reserve
    gloss: {reserve: 0}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "FIN-09",
    "One batch for a face, and a reserve of it",
    remedy="One boxed batch per face; keep reserve for recoating a panel.",
    steps="primer gloss",
    documents="D13",
    manual=__doc__,
)


@RULE.clause(
    "b",
    CAUTION,
    "The reserve of primer is {found} %; {wanted} % is usual.",
    needs="primer.reserve",
    limit="coat.reserve",
    step="primer",
)
def little_primer_kept(project: Any, limit: Any) -> Iterator[Found]:
    """Less primer than usual is kept."""
    if less(project.primer.reserve, limit):
        yield found(project.primer.reserve, wanted=limit)


@RULE.clause(
    "c",
    CAUTION,
    "The reserve of gloss is {found} %; {wanted} % is usual.",
    needs="gloss.reserve",
    limit="coat.reserve",
    step="gloss",
)
def little_gloss_kept(project: Any, limit: Any) -> Iterator[Found]:
    """Less gloss than usual is kept."""
    if less(project.gloss.reserve, limit):
        yield found(project.gloss.reserve, wanted=limit)
