"""Primer and gloss are read in one kind of cup, and thinned into one window of cup time.

Why: thick material spits and leaves orange peel, thin material runs and lets the flakes drift. Only one
cup and one window make every pail like that of the mockup.

passes
    primer: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
    gloss: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
fails FIN-05a at primer.cup
    primer: {cup: ford_4}
fails FIN-05b at gloss.cup
    gloss: {cup: zahn_2}
fails FIN-05c at primer.cup_least
    primer: {cup_least: 20 s}
fails FIN-05d at gloss.cup_least
    gloss: {cup_least: 20 s}
fails FIN-05e at primer.cup_most
    primer: {cup_most: 40 s}
fails FIN-05f at gloss.cup_most
    gloss: {cup_most: 40 s}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import less, more

RULE = Rule(
    "FIN-05",
    "One cup and one window of cup time",
    remedy="Thin or warm to 25 to 35 s; another cup only by source's letter.",
    steps="setup primer gloss",
    documents="D08 D12b",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The primer is read in {found}; {wanted} is due.",
    needs="primer.cup",
    limit="primer.cup",
    step="primer",
)
def primer_cup(project: Any, limit: Any) -> Iterator[Found]:
    """The primer is read in another cup."""
    if project.primer.cup != limit:
        yield found(project.primer.cup, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "The gloss is read in {found}; {wanted} is due.",
    needs="gloss.cup",
    limit="gloss.cup",
    step="gloss",
)
def gloss_cup(project: Any, limit: Any) -> Iterator[Found]:
    """The gloss is read in another cup."""
    if project.gloss.cup != limit:
        yield found(project.gloss.cup, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "The least cup time of the primer is {found}; it is {wanted}.",
    needs="primer.cup_least",
    limit="primer.cup_least",
    step="primer",
)
def primer_too_thin(project: Any, limit: Any) -> Iterator[Found]:
    """The window of the primer opens too early."""
    if less(project.primer.cup_least, limit):
        yield found(project.primer.cup_least, wanted=limit)


@RULE.clause(
    "d",
    STOP,
    "The least cup time of the gloss is {found}; it is {wanted}.",
    needs="gloss.cup_least",
    limit="gloss.cup_least",
    step="gloss",
)
def gloss_too_thin(project: Any, limit: Any) -> Iterator[Found]:
    """The window of the gloss opens too early."""
    if less(project.gloss.cup_least, limit):
        yield found(project.gloss.cup_least, wanted=limit)


@RULE.clause(
    "e",
    STOP,
    "The most cup time of the primer is {found}; it is {wanted}.",
    needs="primer.cup_most",
    limit="primer.cup_most",
    step="primer",
)
def primer_too_thick(project: Any, limit: Any) -> Iterator[Found]:
    """The window of the primer closes too late."""
    if more(project.primer.cup_most, limit):
        yield found(project.primer.cup_most, wanted=limit)


@RULE.clause(
    "f",
    STOP,
    "The most cup time of the gloss is {found}; it is {wanted}.",
    needs="gloss.cup_most",
    limit="gloss.cup_most",
    step="gloss",
)
def gloss_too_thick(project: Any, limit: Any) -> Iterator[Found]:
    """The window of the gloss closes too late."""
    if more(project.gloss.cup_most, limit):
        yield found(project.gloss.cup_most, wanted=limit)
