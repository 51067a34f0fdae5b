"""Board and base coat are those of the tested system.

Why: Fire, impact and weather tests were made on EPS with a polymer-based coat; another board is another system.

passes
    {walls: {W1: {insulation: {kind: eps}, base_coat: {class: PB}}}}
fails INS-02a at walls.W1.insulation.kind
    {walls: {W1: {insulation: {kind: xps}}}}
fails INS-02b at walls.W1.base_coat.class
    {walls: {W1: {base_coat: {class: PM}}}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "INS-02",
    "Board and base coat of the tested system",
    remedy="Reports and source's letter for this very build-up, declared as deviation.",
    steps="boards",
    documents="D03 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Insulation {found} lies outside the tested EPS system.",
    needs="walls.*.insulation.kind",
    each="walls",
    basis="catalog",
)
def other_board(wall: Any) -> Iterator[Found]:
    """The board is not EPS."""
    if wall.insulation.kind in ("xps", "polyiso", "phenolic"):
        yield found(wall.insulation.kind)


@RULE.clause(
    "b",
    CAUTION,
    "Base coat class {found} lies outside the tested class PB system.",
    needs="walls.*.base_coat.class",
    each="walls",
    basis="catalog",
)
def other_base(wall: Any) -> Iterator[Found]:
    """The base coat is not of class PB."""
    if wall.base_coat["class"] != "PB":
        yield found(wall.base_coat["class"])
