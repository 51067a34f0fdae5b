"""Every open item by the party that owes it: what it holds up, and before which work it is needed."""

import itertools
import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from specgen.documents.code_edition import assumes_edition
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.measures import name_groups
from specgen.documents.members import span_marks
from specgen.documents.views._asked import Asked, list_asked, list_held
from specgen.documents.views._asked_rows import group_items, shorten_holds, tell_numbers, tell_step
from specgen.documents.views._fields import OF_ASCE_7
from specgen.documents.views._needed import tell_rules
from specgen.documents.views._open_answers import EDITION, SPEC_SECTIONS
from specgen.documents.views._proposed import join_figures, propose, tell_basis
from specgen.documents.views._requests import DOCUMENTS, Item, list_requests, say
from specgen.documents.views._stages import DECISION, NAMING, PULLS, SUBMITTAL, find_last
from specgen.documents.views._together import join_items

# The lists that are asked for in words of their own.
_LISTED = {SPEC_SECTIONS: ("contract.spec_sections",)}
_CODE = "code.edition"
# What a party holds up that is still to be named.
_OF_ALL = "all asked of them"
# The code of a rule; a section of the code adopted begins with the other.
_RULE, _OF_CODE = re.compile(r"[A-Z]{3}-\d\d"), re.compile(r"COD(?: |$)")


class OpenLine(NamedTuple):
    """One open item by itself; `holds` are the codes of the rules and documents that it holds up, spanned."""

    numbers: str  # of the documents that it is; empty for a value
    party: str  # its role
    before: str
    subject: str
    item: str
    holds: str


def list_lines(context: DocumentContext) -> tuple[OpenLine, ...]:
    """Every open item in a line of its own, in the order of the tables; documents bear their numbers."""
    return tuple(_number_lines(context))


def _number_lines(context: DocumentContext) -> Iterator[OpenLine]:
    first = 1
    for request in list_requests(context):
        for item in request.items:
            numbers = tell_numbers(first, item.number) if item.number else ""
            first += item.number
            yield OpenLine(numbers, request.party, request.before, request.subject, item.told, _span_holds(item))


class OpenValue(NamedTuple):
    """A value that a party is asked for by itself."""

    path: str  # dotted
    party: str  # its role
    order: int  # of what it is needed before
    before: str
    rules: tuple[str, ...]  # codes of those it holds up
    proposed: str  # the figure that holds until somebody confirms or corrects it; empty without one
    told: bool  # whether a document that is asked for beside it tells it
    basis: str = ""  # where the figure proposed comes from


class OpenDocument(NamedTuple):
    """A document, a list, or an answer that no field holds, which a party is asked for."""

    party: str  # its role
    order: int  # of what it is needed before
    before: str
    name: str  # with the marks of what it is for
    rules: tuple[str, ...]  # codes of those it holds up
    lists: tuple[str, ...] = ()  # dotted paths of the collections that a list is of


def list_values(context: DocumentContext) -> tuple[OpenValue, ...]:
    """Every value that is asked for, in the order of need, and every open item that the list for readers leaves out.

    Those are what a document pending will tell, and what the code adopted has no use for: a package waits for them.
    """
    schema = context.project.schema
    every = [(one, False) for one in list_asked(context)] + [(one, True) for one in list_held(context)]
    listed = {one.path for one, _ in every}
    left = (item for item in context.judgment.open_items if item.path not in listed)
    every += [(Asked(item.path, item.owed_by, *SUBMITTAL), False) for item in left]
    return tuple(
        OpenValue(*one, tuple(sorted(tell_rules(context, one.path))), join_figures(figures), told, tell_basis(figures))
        for one, told in sorted(every, key=lambda entry: entry[0].order)
        if schema.field_at(tuple(one.path.split("."))) is not None
        for figures in (propose(context, one.path),)
    )


def list_first(context: DocumentContext) -> Iterator[OpenValue]:
    """What nothing waits for yet and everybody will ask: the edition that is assumed, the wind before any elevation."""
    project = context.project
    if assumes_edition(context):
        yield OpenValue(_CODE, "architect", *DECISION, (), str(project.get(("code", "edition"))), told=False)
    for path in OF_ASCE_7 if not project.members.get(("elevations",)) else ():
        place = tuple(path.split("."))
        field = project.schema.fields[place]
        if field.ring != "optional" and project.get(place) is None and project.applies(place):
            yield OpenValue(path, field.owed_by, *SUBMITTAL, (), "", told=False)


def is_needed(context: DocumentContext, order: int, stage: str) -> bool:
    """Whether what is needed before the work of this order is needed at a stage: `verdict`, `mockup`, and so on."""
    return order <= find_last(context, stage)


def list_documents(context: DocumentContext) -> tuple[OpenDocument, ...]:
    """Every document, list, and answer that is asked for and stands in no field, in the order of need."""
    schema = context.project.schema
    lists: dict[tuple[str, int, str], dict[str, list[str]]] = {}
    for one in list_asked(context):
        if schema.field_at(tuple(one.path.split("."))) is None:
            named = lists.setdefault((one.party, one.order, one.before), {})
            named.setdefault(one.path.rpartition(".")[2], []).append(one.path)
    found = [
        OpenDocument(*key, item.told, item.holds, tuple(paths))
        for key, named in lists.items()
        for paths in named.values()
        for item in say(context, paths)
    ]
    for asked in list_requests(context):
        if asked.subject == DOCUMENTS:
            key = (asked.party, asked.order, asked.before)
            apart = [item for item in asked.items if not item.text.startswith(EDITION)]  # which a field holds
            found += [OpenDocument(*key, one.told, one.holds, _LISTED.get(one.text, ())) for one in apart]
    return tuple(sorted(found, key=lambda one: one.order))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A row for what is answered together, below the party and the work that it is needed before."""
    lines: list[tuple[Any, ...]] = []
    numbers = itertools.count(1)
    for head, groups in group_items(context, lambda item: not item.number):
        lines.append(head)
        for step, row in ((group.step, row) for group in groups for row in join_items(context, group.items)):
            holds = _OF_ALL if row.names else shorten_holds(row.holds)
            lines.append((f"V{next(numbers)}", [*row.asked, tell_step(step)], holds, ""))
    return TableView(("No.", "Value", "Holds up", "Answer, date"), tuple(lines), (5, 59, 22, 14))


def count_values(context: DocumentContext) -> int:
    """How many values are asked for, each counted that stands in one row with others."""
    return sum(not item.number for request in list_requests(context) for item in request.items)


def count_asked(context: DocumentContext) -> dict[str, int]:
    """The number of names needed first, of items before the decision on the walls, before the submittal, and later.

    Those before the walls are repaired and pulled are counted besides.
    """
    counts = {"naming": 0, "pulls": 0, "decision": 0, "submittal": 0, "later": 0}
    for request in list_requests(context):
        if request.order == NAMING[0]:
            counts["naming"] += sum(bool(item.names) for item in request.items)
            continue
        counts["pulls"] += len(request.items) if request.order == PULLS[0] else 0
        early = "decision" if request.order <= DECISION[0] else "submittal"
        counts[early if request.order <= SUBMITTAL[0] else "later"] += len(request.items)
    return counts


def tell_asked(context: DocumentContext) -> str:
    """All items in one text, to find the marks in it."""
    return "\n".join(item.text for request in list_requests(context) for item in request.items)


def tell_holds_key(context: DocumentContext) -> str:
    """`rules, numbered by subject: ACC access; documents: D06 Calculations`: of the codes that are printed."""
    return "; ".join(_tell_kinds(context))


def _span_holds(item: Item) -> str:
    """`ATT-05, COD-02 to COD-04`."""
    return span_marks(dict.fromkeys(item.holds))


def _tell_kinds(context: DocumentContext) -> Iterator[str]:
    held = {code for request in list_requests(context) for item in request.items for code in item.holds}
    rules = sorted(code for code in held if _RULE.fullmatch(code))
    if rules:
        yield f"rules, numbered by subject: {name_groups(rules)}"
    if any(map(_OF_CODE.match, held)):
        yield "COD by itself or with a section: code requirement, D02"
    documents = [known for known in context.rest.known if known.id in held]
    if documents and context.draft:
        yield "documents, where no rule waits, by number: titles in D00"
    elif documents:
        yield f"documents: {', '.join(f'{known.id} {known.title}' for known in documents)}"
