"""The orders of coating for mockup and work: quantity, order date, arrival, and the day it is needed."""

import datetime
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_member
from specgen.model.dates import days_after
from specgen.model.value_text import count, long_date

_OF_WORK = ("schedule", "color_main_order_on")
# What is ordered, the fields of its order date and of the day it is needed.
_ORDERS = (
    ("Mockup", ("schedule", "color_sample_order_on"), ("mockup", "planned_on"), "start of mockup"),
    ("Work", _OF_WORK, ("schedule", "spray_start"), "start of spraying"),
)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two rows for each custom color: that of the mockup, and that of the work."""
    customs = [m for m in list_marks(context, "colors") if context.project.get(("colors", m, "kind")) == "custom"]
    lines = tuple(_line(context, color, *order) for color in customs for order in _ORDERS)
    header = ("For", "Color", "Order on", "Lead time", "Arrives", "Needed", "Float")
    return TableView(header, lines, (10, 20, 15, 11, 15, 19, 10))


def find_delivery(context: DocumentContext) -> datetime.date | None:
    """The day on which all coating of the work has arrived; None where its order or a lead time is open."""
    customs = [m for m in list_marks(context, "colors") if context.project.get(("colors", m, "kind")) == "custom"]
    leads = [context.project.get(("colors", mark, "lead_time_days")) for mark in customs]
    ordered = context.project.get(_OF_WORK)
    if ordered is None or not leads or None in leads:
        return None
    return days_after(ordered, int(max(leads)))


def _line(
    context: DocumentContext, color: str, name: str, order: tuple[str, ...], need: tuple[str, ...], said: str
) -> tuple[Any, ...]:
    lead = ("colors", color, "lead_time_days")
    ordered, needed, days = (context.project.get(path) for path in (order, need, lead))
    arrives, spare = _reckon(ordered, needed, days)
    return (
        name,
        name_member(context, "colors", color),
        context.display(order),
        context.display(lead),
        long_date(arrives) if arrives else "",
        [context.display(need), f", {said}"],
        spare,
    )


def _reckon(
    ordered: datetime.date | None, needed: datetime.date | None, days: int | None
) -> tuple[datetime.date | None, str]:
    """The day of arrival, and how many days it is before the need."""
    if ordered is None or days is None:
        return None, ""
    arrives = days_after(ordered, int(days))
    if needed is None:
        return arrives, ""
    spare = (needed - arrives).days
    return arrives, count(spare, "day") if spare >= 0 else f"{count(-spare, 'day')} late"
