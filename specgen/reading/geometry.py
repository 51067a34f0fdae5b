"""Checks on reading that the parts of an elevation lie on it, and the elevation on its building.

What must lie on an elevation is the table INSIDE. Comparisons are exact, and what ends at the edge lies inside it.
"""

from collections.abc import Callable, Iterator
from itertools import chain, islice
from typing import NamedTuple

from specgen.model.field import Path, dotted_path
from specgen.model.outline import OutlineError, read_outline, read_point
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.reading.openings import find_overlapping
from specgen.reading.panel_count import find_too_many_panels
from specgen.reading.positions import MOST_PROBLEMS
from specgen.reading.ranges import tell_apart

Fault = tuple[Path, str, str]  # where it is told, the message, the hint


class Inside(NamedTuple):
    """Members of an elevation that must lie on it: at the field `start`, and of the field `size`, along a side."""

    members: str
    noun: str
    side: str
    start: str
    size: str = ""
    from_grade: bool = False  # whether the position is counted from there, and not from the edge of the elevation


INSIDE = (
    Inside("openings", "opening", "width", "x", "width"),
    Inside("openings", "opening", "height", "y", "height"),
    Inside("floor_lines", "floor line", "height", "height"),
    Inside("impact_zones", "impact zone", "height", "to", from_grade=True),
)
_LINES = {"vertical_lines": "width", "horizontal_lines": "height"}
_RUNS = {"vertical": "width", "horizontal": "height"}
_BOX = ("x", "y", "width", "height")
# How a position and a length along each side are said.
_FROM, _LONG = {"width": "from the left", "height": "up"}, {"width": "wide", "height": "high"}


def geometry_problems(project: Project) -> list[Problem]:
    """What lies beyond its wall, over another opening, or above the building; the first hundred faults."""
    faces = [("elevations", mark) for mark in project.members.get(("elevations",), ())]
    faults = chain(
        *(check(project, face) for face in faces for check in _CHECKS),
        _find_joints_outside(project),
        _find_ties_outside(project),
        _find_details_outside(project),
        find_too_many_panels(project),
    )
    problems = []
    for path, message, hint in islice(faults, MOST_PROBLEMS):
        place = project.place(path)
        problems.append(Problem(message, hint, dotted_path(path), place.file, place.line, place.column))
    return problems


def _find_outside(project: Project, face: Path) -> Iterator[Fault]:
    for row in INSIDE:
        edge = _find_edge(project, face, row)
        for mark in project.members.get((*face, row.members), ()) if edge is not None else ():
            member = (*face, row.members, mark)
            start, size = (project.values.get((*member, name)) for name in (row.start, row.size))
            end = _add(start, size)
            if end is not None and edge is not None and end > edge:
                yield (member, *_tell_outside(row, start, size, end, edge))


def _find_edge(project: Project, face: Path, row: Inside) -> Quantity | None:
    """Where the elevation ends along a side, counted as the positions of a row are; None if that is not known."""
    edge: Quantity | None = project.values.get((*face, row.side))
    base: Quantity | None = project.values.get((*face, "base_above_grade"))
    if edge is None or not row.from_grade:
        return edge
    return edge + base if base is not None else None


def _add(one: Quantity | None, other: Quantity | None) -> Quantity | None:
    """The sum of what is given of two quantities."""
    return one + other if one is not None and other is not None else one if one is not None else other


def _tell_outside(
    row: Inside, start: Quantity | None, size: Quantity | None, end: Quantity, edge: Quantity
) -> tuple[str, str]:
    told, limit = tell_apart(end, edge)
    if row.from_grade:
        return f"the {row.noun} ends {told} above grade, the wall {limit}", "correct one of the two heights"
    wall = f"the wall is {limit} {_LONG[row.side]}"
    if start is None:
        return f"the {row.noun} is {told} {_LONG[row.side]}, {wall}", f"correct the {row.side} of one of the two"
    verb = "ends" if size is not None else "begins" if row.size else "lies"
    return f"the {row.noun} {verb} {told} {_FROM[row.side]}, {wall}", f"move it or correct its {row.side}"


def _find_too_large(project: Project, face: Path) -> Iterator[Fault]:
    """Openings that together are larger than the wall, where no single one is told already."""
    wide, high = (project.values.get((*face, side)) for side in ("width", "height"))
    if wide is None or high is None:
        return
    wall, total = Quantity(wide.amount * high.amount, "area", "m2"), Quantity.of(0, "m2")
    for mark in project.members.get((*face, "openings"), ()):
        width, height = (project.values.get((*face, "openings", mark, side)) for side in ("width", "height"))
        if width is not None and height is not None:
            total += Quantity(width.amount * height.amount, "area", "m2")
    if total > wall and not any(chain(_find_outside(project, face), find_overlapping(project, face))):
        unit = "m2" if project.system == "si" else "ft2"
        openings, area = (format_quantity(each, unit) for each in (total, wall))
        message = f"the openings together are {openings}, the wall is {area}"
        yield (*face, "openings"), message, "correct their sizes or those of the wall"


def _find_lines_outside(project: Project, face: Path) -> Iterator[Fault]:
    """Aesthetic joint lines that lie beyond the wall, or out of order."""
    for name, side in _LINES.items():
        lines, edge = project.values.get((*face, "layout", name), ()), project.values.get((*face, side))
        for number, line in enumerate(lines):
            path = (*face, "layout", name, str(number))
            if edge is not None and line > edge:
                told, limit = tell_apart(line, edge)
                message = f"the line lies {told} {_FROM[side]}, the wall is {limit} {_LONG[side]}"
                yield path, message, "move it or leave it out"
            elif number and line <= lines[number - 1]:
                told, before = (format_quantity(each, each.unit) for each in (line, lines[number - 1]))
                yield path, f"the line at {told} comes after the one at {before}", "write each line once, ascending"


def _find_outline_faults(project: Project, face: Path) -> Iterator[Fault]:
    """An outline that cannot be that of the wall, and openings that lie beyond it."""
    points = project.values.get((*face, "outline"))
    wide, high = (project.values.get((*face, side)) for side in ("width", "height"))
    if not points or wide is None or high is None:
        return
    try:
        outline = read_outline(points, wide, high)
    except OutlineError as error:
        yield (*face, "outline", str(error.number)), error.message, error.hint
        return
    for mark in project.members.get((*face, "openings"), ()):
        opening = (*face, "openings", mark)
        box = [project.values[*opening, name].amount for name in _BOX if (*opening, name) in project.values]
        if len(box) == len(_BOX) and not outline.holds(box[0], box[1], box[0] + box[2], box[1] + box[3]):
            yield opening, "the opening lies beyond the outline of the wall", "move it or correct the outline"


def _find_above_building(project: Project, face: Path) -> Iterator[Fault]:
    top = project.values.get(("building", "eifs_top"))
    base, high = (project.values.get((*face, name)) for name in ("base_above_grade", "height"))
    end = _add(base, high)
    if top is not None and end is not None and end > top:
        told, limit = tell_apart(end, top)
        name = "base_above_grade" if high is None else "height"
        message = (
            f"the wall {'begins' if high is None else 'ends'} {told} above grade, the EIFS of the building {limit}"
        )
        yield (*face, name), message, f"correct {name}, or eifs_top of the building"


def _find_joints_outside(project: Project) -> Iterator[Fault]:
    for mark in project.members.get(("joints",), ()):
        path = ("joints", mark, "at")
        at, side = project.values.get(path), _RUNS.get(project.values.get(("joints", mark, "runs"), ""))
        face = project.get(("joints", mark, "elevation"))
        edge = face.get(side) if face is not None and side is not None else None
        if side is not None and at is not None and edge is not None and at > edge:
            told, limit = tell_apart(at, edge)
            message = f"the joint lies {told} {_FROM[side]}, the wall {face.mark} is {limit} {_LONG[side]}"
            yield path, message, "move it, or name the elevation it stands on"


def _find_ties_outside(project: Project) -> Iterator[Fault]:
    for mark in project.members.get(("access",), ()):
        face = project.get(("access", mark, "elevation"))
        sides = [face.get(side) if face is not None else None for side in ("width", "height")]
        for number, text in enumerate(project.values.get(("access", mark, "ties"), ())):
            path = ("access", mark, "ties", str(number))
            try:
                point = read_point(number, text)
            except OutlineError as error:
                yield path, error.message, error.hint
                continue
            if any(edge is not None and not 0 <= at <= edge.amount for at, edge in zip(point, sides, strict=True)):
                yield path, f"the tie lies beyond the wall {face.mark}", "move it, or name the elevation it stands on"


def _find_details_outside(project: Project) -> Iterator[Fault]:
    """Water details that end beyond the elevation on which they are."""
    for mark in project.members.get(("details",), ()):
        face = project.get(("details", mark, "elevation"))
        for start, size in (("x", "width"), ("y", "height")) if face is not None else ():
            at, long = (project.values.get(("details", mark, name)) for name in (start, size))
            end, edge = _add(at, long), face.get(size)
            if end is not None and edge is not None and end > edge:
                told, limit = tell_apart(end, edge)
                message = f"the water detail ends {told} {_FROM[size]}, the wall {face.mark} is {limit} {_LONG[size]}"
                yield ("details", mark, start if at is not None else size), message, "move it or correct its extent"


_CHECKS: tuple[Callable[[Project, Path], Iterator[Fault]], ...] = (
    _find_outside,
    find_overlapping,
    _find_too_large,
    _find_lines_outside,
    _find_outline_faults,
    _find_above_building,
)
