"""What each party is asked up to a stage: the questions that fields stand for, and what is to be sent."""

import datetime
from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from specgen.asking.due_dates import find_due
from specgen.asking.question_words import (
    ask,
    find_table,
    list_choices,
    tell_example,
    tell_form,
    tell_holdup,
    tell_list,
    tell_why,
)
from specgen.documents.context import DocumentContext
from specgen.documents.parties import find_name, name_role, tell_contact, tell_route
from specgen.documents.views.open_items import OpenDocument, OpenValue, is_needed, list_documents, list_values
from specgen.judging.open_items import RINGS
from specgen.model.field import Path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.model.value_text import words

_BY_ROUTE = ("owner", "architect")
# Signed by the contractor behind the review of the package, which is asked for as a document.
_SIGNED = ("package", "contractor_review")


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


class Asked(NamedTuple):
    """The sheets, those whose answers come first in front, and the number of questions left to later stages."""

    sheets: tuple[PartySheet, ...]
    later: int


def find_role(context: DocumentContext, name: str) -> str:
    """The role of a party by its code or in words, `eifs_source` or `EIFS manufacturer`; raises Refused."""
    roles = {field.owed_by for field in context.project.schema.fields.values() if field.owed_by}
    known = {role: role for role in sorted(roles)} | {words(role).lower(): role for role in sorted(roles)}
    asked = " ".join(name.lower().replace("-", " ").split())
    role = known.get(asked) or known.get(asked.replace(" ", "_"))
    if role is None:
        raise refuse(f"there is no party {name!r}", suggest(name, sorted(roles)))
    return role


def gather_sheets(context: DocumentContext, stage: str) -> Asked:
    """One sheet for each party that owes something up to a stage: `verdict`, `mockup`, `work`, or `closeout`."""
    values = [value for value in list_values(context) if _is_asked(context, value)]
    now = [value for value in values if _is_owed(context, value, stage)]
    wanted = [one for one in list_documents(context) if is_needed(context, one.order, stage)]
    orders = sorted([(value.order, value.party) for value in now] + [(one.order, one.party) for one in wanted])
    counts = Counter(role for _, role in orders)
    first = {role: order for order, role in reversed(orders)}
    sheets = []
    for role in sorted(first, key=lambda role: (first[role], -counts[role], role)):
        questions = tuple(_ask_all(context, [value for value in now if value.party == role]))
        mine = [one for one in wanted if one.party == role]
        told = tuple(_tell_wanted(context, one, stage) for one in mine)
        tables = tuple(dict.fromkeys(name for one in mine for path in one.lists if (name := find_table(context, path))))
        sheets.append(_make_sheet(context, role, questions, told, tables))
    return Asked(tuple(sheets), len(values) - len(now))


def _is_asked(context: DocumentContext, value: OpenValue) -> bool:
    """Whether a value can be asked for: its condition holds, and no record or signature gives it."""
    path = tuple(value.path.split("."))
    field = context.project.schema.field_at(path)
    if field is None or field.home == "record" or path[:2] == _SIGNED:
        return False
    # The name of a party that owes something is asked for whoever else may need it.
    if path[0] == "parties" or context.project.applies(path):
        return True
    return value.path in {item.path for item in context.judgment.open_items}


def _is_owed(context: DocumentContext, value: OpenValue, stage: str) -> bool:
    """Whether a value is owed up to a stage, or is needed before the work that belongs to it."""
    field = context.project.schema.field_at(tuple(value.path.split(".")))
    rings = RINGS[: RINGS.index(stage) + 1]
    return (field is not None and field.ring in rings) or is_needed(context, value.order, stage)


def _ask_all(context: DocumentContext, values: list[OpenValue]) -> Iterator[Question]:
    """The questions in the order of need, those of one member together."""
    places = {path: number for number, path in enumerate(context.project.schema.fields)}
    first: dict[str, int] = {}
    for path, number in places.items():
        first.setdefault(path[0], number)

    def place(value: OpenValue) -> tuple[int, int, Path, int]:
        path = tuple(value.path.split("."))
        field = context.project.schema.field_at(path)
        assert field is not None
        member = path[:2] if "*" in field.path[:2] else path[:1]
        return value.order, first[path[0]], member, places[field.path]

    for value in sorted(values, key=place):
        path = tuple(value.path.split("."))
        field = context.project.schema.field_at(path)
        assert field is not None
        yield Question(
            field=value.path,
            question=ask(context, field, path, value.proposed),
            why=tell_why(context, field),
            form=tell_form(context, field),
            example=tell_example(context, field),
            choices=list_choices(context, field),
            holds_up=tell_holdup(value.before, value.rules),
            due=find_due(context, value.order),
        )


def _tell_wanted(context: DocumentContext, one: OpenDocument, stage: str) -> Wanted:
    rings = RINGS[: RINGS.index(stage) + 1]
    name = tell_list(context, one.name, one.lists[0], rings) if one.lists else one.name
    return Wanted(name, tell_holdup(one.before, one.rules), find_due(context, one.order))


def _make_sheet(
    context: DocumentContext,
    role: str,
    questions: tuple[Question, ...],
    wanted: tuple[Wanted, ...],
    tables: tuple[str, ...],
) -> PartySheet:
    path, project = find_name(context, role), context.project
    applicator = str(project.get(("parties", "applicator", "name")) or "the applicator")
    route = tell_route(context).rpartition(" through ")[2] if role in _BY_ROUTE else ""
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
