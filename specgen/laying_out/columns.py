"""The columns of an elevation between upright joints: the least part of it that a day of spraying can end at."""

from bisect import bisect_right
from fractions import Fraction
from typing import NamedTuple

from specgen.model.layout import ElevationLayout

PERIMETER = "opening_perimeter"


class Column(NamedTuple):
    """A column: from where to where, in meters from the left, and the net area of its panels in square meters."""

    left: Fraction
    right: Fraction
    area: Fraction


def measure_columns(layout: ElevationLayout) -> tuple[Column, ...]:
    """The columns of a layout from the left; a panel that reaches over a joint counts where its middle is."""
    runs = {run.x1 for run in layout.joints if run.x1 == run.x2 and run.kind != PERIMETER}
    edges = sorted({Fraction(0), layout.width, *layout.vertical_lines, *runs})
    areas = [Fraction(0)] * (len(edges) - 1)
    for panel in layout.panels:
        areas[bisect_right(edges, panel.x + panel.width / 2) - 1] += panel.net_area
    return tuple(map(Column, edges, edges[1:], areas))
