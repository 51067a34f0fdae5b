"""The rows of a table as offers to a project: members with their marks, each whole or not at all."""

from collections.abc import Collection, Iterator, Mapping

from specgen.asking import answer_sheet as at
from specgen.asking.offers import Converter, Offer, Offered
from specgen.asking.table_columns import Column, Columns, find_columns
from specgen.asking.table_rows import RowReader, TableRow
from specgen.asking.tables import Table, list_tables
from specgen.editing.values import NONE
from specgen.model.field import Path
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.reading.answer_text import read_answer
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Grid


def pick_grid(grids: dict[str, Grid], table: Table, shown: str) -> Grid:
    """The sheet of a table: the one that bears its name, else the only one there is; raises Refused."""
    named = [grid for name, grid in grids.items() if name.casefold() in (table.name, table.whole_name)]
    filled = [grid for grid in grids.values() if grid.cells]
    if not named and len(filled) != 1:
        message = f"no sheet of the workbook is named {table.name}"
        raise Refused(Problem(message, f"give that name to the sheet of the {table.name}", file=shown))
    return named[0] if named else filled[0]


def find_filled(grids: Mapping[str, Grid]) -> Iterator[tuple[Table, Grid]]:
    """The tables of which a workbook of questions has a sheet that is filled in."""
    for table in list_tables():
        grid = grids.get(table.name)
        if grid is not None and any(row >= at.TABLE_FIRST for row, _ in grid.cells):
            yield table, grid


def list_table_offers(
    project: Project, grid: Grid, table: Table, converter: Converter, owners: Collection[str] = (), sheet: int = 0
) -> Offered:
    """The values of each row of a table; raises Refused where its columns cannot be told.

    `owners` are marks of others that the members may belong to besides those of the project.
    """
    columns = find_columns(grid, table, project.schema)
    reader = RowReader(project, grid, table, columns, owners)
    offered = Offered()
    seen: dict[Path, int] = {}
    for number in _list_rows(grid, table, columns):
        try:
            row = reader.read(number)
            if seen.setdefault(row.member, number) != number:
                name = _tell_member(row, table)
                raise InvalidValue(f"{name} stands twice, also in row {seen[row.member]}", "keep one of them")
        except InvalidValue as invalid:
            where = grid.place(number, columns.mark)
            offered.problems.append(Problem(invalid.message, invalid.hint, file=where))
            continue
        offered.offers += _read_row(project, grid, table, row, columns, converter, offered, sheet)
    offered.problems += _check_lists(project, grid, table, seen)
    if table.listed:  # an item is put behind those before it
        offered.offers.sort(key=lambda offer: int("".join(offer.path[len(table.collection) - 1 :][:1]) or 0))
    return offered


def _list_rows(grid: Grid, table: Table, columns: Columns) -> list[int]:
    """The rows that tell anything; of a list not those that have a number alone."""
    rows = {row for row, column in grid.cells if row >= columns.first and not (table.listed and column == columns.mark)}
    marks = ((row, column) for row, column in grid.cells if row >= columns.first and column == columns.mark)
    rows |= {row for row, column in marks if grid.words(row, column).casefold() == at.NONE}
    return sorted(rows)


def _read_row(
    project: Project,
    grid: Grid,
    table: Table,
    row: TableRow,
    columns: Columns,
    converter: Converter,
    offered: Offered,
    sheet: int,
) -> list[Offer]:
    """The values of a row; that there are none is one."""
    faults = len(offered.problems)
    offers = [_read_cell(project, grid, row, column, converter, offered) for column in columns.fields]
    given = [offer._replace(sheet=sheet) for offer in offers if offer is not None]
    where = grid.place(row.number)
    if len(row.member) < len(table.collection):
        if given:
            offered.problems.append(Problem("the row says none and has values", "give it a mark", file=where))
        kind = project.schema.collections[table.collection].kind
        return [Offer(row.member, NONE[kind], (), grid.place(row.number, columns.mark), sheet=sheet)]
    if not given and len(offered.problems) == faults and row.member not in _known_members(project, row.member):
        message = "the row has no values" if table.listed else "the row has a mark and no values"
        offered.problems.append(Problem(message, "fill it in, or delete it", file=where))
    return given


def _tell_member(row: TableRow, table: Table) -> str:
    if len(row.member) < len(table.collection):
        return "none"
    return f"number {int(row.member[-1]) + 1}" if table.listed else repr(row.member[-1])


def _check_lists(project: Project, grid: Grid, table: Table, seen: dict[Path, int]) -> Iterator[Problem]:
    """Items that follow no other, and members beside a row that says that there are none."""
    depth = len(table.collection)
    for member, number in seen.items():
        if len(member) < depth:
            if any(other[: depth - 1] == member for other in seen if other != member):
                yield Problem("the row says none beside others", "delete one or the other", file=grid.place(number))
        elif (
            table.listed and (place := int(member[-1])) and not _is_known(project, (*member[:-1], str(place - 1)), seen)
        ):
            message = f"number {place + 1} follows no number {place}"
            yield Problem(message, "number the rows in the order of the list", file=grid.place(number))


def _is_known(project: Project, member: Path, seen: dict[Path, int]) -> bool:
    return member in seen or member in project.places


def _known_members(project: Project, member: Path) -> set[Path]:
    return {(*member[:-1], mark) for mark in project.members.get(member[:-1], ())}


def _read_cell(
    project: Project, grid: Grid, row: TableRow, column: Column, converter: Converter, offered: Offered
) -> Offer | None:
    """The value of a cell; None where it holds none or is faulty, which is noted."""
    place = grid.place(row.number, column.number)
    path = (*row.member, *column.place)
    field = project.schema.field_at(path) or column.field
    unit = column.unit if field == column.field else ""  # the title tells that of the other rows
    try:
        read = read_answer(grid.cell(row.number, column.number), field, project, unit)
        if read is None:
            return None
        text, value = converter.convert(field, read)
        return Offer(path, text, value, place, notes=read.notes)
    except InvalidValue as invalid:
        offered.problems.append(Problem(invalid.message, invalid.hint, ".".join(path), place))
        return None
