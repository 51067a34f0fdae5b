"""What of the open items is asked for up to a stage: values, documents, and what is left to later stages."""

from typing import NamedTuple

from specgen.asking.by_table import split_by_table
from specgen.asking.question_words import tell_member
from specgen.documents.context import DocumentContext
from specgen.documents.views.open_items import (
    OpenDocument,
    OpenValue,
    is_needed,
    list_documents,
    list_first,
    list_values,
)
from specgen.model.field import Field
from specgen.model.stage import STAGES

# Only the applicator gives marks to attachments; everybody else sends them. A mark of nothing answers nothing.
GIVES_MARKS, _ATTACHMENTS = "applicator", "attachments"
_AGE, _COMPLETED = ".substrate.age_days", ".substrate.completed_on"
# Signed by the contractor behind the review of the package, which is asked for as a document.
_SIGNED = ("package", "contractor_review")


class Owed(NamedTuple):
    """Values and documents in the order of need, and the number of values left to later stages.

    `named` are the values that are marks of documents to be sent.
    """

    values: tuple[OpenValue, ...]
    documents: tuple[OpenDocument, ...]
    later: int
    named: tuple[OpenValue, ...] = ()


def find_owed(context: DocumentContext, stage: str) -> Owed:
    """What is asked for up to a stage: `verdict`, `mockup`, `work`, or `closeout`."""
    asked = [value for value in list_values(context) if _is_asked(context, value)]
    first = {value.path: value for value in list_first(context)}
    asked = [value for value in asked if value.path not in first or value.order <= first[value.path].order]
    asked += [first[path] for path in first if path not in {value.path for value in asked}]
    owed = [_ask_day(context, value) for value in asked if _is_owed(context, value, stage)]
    sent = [value for value in owed if _is_sent(context, value)]
    documents = [one for one in list_documents(context) if is_needed(context, one.order, stage)]
    documents += [_to_document(context, value) for value in sent if not value.told]
    values, lists = split_by_table(context, (value for value in owed if value not in sent))
    return Owed(
        values,
        tuple(sorted([*documents, *lists], key=lambda one: one.order)),
        len(asked) - len(owed),
        tuple(value for value in sent if find_field(context, value).to == _ATTACHMENTS),
    )


def _ask_day(context: DocumentContext, value: OpenValue) -> OpenValue:
    """The day of completion in place of an age, which is another one by the time the answer is read."""
    day = f"{value.path.removesuffix(_AGE)}{_COMPLETED}"
    if not value.path.endswith(_AGE) or context.project.get(tuple(day.split("."))) is not None:
        return value
    return value._replace(path=day)


def find_field(context: DocumentContext, value: OpenValue) -> Field:
    """The field of a value that is asked for."""
    field = context.project.schema.field_at(tuple(value.path.split(".")))
    assert field is not None
    return field


def _is_asked(context: DocumentContext, value: OpenValue) -> bool:
    """Whether a value can be asked for: its condition holds, and no record or signature gives it."""
    path = tuple(value.path.split("."))
    if find_field(context, value).home == "record" or path[:2] == _SIGNED:
        return False
    # The name of a party that owes something is asked for whoever else may need it.
    if path[0] == "parties" or context.project.applies(path):
        return True
    return value.path in {item.path for item in context.judgment.open_items}


def _is_owed(context: DocumentContext, value: OpenValue, stage: str) -> bool:
    """Whether a value is owed up to a stage, is needed before the work that belongs to it, or keeps a wall open."""
    rings = STAGES[: STAGES.index(stage) + 1]
    of_stage = find_field(context, value).ring in rings or is_needed(context, value.order, stage)
    return of_stage or any(value.path in wall.fields for wall in context.judgment.walls.values())


def _is_sent(context: DocumentContext, value: OpenValue) -> bool:
    """Whether a value is the mark of a document that another party is to send, or of what the project does not list."""
    field = find_field(context, value)
    if "file" in (field.kind, field.of):  # its name in the folder of the project is known there alone
        return True
    to = field.to
    listed = bool(context.project.members.get((to,)))
    return bool(to) and (not listed or (to == _ATTACHMENTS and value.party != GIVES_MARKS))


def _to_document(context: DocumentContext, value: OpenValue) -> OpenDocument:
    """The document behind a mark, by the label of its field."""
    field = find_field(context, value)
    member = tell_member(context, field, tuple(value.path.split(".")))
    label = field.asks if "file" in (field.kind, field.of) and field.asks else field.label
    name = f"{member}: {label}" if member else label
    return OpenDocument(value.party, value.order, value.before, name, value.rules)
