"""Where the water details lie on their elevations: kind, place and extent, measured as openings are."""

from collections.abc import Iterator
from typing import Any

from specgen.computing.face_area import list_covering
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import name_linked
from specgen.model.value_text import words

_SIDES = ("x", "y", "width", "height")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each water detail of which a side is given; no rows where none is."""
    header = ("Detail", "Elevation", "Kind", "From left", "From base", "Width", "Height", "Deducted")
    return TableView(header, tuple(_lines(context)), (8, 22, 18, 11, 11, 10, 10, 10))


def _lines(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    project = context.project
    for mark in project.members.get(("details",), ()):
        path = ("details", mark)
        if any(project.is_given((*path, side)) for side in _SIDES):
            sides = [context.display((*path, side)) if project.is_given((*path, side)) else "" for side in _SIDES]
            kind = project.get((*path, "kind"))
            named = words(kind) if kind else context.display((*path, "kind"))
            face = project.get((*path, "elevation"))
            covers = face is not None and mark in {one.mark for one in list_covering(face)}
            yield (
                mark,
                name_linked(context, (*path, "elevation"), "elevations"),
                named,
                *sides,
                "yes" if covers else "no",
            )
