"""The rows of a table as offers to a project: members with their marks, each whole or not at all."""

from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.answer_text import find_mark, read_answer
from specgen.asking.grid import Grid
from specgen.asking.offers import Converter, Offer
from specgen.asking.question_offers import Offered
from specgen.asking.table_columns import Column, Columns, find_columns
from specgen.model.field import Path
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.reading.conversion import InvalidValue
from specgen.reading.marks import find_mark_fault


class _Row(NamedTuple):
    """A row of the table, and the member that it tells of."""

    number: int
    member: Path


def pick_grid(grids: dict[str, Grid], table: at.Table, shown: str) -> Grid:
    """The sheet of a table: the one that bears its name, else the only one there is; raises Refused."""
    named = [grid for name, grid in grids.items() if name.casefold() == table.name]
    filled = [grid for grid in grids.values() if grid.cells]
    if not named and len(filled) != 1:
        message = f"no sheet of the workbook is named {table.name}"
        raise Refused(Problem(message, f"give that name to the sheet of the {table.name}", file=shown))
    return named[0] if named else filled[0]


def list_table_offers(project: Project, grid: Grid, table: at.Table, converter: Converter) -> Offered:
    """The values of each row of a table; raises Refused where its columns cannot be told."""
    columns = find_columns(grid, table, project.schema)
    offered = Offered()
    seen: dict[Path, int] = {}
    for number in sorted({row for row, _ in grid.cells if row >= columns.first}):
        try:
            row = _Row(number, _find_member(project, grid, table, columns, number))
            if seen.setdefault(row.member, number) != number:
                raise InvalidValue(
                    f"{row.member[-1]!r} stands twice, also in row {seen[row.member]}", "keep one of them"
                )
        except InvalidValue as invalid:
            where = grid.place(number, columns.mark)
            offered.problems.append(Problem(invalid.message, invalid.hint, file=where))
            continue
        offers = [_read_cell(project, grid, row, column, converter, offered) for column in columns.fields]
        given = [offer for offer in offers if offer is not None]
        if not given and row.member not in _known_members(project, row.member):
            offered.problems.append(
                Problem("the row has a mark and no values", "fill it in, or delete it", file=grid.place(number))
            )
        offered.offers += given
    return offered


def _known_members(project: Project, member: Path) -> set[Path]:
    return {(*member[:-1], mark) for mark in project.members.get(member[:-1], ())}


def _find_member(project: Project, grid: Grid, table: at.Table, columns: Columns, number: int) -> Path:
    """The path of the member of a row; raises InvalidValue."""
    mark = grid.words(number, columns.mark)
    if not mark:
        raise InvalidValue("the row has no mark", "write the mark used on the drawings")
    fault = find_mark_fault(mark)
    if fault:
        raise InvalidValue(*fault)
    if not table.owned:
        return (*table.collection[:-1], mark)
    owners = project.members.get(table.collection[:1], ())
    told = grid.words(number, columns.owner) if columns.owner else ""
    if not told and len(owners) != 1:
        raise InvalidValue(f"it is not said which elevation {mark!r} is on", f"fill in the column {at.OWNER}")
    owner = find_mark(project, table.collection[0], told) if told else owners[0]
    if owner not in owners:
        raise InvalidValue(f"there is no elevation {told!r}", suggest(told, owners) if owners else "take those first")
    return (table.collection[0], owner, table.collection[2], mark)


def _read_cell(
    project: Project, grid: Grid, row: _Row, column: Column, converter: Converter, offered: Offered
) -> Offer | None:
    """The value of a cell; None where it holds none or is faulty, which is noted."""
    place = grid.place(row.number, column.number)
    path = (*row.member, *column.place)
    try:
        read = read_answer(grid.cell(row.number, column.number), column.field, project, column.unit)
        if read is None:
            return None
        text, value = converter.convert(column.field, read)
        return Offer(path, text, value, place, notes=read.notes)
    except InvalidValue as invalid:
        offered.problems.append(Problem(invalid.message, invalid.hint, ".".join(path), place))
        return None
