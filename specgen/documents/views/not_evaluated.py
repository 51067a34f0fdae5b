"""The rules on walls that could not be judged, and the values that are pending."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._fields import name_fields
from specgen.judging.registry import load_rules
from specgen.judging.verdict import list_unjudged


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
        (rule, titles[rule], ", ".join(marks), _name_first(list(name_fields(context, needs[rule]))))
        for rule, marks in sorted(walls.items())
    )
    return TableView(("Rule", "Requirement", "Wall", "Pending"), lines, (9, 39, 11, 41))


def _name_first(labels: list[str]) -> str:
    """The first field, and how many others, so that a rule takes one line."""
    return labels[0] + (f", {len(labels) - 1} more" if len(labels) > 1 else "")
