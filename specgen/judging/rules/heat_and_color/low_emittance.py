"""A coat that gives off little heat is judged by the hotter of two heat sums.

Why: flakes throw sun back, and also keep in the heat the wall has taken up. Such a face runs hotter than a
plain one of the same reflectance.

passes
    colors: {C1: {emittance: 0.75}}
fails HEA-04a at colors.C1.emittance
    colors: {C1: {emittance: 0.60}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import NOTE, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "HEA-04",
    "Low emittance of a flake finish",
    remedy="Read the heat calculation.",
    steps="gloss",
    documents="D06",
    manual=__doc__,
)


@RULE.clause(
    "a",
    NOTE,
    "An emittance of {found} runs hotter than its reflectance suggests, so both heat methods are printed and "
    "the hotter governs.",
    each="colors",
    needs="colors.*.emittance",
    limit="color.emittance_usual",
    basis="computed",
)
def low_emittance(color: Any, limit: Any) -> Iterator[Found]:
    """The coat gives off less heat than a plain one."""
    if less(color.emittance, limit):
        yield found(color.emittance, wanted=limit)
