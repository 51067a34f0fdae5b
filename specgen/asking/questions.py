"""What each party is asked up to a stage: the questions that fields stand for, and what is to be sent."""

import datetime
from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from specgen.asking.owed import find_field, find_owed
from specgen.asking.papers_asked import PaperAsked, list_papers
from specgen.asking.question_words import (
    ask,
    find_list,
    list_choices,
    span_told,
    tell_example,
    tell_form,
    tell_holdup,
    tell_list,
    tell_why,
)
from specgen.documents.context import DocumentContext
from specgen.documents.parties import find_name, name_role, tell_contact, tell_route
from specgen.documents.views.open_items import OpenDocument, OpenValue
from specgen.documents.views.reply_dates import find_due
from specgen.model.field import Path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.model.value_text import words

# Those whom a contractor forwards questions to, as contracts have it.
BY_ROUTE = ("owner", "architect", "engineer")
# What people call a party besides its own name.
_CALLED = {
    "GC": "general_contractor",
    "prime contractor": "general_contractor",
    "A/E": "architect",
    "designer": "architect",
    "structural engineer": "engineer",
    "EOR": "engineer",
    "subcontractor": "applicator",
    "sub": "applicator",
    "finish maker": "finish_source",
    "coating manufacturer": "finish_source",
    "WRB maker": "wrb_source",
    "sealant maker": "sealant_source",
    "EIFS maker": "eifs_source",
}


class Question(NamedTuple):
    """A field as a question to the party that owes it."""

    field: str  # dotted path
    question: str
    why: str
    form: str  # unit, or how the answer is written
    example: str
    choices: tuple[str, ...]  # one of which is the answer; empty for any other form
    holds_up: str
    due: datetime.date | None


class Wanted(NamedTuple):
    """A document, a list, or an answer in words that no field holds."""

    name: str
    holds_up: str
    due: datetime.date | None


class PartySheet(NamedTuple):
    """All that one party is asked."""

    role: str  # as `owed_by` has it
    title: str  # the role in words
    name: str  # empty while it is not given
    return_to: str
    return_by: datetime.date | None  # the first of the due dates
    questions: tuple[Question, ...]
    wanted: tuple[Wanted, ...]
    tables: tuple[str, ...]  # names of those that what is wanted is listed in
    papers: tuple[PaperAsked, ...] = ()  # documents that become attachments when they are sent


class Asked(NamedTuple):
    """The sheets, those whose answers come first in front, and the number of questions left to later stages."""

    sheets: tuple[PartySheet, ...]
    later: int


def find_role(context: DocumentContext, name: str) -> str:
    """The role of a party by its code as people say it, `eifs_source`, `EIFS manufacturer` or `GC`; raises Refused."""
    roles = {field.owed_by for field in context.project.schema.fields.values() if field.owed_by}
    known = {fold_name(name): role for role in roles for name in (role, words(role), name_role(role))}
    known |= {fold_name(name): role for name, role in _CALLED.items()}
    role = known.get(fold_name(name))
    if role is None:
        said = {fold_name(words(one)): words(one) for one in sorted(roles)}
        raise refuse(f"there is no party {name!r}", suggest(name, said.values()))
    return role


def fold_name(name: str) -> str:
    """A name of a party without the difference of capitals, blanks, hyphens and underscores."""
    return "".join(sign for sign in name.lower() if sign.isalnum())


def gather_sheets(context: DocumentContext, stage: str) -> Asked:
    """One sheet for each party that owes something up to a stage: `verdict`, `mockup`, `work`, or `closeout`."""
    owed = find_owed(context, stage)
    orders = [(value.order, value.party) for value in owed.values]
    orders = sorted(orders + [(one.order, one.party) for one in owed.documents])
    counts = Counter(role for _, role in orders)
    first = {role: order for order, role in reversed(orders)}
    papers = list_papers(context, owed)
    sheets = []
    for role in sorted(first, key=lambda role: (first[role], -counts[role], role)):
        questions = tuple(_ask_all(context, [value for value in owed.values if value.party == role]))
        mine = [one for one in owed.documents if one.party == role]
        told = tuple(_tell_wanted(context, one) for one in mine)
        tables = tuple(dict.fromkeys(find_list(context, path).name for one in mine for path in one.lists))
        sheet = _make_sheet(context, role, questions, told, tables)
        sheets.append(sheet._replace(papers=papers.get(role, ())))
    return Asked(tuple(sheets), owed.later)


def _ask_all(context: DocumentContext, values: list[OpenValue]) -> Iterator[Question]:
    """The questions in the order of need, those of one member together."""
    fields = list(context.project.schema.fields)
    places = {path: number for number, path in enumerate(fields)}
    sections = {name: number for number, name in enumerate(dict.fromkeys(path[0] for path in fields))}

    def place(value: OpenValue) -> tuple[int, int, Path, int]:
        pattern, path = find_field(context, value).path, tuple(value.path.split("."))
        member = path[:2] if "*" in pattern[:2] else path[:1]
        return value.order, sections[path[0]], member, places[pattern]

    for value in sorted(values, key=place):
        field = find_field(context, value)
        yield Question(
            field=value.path,
            question=ask(context, field, tuple(value.path.split(".")), value.proposed),
            why=tell_why(context, field, value.basis),
            form=tell_form(context, field),
            example=tell_example(context, field),
            choices=list_choices(context, field),
            holds_up=tell_holdup(value.before, value.rules),
            due=find_due(context, value.order),
        )


def _tell_wanted(context: DocumentContext, one: OpenDocument) -> Wanted:
    name = tell_list(context, one.name, one.lists[0]) if one.lists else one.name
    return Wanted(span_told(name), tell_holdup(one.before, one.rules), find_due(context, one.order))


def _make_sheet(
    context: DocumentContext,
    role: str,
    questions: tuple[Question, ...],
    wanted: tuple[Wanted, ...],
    tables: tuple[str, ...],
) -> PartySheet:
    path, project = find_name(context, role), context.project
    applicator = str(project.get(("parties", "applicator", "name")) or "the applicator")
    route = tell_route(context).rpartition(" through ")[2] if role in BY_ROUTE else ""
    return PartySheet(
        role=role,
        title=name_role(role),
        name=str(project.get(path) or "") if path else "",
        return_to=f"{applicator}{tell_contact(context)}{f'; through {route}' if route else ''}",
        return_by=min((due for due in ([q.due for q in questions] + [w.due for w in wanted]) if due), default=None),
        questions=questions,
        wanted=wanted,
        tables=tables,
    )
