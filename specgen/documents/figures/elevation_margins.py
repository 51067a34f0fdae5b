"""What stands around the wall: dimensions, marks of lines, levels, mesh zones, grade, match lines."""

from collections.abc import Callable
from fractions import Fraction
from functools import partial

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_chain import Axis, draw_chains, find_depth, list_chains
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_paper import Margins, Plan, Scale, Window
from specgen.documents.figures.labels import CAPITAL, Label, center_label, measure, shorten

_GAP = 1.5  # between the wall and what refers to it
_SAME = 1e-6  # meters
_MOST_MARK, _MOST_LEVEL = 24.0, 52.0  # widths of what stands beside the wall
_ABOVE = 11.0  # the room for marks of lines
_MOST_GRADE = 12.0  # grade is drawn where it lies at most so far below the wall


def make_margins(geometry: Geometry, facts: ElevationFacts) -> Callable[[Scale], Margins]:
    """What is kept free around the wall, by the scale."""
    below, beside = (list_chains(geometry, facts, upright) for upright in (True, False))
    marks = max((wide for wide in map(measure, geometry.levels.values()) if wide <= _MOST_MARK), default=0.0)
    levels = max(measure(text) for _, text in list_levels(geometry, facts))
    above = _ABOVE + (6 if len(geometry.days) > 1 else 0)
    right = 2 * _GAP + marks + 6 + levels + (12 if facts.zones else 4)

    def find_margins(scale: Scale) -> Margins:
        grade = _grade_depth(facts, scale.per_meter)
        return Margins(find_depth(beside, scale), right, above, grade + find_depth(below, scale))

    return find_margins


def _grade_depth(facts: ElevationFacts, per_meter: float) -> float:
    """How far below the wall grade is drawn, in millimeters on paper; 0 where it is not."""
    depth = float(facts.base or 0) * per_meter
    return depth if depth <= _MOST_GRADE else 0.0


def draw_margins(canvas: Canvas, view: View, window: Window, geometry: Geometry, facts: ElevationFacts) -> None:
    """Draw all that stands around the part of a wall which a sheet shows."""
    grade = _grade_depth(facts, view.per_meter) if not view.bottom else 0.0
    _draw_grade(canvas, view, facts, grade)
    draw_chains(canvas, Axis(view, upright=True, start=grade), window, geometry, facts)
    draw_chains(canvas, Axis(view, upright=False), window, geometry, facts)
    edge = _mark_lines(canvas, view, geometry)
    edge = _mark_levels(canvas, view, geometry, facts, edge)
    _draw_zones(canvas, view, facts, edge)


def _draw_grade(canvas: Canvas, view: View, facts: ElevationFacts, depth: float) -> None:
    """The line of the ground, where the wall ends near it."""
    if depth or (facts.base is not None and not facts.base and not view.bottom):
        y, left, right = view.y0 + depth, view.box.left - 4, view.box.right + 4
        canvas.line("grade", left, y, right, y)
        for number in range(int((right - left) / 4)):
            canvas.line("leader", left + 4 * number + 2, y, left + 4 * number, y + 1.5)


def _mark_lines(canvas: Canvas, view: View, geometry: Geometry) -> float:
    """Write the marks of the joint lines above the wall and to its right; the right edge of the latter."""
    box, edge = view.box, view.box.right + _GAP
    for place, mark in geometry.uprights.items():
        aside = _find_side(float(place), view.left, view.right)
        if mark and aside is not None:
            x = view.x(float(place))
            middle = x + aside * (measure(mark) / 2 + 1.2)
            choices = [
                center_label(mark, middle + by, box.top - rise) for rise in (3.2, 7.4) for by in (0.0, 4.8, -4.8)
            ]
            _mark_line(canvas, mark, choices, (x, view.y(geometry.find_end(place, view.top))), mark in geometry.moving)
    for place, mark in geometry.levels.items():
        aside = _find_side(float(place), view.bottom, view.top)
        if mark and aside is not None:
            y, middle = view.y(float(place)), box.right + 2 * _GAP + measure(mark) / 2
            choices = [center_label(mark, middle, y - aside * 2.4 + by) for by in (0.0, -1.9, 1.9, -3.8, 3.8)]
            end = (view.x(geometry.find_end(place, view.right, upright=False)), y)
            label = _mark_line(canvas, mark, choices, end, mark in geometry.moving)
            edge = max(edge, label.box.right) if label else edge
    return edge


def _find_side(place: float, low: float, high: float) -> int | None:
    """To which side the mark of a line moves: inward where the line is an end of the view, None beyond it."""
    if not low - _SAME < place < high + _SAME:
        return None
    return 1 if place < low + _SAME else -1 if place > high - _SAME else 0


def _mark_line(canvas: Canvas, mark: str, choices: list[Label], end: tuple[float, float], moving: bool) -> Label | None:
    """Write the mark of a line at its end, that of a movement joint in a frame; a short stroke leads there."""
    label = canvas.place(choices) if measure(mark) <= _MOST_MARK else None
    if label is None:
        canvas.lost.append(mark)
        return None
    box = label.box.grow(0.35)
    beside = box.bottom > end[1] - 0.5
    half = label.size * CAPITAL / 2
    canvas.line("leader", *end, *((box.left - 0.3, label.y - half) if beside else (label.x, box.bottom)))
    if moving:
        canvas.box("leader", box)
    return label


def list_levels(geometry: Geometry, facts: ElevationFacts) -> list[tuple[Fraction, str]]:
    """The heights that are marked, with their words: the lower edge as the datum, floors, the top."""
    base = facts.base
    grade = "" if base is None else f", {facts.length(base)} above grade" if base else ", at grade"
    floors = [(floor.height, f"{facts.length(floor.height)} floor {floor.mark}") for floor in facts.floors]
    top = geometry.layout.height
    told = [(Fraction(0), f"{facts.length(Fraction(0))} datum{grade}"), *floors, (top, f"{facts.length(top)} top")]
    return [(height, shorten(text, _MOST_LEVEL)) for height, text in told]


def _mark_levels(canvas: Canvas, view: View, geometry: Geometry, facts: ElevationFacts, edge: float) -> float:
    """Mark the heights to the right of the wall; the right edge of their words."""
    start = edge + 3
    for height, text in list_levels(geometry, facts):
        if not view.bottom - 1e-9 <= height <= view.top + 1e-9:
            continue
        y = view.y(float(height))
        rises = (1.2, 4.6, -3.4, 8.2)
        label = canvas.place([Label(text, start + 3, y - rise, anchor="start") for rise in rises])
        if label is None:
            canvas.lost.append(text)
            continue
        canvas.line("leader", start - 1.8, y, start + 2, y)
        canvas.area("solid", ((start, y), (start - 1, y - 1.7), (start + 1, y - 1.7)))
        edge = max(edge, label.box.right)
    return edge


def _draw_zones(canvas: Canvas, view: View, facts: ElevationFacts, edge: float) -> None:
    """Bracket the mesh zones to the right of all else."""
    x = edge + 3
    for zone in facts.zones:
        low, high = max(float(zone.lower), view.bottom), min(float(zone.upper), view.top)
        if low >= high:
            continue
        bottom, top = view.y(low), view.y(high)
        canvas.line("dimension", x, bottom, x, top)
        for y in (bottom, top):
            canvas.line("dimension", x - 1.2, y, x + 1.2, y)
        middle = partial(center_label, zone.mark, x + 1.5 + measure(zone.mark) / 2)
        if canvas.place([middle((bottom + top) / 2 + by) for by in (0.0, 3.6, -3.6)]) is None:
            canvas.lost.append(zone.mark)


def draw_matches(canvas: Canvas, view: View, plan: Plan, window: Window) -> None:
    """Draw the lines at which this sheet and its neighbors meet, with the number of the other sheet."""
    box = view.box
    sides = (
        (-1, 0, (box.left, box.top - 12, box.left, box.bottom + 3)),
        (1, 0, (box.right, box.top - 12, box.right, box.bottom + 3)),
        (0, -1, (box.left - 5, box.bottom, box.right + 5, box.bottom)),
        (0, 1, (box.left - 5, box.top, box.right + 5, box.top)),
    )
    for across, up, line in sides:
        column, row = window.column + across, window.row + up
        if 0 <= column < plan.columns and 0 <= row < plan.rows:
            canvas.line("match", *line)
            text = f"Match line, sheet {row * plan.columns + column + 1}"
            if canvas.place(_match_places(text, line, across, up)) is None:
                canvas.lost.append(text)


def _match_places(text: str, line: tuple[float, float, float, float], across: int, up: int) -> list[Label]:
    """Beside the end of an upright match line, within the sheet's part; beyond a level one."""
    x1, y1, x2, y2 = line
    half = measure(text) / 2
    if across:
        return [center_label(text, x1 - across * (half + 1.5), y1 + 2.6 + down) for down in (0, 3.6, -3.6)]
    if up > 0:
        return [center_label(text, x1 + 6 + half + by, y1 - rise) for rise in (10.0, 6.6) for by in (0, 30, 60, 90)]
    # Below a level one stand the dimensions: beside them, to the right of the wall.
    beside = [center_label(text, x2 + half + by, y2 + fall) for fall in (3.0, 6.6, 10.2) for by in (0.0, 8.0, 16.0)]
    return [*beside, *(center_label(text, x1 + 6 + half + by, y2 + 22.0) for by in (0, 20, 40))]
