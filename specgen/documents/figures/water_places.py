"""Where the water details of an elevation lie, and what its drawing says of them."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.documents.members import span_marks
from specgen.model.layout import Point
from specgen.model.project import Project
from specgen.model.roof_line import find_roof_line
from specgen.quantities.quantity import Quantity


class Place(NamedTuple):
    """Where a water detail lies, in meters from the lower left; a side that is not given has no length.

    A roof whose line on the wall is known lies there alone.
    """

    mark: str
    left: Fraction
    bottom: Fraction
    right: Fraction
    top: Fraction
    kind: str = ""
    line: tuple[Point, ...] = ()  # on which a roof meets the wall

    @property
    def is_point(self) -> bool:
        """Whether it has no extent that is given."""
        return self.left == self.right and self.bottom == self.top

    @property
    def outline(self) -> tuple[Point, ...]:
        """Its corners, or the two ends of its line."""
        corners = (
            (self.left, self.bottom),
            (self.right, self.bottom),
            (self.right, self.top),
            (self.left, self.top),
        )
        return self.line or tuple(dict.fromkeys(corners))

    @property
    def stops_grooves(self) -> bool:
        """Whether it is a ledge with a width, at which aesthetic joints stop."""
        return self.kind == "ledge" and self.left < self.right


def list_places(project: Project, face: str) -> Iterator[Place]:
    """The water details of an elevation whose places on it are given."""
    for mark in _list_details(project, face):
        x, y, width, height = (_meters(project.get(("details", mark, name))) for name in ("x", "y", "width", "height"))
        if x is not None and y is not None:
            kind = project.get(("details", mark, "kind")) or ""
            line = find_roof_line(project, mark) or ()
            yield Place(mark, x, y, x + (width or 0), y + (height or 0), kind, line)


def tell_details(project: Project, face: str) -> Iterator[str]:
    """What meets the wall at a place that is told in words alone: `RE1: eave of the porch roof`."""
    told = []
    drawn = {place.mark: place for place in list_places(project, face)}
    for mark in _list_details(project, face):
        place, kind, cap = (project.get(("details", mark, name)) for name in ("at", "kind", "cap"))
        if place and kind == "parapet" and cap:
            yield f"{mark}: metal cap, {place}"
        elif place and kind and kind != "parapet" and mark not in drawn:
            told.append(f"{mark} {place}")
    if told:
        yield f"Not drawn: {'; '.join(told)}. Measure before snapping lines; panels and lengths are listed without them"
    if drawn:
        said = _tell_breaks([*drawn.values()])
        yield f"Water details are drawn as given. Verify them before snapping lines; {'; '.join(said)}"


def _tell_breaks(places: list[Place]) -> list[str]:
    """What water details do to panels and aesthetic joints: a roof cuts them, joints stop at a ledge."""
    roofs = [place.mark for place in places if place.line]
    ledges = [place.mark for place in places if place.stops_grooves]
    rest = [place.mark for place in places if place.mark not in {*roofs, *ledges}]
    said = [f"panels and aesthetic joints end at {span_marks(roofs)}"] if roofs else []
    said += [f"aesthetic joints stop at {span_marks(ledges)}"] if ledges else []
    return said + ([f"panels are listed without {span_marks(rest)}"] if rest else [])


def _list_details(project: Project, face: str) -> Iterator[str]:
    """The water details that stand on an elevation."""
    marks = project.find_referring(("details",), "elevation", face) if ("details",) in project.members else ()
    for mark in marks:
        elevation = project.get(("details", mark, "elevation"))
        if elevation is not None and elevation.mark == face:
            yield mark


def _meters(length: Quantity | None) -> Fraction | None:
    return None if length is None else length.to("m")
