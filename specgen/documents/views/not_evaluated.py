"""The rules that could not be judged: those on a wall with what each waits for, those on the work by subject."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.field_units import name_unit
from specgen.documents.members import span_marks
from specgen.documents.parties import name_role
from specgen.documents.required_documents import list_measured, list_pending
from specgen.documents.views._requests import list_requests
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.documents.views.answers import concerns, list_colors
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.documents.wall_areas import list_elevations
from specgen.model.block import Strong, Text
from specgen.model.value_text import count

# Where each value and document stands.
_IN_LIST = "see D19."
# What a rule on no wall is about.
_OF_WORK = "work"
# So many items of a party are not told twice.
_MANY = 4
# The answers that a question can have, as far as the marks that it is asked of.
_ANSWERS = re.compile(r"(?:(?<=\?) (?!\()|: )[^(]*?(?= \(|$)")
# A rule by what each party owes for it.
Pending = dict[str, dict[str, list[str]]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The rules on the walls, those together that wait for the same; those that wait for a document; the others."""
    judgment = context.judgment
    undecided = {mark: list_undecided(context, mark) for mark in judgment.walls}
    unjudged = dict.fromkeys(sorted(clause.rule for clause in judgment.not_judged))
    decides = {rule: [mark for mark, rules in undecided.items() if rule in rules] for rule in unjudged}
    lines = _list_deciding(context, {rule: walls for rule, walls in decides.items() if walls})
    lines += _list_waiting(context)
    lines += _list_others([rule for rule, walls in decides.items() if not walls])
    return TableView(("Rule", "Wall", "Pending, and from whom"), tuple(lines), (34, 8, 58))


def _list_deciding(context: DocumentContext, decides: dict[str, list[str]]) -> list[tuple[Any, ...]]:
    """A row for what rules wait for, with the rules and the walls they are on."""
    values, documents = _list_pending(context)
    alike: dict[str, tuple[list[str], list[str], Any]] = {}
    told: dict[tuple[str, ...], str] = {}
    for rule, walls in decides.items():
        owed = {party: _refer(tuple(items), rule, told) for party, items in values.get(rule, {}).items()}
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


def _list_waiting(context: DocumentContext) -> Iterator[tuple[str, str, str]]:
    """A row for the rules that wait for no value but a document, those on the same walls together."""
    alike: dict[str, list[str]] = defaultdict(list)
    for rule in list_waiting_rules(context):
        entries = [entry for entry in list_pending(context) if entry.code.startswith(rule)]
        marks = list(context.judgment.walls)
        concerned = [mark for mark in marks if any(concerns(context, entry, mark) for entry in entries)]
        alike[span_marks(concerned or marks)].append(rule)
    for walls, rules in alike.items():
        yield ", ".join(rules), walls, f"Documents alone: {_IN_LIST}"


def _list_others(others: list[str]) -> Iterator[tuple[str, str, str]]:
    """A row for the rules on the work, with their number in each subject: `ACC 10, AIR 8`."""
    if others:
        subjects = Counter(rule[:3] for rule in others)
        told = ", ".join(f"{subject} {number}" for subject, number in subjects.items())
        yield count(len(others), "other rule"), _OF_WORK, f"{told}: {_IN_LIST}"


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
                values[rule][request.party].append(asked)
    return values, documents


def _match_units(context: DocumentContext) -> re.Pattern[str]:
    """The unit that an item is answered in: `, psf` at its end."""
    fields = context.project.schema.fields.values()
    units = {name_unit(field, context.first) for field in fields} - {""}
    return re.compile(rf", (?:{'|'.join(map(re.escape, sorted(units)))})(?=\?? \(|\??$)")


def _say_pending(owed: dict[str, list[str]], unsaid: list[str], documents: bool) -> Any:
    """`Architect: Basic wind speed; Mean roof height. Engineer: Safety factor on the tested wind load.`

    The marks `unsaid` are left out behind an item; documents have a list of their own.
    """
    cell: list[Any] = []
    for party, items in owed.items():
        cell += [" " if cell else "", Strong((Text(f"{name_role(party)}:"),)), f" {_join(items, unsaid)}"]
    if documents or not cell:
        cell += [" " if cell else "", "Documents: D19."]
    return cell


def _join(items: list[str], unsaid: list[str]) -> str:
    """The items as a list within a cell; a question ends with its own mark, and nobody answers it here."""
    for said in unsaid:
        items = [item.replace(said, "") for item in items]
    joined = "; ".join(_ANSWERS.sub("", item) for item in items).replace("?; ", "? ")
    return joined if joined.endswith("?") else f"{joined}."
