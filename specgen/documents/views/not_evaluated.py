"""The rules that could not be judged: those on a wall with what each waits for, those on the work by subject."""

import re
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.contract_first import CONTRACT
from specgen.documents.field_units import name_unit, spell_unit
from specgen.documents.members import span_marks
from specgen.documents.parties import name_role
from specgen.documents.required_documents import list_measured, list_pending
from specgen.documents.views._asked_rows import is_told
from specgen.documents.views._concerned import list_colors
from specgen.documents.views._following import list_open_rules, split_rules
from specgen.documents.views._requests import list_requests
from specgen.documents.views._rules import name_rules
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.documents.wall_areas import list_elevations
from specgen.model.block import Strong, Text

# Where the documents stand that the walls wait for.
_DOCUMENTS = "Documents: listed above."
# What stands above the rules on the walls, as some are evaluated later than the walls are decided on.
_BEFORE = "Before the decision on the walls"
_AFTER = "Evaluated after the decision; each value at the stage that D19 names"
# So many items of a party are not told twice.
_MANY = 4
# The answers that a question can have, as far as the marks that it is asked of.
_ANSWERS = re.compile(r"(?:(?<=\?) (?!\()|: )[^(]*?(?= \(|$)")
# A rule by what each party owes for it.
Pending = dict[str, dict[str, list[str]]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The rules on the walls, those together that wait for the same; those that wait for a document; the others."""
    on = {mark: list_open_rules(context, mark) for mark in context.judgment.walls}
    every = {clause.rule for clause in context.judgment.not_judged} | set(list_waiting_rules(context))
    decides = {rule: [mark for mark, rules in on.items() if rule in rules] for rule in sorted(every)}
    values, documents = _list_pending(context)
    alone = {rule: walls for rule, walls in decides.items() if walls and rule not in values}
    split = split_rules(context, [rule for rule, walls in decides.items() if walls])
    lines: list[tuple[Any, ...]] = []
    for head, rules in ((_BEFORE, split.before), (_AFTER, split.after)):
        waiting = {rule: decides[rule] for rule in rules if rule not in alone}
        lines += [(head,)] if rules and split.after else []
        lines += _list_deciding(context, waiting, values, documents)
        lines += _list_alone(context, {rule: decides[rule] for rule in rules if rule in alone})
    return TableView(("Rule", "Wall", "Pending, and from whom"), tuple(lines), (32, 6, 62))


def count_rules_of_walls(context: DocumentContext) -> int:
    """How many rules are not evaluated on any wall, each once."""
    return len({rule for mark in context.judgment.walls for rule in list_open_rules(context, mark)})


def _list_deciding(
    context: DocumentContext, decides: dict[str, list[str]], values: Pending, documents: set[str]
) -> list[tuple[Any, ...]]:
    """A row for what rules wait for, with the rules and the walls they are on."""
    alike: dict[str, tuple[list[str], list[str], Any]] = {}
    told: dict[tuple[str, ...], str] = {}
    for rule, walls in decides.items():
        owed = {party: _refer(tuple(items), rule, told) for party, items in values[rule].items()}
        pending = _say_pending(owed, _list_unsaid(context, walls), rule in documents)
        alike.setdefault(f"{walls}{pending}", ([], walls, pending))[0].append(_name(context, rule))
    return [("; ".join(rules), span_marks(walls), pending) for rules, walls, pending in alike.values()]


def _list_unsaid(context: DocumentContext, walls: list[str]) -> list[str]:
    """The marks that a row does not say again behind an item: its walls, all elevations of these, all their colors."""
    elevations = [one for mark in walls for one in list_elevations(context, mark)]
    colors = [one for mark in walls for one in list_colors(context, mark)]
    return [f" ({', '.join(dict.fromkeys(marks))})" for marks in (walls, elevations, colors) if marks]


def _refer(items: tuple[str, ...], rule: str, told: dict[tuple[str, ...], str]) -> list[str]:
    """The items that a party owes for a rule; many that an earlier rule waits for too, by that rule: `as ATT-05`."""
    first = told.setdefault(items, rule)
    return [f"as {first}"] if len(items) >= _MANY and first != rule else list(items)


def _list_alone(context: DocumentContext, alone: dict[str, list[str]]) -> Iterator[tuple[str, str, str]]:
    """A row for the rules that wait for no value but a document, those on the same walls together."""
    alike: dict[str, list[str]] = defaultdict(list)
    for rule, walls in alone.items():
        alike[span_marks(walls)].append(_name(context, rule))
    for marks, rules in alike.items():
        yield "; ".join(rules), marks, _DOCUMENTS


def _name(context: DocumentContext, rule: str) -> str:
    """A rule by code and title, with the clauses of it that have told already."""
    (named,) = name_rules([rule])
    told = dict.fromkeys(f.code for f in list_measured(context) if f.rule == rule)
    return f"{named} (in part; {', '.join(told)}: see D05)" if told else named


def _list_pending(context: DocumentContext) -> tuple[Pending, set[str]]:
    """What D19 asks for, by the rule that it holds up and the party that owes it; the rules that documents hold up."""
    values: Pending = defaultdict(lambda: defaultdict(list))
    documents: set[str] = set()
    listed = tuple(entry.name for entry in list_pending(context))
    units = _match_units(context)
    for request in list_requests(context):
        for item in request.items:
            if item.text.startswith(listed):
                documents.update(item.holds)
                continue
            if item.names:  # whom to ask settles no rule
                continue
            asked = units.sub("", item.text)
            for rule in dict.fromkeys(item.holds):
                giver = CONTRACT if is_told(context, request.party, item) else request.party
                values[rule][giver].append(asked)
    return values, documents


def _match_units(context: DocumentContext) -> re.Pattern[str]:
    """The unit that an item is answered in: `, psf` at its end."""
    fields = context.project.schema.fields.values()
    named = {name_unit(field, context.first) for field in fields} - {""}
    units = named | set(map(spell_unit, named))
    return re.compile(rf", (?:{'|'.join(map(re.escape, sorted(units)))})(?=\?? \(|\??$)")


def _say_pending(owed: dict[str, list[str]], unsaid: list[str], documents: bool) -> Any:
    """`Architect: Basic wind speed; Mean roof height. Engineer: Safety factor on the tested wind load.`

    The marks `unsaid` are left out behind an item; documents have a list of their own.
    """
    cell: list[Any] = []
    for party, items in owed.items():
        cell += [" " if cell else "", Strong((Text(f"{name_role(party)}:"),)), f" {_join(items, unsaid)}"]
    return [*cell, f" {_DOCUMENTS}"] if documents else cell


def _join(items: list[str], unsaid: list[str]) -> str:
    """The items as a list within a cell; a question ends with its own mark, and nobody answers it here."""
    for said in unsaid:
        items = [item.replace(said, "") for item in items]
    joined = "; ".join(_ANSWERS.sub("", item) for item in items).replace("?; ", "? ")
    return joined if joined.endswith("?") else f"{joined}."
