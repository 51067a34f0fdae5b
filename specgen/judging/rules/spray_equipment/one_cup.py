"""The cup time is read in one and the same cup throughout.

Why: dip cups are not made to a uniform specification (ASTM D4212). What flows through one in time may be too
thin or too thick in the next, even where the two bear one number.

passes
    instruments: {CUP-1: {kind: zahn_4_cup}, GM-2: {kind: gloss_meter}}
fails AIR-07a at instruments.CUP-2.kind
    instruments: {CUP-1: {kind: zahn_4_cup}, CUP-2: {kind: zahn_4_cup}}
fails AIR-07b at log.1.cup
    instruments: {CUP-1: {kind: zahn_4_cup}, CUP-2: {kind: zahn_4_cup}}
    log: [{date: 2027-06-14, cup: CUP-1}, {date: 2027-06-15, cup: CUP-2}]
"""

from specgen.judging.entry_view import FoundFact, ask_fact
from specgen.judging.rule import NOTE, Rule, Violations, violation
from specgen.model.absence import Absent, if_given
from specgen.model.project import View, asked_once
from specgen.model.typed_views import Description, Instrument, Number, SiteRecordEntry
from specgen.recording.timeline import order_of

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


@RULE.test(
    "b",
    NOTE,
    (
        "A further cup was used: {found}. Two laboratories with new cups of one set differ by up to {wanted} %, and "
        "cups of two manufacturers may differ by more."
    ),
    at="log.cup",
    limit="cup.between_cups",
    remedy=(
        "Read every pail of a coat in one cup; where cups were changed, read one pail in both and record the "
        "difference."
    ),
)
def further_cup(log: SiteRecordEntry, limit: Number) -> Violations:
    """The first pail of the site record that was read in another cup than the ones before."""
    cup = log.cup
    if ask_fact(log, _FURTHER):
        yield violation(cup.mark, wanted=limit)


@asked_once
def _find_further(project: View) -> dict[int, bool]:
    """True by number for the entries with which each cup but the first came into use."""
    firsts: dict[str, int] = {}
    for entry in sorted((one for one in project.project.records.of("log") if "cup" in one.values), key=order_of):
        firsts.setdefault(entry.values["cup"], entry.number)
    return dict.fromkeys(list(firsts.values())[1:], True)


_FURTHER = FoundFact(lambda project: _find_further(project.root()))
