"""Questions of which there are too many to be asked one by one: they are answered in the table of their members."""

from collections.abc import Iterable

from specgen.asking.tables import Table, find_table_of
from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.views.open_items import OpenDocument, OpenValue
from specgen.model.field import Path
from specgen.model.value_text import count

# More questions about the members of one table are not read one by one.
MOST_ASKED = 60
# Fewer members are no table.
FEWEST_ROWS = 3
# The most characters of marks that are told.
_MOST_MARKS = 40


def split_by_table(
    context: DocumentContext, values: Iterable[OpenValue]
) -> tuple[tuple[OpenValue, ...], tuple[OpenDocument, ...]]:
    """The values that are asked one by one, and the lists in place of those of which a party owes too many."""
    single, grouped = list[OpenValue](), dict[tuple[str, Table], list[OpenValue]]()
    for value in values:
        table = find_table_of(context.project.schema.node(_split(value)).path)
        if table is None:
            single.append(value)
        else:
            grouped.setdefault((value.party, table), []).append(value)
    lists = []
    for (_, table), mine in grouped.items():
        members = {_split(value)[: len(table.collection)] for value in mine}
        if len(mine) > MOST_ASKED and len(members) >= FEWEST_ROWS:
            lists.append(_list(context, table, mine))
        else:
            single += mine
    return tuple(sorted(single, key=lambda value: value.order)), tuple(lists)


def _list(context: DocumentContext, table: Table, values: list[OpenValue]) -> OpenDocument:
    """One entry for all: the members, the labels of what they lack, and the rules that wait."""
    schema, depth = context.project.schema, len(table.collection)
    collection = schema.collections[table.collection]
    members = list(dict.fromkeys(_split(value)[:depth] for value in values))
    marks = span_marks([member[-1] for member in members]) if depth == 2 else ""
    told = marks if 0 < len(marks) <= _MOST_MARKS else count(len(members), collection.one)
    lacking = {schema.node(_split(value)).path for value in values}
    labels = "; ".join(field.label for path, field in schema.fields.items() if path in lacking)
    first = min(values, key=lambda value: value.order)
    rules = tuple(sorted({rule for value in values for rule in value.rules}))
    name = f"{collection.label} ({told}): {labels}"
    return OpenDocument(first.party, first.order, first.before, name, rules, (".".join(members[0][:-1]),))


def _split(value: OpenValue) -> Path:
    return tuple(value.path.split("."))
