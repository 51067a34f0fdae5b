"""The lines of aesthetic joints: mark, direction, place from the lower left corner, and length without openings."""

from fractions import Fraction

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layouts import list_layouts, tell_length
from specgen.documents.marks import name_member
from specgen.model.layout import AESTHETIC, ElevationLayout, JointRun


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each line, by elevation; its elevation stands in the first."""
    lines = []
    for mark, layouts in list_layouts(context).items():
        for number, (line, runs) in enumerate(_gather(layouts[0]).items()):
            plumb = runs[0].x1 == runs[0].x2
            lines.append(
                (
                    "" if number else name_member(context, "elevations", mark),
                    line,
                    "vertical" if plumb else "horizontal",
                    [tell_length(context, runs[0].x1 if plumb else runs[0].y1), _FROM[plumb]],
                    str(len(runs)),
                    tell_length(context, sum((run.length for run in runs), Fraction(0))),
                )
            )
    header = ("Elevation", "Line", "Direction", "Place", "Runs", "Length")
    return TableView(header, tuple(lines), (24, 12, 14, 26, 8, 16))


_FROM = {True: " from the left end", False: " above the base"}


def _gather(layout: ElevationLayout) -> dict[str, list[JointRun]]:
    """The runs of each line of aesthetic joints, by its mark."""
    found: dict[str, list[JointRun]] = {}
    for run in layout.joints:
        if run.kind == AESTHETIC:
            found.setdefault(run.mark, []).append(run)
    return found
