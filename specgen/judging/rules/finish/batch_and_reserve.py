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
    "One batch per face, with reserve",
    remedy="Use one boxed batch for a face, and keep a reserve of it for recoating.",
    steps="primer gloss",
    documents="D13",
)

RULE.clause(
    "b",
    CAUTION,
    "The primer reserve is {found} %; {wanted} % is usual.",
    when="primer.reserve < limit",
    limit="coat.reserve",
    step="primer",
    remedy="Order {coat.reserve} more primer of the same batch, and keep it for recoating a panel.",
)

RULE.clause(
    "c",
    CAUTION,
    "The gloss reserve is {found} %; {wanted} % is usual.",
    when="gloss.reserve < limit",
    limit="coat.reserve",
    step="gloss",
    remedy="Order {coat.reserve} more gloss of the same batch, and keep it for recoating a panel.",
)
