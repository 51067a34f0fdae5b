"""Finds the columns of a table of members by the label of a field or by its name, with the unit that a title tells."""

from collections import Counter
from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.tables import Table, list_fields
from specgen.model.field import Field, Path, Schema
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest
from specgen.reading.column_titles import fold_title, split_unit
from specgen.reading.grid import Grid

_MOST_HEAD = 20  # rows in which the titles are looked for
_BLANK = "`specgen ask FILE --table {}` writes a blank one"
# The places of the columns that are no field.
_MARK: Path = ("", "mark")
_OWNER: Path = ("", "owner")


class Column(NamedTuple):
    """A column of a table: the field below the member, and the unit that its title tells."""

    number: int
    field: Field
    place: Path  # below the member
    unit: str


class Columns(NamedTuple):
    """The columns of a table, and the row of its first member.

    `owner` is 0 where no column names what a member belongs to, `mark` where items have no numbers.
    """

    mark: int
    owner: int
    fields: tuple[Column, ...]
    first: int


def find_columns(grid: Grid, table: Table, schema: Schema) -> Columns:
    """The columns of a table; raises Refused with each title that is no field of its members."""
    fields = {field.path[len(table.collection) :]: field for field in list_fields(schema, table)}
    known = _list_titles(fields, table)
    head = _find_head(grid, table, known)
    first = at.ITEM_NAME if table.listed else at.MARK_NAME
    below = {fold_title(grid.words(row, column)) for row, column in grid.cells if row == head + 1}
    names = head + 1 if fold_title(first) in below else head
    found: dict[Path, Column] = {}
    problems: list[Problem] = []
    for number in sorted({column for row, column in grid.cells if row in (head, names)}):
        title, unit = split_unit(grid.words(head, number))
        place = _find_place(known, grid.words(names, number), grid.words(head, number), title)
        where = grid.place(head, number)
        if place is None:
            problems.append(Problem(f"{title!r} is no column of {table.name}", suggest(title, known), file=where))
        elif place in found:
            problems.append(Problem(f"the column {title!r} stands twice", "keep one of them", file=where))
        else:
            found[place] = Column(number, fields.get(place, Field(path=place, label=title, kind="text")), place, unit)
    if problems:
        raise Refused(*problems)
    mark, owner = (found.pop(place).number if place in found else 0 for place in (_MARK, _OWNER))
    return Columns(mark, owner, tuple(found.values()), names + 1)


def _find_head(grid: Grid, table: Table, known: dict[str, Path]) -> int:
    """The row of the titles: with the column of the marks; of a list the first one with a title that is known."""
    for row in range(1, _MOST_HEAD + 1):
        titles = {_find_place(known, title, split_unit(title)[0]) for title in grid.row_titles(row)} - {None}
        if _MARK in titles or (table.listed and titles):
            return row
    where = grid.place(1) if grid.name else grid.file
    if table.listed:
        raise Refused(Problem(f"no row has the titles of {table.name}", _BLANK.format(table.name), file=where))
    hint = "give the column of the marks the title Mark"
    raise Refused(Problem("the table has no column Mark", hint, file=where))


def _list_titles(fields: dict[Path, Field], table: Table) -> dict[str, Path]:
    """The place of a column by each title that it may have."""
    last = Counter(place[-1] for place in fields if place)
    titles = {fold_title(at.ITEM_NAME if table.listed else at.MARK_NAME): _MARK}
    titles |= {table.owner: _OWNER} if table.owner else {}
    for place, field in fields.items():
        titles.setdefault(fold_title(".".join(place) or at.VALUE_NAME), place)
        titles.setdefault(fold_title(field.label), place)
    for place in fields:
        if place and last[place[-1]] == 1:
            titles.setdefault(fold_title(place[-1]), place)
    return titles


def _find_place(known: dict[str, Path], *titles: str) -> Path | None:
    return next((known[fold_title(title)] for title in titles if fold_title(title) in known), None)
