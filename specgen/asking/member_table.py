"""A table of the members of a collection, those that exist filled in, to be completed and read back."""

import datetime
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.asking.answer_sheet import MARK, MARK_NAME, OWNER, OWNER_NAME, TABLES, Table
from specgen.asking.question_words import list_choices, tell_example, tell_form, tell_why
from specgen.documents.context import DocumentContext
from specgen.model.field import Field, Path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.model.value_text import raw_text, words
from specgen.quantities.quantity import Quantity


class TableColumn(NamedTuple):
    """A column: its title, the name of its field below the member, what is told of it, its choices, its width."""

    title: str
    name: str
    told: str
    choices: tuple[str, ...]
    width: int  # in characters


class MemberTable(NamedTuple):
    """A table with the members that exist, as they would be typed."""

    table: Table
    columns: tuple[TableColumn, ...]
    rows: tuple[tuple[str, ...], ...]


def find_table_named(name: str) -> Table:
    """The table of a name, as typed; raises Refused where there is none."""
    known = {table.name: table for table in TABLES}
    if name not in known:
        raise refuse(f"there is no table {name!r}", suggest(name, list(known)))
    return known[name]


def make_table(context: DocumentContext, table: Table) -> MemberTable:
    """The columns of all fields of a member that is no list of its own, and a row for each member."""
    schema = context.project.schema
    depth = len(table.collection)
    fields = [
        field
        for path, field in schema.fields.items()
        if path[:depth] == table.collection and "*" not in path[depth:] and field.home != "record"
    ]
    columns = (*_list_heads(context, table), *(_make_column(context, field, depth) for field in fields))
    return MemberTable(table, columns, tuple(_list_rows(context, table, fields)))


def _list_heads(context: DocumentContext, table: Table) -> Iterator[TableColumn]:
    collection = context.project.schema.collections[table.collection]
    yield TableColumn(MARK, MARK_NAME, f"The mark of the {collection.one} on the drawings.", (), 10)
    if table.owned:
        marks = context.project.members.get((table.collection[0],), ())
        told = f"The mark of the elevation that the {collection.one} is in."
        yield TableColumn(OWNER, OWNER_NAME, told, marks, 10)


def _make_column(context: DocumentContext, field: Field, depth: int) -> TableColumn:
    form = tell_form(context, field)
    example = tell_example(context, field)
    note = f"{tell_why(context, field)} Form: {form}.{f' Example: {example}.' if example else ''}"
    counted = f", {form}" if field.kind in ("quantity", "percent") else ""
    title, choices = f"{field.label}{counted}", list_choices(context, field)
    width = max([14, *(len(choice) + 4 for choice in choices)])
    return TableColumn(title, ".".join(field.path[depth:]), note, choices, min(width, 30))


def _list_rows(context: DocumentContext, table: Table, fields: list[Field]) -> Iterator[tuple[str, ...]]:
    project, depth = context.project, len(table.collection)
    paths: list[Path] = [()]
    for name in table.collection:
        paths = [p + (m,) for p in paths for m in (project.members.get(p, ()) if name == "*" else (name,))]
    for member in paths:
        owner = (member[1],) if table.owned else ()
        cells = (_tell(context, field, (*member, *field.path[depth:])) for field in fields)
        yield (member[-1], *owner, *cells)


def _tell(context: DocumentContext, field: Field, path: Path) -> str:
    """A value as it would be typed; empty where the project gives none."""
    value: Any = context.project.values.get(path)
    if value is None:
        return ""
    if isinstance(value, tuple):
        return ", ".join(_type(context, field, entry) for entry in value)
    return _type(context, field, value)


def _type(context: DocumentContext, field: Field, value: Any) -> str:
    if isinstance(value, Quantity) and value.text:
        return value.text
    if "choice" in (field.kind, field.of):
        return words(str(value))
    if isinstance(value, (datetime.date, datetime.time)):
        return raw_text(value, field)
    text = raw_text(value, field, context.first)
    return f"{text}%" if field.kind == "percent" and isinstance(value, (int, float, Fraction)) else text
