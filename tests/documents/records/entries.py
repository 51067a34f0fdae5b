"""Entries of a site record made by hand, and the project that they are the records of."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, time
from functools import cache
from typing import Any

from specgen.documents.catalogue import templates
from specgen.documents.context import DocumentContext
from specgen.documents.records.composing import compose_records
from specgen.model.block import Document
from specgen.model.finding import Severity
from specgen.model.record import Entry, EntryPlace, RecordFile, Records
from specgen.model.record_judgment import Nonconformance, Reading, ReadingState, RecordJudgment
from specgen.model.source import PRACTICE, Basis
from specgen.quantities.quantity import Quantity
from tests.documents.support import context_of_example

DAY = date(2027, 6, 15)
FILE = "june.csv"


def q(number: str, unit: str) -> Quantity:
    """A quantity in a unit."""
    return Quantity.of(number, unit)


def make_entries(*given: tuple[str, dict[str, Any]]) -> list[Entry]:
    """Entries numbered by their collection, each on a row of one file."""
    counts: dict[str, int] = defaultdict(int)
    made = []
    for row, (collection, values) in enumerate(given, 2):
        made.append(Entry(collection, counts[collection], values, EntryPlace(FILE, row)))
        counts[collection] += 1
    return made


def context_with(entries: Iterable[Entry], example: str = "clean", **values: Any) -> DocumentContext:
    """The context of an example with these entries; `values` are settings accepted on the mockup."""
    known = context_of_example(example)
    grouped: dict[str, list[Entry]] = defaultdict(list)
    for entry in entries:
        grouped[entry.collection].append(entry)
    records = Records(
        {name: tuple(found) for name, found in grouped.items()}, (RecordFile(FILE, "0123456789abcdef", 1),)
    )
    accepted = {("accepted", name): value for name, value in values.items()}
    project = replace(known.project, records=records, values=known.project.values | accepted)
    return DocumentContext(project, known.standards, known.judgment, known.resolve)


def judgment_of(
    *found: tuple[Entry, str], unsettled: Iterable[Reading] = (), code: str = "WEA-01c", **more: Any
) -> RecordJudgment:
    """A judgment with a nonconformance on each of these fields, all of one clause."""
    told: dict[str, Any] = {"message": "The wall is too hot.", "found": "97 °F", "wanted": "maximum 90 °F"} | more
    one = {"severity": Severity.STOP, "basis": Basis((PRACTICE,)), "remedy": "Shade the wall."}
    every = tuple(
        Nonconformance(number=n, code=code, entry=entry, field=name, **(one | told))
        for n, (entry, name) in enumerate(found, 1)
    )
    return RecordJudgment(every, {ReadingState.OUTSIDE: len(every), ReadingState.WITHIN: 5}, tuple(unsettled))


def documents_of(context: DocumentContext, judgment: RecordJudgment | None = None) -> dict[str, Document]:
    """The documents of the record by their ids."""
    return {one.id: one for one in compose_records(context, judgment or RecordJudgment())}


@cache
def form_of(name: str) -> Any:
    """The template of a form."""
    return next(template for template in templates() if template.id == name)


GLOSS_PASS: dict[str, Any] = {
    "date": DAY,
    "elevation": "E1",
    "area": "left bay",
    "panels": ("E1-A1", "E1-A2"),
    "masked_panels": ("E1-B1",),
    "step": "gloss",
    "coat": 1,
    "crew": "silver",
    "started_at": time(7, 10),
    "ended_at": time(8, 25),
    "stirred": True,
    "strained": False,
    "atomizing_pressure": q("40", "psi"),
    "stream_length": q("7.5", "in"),
    "pattern": "oval",
    "wet_film": q("4.1", "mil"),
}
