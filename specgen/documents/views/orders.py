"""The orders of coating for mockup and work: quantity, order date, arrival, and the day it is needed."""

import datetime
from typing import Any, NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_member
from specgen.documents.mockup_days import find_mockup_day
from specgen.model.dates import days_after
from specgen.model.field import Path
from specgen.model.value_text import count, long_date

_SAMPLE, _MAIN = ("schedule", "color_sample_order_on"), ("schedule", "color_main_order_on")
_MOCKUP, _SPRAYING = ("mockup", "planned_on"), ("schedule", "spray_start")


class _Order(NamedTuple):
    """What is ordered, the field of its order date, and the day on which it is needed."""

    name: str
    order: Path
    needed: datetime.date | None
    told: list[Any]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two rows for each custom color: that of the mockup, and that of the work."""
    customs = [m for m in list_marks(context, "colors") if context.project.get(("colors", m, "kind")) == "custom"]
    orders = (_order_mockup(context), _order_work(context))
    lines = tuple(_line(context, color, order) for color in customs for order in orders)
    header = ("For", "Color", "Order on", "Lead time", "Arrives", "Needed", "Float")
    return TableView(header, lines, (10, 20, 15, 11, 15, 19, 10))


def find_delivery(context: DocumentContext) -> datetime.date | None:
    """The day on which all coating of the work has arrived; None where its order or a lead time is open."""
    customs = [m for m in list_marks(context, "colors") if context.project.get(("colors", m, "kind")) == "custom"]
    leads = [context.project.get(("colors", mark, "lead_time_days")) for mark in customs]
    ordered = context.project.get(_MAIN)
    if ordered is None or not leads or None in leads:
        return None
    return days_after(ordered, int(max(leads)))


def _order_mockup(context: DocumentContext) -> _Order:
    """The coating of the mockup, needed for its first primer; for its start where drying before it is not told."""
    primed = find_mockup_day(context, Composer(), "primer")
    if primed is not None:
        return _Order("Mockup", _SAMPLE, primed, [f"{long_date(primed)}, first primer of mockup"])
    needed = context.project.get(_MOCKUP)
    return _Order("Mockup", _SAMPLE, needed, [context.display(_MOCKUP), ", start of mockup"])


def _order_work(context: DocumentContext) -> _Order:
    needed = context.project.get(_SPRAYING)
    return _Order("Work", _MAIN, needed, [context.display(_SPRAYING), ", start of spraying"])


def _line(context: DocumentContext, color: str, order: _Order) -> tuple[Any, ...]:
    lead = ("colors", color, "lead_time_days")
    arrives, spare = _reckon(context.project.get(order.order), order.needed, context.project.get(lead))
    return (
        order.name,
        name_member(context, "colors", color),
        context.display(order.order),
        context.display(lead),
        long_date(arrives) if arrives else "",
        order.told,
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
