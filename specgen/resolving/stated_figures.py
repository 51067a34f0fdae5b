"""Figures of the trade that a paper of the project states too: documents cite it, and nobody has to verify them."""

from specgen.model.project import Project
from specgen.model.source import Kind, Source
from specgen.model.value_text import words

ATTACHMENTS, STATES = "attachments", "states"
IS = " = "
# Whose paper is cited as what the manufacturer says; any other by what it is.
_OF_MAKERS = ("data_sheet", "instructions")


def find_stating(project: Project, row: str) -> Source | None:
    """The attachment that states the figure of a row of the limits, as a source; None where none does."""
    return project.remember((find_stating,), lambda: _list_stating(project)).get(row)


def _list_stating(project: Project) -> dict[str, Source]:
    """The source of each row that attachments state, the first of several."""
    found: dict[str, Source] = {}
    for mark in project.members.get((ATTACHMENTS,), ()):
        for entry in project.values.get((ATTACHMENTS, mark, STATES), ()):
            found.setdefault(entry.partition(IS)[0].strip(), _cite_paper(project, mark))
    return found


def _cite_paper(project: Project, mark: str) -> Source:
    kind, title = (project.get((ATTACHMENTS, mark, name)) for name in ("kind", "title"))
    if kind in _OF_MAKERS:
        return Source(Kind.MAKER, f"{title} ({mark})" if title else mark)
    named = words(kind or "attachment")
    return Source(Kind.CITED, f"{named[:1].upper()}{named[1:]} {mark}{f': {title}' if title else ''}")
