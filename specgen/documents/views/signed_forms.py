"""The forms that were signed: which, for what, when, by whom."""

from collections.abc import Iterable, Iterator
from datetime import date
from typing import NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.records.entry_text import name_criterion
from specgen.model.record import Entry, day_of
from specgen.model.value_text import long_date, words

_NOT = "not recorded"
_MOST_CRITERIA = 3


class _Signed(NamedTuple):
    form: str
    what: str
    day: date | None
    by: str
    outcome: str


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for all that one person signed of one thing on one day."""
    grouped: dict[_Signed, list[str]] = {}
    for signed, of in _list_signed(context):
        grouped.setdefault(signed, []).append(of)
    lines = tuple(
        (
            one.form,
            one.what,
            _join(one, dict.fromkeys(filter(None, of))) or "–",
            long_date(one.day) if one.day else _NOT,
            one.by or _NOT,
            one.outcome,
        )
        for one, of in sorted(grouped.items(), key=lambda pair: (pair[0].form, pair[0].day or date.max))
    )
    return TableView(("Form", "Signed for", "Of", "Date", "By", "Outcome"), lines, (7, 25, 17, 18, 20, 13))


def _join(signed: _Signed, of: Iterable[str]) -> str:
    """Areas behind each other, marks of elevations as spans, of many criteria how many."""
    told = list(of)
    if signed.form == "D10" and len(told) > _MOST_CRITERIA:
        return f"{len(told)} criteria"
    return span_marks(told) if signed.form == "D11" else "; ".join(told)


def _list_signed(context: DocumentContext) -> Iterator[tuple[_Signed, str]]:
    """Each signature with what it is of: a criterion, an area, an elevation."""
    records = context.project.records
    for entry in records.of("result"):
        if entry.get("signed_by") or entry.get("signed_on"):
            passed = {True: "passed", False: "failed"}.get(entry.get("passed"), _NOT)
            signed = _Signed("D10", "Mockup", entry.get("signed_on"), str(entry.get("signed_by") or ""), passed)
            yield signed, name_criterion(context, entry)
    for entry in records.of("inspection"):
        yield _sign(context, "D11", entry, words(str(entry.get("outcome") or _NOT))), str(entry.get("elevation") or "")
    for entry in records.of("release"):
        where = ", ".join(filter(None, (entry.get("elevation"), entry.get("area"))))
        yield _sign(context, "D12d", entry, "released"), where


def _sign(context: DocumentContext, form: str, entry: Entry, outcome: str) -> _Signed:
    """A signature under a step, by the title of it."""
    step = str(entry.get("step") or "")
    known = context.standards.steps.get(step)
    title = known.title if known else words(step)[:1].upper() + words(step)[1:]
    return _Signed(form, title, day_of(entry), str(entry.get("by") or ""), outcome)
