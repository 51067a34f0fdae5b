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

    def display(*path: str) -> Any:
        return context.display(path)

    lines: list[tuple[Any, ...]] = [
        ("This package is submitted", display("schedule", "submit_on")),
        (
            "Review",
            [
                display("contract", "review_days"),
                ", ",
                words(str(project.get(("contract", "review_day_kind")) or ""))
                or display("contract", "review_day_kind"),
            ],
        ),
    ]
    customs = [m for m in project.members.get(("colors",), ()) if project.get(("colors", m, "kind")) == "custom"]
    if customs:
        lines.append((f"Sample color is ordered ({', '.join(customs)})", display("schedule", "color_sample_order_on")))
    lines += [
        ("Mockup begins", display("mockup", "planned_on")),
        ("Mockup takes", display("mockup", "duration_days")),
        ("Mockup ends, drying and acceptance included", _end(context)),
        ("Work on the wall may begin", display("schedule", "work_start")),
    ]
    return TableView(("What", "When"), tuple(lines), (55, 45))


def _end(context: DocumentContext) -> Any:
    start, days = (context.project.get(("mockup", name)) for name in ("planned_on", "duration_days"))
    if start is None or days is None:
        return DisplayValue("[follows from start and duration]", open=True)
    return long_date(days_after(start, days))
