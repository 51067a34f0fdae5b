"""Figures of the trade that a paper of the project states too: documents cite it, and nobody has to verify them."""

from typing import Any

from specgen.model.project import Project
from specgen.model.source import Kind, Source
from specgen.model.value_text import words
from specgen.quantities.number import QuantityError, parse_number
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity

ATTACHMENTS, STATES = "attachments", "states"
IS = "="
# Whose paper is cited as what the manufacturer says; any other by what it is.
_OF_MAKERS = ("data_sheet", "instructions")


def find_stating(project: Project, row: str, figure: Any) -> Source | None:
    """The attachment that states this figure of a row of the limits, as a source; None where none does."""
    return project.remember((find_stating, row, project.system), lambda: _find_stating(project, row, figure))


def _find_stating(project: Project, row: str, figure: Any) -> Source | None:
    stated = project.remember((find_stating,), lambda: _list_stating(project)).get(row)
    return stated[1] if stated and is_figure(figure, stated[0]) else None


def is_figure(figure: Any, text: str) -> bool:
    """Whether a text means the figure of a row."""
    try:
        return bool(figure == (parse_any_quantity(text) if isinstance(figure, Quantity) else parse_number(text)))
    except QuantityError:
        return bool(figure == text)


def _list_stating(project: Project) -> dict[str, tuple[str, Source]]:
    """What attachments state of each row, the first of several, with its source."""
    found: dict[str, tuple[str, Source]] = {}
    for mark in project.members.get((ATTACHMENTS,), ()):
        for entry in project.values.get((ATTACHMENTS, mark, STATES), ()):
            name, _, text = (part.strip() for part in entry.partition(IS))
            found.setdefault(name, (text, _cite_paper(project, mark)))
    return found


def _cite_paper(project: Project, mark: str) -> Source:
    kind, title = (project.get((ATTACHMENTS, mark, name)) for name in ("kind", "title"))
    if kind in _OF_MAKERS:
        return Source(Kind.MAKER, f"{title} ({mark})" if title else mark)
    named = words(kind or "attachment")
    return Source(Kind.CITED, f"{named[:1].upper()}{named[1:]} {mark}{f': {title}' if title else ''}")
