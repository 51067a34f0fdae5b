"""The water details of the elevations: kind, place, extent as of an opening, and what each does to a layout."""

from collections.abc import Iterator
from typing import Any, cast

from specgen.computing.face_area import list_covering
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.figures.water_places import list_places
from specgen.documents.marks import name_linked
from specgen.model.typed_views import Elevation
from specgen.model.value_text import words

_SIDES = ("x", "y", "width", "height")
_HEADER = ("Detail", "Elevation", "Kind", "Location", "From left", "From base", "Width", "Height", "In the layout")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each water detail; no rows where none has a place on its elevation."""
    placed = any(_list_given(context, mark) for mark in context.project.members.get(("details",), ()))
    return TableView(_HEADER, tuple(_lines(context)) if placed else (), (6, 13, 11, 24, 8, 8, 8, 8, 14))


def _list_given(context: DocumentContext, mark: str) -> list[str]:
    return [side for side in _SIDES if context.project.is_given(("details", mark, side))]


def _lines(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    project, effects = context.project, dict(_list_effects(context))
    for mark in project.members.get(("details",), ()):
        path, given = ("details", mark), _list_given(context, mark)
        sides = [context.display((*path, side)) if side in given else "" for side in _SIDES]
        kind = project.get((*path, "kind"))
        yield (
            mark,
            name_linked(context, (*path, "elevation"), "elevations"),
            words(kind) if kind else context.display((*path, "kind")),
            context.display((*path, "at")),
            *sides,
            "; ".join(effects.get(mark, ())) or "not counted",
        )


def _list_effects(context: DocumentContext) -> Iterator[tuple[str, list[str]]]:
    """What each water detail does to panels, aesthetic joints and net area, face by face."""
    for face in context.project.members.get(("elevations",), ()):
        covering = {one.mark for one in list_covering(cast(Elevation, context.project.view(("elevations", face))))}
        for place in list_places(context.project, face):
            said = ["panels and aesthetic joints end at it"] if place.line else []
            said += ["aesthetic joints stop at it"] if place.stops_grooves else []
            said += ["deducted from the net area"] if place.mark in covering else []
            covering.discard(place.mark)
            yield place.mark, said
        yield from ((mark, ["deducted from the net area"]) for mark in covering)
