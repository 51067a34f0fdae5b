"""The rows of a table, of a CSV file or a sheet, to entries; its faults are told at their cells, all together."""

from collections.abc import Iterable, Iterator, Sequence
from operator import itemgetter
from typing import Any, NamedTuple

from specgen.model.record import EntryPlace
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Cell
from specgen.reading.records.cell_reading import NoUnit, Read
from specgen.reading.records.columns import ACCEPTED, Column, TableHead, count_known, find_head, list_titles
from specgen.reading.records.gathering import Gathering
from specgen.reading.records.half_days import list_doubts

_MOST_HEAD = 20  # rows in which the titles are looked for
_FEWEST = 2  # titles that make a row the head of a table
Rows = Iterable[tuple[int, Sequence[Any]]]  # each with its number from 1


class _Told(NamedTuple):
    """What a cell tells: the value of a field and its number, or what is wrong with it."""

    name: str
    value: Any
    code: int
    column: Column
    invalid: InvalidValue | None = None


class _Known(dict[Any, "_Told | None"]):
    """What the cells of a column tell, each text worked out once."""

    def __init__(self, reader: "TableReader", column: Column) -> None:
        super().__init__()
        self._reader, self._column = reader, column
        self._typed: dict[Any, Any] = {}
        self.first_rows: dict[Any, int] = {}  # of each text

    def __missing__(self, cell: Any) -> _Told | None:
        told = self._reader.read_known(self._column, cell, self._typed)
        if cell is None or cell.__class__ is str:
            self[cell] = told
            self.first_rows[cell] = self._reader.row
        return told


_look_at = _Known.__getitem__


class TableReader:
    """Reads one table; `sheet` is its name in a workbook, `comma` whether a comma is the decimal sign."""

    def __init__(self, gathering: Gathering, file: str, sheet: str = "", comma: bool = False) -> None:
        self.gathering, self.file, self.sheet, self.comma = gathering, file, sheet, comma
        self._reader = gathering.reader
        self._unitless: set[str] = set()
        self._is_faulty = False
        self.row = 0  # that is being read

    def read(self, rows: Rows) -> bool:
        """Add the entries of a table; whether a head was found in it."""
        every = iter(rows)
        head, behind = self._find_head(every)
        if head is None:
            return False
        for at, message, hint in head.faults:
            self.gathering.fault(message, hint, self._place(behind, at + 1))
        for at, message, hint in head.remarks:
            self.gathering.remark(message, hint, self._place(behind, at + 1))
        (self._read_settings if head.collection == ACCEPTED else self._read_entries)(head, every)
        return True

    def _find_head(self, rows: Iterator[tuple[int, Sequence[Any]]]) -> tuple[TableHead | None, int]:
        schema = self.gathering.project.schema
        titles = list_titles(schema)
        for number, row in rows:
            words = {at: _as_cell(cell).words for at, cell in enumerate(row) if cell not in (None, "")}
            told = {at: word for at, word in words.items() if word}
            if count_known(told.values(), titles) >= min(_FEWEST, max(len(told), 1)):
                return find_head(told, schema, titles, self.sheet), number
            if number >= _MOST_HEAD:
                break
        return None, 0

    def _read_entries(self, head: TableHead, rows: Rows) -> None:
        add, file, sheet, collection = self.gathering.add, self.file, self.sheet, head.collection
        width, ends = head.width, [""] * head.width
        known = [_Known(self, column) for column in head.columns]
        pick = itemgetter(*(column.at for column in head.columns), width)  # the last is no cell: there are always two
        for number, row in rows:
            self.row = number
            cells = pick([*row[:width], *ends[len(row) :], None])
            found = [one for one in map(_look_at, known, cells) if one]
            if self._is_faulty:
                for fault in (one for one in found if one.invalid):
                    self._tell(fault.invalid, fault.column, number)  # type: ignore[arg-type]
                found = [one for one in found if not one.invalid]
            if found:
                values = {one[0]: one[1] for one in found}
                add(collection, values, EntryPlace(file, number, 0, sheet), tuple(sorted([one[2] for one in found])))
            if len(row) > width:
                self._tell_beyond(row, head, number)
        for one, column in zip(known, head.columns, strict=True):
            if column.field.kind == "time":
                self._tell_doubts(one, column)

    def _tell_doubts(self, known: _Known, column: Column) -> None:
        """Note times that may be meant of the other half of the day."""
        for doubt in list_doubts(self.gathering.project, known.first_rows):
            message = f"{column.name}: {doubt.message}"
            self.gathering.remark(message, doubt.hint, self._place(doubt.row, column.at + 1))

    def read_known(self, column: Column, cell: Any, memo: dict[Any, Any]) -> "_Told | None":
        """What a cell tells of its column; None where it is blank."""
        found = None if cell is None or cell == "" else self._look_up(column, cell, memo)
        if isinstance(found, InvalidValue):
            self._is_faulty = True
            return _Told(column.name, None, 0, column, found)
        return None if found is None else _Told(column.name, found.value, found.code, column)

    def _look_up(self, column: Column, cell: Any, memo: dict[Any, Any]) -> Read | InvalidValue | None:
        """What a cell holds; a typed one is remembered by what it is too, as 1 is not `yes`."""
        held = _as_cell(cell)
        key = cell if cell.__class__ is str else (held.value.__class__, held)
        if key not in memo:
            memo[key] = self._read_cell(column, held)
        return memo[key]  # type: ignore[no-any-return]

    def _read_cell(self, column: Column, cell: Cell) -> Read | InvalidValue | None:
        try:
            return self._reader.read(column.field, cell, column.unit, self.comma)
        except InvalidValue as invalid:
            return invalid

    def _tell(self, invalid: InvalidValue, column: Column, number: int) -> None:
        """Note a cell that cannot be read; a column without a unit is told once."""
        place = self._place(number, column.at + 1)
        if not isinstance(invalid, NoUnit):
            self.gathering.fault(invalid.message, invalid.hint, place, column.name)
        elif column.name not in self._unitless:
            self._unitless.add(column.name)
            units = " or ".join(
                f"{column.name} ({unit})" for unit in dict.fromkeys((column.field.unit_ip, column.field.unit_si))
            )
            self.gathering.fault("the column tells no unit", f"call it {units}", place, column.name)

    def _tell_beyond(self, row: Sequence[Any], head: TableHead, number: int) -> None:
        """Note a row that goes on behind the last column: a sign between cells stands in it that parts none."""
        last = head.width
        if len(row) > last and any(cell not in (None, "") for cell in row[last:]):
            message = "the row has more cells than the head has columns"
            self.gathering.fault(message, "put a text with a comma in quotes", self._place(number, last + 1))

    def _read_settings(self, head: TableHead, rows: Rows) -> None:
        """Take the settings of the accepted mockup, each of which is one for the job."""
        for number, row in rows:
            for column in head.columns:
                cell = row[column.at] if column.at < len(row) else None
                found = None if cell in (None, "") else self._look_up(column, cell, {})
                if isinstance(found, InvalidValue):
                    self._tell(found, column, number)
                elif found is not None:
                    self.gathering.accept(column.field.path, found.value, self._place(number, column.at + 1))

    def _place(self, row: int, column: int = 0) -> EntryPlace:
        return EntryPlace(self.file, row, column, self.sheet)


def _as_cell(cell: Any) -> Cell:
    return cell if isinstance(cell, Cell) else Cell(cell)
