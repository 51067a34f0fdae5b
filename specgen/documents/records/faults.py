"""The nonconformances of a site record by their clause: what all of them share is told once."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import Record
from specgen.documents.records.entry_text import name_criterion, tell_face, tell_place, tell_when
from specgen.documents.records.filling import OUTSIDE
from specgen.documents.views.findings import cite_basis
from specgen.judging.registry import load_rules
from specgen.model.block import Blank, CheckBox
from specgen.model.record_judgment import Nonconformance, ReadingState
from specgen.model.value_text import count, long_date, words
from specgen.reading.records.row_names import name_answer_row
from specgen.recording.mockup_results import name_line

_NONE, _DASH = "not recorded", "–"
# What differs from one entry to the next in what a clause says: its figures.
_FIGURES = re.compile(r"\d[\d.,/-]*")
_HEADER = ("No.", "Elevation, area, step", "Date, time", "Reading", "Disposition", "By, date")
_WIDTHS = (6, 18, 16, 18, 23, 19)


@dataclass(frozen=True, kw_only=True)
class Fault(Record):
    """All nonconformances of one clause; what is empty is told line by line."""

    code: str
    title: str  # of its rule
    severity: str
    message: str
    limit: str
    sources: tuple[Any, ...]  # as documents cite them
    remedy: str
    lifted_by: str  # the deviation that lifts it; empty for none
    count: int
    lines: TableView


def list_faults(context: DocumentContext) -> tuple[Fault, ...]:
    """The clauses that fired, in the order of their first nonconformance."""
    grouped: dict[str, list[Nonconformance]] = {}
    for one in context.recorded.nonconformances:
        grouped.setdefault(one.code, []).append(one)
    titles = {rule.code: rule.title for rule in load_rules()}
    return tuple(_make_fault(context, titles.get(code[:-1], code), found) for code, found in grouped.items())


def tell_counts(context: DocumentContext) -> dict[str, str]:
    """The names of templates for how many nonconformances there are, and how the readings end, in words."""
    recorded = context.recorded
    told = (f"{recorded.counts.get(state, 0)} {words(state.value)}" for state in ReadingState)
    every = sum(recorded.counts.values())
    return {
        "nonconformance_count": count(len(recorded.nonconformances), "nonconformance"),
        "reading_counts": f"Of {count(every, 'reading')}: {', '.join(told)}" if every else "No reading was judged",
    }


def name_field(context: DocumentContext, one: Nonconformance) -> str:
    """What was read, in words; empty where the clause reads no field of the entry alone."""
    field = context.project.schema.fields.get((one.entry.collection, one.field.rpartition(".")[2]))
    return field.label if field is not None else ""


def _make_fault(context: DocumentContext, title: str, found: list[Nonconformance]) -> Fault:
    found = [_write_percent(context, one) for one in found]
    message, limit, remedy = (_share(getattr(one, name) for one in found) for name in ("message", "wanted", "remedy"))
    first = found[0]
    if not message and _share(_FIGURES.sub("", one.message) for one in found):
        message = f"{OUTSIDE}\u00a0{first.number}: {first.message}"  # the others differ in what each line tells
    first_of: dict[str, int] = {}
    lines = tuple(
        (*_set_line(context, one, not message, not limit, not remedy), *_set_disposition(context, one, first_of))
        for one in found
    )
    return Fault(
        code=first.code,
        title=title,
        severity=first.severity.value,
        message=message,
        limit=limit,
        sources=tuple(dict.fromkeys(cite_basis(context, first.code, source) for source in first.basis.sources)),
        remedy=remedy,
        lifted_by=_share(one.lifted_by or "" for one in found),
        count=len(found),
        lines=TableView(_HEADER, lines, _WIDTHS),
    )


def _write_percent(context: DocumentContext, one: Nonconformance) -> Nonconformance:
    """A nonconformance whose percentages have their sign: `79%`."""
    field = context.project.schema.fields.get((one.entry.collection, one.field.rpartition(".")[2]))
    sign = "%" if field is not None and field.kind == "percent" else ""
    found, wanted = (f"{text}{sign}" if text[-1:].isdigit() else text for text in (one.found, one.wanted))
    return one._replace(found=found, wanted=wanted)


def _share(texts: Iterable[str]) -> str:
    """The text that all have; empty where they differ."""
    known = set(texts)
    return known.pop() if len(known) == 1 else ""


def _set_line(
    context: DocumentContext, one: Nonconformance, message: bool, limit: bool, remedy: bool
) -> tuple[Any, ...]:
    """A nonconformance with room for what is decided on it; what its clause does not tell of all stands here."""
    label = name_field(context, one)
    found = one.found or _NONE
    reading = [f"{label}: {found}" if label else found]
    reading += [f"; limit {one.wanted}"] if limit and one.wanted else []
    reading += [f". {one.message}"] if message else []
    reading += [f" {one.remedy}"] if remedy else []
    where = [part for part in (tell_face(one.entry) or _name_result(context, one), tell_place(one.entry)) if part]
    return (f"{OUTSIDE}\u00a0{one.number}", "\n".join(where), tell_when(one.entry) or _NONE, "".join(reading))


def _set_disposition(context: DocumentContext, one: Nonconformance, first_of: dict[str, int]) -> tuple[Any, ...]:
    """What was decided on a nonconformance, by whom and when; else the boxes and blanks for it.

    Two of one clause in one entry are decided on together: `first_of` has the number of the first by its row.
    """
    entry, number = one.disposition, one.number
    if entry is not None:
        note = entry.get("note")
        decision = words(entry.values["decision"]) + (f": {note}" if note else "")
        return (decision, f"{entry.values['by']}\n{long_date(entry.values['decided_on'])}")
    row = name_answer_row(one.code, one.entry.place)
    if first_of.setdefault(row, number) != number:
        return (f"as {OUTSIDE}\u00a0{first_of[row]}", _DASH)
    boxes: list[Any] = []
    for value in context.project.schema.fields["disposition", "decision"].values:
        boxes += ["  " if boxes else "", CheckBox(words(value), f"disposition.decision.{row}", value)]
    by = Blank(f"Disposition of {number} by", field=f"disposition.by.{row}")
    on = Blank(f"Date of disposition of {number}", "date", f"disposition.decided_on.{row}")
    return boxes, [by, "\n", on]


def _name_result(context: DocumentContext, one: Nonconformance) -> str:
    """The criterion of a result of the mockup."""
    return f"mockup, {name_criterion(context, one.entry)}" if name_line(one.entry) else words(one.entry.collection)


def span_numbers(numbers: Iterable[int]) -> str:
    """`1 to 3, 7`: numbers that follow one another as a span."""
    spans: list[list[int]] = []
    for number in numbers:
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    return ", ".join(
        str(span[0]) if len(span) == 1 else f"{span[0]}{' to ' if len(span) > 2 else ', '}{span[-1]}" for span in spans
    )
