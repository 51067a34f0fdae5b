"""The boxes of a review: the contractor's statement and the revisions, beside room for the reviewer's stamp."""

from specgen.documents.context import DocumentContext
from specgen.model.block import Blank, Box, Inline, Inlines, ReviewBoxes, Text
from specgen.model.field import Path
from specgen.model.value_text import value_text, words

_REVIEW: Path = ("package", "contractor_review")


def review_boxes(context: DocumentContext) -> ReviewBoxes:
    """The boxes of a submittal; what is not given is left to be filled in by hand."""
    return ReviewBoxes((_contractor_box(context), _revision_box(context)), _stamp_box(context))


def _contractor_box(context: DocumentContext) -> Box:
    statement = context.project.get((*_REVIEW, "statement"))
    lines: list[Inlines] = [(Text(str(statement)),)] if statement else []
    firm = context.project.get(("parties", "general_contractor", "name"))
    return Box(
        f"Contractor’s review{f': {firm}' if firm else ''}",
        (
            *lines,
            (Text("Reviewed by: "), _fill(context, (*_REVIEW, "by"), Blank("Reviewed by"))),
            (Text("Date: "), _fill(context, (*_REVIEW, "signed_on"), Blank("Date of the review", "date"))),
            (Text("Signature: "), Blank("Signature of the contractor")),
        ),
    )


def _revision_box(context: DocumentContext) -> Box:
    """The revision in hand with its date and purpose, and what it changes."""
    project = context.project
    revision, date = (project.get(("package", name)) for name in ("revision", "date"))
    named = [
        "" if revision is None else f"Revision {revision}",
        value_text(date) if date else "",
        words(str(project.value(("package", "purpose")))),
    ]
    changes = project.get(("package", "changes")) or ()
    said = ", ".join(filter(None, named))
    lines = (said[:1].upper() + said[1:], *map(str, changes))
    return Box("Revisions", tuple((Text(line),) for line in lines))


def _stamp_box(context: DocumentContext) -> Box:
    architect = context.project.get(("parties", "architect", "name"))
    return Box(f"Architect’s review{f': {architect}' if architect else ''}")


def _fill(context: DocumentContext, path: Path, blank: Blank) -> Inline:
    """A given value, or the blank for it."""
    value = context.project.get(path)
    return blank if value is None else Text(value_text(value))
