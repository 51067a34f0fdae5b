"""The cup time is read in one and the same cup throughout.

Why: dip cups are not made to a uniform specification (ASTM D4212). What flows through one in time may be too
thin or too thick in the next, even where the two bear one number.

passes
    instruments: {CUP-1: {kind: zahn_4_cup}, GM-2: {kind: gloss_meter}}
fails AIR-07a at instruments.CUP-2.kind
    instruments: {CUP-1: {kind: zahn_4_cup}, CUP-2: {kind: zahn_4_cup}}
"""

from specgen.judging.rule import NOTE, Rule, Violations, violation
from specgen.model.absence import Absent, if_given
from specgen.model.typed_views import Description, Instrument, Number

RULE = Rule(
    "AIR-07",
    "One viscosity cup throughout",
    remedy="Use one numbered cup from the mockup to the last pail.",
    steps="setup",
    documents="D12b",
)

CUPS = ("zahn_4_cup", "iso_cup", "other_cup")


@RULE.test(
    "a",
    NOTE,
    (
        "Viscosity cups are not uniform: two laboratories with new cups of one set differ by up to {wanted} "
        "%, and cups of two manufacturers may differ by more."
    ),
    at="instruments.*.kind",
    limit="cup.between_cups",
)
def several_cups(project: Description, limit: Number) -> Violations:
    """More than one cup is on the list."""
    known = [one for one in project.instruments if _kind(one) in CUPS]
    unknown = [one for one in project.instruments if _kind(one) is None]
    if len(known) < 2 <= len(known) + len(unknown):
        raise Absent(*((*one.path, "kind") for one in unknown))
    if len(known) > 1:
        yield violation(tuple(cup.mark for cup in known), wanted=limit, at=(*known[1].path, "kind"))


def _kind(instrument: Instrument) -> str | None:
    return if_given(lambda: instrument.kind)
