"""Sheets, scales, and how an elevation is spread over them; meters on the wall, millimeters on paper."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from specgen.documents.figures.elevation_geometry import Geometry, Places

_LEAST_FIELD = 20.0  # of a wall on a sheet
STRIP = 36.0  # height of the strip with legend and title block
# A panel that a mark does not fit into goes to the key. Of 50 panels one may, where a greater scale would hold it.
_MAY_MISS = 0.02


class Paper(NamedTuple):
    """A sheet lying on its side, in millimeters."""

    name: str
    width: float
    height: float
    edge: float = 8.0  # between its border and its edge


class Scale(NamedTuple):
    """A scale: what 1 on paper is on the wall, and how it is said."""

    denominator: int
    text: str

    @property
    def per_meter(self) -> float:
        """Millimeters on paper for a meter of wall."""
        return 1000 / self.denominator


PAPERS = {
    "letter": Paper("letter", 279.4, 215.9),
    "tabloid": Paper("tabloid", 431.8, 279.4),
    "a4": Paper("A4", 297, 210),
    "a3": Paper("A3", 420, 297),
}
# What a document has room for on a letter or A4 page that lies on its side, with a caption.
_PAGE = {"page": Paper("the printed page", 232, 158, 0.5)}
_USUAL = {"ip": ("letter", "tabloid"), "si": ("a4", "a3")}
# From the greatest to the smallest.
SCALES = {
    "ip": (
        Scale(24, "1/2 in = 1 ft"),
        Scale(32, "3/8 in = 1 ft"),
        Scale(48, "1/4 in = 1 ft"),
        Scale(64, "3/16 in = 1 ft"),
        Scale(96, "1/8 in = 1 ft"),
        Scale(128, "3/32 in = 1 ft"),
        Scale(192, "1/16 in = 1 ft"),
    ),
    "si": (Scale(20, "1:20"), Scale(50, "1:50"), Scale(100, "1:100"), Scale(200, "1:200")),
}


class Margins(NamedTuple):
    """What stands around the wall, in millimeters."""

    left: float
    right: float
    top: float
    bottom: float


class Window(NamedTuple):
    """The part of an elevation that one sheet shows, in meters, and its place among the others."""

    left: Fraction
    bottom: Fraction
    right: Fraction
    top: Fraction
    column: int = 0
    row: int = 0


class Plan(NamedTuple):
    """The sheets of an elevation: their size, scale and parts; one part beside the other, then the row above."""

    paper: Paper
    scale: Scale
    margins: Margins
    windows: tuple[Window, ...]
    columns: int = 1
    rows: int = 1


class Wanted(NamedTuple):
    """What a plan is made for: margins go by the scale, the height of the remarks by the sheet."""

    geometry: Geometry
    system: str
    margins: Callable[[Scale], Margins]
    remarks: Callable[[Paper], float]


def choose_plan(wanted: Wanted, sheet: str | None = None) -> Plan:
    """The smallest sheet that holds the elevation with its panel marks, at the greatest scale.

    What no single sheet holds is spread over as few of the largest as its marks allow.
    """
    scales = SCALES[wanted.system]
    margins = {scale: wanted.margins(scale) for scale in scales}
    fits = {scale: _marks_fit(wanted.geometry, scale, scales[0]) for scale in scales}
    names = (sheet,) if sheet else _USUAL[wanted.system]
    papers = [(PAPERS | _PAGE)[name] for name in names]
    for paper in papers:
        for scale in scales:
            plan = _spread(wanted, paper, scale, margins[scale])
            if fits[scale] and len(plan.windows) == 1:
                return plan
    plans = [_spread(wanted, papers[-1], scale, margins[scale]) for scale in reversed(scales) if fits[scale]]
    return min(plans, key=lambda plan: len(plan.windows))


def _marks_fit(geometry: Geometry, scale: Scale, greatest: Scale) -> bool:
    """Whether the marks fit into the panels, save for a few that would at the greatest scale."""
    missed = sum(scale.per_meter < least <= greatest.per_meter for least in geometry.scales)
    return missed <= _MAY_MISS * len(geometry.scales)


def _spread(wanted: Wanted, paper: Paper, scale: Scale, margins: Margins) -> Plan:
    """The elevation at a scale on as many sheets of a size as that takes."""
    layout = wanted.geometry.layout
    wide = paper.width - 2 * paper.edge - margins.left - margins.right
    high = paper.height - 2 * paper.edge - STRIP - wanted.remarks(paper) - margins.top - margins.bottom
    wide, high = (max(side, _LEAST_FIELD) / scale.per_meter for side in (wide, high))
    across = [*_cut(layout.width, wide, wanted.geometry.places[0])]
    up = [*_cut(layout.height, high, wanted.geometry.places[1])]
    windows = tuple(
        Window(left, bottom, right, top, column, row)
        for row, (bottom, top) in enumerate(up)
        for column, (left, right) in enumerate(across)
    )
    return Plan(paper, scale, margins, windows, len(across), len(up))


def _cut(length: Fraction, most: float, lines: Places) -> Iterator[tuple[Fraction, Fraction]]:
    """The length in pieces of at most a size, about equal and cut at lines where there are any."""
    start, end, most = Fraction(0), float(length), most * (1 + 1e-9)
    while end - (done := float(start)) > most:
        aim = (length - start) / ceil((end - done) / most)
        near = [(abs(at - done - float(aim)), line) for at, line in lines if done + most / 2 < at <= done + most]
        cut = min(near)[1] if near else start + aim
        yield start, cut
        start = cut
    yield start, length
