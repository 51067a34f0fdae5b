"""The lines of aesthetic joints: mark, direction, place from the lower left corner, and length without openings."""

from fractions import Fraction

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layouts import list_layouts, tell_length
from specgen.model.layout import AESTHETIC, ElevationLayout, JointRun

_HEADER = ("Line", "Direction", "Place", "Runs", "Length")
_WIDTHS = (8, 10, 20, 5, 7)
_FEW = 12  # rows that stand below each other in one column


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One entry for each line, by elevation; many of them in two columns."""
    entries = []
    for layouts in list_layouts(context).values():
        for line, runs in _gather(layouts[0]).items():
            plumb = runs[0].x1 == runs[0].x2
            entries.append(
                (
                    line,
                    "vertical" if plumb else "horizontal",
                    [tell_length(context, runs[0].x1 if plumb else runs[0].y1), _FROM[plumb]],
                    str(len(runs)),
                    tell_length(context, sum((run.length for run in runs), Fraction(0))),
                )
            )
    if len(entries) <= _FEW:
        return TableView(_HEADER, tuple(entries), tuple(2 * width for width in _WIDTHS))
    # Read across, so that a row is whole wherever the page ends.
    even = [*entries, *[("",) * len(_HEADER)] * (len(entries) % 2)]
    lines = tuple((*left, *right) for left, right in zip(even[::2], even[1::2], strict=True))
    return TableView(_HEADER * 2, lines, _WIDTHS * 2)


_FROM = {True: " from the left end", False: " above the base"}


def _gather(layout: ElevationLayout) -> dict[str, list[JointRun]]:
    """The runs of each line of aesthetic joints, by its mark."""
    found: dict[str, list[JointRun]] = {}
    for run in layout.joints:
        if run.kind == AESTHETIC:
            found.setdefault(run.mark, []).append(run)
    return found
