"""What was recorded and has no place on a form: inspections, and the values that the forms do not ask for."""

from collections.abc import Iterable, Iterator, Mapping

from specgen.documents.context import DocumentContext
from specgen.documents.records.entry_text import tell_face, tell_place, tell_plainly, tell_when
from specgen.documents.records.filling import mark_outside
from specgen.documents.records.sheet_draft import Marks
from specgen.documents.records.sheets_of_record import Remainder
from specgen.model.block import Block, Inline, Inlines, Part, Table, Text
from specgen.model.record import Entry

_NONE, _DASH = "not recorded", "–"
# These stand in columns of their own.
_APART = ("date", "started_at", "time", "elevation", "area", "step")
_INSPECTED = (("Point", "step"), ("Date", "done_on"), ("Outcome", "outcome"), ("By", "by"))


def list_inspections(context: DocumentContext, entries: Iterable[Entry], marks: Marks) -> Iterator[Block]:
    """The inspections as a table below a heading; nothing without any."""
    rows = []
    for entry in entries:
        numbers = marks.get((entry.collection, entry.number), {})
        rows.append(tuple(_tell_value(context, entry, name, numbers) for _, name in _INSPECTED))
    if rows:
        yield Part((Text("Inspections"),))
        yield Table(tuple((Text(head),) for head, _ in _INSPECTED), tuple(rows), (34, 18, 18, 30))


def list_rest(context: DocumentContext, rest: Iterable[Remainder], marks: Marks) -> Iterator[Block]:
    """The values without a place on the forms as a table below a heading; nothing without any."""
    rows = tuple(_tell_rest(context, one, marks) for one in rest)
    if rows:
        yield Part((Text("Recorded, with no place on the forms"),))
        header = ("Entry", "Date, time", "Area, step", "Recorded")
        yield Table(tuple((Text(head),) for head in header), rows, (20, 18, 22, 40))


def _tell_rest(context: DocumentContext, one: Remainder, marks: Marks) -> tuple[Inlines, ...]:
    """An entry with those of its fields that stand on no form."""
    entry, numbers = one.entry, marks.get((one.entry.collection, one.entry.number), {})
    told: list[Inline] = []
    for name in (name for name in one.names if name not in _APART):
        field = context.project.schema.fields[entry.collection, name]
        told += [Text(f"{'; ' if told else ''}{field.label}: {tell_plainly(entry.values[name], field)}")]
        told += [mark_outside(numbers[name])] if name in numbers else []
    told += [Text(f". On no line: {one.why}.")] if one.why else []
    where = (tell_place(entry) or f"{entry.collection} {entry.number + 1}", tell_when(entry), tell_face(entry))
    return (*((Text(text or _DASH),) for text in where), tuple(told))


def _tell_value(context: DocumentContext, entry: Entry, name: str, numbers: Mapping[str, tuple[int, ...]]) -> Inlines:
    """A field of an entry, its nonconformances behind it."""
    found = numbers.get(name)
    field = context.project.schema.fields[entry.collection, name]
    said = tell_plainly(entry.values[name], field) if name in entry.values else _NONE
    return (Text(said), *((mark_outside(found),) if found else ()))
