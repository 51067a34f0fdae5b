"""What to ask of whom: the open items and pending documents of each party, those that decide most first."""

from collections import Counter
from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_required
from specgen.documents.views._fields import find_field, name_fields, say_fields
from specgen.documents.views._parties import name_party
from specgen.model.value_text import count

MOST_NAMED = 4


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party; the one whose answers settle most comes first."""
    held = Counter(need for clause in context.judgment.not_judged for need in clause.needs)
    asked = _sort_by_party(context, held)
    documents: dict[str, list[str]] = {}
    for entry in list_required(context.judgment):
        documents.setdefault(entry.owed_by, []).append(entry.name)
    parties = sorted(dict.fromkeys((*asked, *documents)), key=lambda p: -sum(held[path] for path in asked.get(p, ())))
    lines = tuple(_row(context, party, asked.get(party, []), documents.get(party, [])) for party in parties)
    return TableView(("Ask", "For"), lines, (26, 74))


def _sort_by_party(context: DocumentContext, held: Counter[str]) -> dict[str, list[str]]:
    """The dotted paths of the open items and of what the walls wait for, by party, those that decide most first."""
    walls = {path for judged in context.judgment.walls.values() for path in judged.fields}
    owed = {item.path: item.owed_by for item in context.judgment.open_items}
    for path in walls - set(owed):
        field = find_field(context, path)
        if field is not None:
            owed[path] = field.owed_by
    by_party: dict[str, list[str]] = {}
    for path in sorted(owed, key=lambda p: (p not in walls, -held[p], p)):
        by_party.setdefault(owed[path], []).append(path)
    return by_party


def _row(context: DocumentContext, party: str, paths: list[str], documents: list[str]) -> tuple[str, str]:
    names = say_fields(name_fields(context, paths))
    first = [*names[:MOST_NAMED], *documents[: max(1, MOST_NAMED - len(names))]]
    rest = " and ".join(_count_rest(names, documents, first))
    return name_party(context, party), "; ".join([*first, *([f"and {rest}"] if rest else [])])


def _count_rest(names: list[str], documents: list[str], first: list[str]) -> Iterator[str]:
    for noun, entries in (("value", names), ("document", documents)):
        rest = sum(entry not in first for entry in entries)
        if rest:
            yield count(rest, f"more {noun}")
