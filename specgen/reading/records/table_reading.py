"""The rows of a table, of a CSV file or a sheet, to entries; its faults are told at their cells, all together."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from specgen.model.record import EntryPlace
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Cell
from specgen.reading.records.cell_reading import NoUnit, Read
from specgen.reading.records.columns import ACCEPTED, Column, TableHead, count_known, find_head, list_titles
from specgen.reading.records.gathering import Gathering

_MOST_HEAD = 20  # rows in which the titles are looked for
_UNREAD = object()  # stands for a text that no cell of the column has said yet
_FEWEST = 2  # titles that make a row the head of a table
Rows = Iterable[tuple[int, Sequence[Any]]]  # each with its number from 1


class TableReader:
    """Reads one table; `sheet` is its name in a workbook, `comma` whether a comma is the decimal sign."""

    def __init__(self, gathering: Gathering, file: str, sheet: str = "", comma: bool = False) -> None:
        self.gathering, self.file, self.sheet, self.comma = gathering, file, sheet, comma
        self._reader = gathering.reader
        self._unitless: set[str] = set()

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
        memos: list[tuple[int, str, Column, dict[Any, Any]]] = [(one.at, one.name, one, {}) for one in head.columns]
        for number, row in rows:
            values: dict[str, Any] = {}
            codes: list[int] = []
            width = len(row)
            for at, name, column, memo in memos:
                cell = row[at] if at < width else None
                if cell is None or cell == "":
                    continue
                found = memo.get(cell, _UNREAD)
                if found is _UNREAD:
                    found = self._look_up(column, cell, memo)
                if found.__class__ is Read:
                    values[name], code = found
                    codes.append(code)
                elif isinstance(found, InvalidValue):
                    self._tell(found, column, number)
            if values:
                codes.sort()
                add(collection, values, EntryPlace(file, number, 0, sheet), tuple(codes))
            self._tell_beyond(row, head, number)

    def _look_up(self, column: Column, cell: Any, memo: dict[Any, Any]) -> Read | InvalidValue | None:
        """What a cell holds; that of a text is remembered for the next that says the same."""
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
