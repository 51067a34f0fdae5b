"""What shades an elevation besides itself: cloth or a tent."""

from specgen.model.typed_views import Elevation

COVERED = {"shade_cloth": "Under shade cloth.", "tent": "In a tent."}


def is_covered(elevation: Elevation) -> bool:
    """Whether cloth or a tent shades the elevation, so that the sun on it does not bound the day."""
    return not list_shade_kinds(elevation).isdisjoint(COVERED)


def list_shade_kinds(elevation: Elevation) -> set[str]:
    """The kinds of shading planned at the elevation; none where none is given."""
    project = elevation.project
    marks = project.find_referring(("shade",), "elevation", elevation.mark) if project.is_given(("shade",)) else ()
    views = [project.view(("shade", mark)) for mark in marks]
    return {view.get("kind") for view in views if view.get("elevation") == elevation} - {None}
