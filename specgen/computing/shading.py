"""What shades an elevation besides itself: cloth or a tent."""

from specgen.model.project import Project
from specgen.model.typed_views import Elevation

COVERED = {"shade_cloth": "Under shade cloth.", "tent": "In a tent."}
_STRONGEST_FIRST = ("tent", "shade_cloth", "natural")


def is_covered(elevation: Elevation) -> bool:
    """Whether cloth or a tent shades the elevation, so that the sun on it does not bound the day."""
    return not list_shade_kinds(elevation).isdisjoint(COVERED)


def list_shade_kinds(elevation: Elevation) -> set[str]:
    """The kinds of shading planned at the elevation; none where none is given."""
    return _list_kinds(elevation.project, elevation.mark)


def find_shade(project: Project, elevation: str) -> str:
    """The kind of shade of an elevation by its mark: tent, shade_cloth or natural; none where none is given."""
    kinds = _list_kinds(project, elevation)
    return next((kind for kind in _STRONGEST_FIRST if kind in kinds), "none")


def list_shadings(project: Project, elevation: str) -> list[str]:
    """The marks of the shadings planned at an elevation."""
    marks = project.find_referring(("shade",), "elevation", elevation) if project.is_given(("shade",)) else ()
    # One that names no elevation is found for every one.
    return [mark for mark in marks if project.get(("shade", mark, "elevation")) is not None]


def _list_kinds(project: Project, elevation: str) -> set[str]:
    return {project.get(("shade", mark, "kind")) for mark in list_shadings(project, elevation)} - {None}
