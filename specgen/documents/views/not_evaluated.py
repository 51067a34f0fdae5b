"""The rules on walls that could not be judged, the values that are pending, and who supplies them."""

from collections.abc import Iterable

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._fields import find_field, name_fields
from specgen.judging.registry import load_rules
from specgen.judging.verdict import list_unjudged
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each rule, with the walls it is pending for."""
    titles = {rule.code: rule.title for rule in load_rules()}
    walls: dict[str, list[str]] = {}
    needs: dict[str, dict[str, None]] = {}
    for mark in context.judgment.walls:
        for rule, lacking in list_unjudged(context.judgment, mark).items():
            walls.setdefault(rule, []).append(mark)
            needs.setdefault(rule, {}).update(dict.fromkeys(lacking))
    lines = tuple(
        (
            titles[rule],
            ", ".join(marks),
            _name_first(list(name_fields(context, needs[rule]))),
            _name_owners(context, needs[rule]),
        )
        for rule, marks in sorted(walls.items())
    )
    return TableView(("Rule", "Wall", "Pending", "From"), lines, (32, 8, 38, 22))


def _name_owners(context: DocumentContext, paths: Iterable[str]) -> str:
    """Who supplies the first value, and whether others supply the rest: `architect and others`."""
    fields = (find_field(context, path) for path in paths)
    owners = list(dict.fromkeys(words(field.owed_by) for field in fields if field is not None))
    return f"{owners[0]} and others" if len(owners) > 1 else ", ".join(owners)


def _name_first(labels: list[str]) -> str:
    """The first field, and how many others, so that a rule takes one line."""
    return labels[0] + (f", {len(labels) - 1} more" if len(labels) > 1 else "")
