"""The hours of a day on each elevation under cloth or in a tent, and from a lift in the wall's own shade."""

from typing import Any, cast

from specgen.computing.time.usable_hours import list_months
from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_member
from specgen.model.absence import Absent
from specgen.model.typed_views import Elevation
from specgen.quantities.format import format_decimal

_HEADER = ("Elevation", "Access", "Shade", "Scaffold with cloth or tent, hours a day", "Lift in own shade, hours a day")

_WIDTHS = (24, 18, 18, 20, 20)
_SCAFFOLDS = ("frame_scaffold", "system_scaffold")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation, hours of the shortest month and the longest; none where all stand in scaffolds."""
    marks = list_marks(context, "elevations")
    if marks and all(_is_chosen(context, mark) for mark in marks):
        return TableView(_HEADER, (), _WIDTHS)
    lines = [_line(context, mark) for mark in marks]
    lines = lines or [(context.ask(("elevations",)), "", "", "", "")]
    return TableView(_HEADER, tuple(lines), _WIDTHS)


def _is_chosen(context: DocumentContext, mark: str) -> bool:
    """Whether an elevation is reached by scaffolds alone, so that nothing is left to choose."""
    given = context.project.is_given(("access",))
    found = context.project.find_referring(("access",), "elevation", mark) if given else ()
    return bool(found) and all(context.project.get(("access", one, "kind")) in _SCAFFOLDS for one in found)


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    face = cast(Elevation, context.project.view(("elevations", mark)))
    means = [_list_kinds(context, collection, mark) for collection in ("access", "shade")]
    hours = [_tell_hours(context, face, covered) for covered in (True, False)]
    return (name_member(context, "elevations", mark), *means, *hours)


def _list_kinds(context: DocumentContext, collection: str, mark: str) -> Any:
    """How the elevation is reached or shaded, in words; in brackets where it is not said."""
    if (collection,) not in context.project.members:
        return context.ask((collection,))
    found: list[Any] = []
    for one in context.project.find_referring((collection,), "elevation", mark):
        found += ["; " if found else "", context.display((collection, one, "kind"))]
    return found or DisplayValue(f"[{collection.capitalize()} of {mark}]", open=True)


def _tell_hours(context: DocumentContext, face: Elevation, covered: bool) -> Any:
    try:
        hours = [month.hours for month in list_months(face, covered=covered)]
    except Absent as absent:
        return context.ask(absent.path)
    least, most = (format_decimal(one, 3, 1) for one in (min(hours), max(hours)))
    return DisplayValue(f"{least} h" if least == most else f"{least} to {most} h", max(hours), OF_A_SUM)
