"""The rules that could not be judged: those that decide a wall with what each waits for, the others by number."""

import re
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.parties import name_role
from specgen.documents.required_documents import list_measured, list_pending
from specgen.documents.views._requests import list_requests
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.model.block import Strong, Text
from specgen.model.value_text import count

# Where each value and document stands.
_IN_LIST = "see D19."
_YES_NO = re.compile(r"(?<=\?) yes/no|: yes/no")
# A rule by what each party owes for it.
Pending = dict[str, dict[str, list[str]]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each rule that decides a wall; one for those that wait for a document alone, one for the others."""
    judgment = context.judgment
    undecided = {mark: list_undecided(context, mark) for mark in judgment.walls}
    unjudged = dict.fromkeys(sorted(clause.rule for clause in judgment.not_judged))
    decides = {rule: [mark for mark, rules in undecided.items() if rule in rules] for rule in unjudged}
    values, documents = _list_pending(context)
    lines: list[tuple[Any, ...]] = [
        (
            _name(context, rule),
            span_marks(walls),
            _say_pending(values.get(rule, {}), f" ({', '.join(walls)})", rule in documents),
        )
        for rule, walls in decides.items()
        if walls
    ]
    lines += _list_others(context, [rule for rule, walls in decides.items() if not walls])
    return TableView(("Rule", "Wall", "Pending, and from whom"), tuple(lines), (33, 12, 55))


def _list_others(context: DocumentContext, others: list[str]) -> Iterator[tuple[str, str, str]]:
    """A row for the rules that wait for no value but a document, and one that counts those that decide no wall."""
    waiting = list_waiting_rules(context)
    if waiting:
        yield ", ".join(waiting), "", f"Documents alone: {_IN_LIST}"
    if others:
        yield count(len(others), "other rule"), "none", f"Values and documents: {_IN_LIST}"


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
    for request in list_requests(context):
        for item in request.items:
            if item.text.startswith(listed):
                documents.update(item.holds)
                continue
            if item.names:  # whom to ask settles no rule
                continue
            for rule in dict.fromkeys(item.holds):
                values[rule][request.party].append(item.text)
    return values, documents


def _say_pending(owed: dict[str, list[str]], walls: str, documents: bool) -> Any:
    """`Architect: Basic wind speed; Mean roof height. Engineer: Safety factor on the tested wind load.`

    The walls of the row are not said again behind an item; documents have a list of their own.
    """
    cell: list[Any] = []
    for party, items in owed.items():
        cell += [" " if cell else "", Strong((Text(f"{name_role(party)}:"),)), f" {_join(items, walls)}"]
    if documents or not cell:
        cell += [" " if cell else "", f"Documents: {_IN_LIST}"]
    return cell


def _join(items: list[str], walls: str) -> str:
    """The items as a list within a cell; a question ends with its own mark, and nobody answers it here."""
    said = "; ".join(_YES_NO.sub("", item.replace(walls, "")) for item in items).replace("?; ", "? ")
    return said if said.endswith("?") else f"{said}."
