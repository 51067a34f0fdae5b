"""The marks of water details on a sheet: off the lines of the wall, with a leader to what each names."""

import math
from collections.abc import Iterator, Sequence

from specgen.documents.figures.elevation_canvas import Canvas, Segment, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_wall import HIGH, find_shown, paper_box, sign_box
from specgen.documents.figures.labels import Box, Label, center_label, measure
from specgen.documents.figures.water_places import Place

_CLEAR = 0.8  # from a line of the wall to the mark of a water detail
_REACH, _STEP = 14.0, 0.7  # how far about a water detail its mark is sought, and in which steps, in millimeters
_HALF = 0.1  # of the width that a leader keeps free


def label_details(canvas: Canvas, view: View, geometry: Geometry, facts: ElevationFacts) -> None:
    """Write the mark of each water detail beside it."""
    openings = [paper_box(view, *sides) for _, _, *sides in geometry.openings]
    # A mark on a line would read as that of the line.
    moving, lines = (
        [paper_box(view, *sides).grow(_CLEAR) for moves, *sides in geometry.sealed if bool(moves) is wanted]
        for wanted in (True, False)
    )
    for place in facts.details:
        shown = find_shown(view, place)
        if shown is None:
            continue
        if place.is_point:
            label_beside(canvas, place.mark, sign_box(shown), view.box, (openings, moving, lines))
        else:
            _label_with_leader(canvas, place.mark, _shown_edge(view, place), view.box, (openings, moving, lines))


def _shown_edge(view: View, place: Place) -> Segment:
    """The line of a roof, or the middle of a ledge from end to end, as far as the view shows it, on paper."""
    ends = place.line or ((place.left, (place.bottom + place.top) / 2), (place.right, (place.bottom + place.top) / 2))
    (x1, y1), (x2, y2) = ((float(x), float(y)) for x, y in ends)
    x1, y1, x2, y2 = view.clip(x1, y1, x2, y2) or (x1, y1, x2, y2)
    return view.x(x1), view.y(y1), view.x(x2), view.y(y2)


def _label_with_leader(canvas: Canvas, text: str, edge: Segment, wall: Box, avoided: Sequence[Sequence[Box]]) -> None:
    """Write a mark off the lines of the wall, with a leader to what it names; without a place it is a number."""
    # What lies farther off than any place meets none.
    around = _reach_about(edge).grow(measure(text))
    texts = [label.box for label in canvas.labels if label.box.meets(around)]
    avoided = [[box for box in boxes if box.meets(around)] for boxes in avoided]
    for number, said in enumerate((text, str(len(canvas.key) + 1))):
        within = wall.grow(-0.4)
        boxes = {label: box for label in _about(said, edge) if within.holds(box := label.box)}
        leaders = {label: _find_leader(box, edge) for label, box in boxes.items()}
        places = sorted(
            boxes,
            key=lambda label: [
                *(any(map(boxes[label].meets, lines)) for lines in avoided),
                _meets_any(leaders[label], texts),
                math.dist(leaders[label][:2], leaders[label][2:]),
            ],
        )
        label = canvas.place(places, blank=True)
        if label:
            canvas.line("leader", *leaders[label])
            canvas.key += [text] if number else []
            return
    canvas.lost.append(text)


def _about(text: str, edge: Segment) -> Iterator[Label]:
    """Places about a line, on a grid of steps that follows it."""
    left, top, right, bottom = _reach_about(edge)
    for across in range(int((right - left) / _STEP) + 1):
        for down in range(int((bottom - top) / _STEP) + 1):
            yield center_label(text, left + across * _STEP, top + down * _STEP)


def _reach_about(edge: Segment) -> Box:
    return _bound(edge).grow(_REACH)


def _bound(line: Segment) -> Box:
    x1, y1, x2, y2 = line
    return Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))


def _find_leader(label: Box, edge: Segment) -> Segment:
    """From the frame of a mark to the nearest place of the line it names."""
    x1, y1, x2, y2 = edge
    x, y = (label.left + label.right) / 2, (label.top + label.bottom) / 2
    long = (x2 - x1) ** 2 + (y2 - y1) ** 2
    share = min(max(((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / long, 0.0), 1.0) if long else 0.0
    to_x, to_y = x1 + share * (x2 - x1), y1 + share * (y2 - y1)
    return min(max(to_x, label.left), label.right), min(max(to_y, label.top), label.bottom), to_x, to_y


def _meets_any(leader: Segment, boxes: list[Box]) -> bool:
    """Whether a leader runs over any of some boxes."""
    around = _bound(leader).grow(_HALF)
    near = [box for box in boxes if box.meets(around)]
    return bool(near) and any(box.meets(spot) for spot in _spots(leader) for box in near)


def _spots(leader: Segment) -> Iterator[Box]:
    """A leader millimeter by millimeter, as boxes that meet what it crosses."""
    x1, y1, x2, y2 = leader
    steps = int(math.dist((x1, y1), (x2, y2))) + 1
    for n in range(steps + 1):
        x, y = x1 + (x2 - x1) * n / steps, y1 + (y2 - y1) * n / steps
        yield Box(x - _HALF, y - _HALF, x + _HALF, y + _HALF)


def label_beside(canvas: Canvas, text: str, shown: Box, wall: Box, avoided: Sequence[Sequence[Box]] = ()) -> None:
    """Write a mark beside a rectangle within the wall, outside what is avoided, the first most, if it finds a place.

    Where it finds none, it is a number that the key explains.
    """
    for number, said in enumerate((text, str(len(canvas.key) + 1))):
        places = [label for label in _beside(said, shown) if wall.grow(-0.4).holds(label.box)]
        places.sort(key=lambda label: [any(box.meets(label.box) for box in boxes) for boxes in avoided])
        if canvas.place(places, blank=True):
            if number:
                canvas.key.append(text)
            return
    canvas.lost.append(text)


def _beside(text: str, shown: Box) -> Iterator[Label]:
    """Places about a rectangle, the nearest first: above, below, right and left of it, along its sides."""
    half, x, y = measure(text) / 2 + 1, (shown.left + shown.right) / 2, (shown.top + shown.bottom) / 2
    for far in (HIGH / 2 + 0.4, HIGH * 1.5, HIGH * 2.5, HIGH * 4):
        for across in (x, shown.left + half, shown.right - half, shown.right + half, shown.left - half):
            yield center_label(text, across, shown.top - far)
            yield center_label(text, across, shown.bottom + far)
        yield center_label(text, shown.right + half + far, y)
        yield center_label(text, shown.left - half - far, y)
