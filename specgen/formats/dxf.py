"""A layout as a DXF drawing: in real units from the lower left of the elevation, layers by what the trade calls it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from typing import TYPE_CHECKING, Any, NamedTuple

from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.model.layout import AESTHETIC, ElevationLayout, Panel, Point
from specgen.model.problem import refuse
from specgen.quantities.units import UNITS

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Modelspace


class _Layer(NamedTuple):
    """A layer: its color number, line type, and line weight in hundredths of a millimeter."""

    color: int
    linetype: str
    weight: int


_LAYERS = {
    "WALL-EDGE": _Layer(7, "CONTINUOUS", 70),
    "PANELS": _Layer(8, "CONTINUOUS", 13),
    "PANEL-MARKS": _Layer(7, "CONTINUOUS", 25),
    "AESTHETIC-JOINTS": _Layer(3, "CONTINUOUS", 25),
    "MOVEMENT-JOINTS": _Layer(1, "MOVEMENT", 50),
    "JOINT-MARKS": _Layer(7, "CONTINUOUS", 25),
    "OPENINGS": _Layer(5, "CONTINUOUS", 35),
    "OPENING-MARKS": _Layer(7, "CONTINUOUS", 25),
    "FLOOR-LINES": _Layer(6, "FLOOR", 18),
    "SCAFFOLD-TIES": _Layer(2, "CONTINUOUS", 25),
    "MESH-ZONES": _Layer(4, "ZONE", 25),
    "WATER-DETAILS": _Layer(30, "CONTINUOUS", 35),
}
# Lengths of dashes, and of gaps as negative numbers, in inches; 0 is a dot.
_LINETYPES = {
    "MOVEMENT": ("two dots between long dashes", (6.0, -1.0, 0.0, -1.0, 0.0, -1.0)),
    "FLOOR": ("a dot between long dashes", (8.0, -1.0, 0.0, -1.0)),
    "ZONE": ("dashes", (2.5, -1.0)),
}
_UNITS = {"ip": ("in", 1, 0), "si": ("mm", 4, 1)}  # as the header numbers them, with its system of measures
_TEXT, _LEAST = Fraction(1016, 10_000), Fraction(1, 4)  # height of text in meters, and of the panel that it may fill
_VERSION = "R2010"


def write_dxf(layout: ElevationLayout, facts: ElevationFacts) -> bytes:
    """The drawing of an elevation in inches or millimeters; raises Refused where its library is not installed."""
    try:
        from ezdxf._options import options
        from ezdxf.filemanagement import new
    except ImportError:
        raise refuse("DXF needs a library that is not installed", "install specgen with its extra cad") from None
    unit, number, measures = _UNITS[facts.system]
    with _without_clock(options):
        drawing = new(_VERSION, units=number)
        drawing.header["$MEASUREMENT"] = measures
        _add_layers(drawing, Fraction(UNITS["in"].factor) / UNITS[unit].factor)
        _Sketch(drawing.modelspace(), Fraction(1) / UNITS[unit].factor).draw(layout, facts)
        for kind in sorted(drawing.entitydb.dxf_types_in_use()):  # the library adds them in no order of its own
            drawing.classes.add_class(kind)
        stream = io.StringIO()
        drawing.write(stream)
    return stream.getvalue().encode("utf-8")


@contextmanager
def _without_clock(options: Any) -> Iterator[None]:
    """No time and no random name is written, so that the same layout gives the same file."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _add_layers(drawing: Drawing, inch: Fraction) -> None:
    for name, (told, pattern) in _LINETYPES.items():
        dashes = [float(part * float(inch)) for part in pattern]
        drawing.linetypes.add(name, [sum(map(abs, dashes)), *dashes], description=told)
    for name, layer in _LAYERS.items():
        drawing.layers.add(name, color=layer.color, linetype=layer.linetype, lineweight=layer.weight)


class _Sketch:
    """A model space that is drawn on in meters."""

    def __init__(self, space: Modelspace, per_meter: Fraction) -> None:
        self.space, self.per_meter = space, per_meter

    def draw(self, layout: ElevationLayout, facts: ElevationFacts) -> None:
        """Add all that the layout and the project tell."""
        self.outline("WALL-EDGE", layout.edge)
        for panel in layout.panels:
            self.panel(panel)
        for run in layout.joints:
            kind = "AESTHETIC-JOINTS" if run.kind == AESTHETIC else "MOVEMENT-JOINTS"
            self.line(kind, (run.x1, run.y1), (run.x2, run.y2))
            self.text("JOINT-MARKS", run.mark, ((run.x1 + run.x2) / 2, (run.y1 + run.y2) / 2), _TEXT / 2)
        for mark, x, y, width, height in layout.openings:
            right, top = x + width, y + height
            self.outline("OPENINGS", ((x, y), (right, y), (right, top), (x, top)))
            self.line("OPENINGS", (x, y), (right, top))
            self.line("OPENINGS", (x, top), (right, y))
            self.text("OPENING-MARKS", mark, (x + width / 2, y + height / 2), _TEXT)
        for x, y in facts.ties:
            self.line("SCAFFOLD-TIES", (x - _TEXT, y), (x + _TEXT, y))
            self.line("SCAFFOLD-TIES", (x, y - _TEXT), (x, y + _TEXT))
        for place in facts.details:
            mark, left, bottom, right, top = place[:5]
            if left < right or bottom < top:
                self.outline("WATER-DETAILS", place.outline)
            else:
                self.outline("WATER-DETAILS", ((left, top), (left + _TEXT, top + _TEXT), (left - _TEXT, top + _TEXT)))
            self.text("WATER-DETAILS", mark, ((left + right) / 2, top + _TEXT * 2), _TEXT)
        for layer, height, told in _list_heights(facts, layout.height):
            self.line(layer, (Fraction(0), height), (layout.width, height))
            self.text(layer, told, (layout.width + _TEXT * 6, height), _TEXT)

    def panel(self, panel: Panel) -> None:
        """Add the outline, the holes and the mark of a panel."""
        for ring in (panel.outline, *panel.holes):
            self.outline("PANELS", ring)
        high = min(_TEXT, panel.height * _LEAST, panel.width * _LEAST)
        self.text("PANEL-MARKS", panel.mark, (panel.x + panel.width / 2, panel.y + panel.height / 2), high)

    def outline(self, layer: str, points: tuple[Point, ...]) -> None:
        """Add a closed outline."""
        self.space.add_lwpolyline([self._point(p) for p in points], close=True, dxfattribs={"layer": layer})

    def line(self, layer: str, start: Point, end: Point) -> None:
        """Add a straight line."""
        self.space.add_line(self._point(start), self._point(end), dxfattribs={"layer": layer})

    def text(self, layer: str, text: str, middle: Point, height: Fraction) -> None:
        """Add a line of text about a point."""
        from ezdxf.enums import TextEntityAlignment

        added = self.space.add_text(text, height=float(height * self.per_meter), dxfattribs={"layer": layer})
        added.set_placement(self._point(middle), align=TextEntityAlignment.MIDDLE_CENTER)

    def _point(self, point: Point) -> tuple[float, float]:
        return float(point[0] * self.per_meter), float(point[1] * self.per_meter)


def _list_heights(facts: ElevationFacts, top: Fraction) -> Iterator[tuple[str, Fraction, str]]:
    """The floor lines, and the edges of mesh zones within the wall, with their words."""
    yield from (("FLOOR-LINES", floor.height, floor.mark) for floor in facts.floors)
    for zone in facts.zones:
        yield from (("MESH-ZONES", edge, zone.mark) for edge in (zone.lower, zone.upper) if 0 < edge < top)
