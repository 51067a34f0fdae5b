"""What an attachment is: what it covers, whether it counts, and how old it was at award."""

import datetime
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks, split_mark
from specgen.model.value_text import count, words

# What is said of an attachment that is, or is not, as it must be; only what bears on its kind is given.
_MARKED = {
    "signed": ("signed", "not signed"),
    "marked": ("marked", "not marked"),
    "project_named": ("names the project", "does not name the project"),
}
_MONTHS = 12
_CALLED = {"wrb": "WRB", "backing": "backer rod"}


def tell_state(context: DocumentContext, mark: str) -> list[Any]:
    """`signed; ASTM E84; wall W1; 14 months`."""
    project, at = context.project, ("attachments", mark)
    parts: list[Any] = []
    for name, (yes, no) in _MARKED.items():
        given = project.get((*at, name))
        if given is not None:
            parts.append(yes if given else no)
        elif project.applies((*at, name)):
            parts.append(context.ask((*at, name)))
    for name, said in (("standard", ""), ("assembly", "wall ")):
        if project.is_given((*at, name)):
            parts.append(f"{said}{context.display((*at, name))}")
    colors = [color.mark for color in project.get((*at, "colors")) or ()]
    parts += [f"color{'s' if len(colors) > 1 else ''} {span_marks(colors)}"] if colors else []
    age = tell_age(context, mark)
    parts += [age] if age else []
    return [piece for number, part in enumerate(parts) for piece in (("; ", part) if number else (part,))]


def tell_age(context: DocumentContext, mark: str) -> str:
    """`11 months`: the age of a test report at award in whole months; empty for any other document."""
    project = context.project
    issued, award = project.get(("attachments", mark, "issued_on")), project.get(("contract", "award_date"))
    if project.get(("attachments", mark, "kind")) != "test_report" or issued is None or award is None:
        return ""
    if issued > award:
        return "issued after award"
    months = count_months(issued, award)
    return f"{count(months, 'month') if months else 'under 1 month'}"


def count_months(first: datetime.date, last: datetime.date) -> int:
    """The whole months from one day to another."""
    return (last.year - first.year) * _MONTHS + last.month - first.month - (last.day < first.day)


def list_attachments(context: DocumentContext) -> list[str]:
    """The marks of the attachments, those of a kind together, in the order of their numbers."""
    kinds: dict[str, list[str]] = {}
    for mark in context.project.members.get(("attachments",), ()):
        kinds.setdefault(str(context.project.get(("attachments", mark, "kind"))), []).append(mark)
    return [mark for marks in kinds.values() for mark in sorted(marks, key=split_mark)]


def name_material(material: str) -> str:
    """`WRB`, `backer rod`, `base coat`: a material as tables of documents name it."""
    return _CALLED.get(material) or words(material)


def name_kind(kind: str) -> str:
    """`Safety data sheet`, as a line begins."""
    said = words(kind)
    return said[:1].upper() + said[1:]
