"""The rules that could not be judged, the values that are pending, and who supplies them."""

from collections.abc import Iterable

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._asked import DOCUMENTS
from specgen.documents.views._fields import ask_by_code, find_field, name_fields, say_fields
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.model.value_text import words

# How much of a code names the group of a rule.
_GROUP = 3
_LISTED = "documents still required, see D19"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each rule that can decide a wall, then one for each group of the others."""
    needs: dict[str, dict[str, None]] = {}
    for clause in context.judgment.not_judged:
        needs.setdefault(clause.rule, {}).update(dict.fromkeys(clause.needs))
    walls = context.judgment.walls
    undecided = {mark: list_undecided(context, mark) for mark in walls}
    decides = {rule: [mark for mark, rules in undecided.items() if rule in rules] for rule in needs}
    groups: dict[str, list[str]] = {}
    for rule in sorted(needs, key=lambda rule: (not decides[rule], rule)):
        groups.setdefault(rule if decides[rule] else rule[:_GROUP], []).append(rule)
    lines = []
    for rules in groups.values():
        pending = _name_needs(context, (need for rule in rules for need in needs[rule]))
        lines.append(("; ".join(name_rules(rules)), ", ".join(decides[rules[0]]) or "none", pending))
    return TableView(("Rule", "Can decide", "Pending, and from whom"), tuple(lines), (40, 8, 52))


def _name_needs(context: DocumentContext, paths: Iterable[str]) -> str:
    """The values by who supplies them: `Architect: Mean roof height; Engineer: Safety factor`."""
    by_owner: dict[str, list[str]] = {}
    for path in ask_by_code(context, paths):
        if path == DOCUMENTS:
            by_owner.setdefault(_LISTED, [])
            continue
        field = find_field(context, path)
        by_owner.setdefault(words(field.owed_by) if field else "", []).append(path)
    told = []
    # What no party is named for comes last.
    for owner, owed in sorted(by_owner.items(), key=lambda entry: not entry[1]):
        if not owed:
            told.append(owner)
            continue
        values = ", ".join(say_fields(name_fields(context, owed)))
        told.append(f"{owner[:1].upper()}{owner[1:]}: {values}" if owner else values)
    return "; ".join(told)
