"""A coat that gives off little heat is judged by the hotter of two heat sums.

Why: flakes throw sun back, and also keep in the heat the wall has taken up. Such a face runs hotter than a
plain one of the same reflectance.

passes
    colors: {C1: {emittance: 0.75}}
fails HEA-04a at colors.C1.emittance
    colors: {C1: {emittance: 0.60}}
"""

from specgen.judging.rule import NOTE, Rule

RULE = Rule(
    "HEA-04",
    "Low emittance of a metallic finish",
    remedy="See the face temperatures in D06.",
    steps="gloss",
    documents="D06",
)

RULE.clause(
    "a",
    NOTE,
    "Emittance is {found} (low), so the face runs hotter than its reflectance suggests.",
    when="color.emittance < limit",
    basis="computed",
    limit="color.emittance_usual",
)
