"""The finish is one tinted primer and two gloss coats, each sprayed cross-hatch.

Why: the gloss coat hides little, so the tinted primer gives it an even ground. Strokes that cross
lay the flakes evenly, where one-way strokes leave stripes.

passes
    primer: {tinted: yes, coats: 1, pattern: cross_hatch}
    gloss: {coats: 2, pattern: cross_hatch}
fails FIN-04a at primer.tinted
    primer: {tinted: no}
fails FIN-04b at primer.coats
    primer: {coats: 2}
fails FIN-04c at gloss.coats
    gloss: {coats: 1}
fails FIN-04d at primer.pattern
    primer: {pattern: one_way}
fails FIN-04e at gloss.pattern
    gloss: {pattern: random}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "FIN-04",
    "One tinted primer and two gloss coats, cross-hatched",
    remedy="Correct the build: one tinted primer, two gloss coats, each cross-hatched.",
    steps="primer gloss",
    documents="D08 D13",
)

RULE.clause(
    "a",
    STOP,
    "The primer is not tinted, so the gloss has no even base.",
    when="primer.tinted = no",
    basis="practice",
    step="primer",
)

RULE.clause(
    "b",
    STOP,
    "Primer coats planned: {found}; required: {wanted}.",
    when="primer.coats != limit",
    limit="primer.coats",
    step="primer",
)

RULE.clause(
    "c",
    STOP,
    "Gloss coats planned: {found}; required: {wanted}.",
    when="gloss.coats != limit",
    limit="gloss.coats",
    step="gloss",
)

RULE.clause(
    "d",
    STOP,
    "The primer is sprayed {found}; {wanted} is due.",
    when="primer.pattern != limit",
    limit="primer.pattern",
    step="primer",
)

RULE.clause(
    "e",
    STOP,
    "The gloss is sprayed {found}; {wanted} is due.",
    when="gloss.pattern != limit",
    limit="gloss.pattern",
    step="gloss",
)
