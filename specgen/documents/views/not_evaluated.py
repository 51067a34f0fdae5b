"""The rules that could not be judged, the values that are pending, and who supplies them."""

from collections.abc import Iterable

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._fields import ask_by_code, find_field, name_fields, say_fields
from specgen.documents.views._rules import name_rules
from specgen.model.value_text import words

# How much of a code names the group of a rule.
_GROUP = 3


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each rule that can decide a wall, then one for each group of the others."""
    needs: dict[str, dict[str, None]] = {}
    for clause in context.judgment.not_judged:
        needs.setdefault(clause.rule, {}).update(dict.fromkeys(clause.needs))
    walls = context.judgment.walls
    decides = {rule: [mark for mark, judged in walls.items() if rule in judged.undecided] for rule in needs}
    groups: dict[str, list[str]] = {}
    for rule in sorted(needs, key=lambda rule: (not decides[rule], rule)):
        groups.setdefault(rule if decides[rule] else rule[:_GROUP], []).append(rule)
    lines = tuple(
        (
            "; ".join(name_rules(rules)),
            ", ".join(decides[rules[0]]) or "none",
            _name_needs(context, _join(needs, rules)),
        )
        for rules in groups.values()
    )
    return TableView(("Rule", "Can decide", "Pending, and from whom"), lines, (40, 8, 52))


def _join(needs: dict[str, dict[str, None]], rules: list[str]) -> list[str]:
    return [need for rule in rules for need in needs[rule]]


def _name_needs(context: DocumentContext, paths: Iterable[str]) -> str:
    """The values by who supplies them: `Mean roof height (architect); Safety factor (engineer)`."""
    by_owner: dict[str, list[str]] = {}
    for path in ask_by_code(context, paths):
        field = find_field(context, path)
        by_owner.setdefault(words(field.owed_by) if field else "", []).append(path)
    told = []
    for owner, owed in by_owner.items():
        values = ", ".join(say_fields(name_fields(context, owed)))
        told.append(f"{owner[:1].upper()}{owner[1:]}: {values}" if owner else values)
    return "; ".join(told)
