"""The dates around the mockup, in the order of the calendar of the job."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.model.dates import days_after
from specgen.model.value_text import long_date, words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Submission, review, color, mockup, start of the work."""
    project = context.project

    def shown(*path: str) -> Any:
        return context.display(path)

    made: list[tuple[Any, ...]] = [
        ("This package is submitted", shown("schedule", "submit_on")),
        (
            "Review",
            [
                shown("contract", "review_days"),
                ", ",
                words(str(project.get(("contract", "review_day_kind")) or "")) or shown("contract", "review_day_kind"),
            ],
        ),
    ]
    customs = [m for m in project.members.get(("colors",), ()) if project.get(("colors", m, "kind")) == "custom"]
    if customs:
        made.append((f"Sample color is ordered ({', '.join(customs)})", shown("schedule", "color_sample_order_on")))
    made += [
        ("Mockup begins", shown("mockup", "planned_on")),
        ("Mockup takes", shown("mockup", "duration_days")),
        ("Mockup ends, drying and acceptance included", _end(context)),
        ("Work on the wall may begin", shown("schedule", "work_start")),
    ]
    return TableView(("What", "When"), tuple(made), (55, 45))


def _end(context: DocumentContext) -> Any:
    start, days = (context.project.get(("mockup", name)) for name in ("planned_on", "duration_days"))
    if start is None or days is None:
        return DisplayValue("[follows from start and duration]", open=True)
    return long_date(days_after(start, days))
