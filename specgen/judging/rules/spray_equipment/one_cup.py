"""The cup time is read in one and the same cup throughout.

Why: cups of one number are made within wide bounds. What flows through one in time may be too thin or too
thick in the next.

passes
    instruments: {CUP-1: {kind: zahn_4_cup}, GM-2: {kind: gloss_meter}}
fails AIR-07a at instruments.CUP-2.kind
    instruments: {CUP-1: {kind: zahn_4_cup}, CUP-2: {kind: zahn_4_cup}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import NOTE, Found, Rule, found

RULE = Rule(
    "AIR-07",
    "One cup throughout",
    remedy="Same cup throughout.",
    steps="setup",
    documents="D12b",
    manual=__doc__,
)

CUPS = ("zahn_4_cup", "other_cup")


@RULE.clause(
    "a",
    NOTE,
    "Two cups may differ by a third of the reading, as wide as the whole 25 to 35 s window.",
    needs="instruments.*.kind",
    limit="cup.between_cups",
)
def several_cups(project: Any) -> Iterator[Found]:
    """More than one cup is on the list."""
    possible = [one for one in project.instruments if one.get("kind") in (None, *CUPS)]
    if len(possible) > 1:
        known = [one for one in possible if one.get("kind") in CUPS]
        cups = known if len(known) > 1 else [one for one in possible if one.kind in CUPS]
        yield found(tuple(cup.mark for cup in cups), at=(*cups[1].path, "kind"))
