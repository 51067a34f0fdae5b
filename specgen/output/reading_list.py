"""The list of all readings of a site record, with how each ends and why, for spreadsheets and programs."""

from collections.abc import Iterator

from specgen.formats.csv_sheet import write_csv
from specgen.model.project import Project
from specgen.model.record import day_of
from specgen.model.record_judgment import Reading, ReadingList, RecordJudgment
from specgen.model.sheet import Sheet, SheetCell, SheetColumn
from specgen.model.value_text import value_text

NAME = "readings.csv"
_COLUMNS = ("number", "collection", "date", "time", "elevation", "area", "step", "field", "reading", "state", "reason")
_PLACE = ("file", "sheet", "line", "row")


def write_reading_list(project: Project, judgment: RecordJudgment) -> bytes:
    """A row for each reading, in the order of the entries; `number` counts the entries of a collection from 1."""
    titles = tuple(SheetColumn(title, len(title)) for title in (*_COLUMNS, *_PLACE))
    rows = tuple(tuple(_list_cells(project, reading)) for reading in ReadingList(judgment.alike))
    return write_csv(Sheet("readings", titles, rows, ""))


def _list_cells(project: Project, reading: Reading) -> Iterator[SheetCell]:
    entry, place = reading.entry, reading.entry.place
    at = entry.values.get("started_at", entry.values.get("time"))
    value = entry.get(reading.field)
    field = project.schema.field_at((entry.collection, "*", reading.field))
    yield entry.number + 1
    yield entry.collection
    yield day_of(entry)
    yield None if at is None else at.strftime("%H:%M")
    yield entry.get("elevation")
    yield entry.get("area")
    yield entry.get("step") or entry.get("criterion")
    yield reading.field
    yield None if value is None else value_text(value, field, project.system, both=False)
    yield str(reading.state)
    yield reading.reason
    yield from (place.file, place.sheet or None, place.line or None, place.row or None)
