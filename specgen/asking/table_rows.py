"""The member that each row of a table tells of: by its mark, or by its number in a list, and by what it belongs to."""

from collections.abc import Collection
from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.table_columns import Columns
from specgen.asking.tables import Table
from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.model.value_text import words
from specgen.reading.answer_text import find_mark
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Grid
from specgen.reading.marks import find_mark_fault


class TableRow(NamedTuple):
    """A row of a table and its member; of one that says that there are none, the path of the collection."""

    number: int
    member: Path


class RowReader:
    """Finds the members of rows from the first one on; `owners` are marks that the same answers bring."""

    def __init__(self, project: Project, grid: Grid, table: Table, columns: Columns, owners: Collection[str]) -> None:
        self.project, self.grid, self.table, self.columns = project, grid, table, columns
        self.owners = dict.fromkeys((*project.members.get(table.collection[:1], ()), *owners)) if table.owner else {}
        self.last: dict[Path, int] = {}

    def read(self, number: int) -> TableRow:
        """The member of a row; raises InvalidValue."""
        mark = self.grid.words(number, self.columns.mark) if self.columns.mark else ""
        if not mark and not self.table.listed:
            raise InvalidValue("the row has no mark", "write the mark used on the drawings")
        among = self.table.find_member(self._find_owner(number, mark) if self.table.owner else "", "")
        if mark.casefold() == at.NONE:
            return TableRow(number, among)
        return TableRow(
            number, (*among, self._find_place(among, mark) if self.table.listed else self._check_mark(mark))
        )

    def _check_mark(self, mark: str) -> str:
        fault = find_mark_fault(mark)
        if fault:
            raise InvalidValue(*fault)
        keys = self.project.schema.collections[self.table.collection].keys
        said = {form.casefold(): key for key in keys for form in (key, words(key))}
        if keys and mark.casefold() not in said:
            raise InvalidValue(f"{mark!r} is not known here", suggest(mark, keys))
        return said.get(mark.casefold(), mark)

    def _find_place(self, among: Path, number: str) -> str:
        """The place of an item in its list, from 0, by its number, or behind the one above it where it has none."""
        if number and not (number.isascii() and number.isdecimal() and int(number) > 0):
            hint = "number the rows from 1 in the order of the list, or leave the column empty"
            raise InvalidValue(f"{number!r} is no place in a list", hint)
        self.last[among] = int(number) if number else self.last.get(among, 0) + 1
        return str(self.last[among] - 1)

    def _find_owner(self, number: int, mark: str) -> str:
        told = self.grid.words(number, self.columns.owner) if self.columns.owner else ""
        noun = self.table.owner
        if not told and len(self.owners) != 1:
            what = repr(mark) if mark else "the row"
            message = f"it is not said which {noun} {what} belongs to"
            raise InvalidValue(message, f"fill in the column {noun.capitalize()}")
        owner = find_mark(self.project, self.table.collection[0], told) if told else next(iter(self.owners))
        if owner not in self.owners:
            hint = suggest(told, self.owners) if self.owners else "take those first"
            raise InvalidValue(f"there is no {noun} {told!r}", hint)
        return owner
