"""An elevation as sheets of SVG: laid on paper at a true scale, with all that the crew and the reviewer read off it."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_chain import tell_chains
from specgen.documents.figures.elevation_days import draw_days, tell_days
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_margins import draw_margins, draw_matches, make_margins
from specgen.documents.figures.elevation_marks import label_details
from specgen.documents.figures.elevation_paper import STRIP, Paper, Plan, Wanted, Window, choose_plan
from specgen.documents.figures.elevation_strip import LINE, Sheet, draw_remarks, draw_strip, room_for
from specgen.documents.figures.elevation_wall import draw_wall, label_panels
from specgen.documents.figures.labels import Box
from specgen.documents.figures.rendering import render_figure
from specgen.model.layout import ElevationLayout
from specgen.model.value_text import count

_MOST_REMARKS = 0.25  # of the height of a sheet


@dataclass(frozen=True, slots=True)
class DrawnSheet:
    """A sheet of an elevation: SVG 1.1 with its size on paper in millimeters."""

    name: str  # E1, or E1-2 where there are several
    svg: str
    alt: str
    width: float
    height: float
    paper: str
    scale: str


class _Planned(NamedTuple):
    """An elevation on its sheets, of which only the feet are still to be drawn."""

    plan: Plan
    geometry: Geometry
    facts: ElevationFacts
    sheets: list[Canvas]


def draw_elevations(
    faces: Iterable[tuple[ElevationLayout, ElevationFacts]], sheet: str | None = None
) -> Iterator[tuple[DrawnSheet, ...]]:
    """The sheets of some elevations, numbered through as one set; `sheet` is letter, tabloid, a4 or a3, else the
    smallest that serves.
    """
    planned, first = [], 1
    for layout, facts in faces:
        planned.append(_plan_sheets(layout, facts, sheet, first))
        first += len(planned[-1].sheets)
    number = 1
    for one in planned:
        yield tuple(_finish(one, number, first - 1))
        number += len(one.sheets)


def _plan_sheets(layout: ElevationLayout, facts: ElevationFacts, sheet: str | None, first: int) -> _Planned:
    """All that is drawn but the feet; `first` is the number of the first sheet."""
    geometry = Geometry(layout, facts.day_area, facts.open_sills)
    unit = ["Dimensions in millimeters"] if facts.system == "si" else []
    remarks = [
        *unit,
        *(zone.text for zone in facts.zones),
        *facts.remarks,
        *filter(None, (tell_chains(geometry),)),
        tell_days(facts, geometry.days),
        # A document prints the notes in its table of layouts.
        *(() if sheet == "page" else layout.notes),
    ]
    plan = _plan(geometry, facts, sheet, remarks)
    sheets = [_draw_part(plan, window, geometry, facts, remarks) for window in plan.windows]
    longest = max((canvas.remarks for canvas in sheets), key=len)
    if not _has_room(plan, sheets, [*remarks, *longest]):
        plan = _plan(geometry, facts, sheet, [*remarks, *longest])
        sheets = [_draw_part(plan, window, geometry, facts, remarks) for window in plan.windows]
    left = _write_remarks(plan, sheets, remarks, first)
    return _Planned(plan, geometry, facts, [*sheets, *_draw_keys(plan.paper, left)])


def _plan(geometry: Geometry, facts: ElevationFacts, sheet: str | None, remarks: list[str]) -> Plan:
    def room(paper: Paper) -> float:
        return _room(paper, remarks)

    return choose_plan(Wanted(geometry, facts.system, make_margins(geometry, facts), room), sheet)


def _room(paper: Paper, remarks: list[str]) -> float:
    return min(room_for(remarks, paper), _MOST_REMARKS * paper.height)


def _has_room(plan: Plan, sheets: list[Canvas], texts: list[str]) -> bool:
    """Whether remarks and key stand below all that is drawn already."""
    foot = plan.paper.height - plan.paper.edge - STRIP - _room(plan.paper, texts)
    return all(canvas.space.lowest < foot for canvas in sheets)


def _draw_part(plan: Plan, window: Window, geometry: Geometry, facts: ElevationFacts, remarks: list[str]) -> Canvas:
    """A part of the wall with what stands around it, in the middle of its sheet; no foot yet."""
    paper, margins, scale = plan.paper, plan.margins, plan.scale.per_meter
    canvas = Canvas(
        Box(paper.edge, paper.edge, paper.width - paper.edge, paper.height - paper.edge - STRIP - _room(paper, remarks))
    )
    left, bottom, right, top = (float(side) for side in window[:4])
    wide, high = (right - left) * scale, (top - bottom) * scale
    field = canvas.within
    spare_x = field.right - field.left - margins.left - margins.right - wide
    spare_y = field.bottom - field.top - margins.top - margins.bottom - high
    x0 = field.left + margins.left + spare_x / 2
    y0 = field.bottom - margins.bottom - max(spare_y, 0) / 2
    view = View(left, bottom, right, top, x0, y0, scale)
    draw_wall(canvas, view, geometry, facts)
    draw_margins(canvas, view, window, geometry, facts)
    draw_days(canvas, view, geometry.days)
    draw_matches(canvas, view, plan, window)
    label_panels(canvas, view, geometry, blank=any(place.kind == "roof_below" for place in facts.details))
    label_details(canvas, view, geometry, facts)
    return canvas


def _write_remarks(plan: Plan, sheets: list[Canvas], remarks: list[str], first: int) -> list[str]:
    """What stands above the feet; what a sheet cannot hold is handed back, for a sheet of its own."""
    paper, rest = plan.paper, list[str]()
    for number, canvas in enumerate(sheets, first):
        texts = [*remarks, *canvas.remarks]
        left = draw_remarks(canvas, paper, texts, _room(paper, texts))
        rest += [f"Sheet {number}: {text}" for text in left]
    return rest


def _finish(planned: _Planned, first: int, total: int) -> Iterator[DrawnSheet]:
    """The sheets with their feet, each with its number among all."""
    plan, geometry, facts, sheets = planned
    mark, paper = geometry.layout.elevation, plan.paper
    for number, canvas in enumerate(sheets):
        sheet = Sheet(first + number, total)
        draw_strip(canvas, plan, geometry, facts, sheet, set(canvas.strokes))
        name = mark if len(sheets) == 1 else f"{mark}-{number + 1}"
        alt = _describe(plan, geometry, facts, sheet)
        size = {"width": f"{paper.width:g}", "height": f"{paper.height:g}"}
        svg = render_figure("elevation", canvas.values() | size | {"title": name, "alt": alt})
        yield DrawnSheet(name, svg, alt, paper.width, paper.height, paper.name, plan.scale.text)


def _draw_keys(paper: Paper, texts: list[str]) -> Iterator[Canvas]:
    """As many sheets of key as the texts take."""
    while texts:
        canvas = Canvas(Box(paper.edge, paper.edge, paper.width - paper.edge, paper.height - paper.edge - STRIP))
        texts = draw_remarks(canvas, paper, texts, paper.height - 2 * paper.edge - STRIP - LINE)
        yield canvas


def _describe(plan: Plan, geometry: Geometry, facts: ElevationFacts, sheet: Sheet) -> str:
    """What a sheet shows, in words and numbers."""
    layout = geometry.layout
    size = f"{facts.length(layout.width)} by {facts.length(layout.height)}{' mm' if facts.system == 'si' else ''}"
    name = f"Elevation {facts.mark}" + (f", {facts.name}" if facts.name else "")
    joints = len({run.mark for run in layout.joints})
    parts = (count(len(layout.panels), "panel"), count(len(layout.openings), "opening"), count(joints, "joint"))
    return f"{name}, {size}: {', '.join(parts)}; scale {plan.scale.text}; sheet {sheet.number} of {sheet.total}."
