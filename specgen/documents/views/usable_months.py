"""The usable hours of every month beside their calculation, which works out the month with the fewest alone."""

from typing import cast

from specgen.computing.time.usable_hours import list_usable_months
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.views.usable_hours import list_lines, set_lines
from specgen.model.absence import Absent
from specgen.model.typed_views import Elevation


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A row for each month on each elevation whose hours are known; none where the season is of one month."""
    known = [mark for mark in list_marks(context, "elevations") if _has_months(context, mark)]
    lines = [line for mark in known for line in list_lines(context, mark)]
    if not lines:
        return TableView((), (), ())
    # Their source is the sheet they stand on.
    bare = [tuple(cell.text if isinstance(cell, DisplayValue) else cell for cell in line) for line in lines]
    return set_lines(context, bare)


def _has_months(context: DocumentContext, mark: str) -> bool:
    try:
        return len(list_usable_months(cast(Elevation, context.project.view(("elevations", mark))))) > 1
    except Absent:
        return False
