"""Finds the columns of a table of members by the label of a field or by its name, with the unit that a title tells."""

import re
from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.grid import Grid
from specgen.model.field import Field, Node, Path, Schema
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest

_MOST_HEAD = 20  # rows in which the titles are looked for
_WITH_UNIT = re.compile(r"(.+?)\s*(?:\(([^()]+)\)|\[([^\[\]]+)\]|, ([^,]+))")
_MARK: Path = (at.MARK_NAME,)
_OWNER: Path = (at.OWNER_NAME,)


class Column(NamedTuple):
    """A column of a table: the field below the member, and the unit that its title tells."""

    number: int
    field: Field
    place: Path  # below the member
    unit: str


class Columns(NamedTuple):
    """The columns of a table, and the row of its first member; `owner` is 0 where no column names the elevation."""

    mark: int
    owner: int
    fields: tuple[Column, ...]
    first: int


def find_columns(grid: Grid, table: at.Table, schema: Schema) -> Columns:
    """The columns of a table; raises Refused with each title that is no field of its members."""
    fields = dict(_list_fields(schema.node(table.collection), ()))
    known = _list_titles(fields, table)
    head, mark = _find_head(grid)
    names = head + 1 if _fold(grid.words(head + 1, mark)) == at.MARK_NAME else head
    found: dict[Path, Column] = {}
    problems: list[Problem] = []
    for number in sorted({column for row, column in grid.cells if row in (head, names)}):
        title, unit = _split_unit(grid.words(head, number))
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
    owner = found.pop(_OWNER).number if table.owned and _OWNER in found else 0
    del found[_MARK]
    return Columns(mark, owner, tuple(found.values()), names + 1)


def _find_head(grid: Grid) -> tuple[int, int]:
    """The row of the titles, and the column of the marks."""
    for row in range(1, _MOST_HEAD + 1):
        titles = {_fold(title): column for title, column in grid.row_titles(row).items()}
        if at.MARK_NAME in titles:
            return row, titles[at.MARK_NAME]
    hint = "give the column of the marks the title Mark"
    raise Refused(Problem("the table has no column Mark", hint, file=grid.place(1) if grid.name else grid.file))


def _list_fields(node: Node, place: Path) -> Iterator[tuple[Path, Field]]:
    """The fields of a member by their place below it, without those of members of its own."""
    for name, child in node.children.items():
        if child.field is not None:
            yield (*place, name), child.field
        elif child.star is None:
            yield from _list_fields(child, (*place, name))


def _list_titles(fields: dict[Path, Field], table: at.Table) -> dict[str, Path]:
    """The place of a column by each title that it may have."""
    last = Counter(place[-1] for place in fields)
    titles = {at.MARK_NAME: _MARK} | ({at.OWNER_NAME: _OWNER} if table.owned else {})
    for place, field in fields.items():
        titles.setdefault(_fold(".".join(place)), place)
        titles.setdefault(_fold(field.label), place)
    for place in fields:
        if last[place[-1]] == 1:
            titles.setdefault(_fold(place[-1]), place)
    return titles


def _find_place(known: dict[str, Path], *titles: str) -> Path | None:
    return next((known[_fold(title)] for title in titles if _fold(title) in known), None)


def _fold(title: str) -> str:
    return " ".join(title.casefold().replace("_", " ").split())


def _split_unit(title: str) -> tuple[str, str]:
    """A title and the unit behind it: `Width (ft)`, `Width, ft`; no unit where there is none."""
    found = _WITH_UNIT.fullmatch(title)
    return (found[1], next(filter(None, found.groups()[1:]))) if found else (title, "")
