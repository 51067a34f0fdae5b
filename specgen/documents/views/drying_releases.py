"""The release of each step that dries: two areas of each, the least hours in force beside the blanks."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.drying import tell_least_hours
from specgen.documents.steps import StepPage, steps
from specgen.documents.views._record_blanks import make_blank
from specgen.model.block import CheckBox

_FORM = "D12d"
# The release of the primer is a step of its own, and is told at the primer.
_OF_PRIMER = "release_primer"
_AREAS = 2
# The steps whose releases ask for a dry wall of even look.
_LOOKED_AT = ("smoothing_2", "primer")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two lines for each step of the work that this form releases."""
    pages = steps(context, composer)
    holds = {page.name: page.hold for page in pages}
    holds["primer"] = holds.get(_OF_PRIMER, 0)
    taken = [page for page in pages if _FORM in page.forms and page.name != _OF_PRIMER]
    lines = tuple(line for page in taken for line in _lines(context, page, holds[page.name]))
    header = ("Step", "Minimum", "Area", "Finished at", "Hours", "Meter", "Dry", "Even", "Faults", "Date", "Time", "By")
    return TableView(header, lines, (15, 11, 9, 10, 7, 7, 7, 7, 8, 6, 6, 7))


def _lines(context: DocumentContext, page: StepPage, hold: int) -> Iterator[tuple[Any, ...]]:
    """The lines of a step; from the second on its name is that above."""
    title = f"{page.work} (Hold Point {hold})" if hold else page.work
    least = tell_least_hours(context, page.name)
    moisture = context.display(("primer", "release_moisture"))
    if page.name == "primer" and not moisture.open:
        least = [*least, "; meter maximum ", moisture]
    for area in range(1, _AREAS + 1):
        yield (title, least, *_blanks(page, area)) if area == 1 else ("second area", "", *_blanks(page, area))


def _blanks(page: StepPage, area: int) -> Iterator[Any]:
    row, name = f"d-{page.name}-{area}", f"{page.work}, line {area}"
    looked_at = page.name in _LOOKED_AT

    def blank(label: str, field: str) -> Any:
        return make_blank(f"{label}, {name}", field, row)

    yield blank("Area", "release.area")
    yield blank("Finished at", "form.finished_at")
    yield blank("Hours dried", "release.hours_dry")
    yield blank("Moisture reading", "release.moisture_reading") if page.name == "primer" else "–"
    yield [CheckBox("yes", f"release.wall_dry.{row}", "yes")] if looked_at else "–"
    yield [CheckBox("yes", f"release.even_look.{row}", "yes")] if looked_at else "–"
    yield blank("Faults", "release.defects")
    yield make_blank(f"Date, {name}", "release.date", row, kind="date")
    yield blank("Time", "release.time")
    yield blank("Released by", "release.by")
