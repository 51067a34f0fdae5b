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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import equal

RULE = Rule(
    "FIN-04",
    "One tinted primer and two gloss coats, cross-hatched",
    remedy="Correct the build: one tinted primer, two gloss coats, each cross-hatched.",
    steps="primer gloss",
    documents="D08 D13",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The primer is not tinted, so the gloss has no even base.",
    needs="primer.tinted",
    basis="practice",
    step="primer",
)
def untinted(project: Any) -> Iterator[Found]:
    """The primer has no tint."""
    if not project.primer.tinted:
        yield found(project.primer.tinted)


@RULE.clause(
    "b",
    STOP,
    "{found} primer coats are planned; it is {wanted}.",
    needs="primer.coats",
    limit="primer.coats",
    step="primer",
)
def primer_coats(project: Any, limit: Any) -> Iterator[Found]:
    """The number of primer coats is another one."""
    if not equal(project.primer.coats, limit):
        yield found(project.primer.coats, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "{found} gloss coats are planned; it is {wanted}.",
    needs="gloss.coats",
    limit="gloss.coats",
    step="gloss",
)
def gloss_coats(project: Any, limit: Any) -> Iterator[Found]:
    """The number of gloss coats is another one."""
    if not equal(project.gloss.coats, limit):
        yield found(project.gloss.coats, wanted=limit)


@RULE.clause(
    "d",
    STOP,
    "The primer is sprayed {found}; {wanted} is due.",
    needs="primer.pattern",
    limit="primer.pattern",
    step="primer",
)
def primer_pattern(project: Any, limit: Any) -> Iterator[Found]:
    """The primer is sprayed in another pattern."""
    if project.primer.pattern != limit:
        yield found(project.primer.pattern, wanted=limit)


@RULE.clause(
    "e",
    STOP,
    "The gloss is sprayed {found}; {wanted} is due.",
    needs="gloss.pattern",
    limit="gloss.pattern",
    step="gloss",
)
def gloss_pattern(project: Any, limit: Any) -> Iterator[Found]:
    """The gloss is sprayed in another pattern."""
    if project.gloss.pattern != limit:
        yield found(project.gloss.pattern, wanted=limit)
