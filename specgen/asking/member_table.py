"""A table of the members of a collection, those that exist filled in, to be completed and read back."""

import datetime
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.asking.answer_sheet import ITEM, ITEM_NAME, MARK, MARK_NAME, NONE, VALUE_NAME
from specgen.asking.question_words import list_choices, tell_example, tell_form, tell_why
from specgen.asking.tables import Table, list_fields
from specgen.documents.context import DocumentContext
from specgen.documents.parties import name_role
from specgen.model.field import Field, Path
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


def make_table(context: DocumentContext, table: Table, party: str = "") -> MemberTable:
    """The columns of all fields of a member that is no list of its own, and a row for each member.

    What a party owes itself stands first in a table for it.
    """
    schema, depth = context.project.schema, len(table.collection)
    fields = list_fields(schema, table)
    fields.sort(key=lambda field: bool(party) and field.owed_by != party)
    columns = (*_list_heads(context, table), *(_make_column(context, field, depth, party) for field in fields))
    return MemberTable(table, columns, tuple(_list_rows(context, table, fields)))


def _list_heads(context: DocumentContext, table: Table) -> Iterator[TableColumn]:
    collection = context.project.schema.collections[table.collection]
    nothing = f'Write "{NONE}" where there are none.'
    if table.listed:
        yield TableColumn(ITEM, ITEM_NAME, f"The place of the {collection.one} in its list. {nothing}", (), 8)
    else:
        told = f"The mark of the {collection.one} on the drawings. {nothing}"
        yield TableColumn(MARK, MARK_NAME, told, tuple(map(words, collection.keys)), 10)
    if table.owner:
        marks = context.project.members.get((table.collection[0],), ())
        told = f"The mark of the {table.owner} that the {collection.one} belongs to."
        yield TableColumn(table.owner.capitalize(), table.owner, told, marks, 10)


def _make_column(context: DocumentContext, field: Field, depth: int, party: str) -> TableColumn:
    form = tell_form(context, field)
    example = tell_example(context, field)
    other = f" From: {name_role(field.owed_by)}." if party and field.owed_by not in ("", party) else ""
    note = f"{tell_why(context, field)} Form: {form}.{f' Example: {example}.' if example else ''}{other}"
    counted = f", {form}" if field.kind in ("quantity", "percent") else ""
    title, choices = f"{field.label}{counted}", list_choices(context, field)
    width = max([14, *(len(choice) + 4 for choice in choices)])
    return TableColumn(title, ".".join(field.path[depth:]) or VALUE_NAME, note, choices, min(width, 30))


def _list_rows(context: DocumentContext, table: Table, fields: list[Field]) -> Iterator[tuple[str, ...]]:
    project, depth = context.project, len(table.collection)
    owners = project.members.get((table.collection[0],), ()) if table.owner else ("",)
    for owner in owners:
        own = (owner,) if owner else ()
        marks = project.members.get(table.find_member(owner, ""))
        if marks == ():
            yield (NONE, *own, *("" for _ in fields))
        for mark in marks or ():
            member = table.find_member(owner, mark)
            cells = (_tell(context, field, (*member, *field.path[depth:])) for field in fields)
            yield (str(int(mark) + 1) if table.listed else mark, *own, *cells)


def _tell(context: DocumentContext, field: Field, path: Path) -> str:
    """A value as it would be typed; empty where the project gives none."""
    value: Any = context.project.values.get(path)
    if value is None:
        return ""
    if isinstance(value, tuple):
        entries = [_type(context, field, entry) for entry in value]
        sign = "; " if any(";" in entry for entry in entries) else ", "
        return sign.join(map(_quote, entries)) or NONE
    return _type(context, field, value)


def _quote(entry: str) -> str:
    """An entry of a list, in quotes where it holds what stands between entries."""
    return '"{}"'.format(entry.replace('"', '""')) if set(entry) & set(',;"\n') else entry


def _type(context: DocumentContext, field: Field, value: Any) -> str:
    if isinstance(value, Quantity) and value.text:
        return value.text
    if "choice" in (field.kind, field.of):
        return words(str(value))
    if isinstance(value, (datetime.date, datetime.time)):
        return raw_text(value, field)
    text = raw_text(value, field, context.first)
    return f"{text}%" if field.kind == "percent" and isinstance(value, (int, float, Fraction)) else text
