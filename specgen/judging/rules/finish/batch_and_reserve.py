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

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "FIN-09",
    "One batch for a face, and a reserve of it",
    remedy="One boxed batch per face; keep reserve for recoating a panel.",
    steps="primer gloss",
    documents="D13",
)

RULE.clause(
    "b",
    CAUTION,
    "The reserve of primer is {found} %; {wanted} % is usual.",
    when="primer.reserve < limit",
    limit="coat.reserve",
    step="primer",
)

RULE.clause(
    "c",
    CAUTION,
    "The reserve of gloss is {found} %; {wanted} % is usual.",
    when="gloss.reserve < limit",
    limit="coat.reserve",
    step="gloss",
)
