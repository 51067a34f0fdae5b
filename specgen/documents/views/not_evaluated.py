"""The rules that could not be judged, the values that are pending, and who supplies them."""

from collections.abc import Iterable, Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_measured
from specgen.documents.views._asked import DOCUMENTS
from specgen.documents.views._fields import ask_by_code, find_field, name_fields, say_fields
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.model.value_text import words

# How much of a code names the group of a rule.
_GROUP = 3
# What a rule depends on and no field of it names, asked of the architect.
_APART = {"INS-05": "Indoor design temperature and relative humidity", "SUB-07": "Specification section for this work"}
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
        pending = _name_needs(context, rules, needs)
        lines.append(("; ".join(_name_judged(context, rules)), ", ".join(decides[rules[0]]) or "none", pending))
    return TableView(("Rule", "Can decide", "Pending, and from whom"), tuple(lines), (40, 8, 52))


def _name_judged(context: DocumentContext, rules: Iterable[str]) -> Iterator[str]:
    """Each rule by code and title, with the clauses of it that have told already."""
    for rule, named in zip(rules, name_rules(rules), strict=True):
        told = dict.fromkeys(f.code for f in list_measured(context) if f.rule == rule)
        yield f"{named} (in part; {', '.join(told)}: see D05)" if told else named


def _name_needs(context: DocumentContext, rules: Iterable[str], needs: dict[str, dict[str, None]]) -> str:
    """The values by who supplies them: `Architect: Mean roof height; Engineer: Safety factor`."""
    paths = [need for rule in rules for need in needs[rule]]
    by_owner: dict[str, list[str]] = {}
    for path in ask_by_code(context, paths):
        if path == DOCUMENTS:
            by_owner.setdefault(_LISTED, [])
            continue
        field = find_field(context, path)
        by_owner.setdefault(words(field.owed_by) if field else "", []).append(path)
    said = {owner: list(say_fields(name_fields(context, owed))) for owner, owed in by_owner.items()}
    specified = bool(context.project.members.get(("contract", "spec_sections")))
    apart = [asked for rule, asked in _APART.items() if rule in rules and not (specified and rule == "SUB-07")]
    if apart:
        said.setdefault("architect", []).extend(apart)
    # What no party is named for comes last.
    told = sorted(said.items(), key=lambda entry: not entry[1])
    return "; ".join(_name_owed(owner, ", ".join(values)) for owner, values in told)


def _name_owed(owner: str, values: str) -> str:
    return f"{owner[:1].upper()}{owner[1:]}: {values}" if owner and values else owner or values
