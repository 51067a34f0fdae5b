"""What an elevation sheet costs."""

import math
import tempfile
from pathlib import Path

from specgen.documents.figures.elevation import draw_elevations
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.model.layout import ElevationLayout
from tests.bench.measuring import at_most, seconds
from tests.documents.figures.faces import draw_of, large_face

_PER_METER = 1000 / 128  # millimeters on paper at 3/32 in to the foot


def plain(layout: ElevationLayout) -> str:
    """Panels, joints, openings and their marks as SVG, built as text without any placing, legend or dimension."""
    parts = ['<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="900mm" height="400mm">']
    for panel in layout.panels:
        x, y, w, h = (float(side) * _PER_METER for side in (panel.x, panel.y, panel.width, panel.height))
        parts.append(f'<rect x="{x:.3f}" y="{y:.3f}" width="{w:.3f}" height="{h:.3f}"/>')
        parts.append(f'<text x="{x + w / 2:.3f}" y="{y + h / 2:.3f}">{panel.mark}</text>')
    for run in layout.joints:
        a, b, c, d = (float(end) * _PER_METER for end in (run.x1, run.y1, run.x2, run.y2))
        parts.append(f'<line x1="{a:.3f}" y1="{b:.3f}" x2="{c:.3f}" y2="{d:.3f}"/>')
    for mark, *box in layout.openings:
        x, y, w, h = (float(side) * _PER_METER for side in box)
        parts.append(f'<rect x="{x:.3f}" y="{y:.3f}" width="{w:.3f}" height="{h:.3f}"/>')
        parts.append(f'<line x1="{x:.3f}" y1="{y:.3f}" x2="{x + w:.3f}" y2="{y + h:.3f}"/>')
        parts.append(f'<line x1="{x:.3f}" y1="{y + h:.3f}" x2="{x + w:.3f}" y2="{y:.3f}"/>')
        parts.append(f'<text x="{x + w / 2:.3f}" y="{y + h / 2:.3f}">{mark}</text>')
    return "".join([*parts, "</svg>"])


def measure() -> None:
    """Sheets of 2,030 panels and 400 openings against the same built as text, in seconds, and growth with openings."""
    with tempfile.TemporaryDirectory() as folder:
        small, large = (_draw(Path(folder), columns) for columns in (10, 40))
    sheets = seconds(lambda: next(draw_elevations([large])))
    at_most("sheets of 2,030 panels / the same as plain text", sheets / seconds(lambda: plain(large[0])), 6)
    at_most("sheets of 2,030 panels, seconds", sheets, 1)
    part = seconds(lambda: next(draw_elevations([small])))
    at_most("sheets, exponent of growth with openings", math.log(sheets / part) / math.log(4), 1.5)


def _draw(folder: Path, columns: int) -> tuple[ElevationLayout, ElevationFacts]:
    face, joints = large_face(columns)
    return draw_of(folder, face, joints)
