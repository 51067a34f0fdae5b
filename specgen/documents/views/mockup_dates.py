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
        ("Submittal of this package", display("schedule", "submit_on")),
        ("Review period", _review(context)),
    ]
    customs = [m for m in project.members.get(("colors",), ()) if project.get(("colors", m, "kind")) == "custom"]
    if customs:
        lines.append((f"Order of sample color ({', '.join(customs)})", display("schedule", "color_sample_order_on")))
    lines += [
        ("Start of mockup", display("mockup", "planned_on")),
        ("Duration of mockup", display("mockup", "duration_days")),
        ("Completion of mockup, drying and evaluation included", _end(context)),
        ("Start of work on the wall", display("schedule", "work_start")),
    ]
    return TableView(("Event", "Date"), tuple(lines), (55, 45))


def _review(context: DocumentContext) -> list[Any]:
    """`14 calendar days`; what is not given stands in brackets."""
    days, kind = (("contract", name) for name in ("review_days", "review_day_kind"))
    counted, word = context.project.get(days), context.project.get(kind)
    if counted is None or word is None:
        return [context.display(days), ", ", context.display(kind)]
    return [f"{counted} {words(str(word))} day{'' if counted == 1 else 's'}"]


def _end(context: DocumentContext) -> Any:
    start, days = (context.project.get(("mockup", name)) for name in ("planned_on", "duration_days"))
    if start is None or days is None:
        return DisplayValue("[follows from start and duration]", open=True)
    return long_date(days_after(start, days))
