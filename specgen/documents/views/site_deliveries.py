"""By when what is not ordered by color must be on site: for the mockup, and for the first work with it on the wall."""

import datetime

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.schedule import find_schedule
from specgen.model.value_text import long_date

# What the first of some steps takes.
_TAKEN = {
    "Water-resistive barrier": ("wrb",),
    "Membrane, pans, and shop-made flashings": ("flashings",),
    "Boards and adhesive": ("boards",),
    "Mesh and base coat": ("heavy_mesh", "mesh"),
    "Smoothing coat": ("smoothing_1", "smoothing_2"),
    "Metal caps": ("metal_caps",),
    "Sealant and backer rod": ("sealant",),
}
_UNDATED = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each material that the schedule works with; none without a schedule of the work."""
    starts = _find_starts(context)
    planned = context.project.get(("mockup", "planned_on"))
    mockup = long_date(planned) if planned else _UNDATED
    lines = []
    for material, steps in _TAKEN.items():
        begun = min((starts[step] for step in steps if step in starts), default=None)
        if begun is not None:
            lines.append((material, mockup, long_date(begun)))
    return TableView(("On site by", "Mockup", "Wall"), tuple(lines), (44, 28, 28))


def _find_starts(context: DocumentContext) -> dict[str, datetime.date]:
    """The first day of work of each step on any elevation."""
    schedule = find_schedule(context)
    starts: dict[str, datetime.date] = {}
    for one in schedule.activities if schedule else ():  # in the order of their start
        if one.kind == "work" and one.elevation:
            starts.setdefault(one.step, one.start.date())
    return starts
