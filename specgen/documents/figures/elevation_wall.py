"""The wall itself on a sheet: its edge, joints, openings and panel marks."""

from collections.abc import Iterator
from itertools import pairwise

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.labels import LEAST_SIZE, Box, Label, center_label, measure
from specgen.documents.figures.water_places import Place
from specgen.model.layout import Panel

_AROUND = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1))
_LEADERS = (5.0, 8.0, 11.0, 15.0, 20.0)  # lengths that are tried, in millimeters
_LINE = LEAST_SIZE * 1.45  # from one line of an opening's label to the next
_INSET = 0.9  # from the edge of an opening with a joint to its frame
HIGH = LEAST_SIZE + 0.6  # what a mark needs across its text
_SIGN = 1.1  # half of the sign of a water detail without extent
TIE = 1.2  # from the middle of the sign of a tie to its corners
_PARTS = 4  # of the space between two corners, where a side slopes

Spot = tuple[float, float]


def draw_wall(canvas: Canvas, view: View, geometry: Geometry, facts: ElevationFacts) -> None:
    """Draw the edge, the joints and the openings, and keep labels off the lines that cross the panels."""
    for x1, y1, x2, y2 in geometry.edges:
        canvas.wall_line("edge", view, x1, y1, x2, y2)
        if x1 != x2 and y1 != y2:
            _keep_off(canvas, view, x1, y1, x2, y2)
    for moving, x1, y1, x2, y2 in geometry.sealed:
        if x2 >= view.left and x1 <= view.right and y2 >= view.bottom and y1 <= view.top:
            canvas.wall_line("movement" if moving else "joint", view, x1, y1, x2, y2)
    for across, up in facts.ties:
        if view.left <= across <= view.right and view.bottom <= up <= view.top:
            middle = (view.x(float(across)), view.y(float(up)))
            canvas.space.take(_around(*middle))
            draw_tie(canvas, *middle)
    _draw_openings(canvas, view, geometry)
    for place in facts.details:
        _draw_detail(canvas, view, place)
    joints = {float(height) for height in geometry.levels}
    wide, high = float(geometry.layout.width), float(geometry.layout.height)
    for kind, height in _crossing(facts, high):
        if height not in joints and view.bottom < height < view.top:
            canvas.wall_line(kind, view, 0.0, height, wide, height)
            box, y = view.box, view.y(height)
            canvas.space.take(Box(box.left, y - 0.2, box.right, y + 0.2))


def _keep_off(canvas: Canvas, view: View, *slope: float) -> None:
    """Keep labels off a sloped edge, millimeter by millimeter of what the view shows of it."""
    shown = view.clip(*slope)
    if shown:
        x1, y1, x2, y2 = view.x(shown[0]), view.y(shown[1]), view.x(shown[2]), view.y(shown[3])
        steps = int(max(abs(x2 - x1), abs(y2 - y1))) + 1
        for n in range(steps + 1):
            x, y = x1 + (x2 - x1) * n / steps, y1 + (y2 - y1) * n / steps
            canvas.space.take(Box(x - 0.4, y - 0.4, x + 0.4, y + 0.4))


def _crossing(facts: ElevationFacts, height: float) -> Iterator[tuple[str, float]]:
    """The lines across the wall that are no joints: edges of mesh zones, and floors."""
    edges = {float(edge) for zone in facts.zones for edge in (zone.lower, zone.upper)}
    yield from (("zone", edge) for edge in sorted(edges) if 0 < edge < height)
    yield from (("floor", float(floor.height)) for floor in facts.floors)


def _draw_openings(canvas: Canvas, view: View, geometry: Geometry) -> None:
    for mark, joint, left, bottom, right, top in geometry.openings:
        if right <= view.left or left >= view.right or top <= view.bottom or bottom >= view.top:
            continue
        # The frame stands within the joint round it, so that the line of the joint is seen.
        inset = _INSET / view.per_meter if joint else 0.0
        _draw_frame(canvas, view, left + inset, bottom + inset, right - inset, top - inset)
        shown = paper_box(view, left, bottom, right, top)
        _label_opening(canvas, shown, mark, joint)


def _draw_frame(canvas: Canvas, view: View, left: float, bottom: float, right: float, top: float) -> None:
    """The outline of an opening and its diagonals."""
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    if left >= view.left and right <= view.right and bottom >= view.bottom and top <= view.top:
        canvas.area("opening", [(view.x(x), view.y(y)) for x, y in corners])
    else:
        for start, end in pairwise((*corners, corners[0])):
            canvas.wall_line("opening", view, *start, *end)
    canvas.wall_line("diagonal", view, left, bottom, right, top)
    canvas.wall_line("diagonal", view, left, top, right, bottom)


def _around(x: float, y: float) -> Box:
    return Box(x - TIE, y - TIE, x + TIE, y + TIE).grow(0.3)


def draw_tie(canvas: Canvas, x: float, y: float) -> None:
    """Draw the sign of a scaffold tie about a point: a lozenge with a cross."""
    canvas.area("tie", ((x - TIE, y), (x, y - TIE), (x + TIE, y), (x, y + TIE)))
    canvas.line("tie", x - TIE, y, x + TIE, y)
    canvas.line("tie", x, y - TIE, x, y + TIE)


def _draw_detail(canvas: Canvas, view: View, place: Place) -> None:
    """The extent of a water detail, or a sign about its corner where it has none."""
    shown = find_shown(view, place)
    if shown is None:
        return
    if place.is_point:
        canvas.space.take(draw_sign(canvas, shown.left, shown.bottom))
    else:
        corners = [(float(x), float(y)) for x, y in place.outline]
        closed = corners[:1] if len(corners) > 2 else ()
        for start, end in pairwise((*corners, *closed)):
            canvas.wall_line("detail", view, *start, *end)
            _keep_off(canvas, view, *start, *end)


def find_shown(view: View, place: Place) -> Box | None:
    """What the view shows of the extent of a water detail, on paper; None if nothing."""
    left, bottom, right, top = map(float, place[1:5])
    if right < view.left or left > view.right or top < view.bottom or bottom > view.top:
        return None
    return paper_box(view, left, bottom, right, top)


def draw_sign(canvas: Canvas, x: float, y: float) -> Box:
    """Draw the sign of a water detail without extent, a triangle that stands on its tip; the room it takes."""
    canvas.area("sign", ((x, y), (x + _SIGN, y - 2 * _SIGN), (x - _SIGN, y - 2 * _SIGN)))
    return sign_box(Box(x, y, x, y))


def sign_box(at: Box) -> Box:
    """The room of the sign of a water detail that stands at a point."""
    return Box(at.left - _SIGN, at.bottom - 2 * _SIGN, at.left + _SIGN, at.bottom)


def paper_box(view: View, left: float, bottom: float, right: float, top: float) -> Box:
    """What the view shows of a rectangle of the wall, on paper."""
    return Box(
        view.x(max(left, view.left)),
        view.y(min(top, view.top)),
        view.x(min(right, view.right)),
        view.y(max(bottom, view.bottom)),
    )


def _label_opening(canvas: Canvas, shown: Box, mark: str, joint: str) -> None:
    """Write the mark of an opening at its middle, and below it that of its joint, in a frame."""
    x, y = (shown.left + shown.right) / 2, (shown.top + shown.bottom) / 2
    deep = _LINE if joint else 0.0
    wide = max(measure(mark), measure(joint)) + 0.8
    if wide <= shown.right - shown.left and deep + HIGH <= shown.bottom - shown.top:
        upper = canvas.place([center_label(mark, x, y - deep / 2)], blank=True)
        lower = canvas.place([center_label(joint, x, y + deep / 2)], blank=True) if joint and upper else None
        if lower:
            canvas.box("leader", lower.box.grow(0.35))
        if upper and (lower or not joint):
            return
    label_or_key(canvas, ", ".join(filter(None, (mark, joint))), shown, blank=True)


def label_panels(canvas: Canvas, view: View, geometry: Geometry, *, blank: bool = False) -> None:
    """Write the mark of each panel whose middle the view shows into it; what finds no place gets a number.

    With `blank` no line shows behind it, where one slopes across panels.
    """
    for mark, left, bottom, right, top, panel in geometry.panels:
        if view.left <= (left + right) / 2 < view.right and view.bottom <= (bottom + top) / 2 < view.top:
            room = (left, bottom, right, top) if panel is None else _find_room(panel)
            label_or_key(canvas, mark, paper_box(view, *room), blank)


def label_or_key(canvas: Canvas, text: str, shown: Box, blank: bool = False) -> None:
    """Write a text within a rectangle, level or turned; where it finds no place, a number that the key explains."""
    if canvas.place(_choices(text, shown), blank) is None:
        number = str(len(canvas.key) + 1)
        x, y = (shown.left + shown.right) / 2, (shown.top + shown.bottom) / 2
        label = canvas.place(_choices(number, shown), blank) or canvas.place(_with_leaders(number, x, y), blank=True)
        (canvas.key if label else canvas.lost).append(text)
        if label and not shown.holds(label.box):
            box = label.box
            canvas.line("leader", x, y, (box.left + box.right) / 2, (box.top + box.bottom) / 2)


def _choices(text: str, shown: Box) -> Iterator[Label]:
    """The places of a text within a rectangle: its middle, then above and below it, then turned."""
    x, y = (shown.left + shown.right) / 2, (shown.top + shown.bottom) / 2
    wide, high, long = shown.right - shown.left, shown.bottom - shown.top, measure(text) + 0.8
    if long <= wide and high >= HIGH:
        yield center_label(text, x, y)
        if high >= HIGH * 2:
            yield center_label(text, x, shown.top + HIGH / 2 + 0.2)
            yield center_label(text, x, shown.bottom - HIGH / 2 - 0.2)
        if long <= wide / 2:
            yield from (center_label(text, x + wide / 4 * side, y) for side in (1, -1))
    if long <= high and wide >= HIGH:
        yield center_label(text, x, y, turned=True)


def _with_leaders(text: str, x: float, y: float) -> Iterator[Label]:
    """Places about a point, the nearest first."""
    for far in _LEADERS:
        for across, down in _AROUND:
            yield center_label(text, x + across * far, y + down * far)


def _find_room(panel: Panel) -> tuple[float, float, float, float]:
    """The largest rectangle within the legs of a panel, in which its mark stands; in meters."""
    rings = [[(float(x), float(y)) for x, y in ring] for ring in (panel.outline, *panel.holes)]
    across, up = ([*_edges_of(rings, side)] for side in (0, 1))
    full = {
        (column, row)
        for column, (left, right) in enumerate(pairwise(across))
        for row, (bottom, top) in enumerate(pairwise(up))
        if _is_inside(rings, left, bottom, right, top)
    }
    spans = max(
        _rectangles(full, len(across) - 1),
        key=lambda r: _size(across, r[0], r[2]) * _size(up, r[1], r[3]),
        default=(0, 0, 0, 0),
    )
    return across[spans[0]], up[spans[1]], across[spans[2]], up[spans[3]]


def _edges_of(rings: list[list[Spot]], side: int) -> Iterator[float]:
    """The places of the corners across or up; beside a slope the space between two of them is parted."""
    places = sorted({spot[side] for ring in rings for spot in ring})
    slopes = any(x1 != x2 and y1 != y2 for ring in rings for (x1, y1), (x2, y2) in pairwise((*ring, ring[0])))
    yield places[0]
    for low, high in pairwise(places):
        yield from (low + (high - low) * part / _PARTS for part in range(1, _PARTS) if slopes)
        yield high


def _size(edges: list[float], first: int, last: int) -> float:
    return edges[last] - edges[first]


def _rectangles(full: set[tuple[int, int]], columns: int) -> Iterator[tuple[int, int, int, int]]:
    """The rectangles of a grid whose cells are all full, as the numbers of their edges."""
    for column, row in sorted(full):
        width = columns - column
        above = row
        while (column, above) in full:
            reach = next((n for n in range(width) if (column + n, above) not in full), width)
            width, above = reach, above + 1
            yield column, row, column + width, above


def _is_inside(rings: list[list[Spot]], left: float, bottom: float, right: float, top: float) -> bool:
    """Whether a cell lies within the outline and in no hole, by points near its corners."""
    near = 0.01
    sides = (left + (right - left) * near, right - (right - left) * near)
    ends = (bottom + (top - bottom) * near, top - (top - bottom) * near)
    return all(_holds(rings, x, y) for x in sides for y in ends)


def _holds(rings: list[list[Spot]], x: float, y: float) -> bool:
    """Whether a point is inside: a line to the right of it crosses an odd number of sides."""
    crossed = 0
    for ring in rings:
        for (x1, y1), (x2, y2) in pairwise((*ring, ring[0])):
            crossed += (y1 > y) != (y2 > y) and x1 + (x2 - x1) * (y - y1) / (y2 - y1) > x
    return crossed % 2 == 1
