"""The line on which a roof below meets its wall: where it lies, and which way it falls."""

from fractions import Fraction
from typing import Any

from specgen.model.outline import Point
from specgen.model.project import Project

RoofLine = tuple[Point, Point]  # from left to right, in meters from the lower left of the elevation


def find_roof_line(project: Project, mark: str) -> RoofLine | None:
    """The line of a water detail that is a roof below; None where its place is not given, or not which way it falls.

    A roof without a height is level; one with a height falls to the roof end that stands at a lower corner of it.
    """
    detail = ("details", mark)
    x, y, width, height = (_meters(project.get((*detail, name))) for name in ("x", "y", "width", "height"))
    if project.get((*detail, "kind")) != "roof_below" or x is None or y is None or not width:
        return None
    if not height:
        return (x, y), (x + width, y)
    face = project.get((*detail, "elevation"))
    feet = project.remember(("roof ends", getattr(face, "mark", "")), lambda: _list_feet(project, face))
    if (x, y) in feet:
        return (x, y), (x + width, y + height)
    return ((x, y + height), (x + width, y)) if (x + width, y) in feet else None


def _list_feet(project: Project, face: Any) -> set[tuple[Fraction | None, Fraction | None]]:
    """The places of the roof ends on an elevation."""
    marks = project.find_referring(("details",), "elevation", face.mark) if face is not None else ()
    ends = (("details", mark) for mark in marks if project.get(("details", mark, "kind")) == "roof_end")
    return {
        (_meters(project.get((*end, "x"))), _meters(project.get((*end, "y"))))
        for end in ends
        if project.get((*end, "elevation")) == face
    }


def _meters(length: Any) -> Fraction | None:
    amount: Fraction | None = None if length is None else length.to("m")
    return amount
