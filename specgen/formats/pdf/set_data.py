"""A set as plain data for the page template: cover, contents, documents and dividers, in the order of their pages."""

import dataclasses
import datetime
from collections.abc import Iterator, Sequence
from typing import Any

from specgen.documents.composed_set import ComposedSet
from specgen.documents.drafts import ANSWER
from specgen.documents.source_letters import WITHOUT_LETTER
from specgen.formats.pdf.block_data import describe_blocks
from specgen.formats.pdf.divider import Divider
from specgen.formats.pdf.face import Face
from specgen.formats.pdf.line_data import describe_words
from specgen.formats.pdf.paper import Paper
from specgen.model.block import Document

# It stands before the contents.
TRANSMITTAL = "D01"
# So many documents are found without a list of their pages.
_FEW = 6


def describe_set(made: ComposedSet, dividers: Sequence[Divider], face: Face) -> dict[str, Any]:
    """The data of a whole set on the pages of a letterhead."""
    project = made.context.project
    name = str(project.value(("project", "name")))
    given = project.get(("package", "date"))
    return {
        "title": make_title(made),
        "author": str(project.get(("parties", "applicator", "name")) or ""),
        "date": [given.year, given.month, given.day] if isinstance(given, datetime.date) else None,
        "draft": any(document.draft for document in made.documents),
        "cover": _describe_cover(made, name),
        "brief": is_brief(made),
        "documents": list(_describe_documents(made, face.paper)),
        "dividers": [_describe_divider(divider) for divider in dividers],
        "face": face.describe(),
        "without_letter": describe_words(WITHOUT_LETTER),
        "form": False,  # a form to fill in is a document by itself
    }


def is_brief(made: ComposedSet) -> bool:
    """Whether a set has neither cover nor contents: a short draft, whose first document tells what it holds."""
    opens = bool(made.documents) and made.documents[0].id == ANSWER and made.documents[0].draft
    return opens and len(made.documents) <= _FEW


def make_title(made: ComposedSet) -> str:
    """The title of the set: `Elm Court: Submittal 07-2`."""
    return f"{made.context.project.get(('project', 'name'))}: {_name_set(made)}"


def _name_set(made: ComposedSet) -> str:
    """`Submittal 07-2`; a design draft without a number, and what is no submittal, is called what it is."""
    project = made.context.project
    number = project.get(("package", "number"))
    if made.title or number:
        return made.title or f"Submittal {number}"
    return "Design draft" if project.value(("package", "purpose")) == "design_draft" else "Submittal"


def _describe_cover(made: ComposedSet, name: str) -> dict[str, Any]:
    """What the first page says: the project, the submittal, and who has a part in it."""
    facts = dict(made.documents[0].facts) if made.documents else {}
    facts.pop("Submittal", None)
    for label in ("Project", "Applicator"):
        facts.pop(label, None)
    left = made.documents[0].running[0] if made.documents else ""
    return {
        "project": describe_words(name),
        "submittal": describe_words(_name_set(made)),
        "firm": describe_words(made.documents[0].firm if made.documents else ""),
        "facts": [[label, describe_words(text)] for label, text in facts.items()],
        "running": describe_words(left),
        "foot": describe_words(_foot(facts)),
    }


def _foot(facts: dict[str, str]) -> str:
    """The line below cover, contents and dividers: section, revision and date."""
    section, revision, date = (facts.get(label, "") for label in ("Section", "Revision", "Date"))
    # That of a draft says itself what it is.
    revised = f"Revision {revision}" if revision.isdigit() else revision
    told = (f"Section {section}" if section else "", revised, date)
    return " | ".join(filter(None, told))


def _describe_documents(made: ComposedSet, paper: Paper) -> Iterator[dict[str, Any]]:
    """The documents; in a short draft the first alone tells of project and parties, which are those of all."""
    told = made.documents[0].facts if is_brief(made) else ()
    for number, document in enumerate(made.documents):
        facts = tuple(fact for fact in document.facts if not number or fact not in told)
        yield _describe_document(dataclasses.replace(document, facts=facts), paper)


def _describe_document(document: Document, paper: Paper) -> dict[str, Any]:
    page = paper.turn() if document.landscape else paper
    return {
        "id": document.id,
        "title": describe_words(document.title),
        "firm": describe_words(document.firm),
        "facts": [[label, describe_words(text)] for label, text in document.facts],
        "running": [describe_words(text) for text in document.running],
        "foot": describe_words(document.foot or document.date),
        "first": document.id == TRANSMITTAL,
        "landscape": document.landscape,
        "three_part": document.numbering == "three_part",
        "paper": page.describe(),
        "blocks": describe_blocks(document, page),
        "legend": [[mark, describe_words(text)] for mark, text in document.legend],
    }


def _describe_divider(divider: Divider) -> dict[str, Any]:
    return {
        "mark": describe_words(divider.mark),
        "title": describe_words(divider.title),
        "lines": [describe_words(line) for line in divider.lines],
        "pages": divider.pages,
    }
