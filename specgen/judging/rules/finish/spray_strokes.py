"""Passes overlap by half the fan, and one hand sprays both directions.

Why: a fan is thin at its ends. Half of it laid over the pass before gives an even film, while less leaves
stripes and more leaves sags. Flake lies as the hand lays it, so two hands show as two shades.

passes
    spray: {overlap: 50}
    gloss: {same_sprayer: yes}
fails FIN-13a at spray.overlap
    spray: {overlap: 25}
fails FIN-13b at gloss.same_sprayer
    gloss: {same_sprayer: no}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "FIN-13",
    "Pass overlap, and one sprayer for both directions",
    remedy="Overlap by half the fan; one sprayer and one gun spray both directions.",
    steps="primer gloss",
    documents="D08 D12a",
)

RULE.clause(
    "a",
    CAUTION,
    "Passes overlap by {found} % of the fan; half the fan ({wanted} %) gives an even film.",
    when="spray.overlap < limit(spray.overlap_least) or spray.overlap > limit(spray.overlap_most)",
    limit="spray.overlap",
    wanted="limit",
    remedy="Overlap by {spray.overlap} of the fan; release the trigger at the end of each stroke.",
)

RULE.clause(
    "b",
    CAUTION,
    "Two sprayers apply the two directions of the gloss.",
    when="gloss.same_sprayer = no",
    basis="practice",
    step="gloss",
    remedy="Let one sprayer with one gun spray both directions.",
)
