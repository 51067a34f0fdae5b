"""The foot of a sheet: legend, scale bar, north, title block, and above them the remarks and the key."""

from collections.abc import Iterable
from fractions import Fraction
from math import cos, radians, sin
from typing import NamedTuple

from specgen.documents.figures.elevation_canvas import Canvas
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_paper import STRIP, Paper, Plan
from specgen.documents.figures.elevation_wall import draw_sign, draw_tie
from specgen.documents.figures.labels import Box, Label, center_label, measure, shorten, wrap_words

LINE = 4.2  # from one line of small type to the next
_BETWEEN = 6.0  # between two remarks on a line
_TITLE, _MIDDLE = 112.0, 46.0  # widths of the title block and of the scale bar with north
_PAD = 2.5
_TWO_COLUMNS = 90.0  # width from which on the legend has two
_HEAD = 3.6  # size of the project's name
# Lengths of scale bars, in feet or meters; four parts each.
_BARS = {"ip": (80, 40, 20, 16, 8, 4, 2), "si": (40, 20, 8, 4, 2, 1)}
_UNIT = {"ip": ("ft", Fraction(3048, 10_000)), "si": ("m", Fraction(1))}
_ORIGIN = {
    "given": "Joint lines as given",
    "through": "Joint lines proposed, running through",
    "stopped": "Joint lines proposed, stopping at openings",
}
_LEGEND = (
    ("edge", "Edge of EIFS"),
    ("joint", "Aesthetic joint"),
    ("movement", "Movement joint"),
    ("opening", "Opening"),
    ("floor", "Floor line"),
    ("zone", "Edge of mesh zone"),
    ("detail", "Water detail"),
    ("sign", "Place of a water detail"),
    ("match", "Match line"),
    ("grade", "Grade"),
    ("day", "Area of a day"),
    ("tie", "Scaffold tie"),
)


class Sheet(NamedTuple):
    """Which sheet of how many this is."""

    number: int
    total: int


def flow(texts: Iterable[str], width: float) -> list[list[tuple[float, str]]]:
    """The texts one behind the other on lines of a width, each with its place from the left."""
    lines: list[list[tuple[float, str]]] = []
    at = width + 1
    for text in texts:
        for part in wrap_words(text, width, 4):
            long = measure(part)
            if at + long > width:
                lines.append([])
                at = 0.0
            lines[-1].append((at, part))
            at += long + _BETWEEN
    return lines


def room_for(texts: Iterable[str], paper: Paper) -> float:
    """The height that remarks take on a sheet."""
    lines = len(flow(texts, paper.width - 2 * paper.edge - 2 * _PAD))
    return lines * LINE + _PAD if lines else 0.0


def draw_remarks(canvas: Canvas, paper: Paper, texts: Iterable[str], height: float) -> list[str]:
    """Write remarks and key above the strip; what does not fit into the height is handed back."""
    left, top = paper.edge + _PAD, paper.height - paper.edge - STRIP - height
    kept = [*texts]
    lines = flow(kept, paper.width - 2 * paper.edge - 2 * _PAD)
    most = int((height - _PAD) / LINE + 0.01)
    for number, line in enumerate(lines[:most]):
        for at, text in line:
            canvas.put(Label(text, left + at, top + _PAD + number * LINE + 1.2, anchor="start"))
    return [text for line in lines[most:] for _, text in line]


def draw_strip(
    canvas: Canvas, plan: Plan, geometry: Geometry, facts: ElevationFacts, sheet: Sheet, shown: set[str]
) -> None:
    """Draw the border and the foot of a sheet; `shown` are the kinds of lines that stand on it."""
    paper = plan.paper
    border = Box(paper.edge, paper.edge, paper.width - paper.edge, paper.height - paper.edge)
    top = border.bottom - STRIP
    title, middle = border.right - _TITLE, border.right - _TITLE - _MIDDLE
    canvas.box("frame", border)
    canvas.line("cell", border.left, top, border.right, top)
    for x in (title, middle):
        canvas.line("cell", x, top, x, border.bottom)
    _draw_legend(canvas, Box(border.left, top, middle, border.bottom), geometry, shown)
    _draw_scale(canvas, plan, facts.system, Box(middle, top, title, border.bottom))
    if facts.bearing is not None:
        _draw_north(canvas, facts.bearing, (middle + _MIDDLE / 2 - 4, top + 25.4))
    _draw_title(canvas, plan, geometry, facts, sheet, Box(title, top, border.right, border.bottom))


def _draw_legend(canvas: Canvas, box: Box, geometry: Geometry, shown: set[str]) -> None:
    """A sample of each kind of line on the sheet, with its name."""
    entries = [(kind, name + _marks_of(geometry, kind)) for kind, name in _LEGEND if kind in shown]
    columns = 2 if len(entries) > 4 and box.right - box.left > _TWO_COLUMNS else 1
    wide = (box.right - box.left) / columns
    canvas.put(Label("Legend", box.left + _PAD, box.top + 5, anchor="start", bold=True))
    rows = -(-len(entries) // columns)
    step = min(6.2, 24 / max(rows - 1, 1))
    for number, (kind, name) in enumerate(entries):
        x, y = box.left + _PAD + wide * (number // rows), box.top + 10.2 + (number % rows) * step
        if kind == "tie":
            draw_tie(canvas, x + 6.5, y - 1)
        elif kind == "sign":
            draw_sign(canvas, x + 6.5, y)
        else:
            canvas.line(kind, x, y - 1, x + 13, y - 1)
        canvas.put(Label(shorten(name, wide - 13 - 2 * _PAD - 1), x + 15, y, anchor="start"))


def _marks_of(geometry: Geometry, kind: str) -> str:
    """The marks that belong to a kind of joint: `V, H`, or those of the movement joints."""
    if kind == "joint":
        return " V, H"
    if kind == "movement":
        return f" {', '.join(geometry.moving)}"
    return ""


def _draw_scale(canvas: Canvas, plan: Plan, system: str, box: Box) -> None:
    """The scale in words, and a bar of four parts with its unit."""
    unit, meters = _UNIT[system]
    part = float(meters) * plan.scale.per_meter / 4
    long = next((bar for bar in _BARS[system] if bar * part * 4 <= _MIDDLE - 10), _BARS[system][-1])
    x, y, step = box.left + 4, box.top + 10, long * part
    canvas.put(Label(f"Scale {plan.scale.text}", box.left + _PAD, box.top + 5, anchor="start", bold=True))
    canvas.box("cell", Box(x, y - 1.5, x + 4 * step, y))
    for number in (0, 2):
        canvas.box("solid", Box(x + number * step, y - 1.5, x + (number + 1) * step, y))
    for number in (0, 2, 4):
        told = f"{long * number // 4}" if number < 4 else f"{long} {unit}"
        canvas.put(center_label(told, x + number * step, y + 2.2))


def _draw_north(canvas: Canvas, bearing: float, middle: tuple[float, float]) -> None:
    """North as seen from above by somebody who faces the wall, which is the stroke beyond the arrow."""
    x, y = middle
    turn = radians(-(bearing + 180))
    across, up = sin(turn), -cos(turn)

    def point(along: float, aside: float = 0.0) -> tuple[float, float]:
        return x + along * across - aside * up, y + along * up + aside * across

    canvas.line("cell", *point(-5), *point(5))
    canvas.area("solid", (point(5), point(1.5, 1.4), point(1.5, -1.4)))
    canvas.put(center_label("N", *point(7.3), bold=True))
    canvas.line("edge", x - 8, y - 10.2, x + 8, y - 10.2)
    canvas.put(center_label("wall", x + 12, y - 10.2))


def _draw_title(canvas: Canvas, plan: Plan, geometry: Geometry, facts: ElevationFacts, sheet: Sheet, box: Box) -> None:
    """The title block: project, elevation, and what tells this sheet from others."""
    left, wide = box.left + _PAD, box.right - box.left - 2 * _PAD
    for number, text in enumerate(wrap_words(facts.project, wide, 2, _HEAD, True)):
        canvas.put(Label(text, left, box.top + 5 + number * 4.8, _HEAD, "start", True))
    name = ", ".join(filter(None, (f"Elevation {facts.mark}", facts.name, "seen from outside")))
    for number, text in enumerate(wrap_words(name, wide, 2, _HEAD)):
        canvas.put(Label(text, left, box.top + 15 + number * 4.6, _HEAD, "start"))
    built = ", ".join(
        filter(None, (f"Wall {facts.wall}" if facts.wall else "", facts.color and f"color {facts.color}"))
    )
    cells = (
        (f"Facing {facts.facing}" if facts.facing else "", _ORIGIN[geometry.layout.proposal]),
        (built, f"Revision {facts.revision}" + (f", {facts.date}" if facts.date else "")),
        (f"Sheet {sheet.number} of {sheet.total}", f"True scale on {plan.paper.name} only"),
    )
    half = wide * 0.38
    for number, (first, second) in enumerate(cells):
        y = box.bottom - 11.2 + number * 4.6
        canvas.put(Label(shorten(first, half - 1), left, y, anchor="start"))
        canvas.put(Label(shorten(second, wide - half), left + half, y, anchor="start"))
    canvas.line("cell", box.left, box.bottom - 15, box.right, box.bottom - 15)
