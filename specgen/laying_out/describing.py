"""An elevation of a project as a face in ticks, and the lines that are given or wished for it."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from specgen.laying_out.face import LETTERS, Around, Edge, Face, Ledge, Limits, Movement, Opening, Roof, find_scale
from specgen.laying_out.scoring import Wishes
from specgen.model.absence import Absent, if_given
from specgen.model.outline import Outline, Stretch, read_outline
from specgen.model.project import Project
from specgen.model.roof_line import RoofLine, find_roof_line
from specgen.model.typed_views import Elevation, Joint, WaterDetail, root_of
from specgen.quantities.quantity import Quantity

# What a crew can snap: proposed lines lie on these, save where they lie on an edge of an opening.
SNAP = {"ip": Quantity.of("1/8", "in").amount, "si": Quantity.of(5, "mm").amount}  # method's own

_AS_A_PANEL = re.compile(r"[A-Z]\d+[a-z]?")


class Described(NamedTuple):
    """A face, the lines given for it, and what a layout of it is wished to do."""

    face: Face
    upright: tuple[int, ...]
    level: tuple[int, ...]
    wishes: Wishes
    snap: int  # ticks
    base: int  # height of its lower edge above grade; 0 where it meets no other elevation


class _Measures(NamedTuple):
    """All lengths of an elevation in meters, as read."""

    width: Fraction
    height: Fraction
    openings: tuple[tuple[str, Fraction, Fraction, Fraction, Fraction], ...]
    joints: tuple[tuple[Joint, Fraction | None], ...]
    limits: tuple[Fraction, Fraction, Fraction, Fraction]
    floors: tuple[Fraction, ...]
    outline: Outline | None
    roofs: tuple[
        tuple[str, RoofLine, Fraction], ...
    ]  # the end of the board under each, with how far above it the board begins again
    ledges: tuple[tuple[str, Fraction, Fraction, Fraction, Fraction], ...]


def describe(elevation: Elevation, scale: int | None = None) -> Described:
    """An elevation in ticks; with a `scale`, in ticks of that many to the meter. Raises Absent."""
    measures = _measure(elevation)
    lines = _given_lines(elevation)
    targets = _targets(elevation)
    base = elevation.base_above_grade.amount if _meets(elevation) else Fraction(0)
    if scale is None:
        scale = find_scale(_lengths(elevation, measures, lines, targets, base))
    ticks = _Ticks(scale)
    face = replace(_build_face(elevation.mark, measures, ticks), letters=_find_letters(elevation.project))
    width, height = (ticks(target) if target is not None else None for target in targets)
    wishes = _wishes(elevation, face)._replace(width=width, height=height)
    upright, level = (tuple(map(ticks, each)) for each in lines)
    return Described(face, upright, level, wishes, ticks(SNAP[elevation.project.system]), ticks(base))


def _find_letters(project: Project) -> str:
    """The letters of columns, without one that begins the marks of elevations: a panel `E2` reads as the face E2."""
    return project.remember(("column letters",), lambda: _leave_out(project.marks(("elevations",))))


def _leave_out(marks: tuple[str, ...]) -> str:
    taken = {mark[0] for mark in marks if _AS_A_PANEL.fullmatch(mark)}
    # Where marks begin with every letter, none is clearer than another.
    return "".join(letter for letter in LETTERS if letter not in taken) or LETTERS


def face_of(elevation: Elevation) -> Face:
    """An elevation in ticks, whatever its lines. Raises Absent."""
    measures = _measure(elevation)
    return _build_face(elevation.mark, measures, _Ticks(find_scale(_lengths(elevation, measures))))


class _Ticks:
    """Turns meters into ticks."""

    def __init__(self, scale: int) -> None:
        self.scale = scale

    def __call__(self, meters: Fraction) -> int:
        ticks = meters * self.scale
        assert ticks.denominator == 1, "the scale holds every length"
        return ticks.numerator


def scale_of(elevations: list[Elevation]) -> int:
    """The ticks of a meter that fit every length of some elevations."""
    found = []
    for one in elevations:
        base = one.base_above_grade.amount if _meets(one) else Fraction(0)
        found += list(_lengths(one, _measure(one), _given_lines(one), _targets(one), base))
    return find_scale(found)


def _lengths(
    elevation: Elevation,
    measures: _Measures,
    lines: tuple[tuple[Fraction, ...], ...] = (),
    targets: tuple[Fraction | None, ...] = (),
    base: Fraction = Fraction(0),
) -> Iterator[Fraction]:
    """Every length that must be a whole number of ticks, and half of those that are halved."""
    # Half of the width and of an opening are lines too.
    yield from (measures.width / 2, measures.height / 2, base, SNAP[elevation.project.system])
    yield from (side / 2 for _, *sides in measures.openings for side in sides)
    yield from (at for _, at in measures.joints if at is not None)
    yield from (measures.limits[0], measures.limits[1], measures.limits[3], *measures.floors)
    yield from (at for each in lines for at in each)
    yield from (target for target in targets if target is not None)
    if measures.outline:
        yield from (x for edge in measures.outline for stretch in edge for point in stretch for x in point)
    yield from (side for _, *sides in measures.ledges for side in sides)
    for _, line, clear in measures.roofs:
        yield from (clear, *(side for point in line for side in point))


def _measure(elevation: Elevation) -> _Measures:
    limits = root_of(elevation).panel_limits
    width, height = elevation.width, elevation.height
    points = elevation.get("outline")
    return _Measures(
        width.amount,
        height.amount,
        tuple(
            (one.mark, one.x.amount, one.y.amount, (one.x + one.width).amount, (one.y + one.height).amount)
            for one in elevation.openings
        ),
        tuple((joint, find_place(joint)) for joint in joints_of(elevation)),
        (limits.max_width.amount, limits.max_height.amount, limits.max_area.amount, limits.least_side.amount),
        _floors(elevation),
        read_outline(points, width, height) if points else None,
        tuple(_find_roofs(elevation)),
        tuple(_find_ledges(elevation)),
    )


def _list_details(elevation: Elevation, kind: str) -> Iterator[WaterDetail]:
    """The water details of a kind that are on an elevation. Raises Absent where one there may be of it."""
    project = elevation.project
    marks = project.find_referring(("details",), "elevation", elevation.mark) if project.is_given(("details",)) else ()
    details = (root_of(elevation).details[mark] for mark in marks)
    return (one for one in details if one.get("elevation") == elevation and one.kind == kind)


def _find_roofs(elevation: Elevation) -> Iterator[tuple[str, RoofLine, Fraction]]:
    """Where the board under each roof below ends, and how far above it goes on. Raises Absent without that."""
    for one in _list_details(elevation, "roof_below"):
        line = find_roof_line(elevation.project, one.mark)
        if line is not None:
            thick = one.get("thickness")
            under = thick.amount if thick is not None else Fraction(0)
            (left, at_left), (right, at_right) = line
            yield one.mark, ((left, at_left - under), (right, at_right - under)), one.clearance.amount + under


def _find_ledges(elevation: Elevation) -> Iterator[tuple[str, Fraction, Fraction, Fraction, Fraction]]:
    """The boxes of the ledges whose place and width are given; one without a height is a line."""
    for one in _list_details(elevation, "ledge"):
        x, y, width, height = (one.get(name) for name in ("x", "y", "width", "height"))
        if x is not None and y is not None and width is not None:
            up = Fraction(0) if height is None else height.amount
            yield one.mark, x.amount, y.amount, x.amount + width.amount, y.amount + up


def joints_of(elevation: Elevation) -> Iterator[Joint]:
    """The movement joints of an elevation. Raises Absent where a joint may be one of them."""
    for joint in root_of(elevation).joints.find_referring("elevation", elevation.mark):
        if joint.elevation == elevation:
            yield joint


def find_place(joint: Joint) -> Fraction | None:
    """Where a joint cuts its elevation, in meters; that of the floor line it serves, none around openings."""
    if joint.runs == "around_opening":
        return None
    at = joint.get("at")
    if at is None and joint.runs == "horizontal":
        floors = joint.elevation.floor_lines
        served = if_given(lambda: [mark for mark in joint.serves if floors.is_given() and mark in _marks(joint)])
        at = floors[served[0]].height if served else None
    if at is None:
        raise Absent((*joint.path, "at"))
    amount: Fraction = at.amount
    return amount


def _marks(joint: Joint) -> tuple[str, ...]:
    return joint.project.marks((*joint.elevation.path, "floor_lines"))


def _floors(elevation: Elevation) -> tuple[Fraction, ...]:
    """The heights of the floor lines; a layout that is given needs none."""
    if elevation.layout.get("mode") != "request" and not elevation.floor_lines.is_given():
        return ()
    return tuple(line.height.amount for line in elevation.floor_lines)


def _given_lines(elevation: Elevation) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
    if elevation.layout.mode == "request":
        return (), ()
    upright, level = elevation.layout.vertical_lines, elevation.layout.horizontal_lines
    sides = ((upright, elevation.width), (level, elevation.height))
    found = [tuple(sorted({x.amount for x in lines if 0 < x.amount < side.amount})) for lines, side in sides]
    return found[0], found[1]


def _targets(elevation: Elevation) -> tuple[Fraction | None, Fraction | None]:
    if elevation.layout.mode != "request":
        return None, None
    sides = [elevation.layout.get(name) for name in ("target_width", "target_height")]
    return sides[0] and sides[0].amount, sides[1] and sides[1].amount


def _meets(elevation: Elevation) -> bool:
    return any(elevation.get(side) is not None for side in ("left_meets", "right_meets"))


def _build_face(mark: str, measures: _Measures, ticks: _Ticks) -> Face:
    cutting = [(joint, ticks(at)) for joint, at in measures.joints if at is not None]
    wide, high, area, least = measures.limits
    bottom, top = (_edge(edge, ticks) for edge in measures.outline or ((), ()))
    return Face(
        mark=mark,
        scale=ticks.scale,
        width=ticks(measures.width),
        height=ticks(measures.height),
        openings=tuple(Opening(name, *map(ticks, sides)) for name, *sides in measures.openings),
        limits=Limits(ticks(wide), ticks(high), area * ticks.scale**2 // 1, ticks(least)),
        upright=tuple(Movement(j.mark, _kind(j), at) for j, at in cutting if j.runs == "vertical"),
        level=tuple(Movement(j.mark, _kind(j), at) for j, at in cutting if j.runs == "horizontal"),
        around=tuple(Around(j.mark, _kind(j), j.serves) for j, at in measures.joints if at is None),
        floors=tuple(map(ticks, measures.floors)),
        top=top,
        bottom=bottom,
        roofs=tuple(Roof(name, _edge((line,), ticks)[0], ticks(clear)) for name, line, clear in measures.roofs),
        ledges=tuple(Ledge(name, *map(ticks, sides)) for name, *sides in measures.ledges),
    )


def _kind(joint: Joint) -> str:
    """The kind of a joint; one that is not told yet cuts the wall all the same."""
    return joint.get("kind") or "joint"


def _edge(edge: tuple[Stretch | RoofLine, ...], ticks: _Ticks) -> tuple[Edge, ...]:
    return tuple(Edge(ticks(a[0]), ticks(b[0]), ticks(a[1]), ticks(b[1])) for a, b in edge)


def _wishes(elevation: Elevation, face: Face) -> Wishes:
    """Where lines are wanted: at floor lines, and at the features of openings that the architect names."""
    named = set(elevation.layout.get("align_to") or ()) if elevation.layout.mode == "request" else set()
    upright: list[int] = []
    level = [*face.floors]
    for one in face.openings:
        if named & {"jambs", "corners"}:
            upright += [one.left, one.right]
        if "center" in named:
            upright.append((one.left + one.right) // 2)
        if named & {"heads", "corners"}:
            level.append(one.high)
        if named & {"sills", "corners"}:
            level.append(one.low)
    return Wishes(_count(upright, face.width), _count(level, face.height))


def _count(places: list[int], end: int) -> tuple[tuple[int, int], ...]:
    return tuple((at, times) for at, times in sorted(Counter(places).items()) if 0 < at < end)
