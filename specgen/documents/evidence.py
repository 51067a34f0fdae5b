"""What proves a value that the contract demands: the report of its test, else the data sheet of its material."""

from collections.abc import Iterable

from specgen.documents.attachments import list_attachments
from specgen.documents.context import DocumentContext
from specgen.documents.tested_values import list_report_marks
from specgen.model.field import Path

# The material whose data sheet says a value, by the section of the value.
_OF_SECTIONS = {
    "attachment": "adhesive",
    "wrb": "wrb",
    "insulation": "board",
    "base_coat": "base_coat",
    "mesh": "mesh",
    "sealants": "sealant",
    "smoothing": "smoothing",
    "primer": "primer",
    "gloss": "gloss",
}
_SAYS = ("data_sheet", "instructions")


def find_evidence(context: DocumentContext, places: Iterable[Path]) -> tuple[str, ...]:
    """The marks of the attachments that prove the values at these paths; none where none is attached."""
    found: dict[str, None] = {}
    for place in places:
        found |= dict.fromkeys(list_report_marks(context, place) or _list_sheets(context, place))
    return tuple(found)


def _list_sheets(context: DocumentContext, place: Path) -> tuple[str, ...]:
    """The data sheets of the material of a value; the written instructions where no data sheet is attached."""
    section = place[2] if place[0] == "walls" and len(place) > 2 else place[0]
    covering = [mark for mark in list_attachments(context) if _OF_SECTIONS.get(section) in _list_covered(context, mark)]
    kinds = {mark: context.project.get(("attachments", mark, "kind")) for mark in covering}
    by_kind = [tuple(mark for mark in covering if kinds[mark] == kind) for kind in _SAYS]
    return next(filter(None, by_kind), ())


def _list_covered(context: DocumentContext, mark: str) -> tuple[str, ...]:
    return tuple(context.project.get(("attachments", mark, "covers")) or ())
