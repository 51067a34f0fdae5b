"""The days of each month of the season that are worked and not expected to rain: those that spraying can count on."""

from calendar import monthrange
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from math import ceil
from typing import Any, NamedTuple, cast

from specgen.computing.calendars import find_work_days
from specgen.computing.time.usable_hours import find_season, list_usable_months
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.schedule import SPRAYED, find_schedule
from specgen.documents.views._cells import OPEN
from specgen.model.absence import Absent
from specgen.model.dates import MONTHS, days_after
from specgen.model.typed_views import Elevation, root_of
from specgen.quantities.format import format_decimal

_HEADER = (
    "Month",
    "Days of the season",
    "Working days",
    "Rain days of the month",
    "Mean wind",
    "Unfit, by rain",
    "Fit, if calm",
)
_WIDTHS = (22, 13, 13, 15, 11, 13, 13)
# The same where it is known on how many days the gusts stay below the maximum.
_CALM_HEADER = (*_HEADER[:5], "Calm days of the month", "Unfit, by rain or gusts", "Fit")
_CALM_WIDTHS = (20, 12, 12, 12, 10, 12, 12, 10)


class FitMonth(NamedTuple):
    """A month of the season: its days within it, those worked, and those of them that are expected to rain."""

    month: date
    days: int
    worked: int
    rain: Fraction | None  # of the whole month; None where not given
    calm: Fraction | None = None  # the same

    @property
    def unfit(self) -> Fraction | None:
        """The working days that are expected to rain or to have gusts, each spread over the month by itself."""
        if self.rain is None:
            return None
        length = monthrange(self.month.year, self.month.month)[1]
        calm = 1 if self.calm is None else self.calm / length
        return self.worked * (1 - (1 - self.rain / length) * calm)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each month, and their sum."""
    months = list_fit_months(context)
    if not months:
        ends = [context.display(("schedule", name)) for name in ("spray_start", "spray_end")]
        return TableView(_HEADER, (([ends[0], " to ", ends[1]], "", "", "", "", "", OPEN),), _WIDTHS)
    lines = [line for one in months for line in (_line(context, one), *_list_unusable(context, one))]
    if len(months) > 1:
        lines.append(_sum_up(months))
    needed = _count_spray_days(context)
    if needed:
        lines.append(("Spray days in the schedule", "", str(needed), "", "", "", ""))
        lines += _tell_working_days(months, needed)
    if all(one.calm is None for one in months):
        return TableView(_HEADER, tuple(lines), _WIDTHS)
    calm = {f"{one.month:%B %Y}": "" if one.calm is None else format_decimal(one.calm, 3) for one in months}
    return TableView(_CALM_HEADER, tuple((*line[:5], calm.get(line[0], ""), *line[5:]) for line in lines), _CALM_WIDTHS)


def _tell_working_days(months: tuple[FitMonth, ...], needed: int) -> Iterator[tuple[Any, ...]]:
    """How many working days pass until as many are fit as are sprayed on, where rain and gusts of each month are known.

    They are counted from the first day of the season, each month at its own share of fit days.
    """
    left, passed = Fraction(needed), Fraction(0)
    if any(one.calm is None or one.unfit is None for one in months):
        return
    for one in months:
        fit = one.worked - (one.unfit or 0)
        if fit >= left:
            days = str(ceil(passed + left * one.worked / fit)) if left else str(ceil(passed))
            yield "Working days that they take", "", days, "", "", "", ""
            return
        left, passed = left - fit, passed + one.worked
    yield "Working days that they take", "", "more than the season has", "", "", "", ""


def list_fit_months(context: DocumentContext) -> tuple[FitMonth, ...]:
    """The months of the season; none where it is not given."""
    return context.remember(_find_months)


def _find_months(context: DocumentContext) -> tuple[FitMonth, ...]:
    project = root_of(context.project.view(()))
    start, end = (project.schedule.get(name) for name in ("spray_start", "spray_end"))
    if start is None or end is None:
        return ()
    return tuple(_count(context, month, start, end) for month in find_season(project))


def _count(context: DocumentContext, month: date, start: date, end: date) -> FitMonth:
    first = max(month, start)
    last = min(date(month.year, month.month, monthrange(month.year, month.month)[1]), end)
    days = [days_after(first, number) for number in range((last - first).days + 1)]
    work = find_work_days(root_of(context.project.view(())))
    rain, calm = (_find_days(context, month, name) for name in ("rain_days", "calm_days"))
    return FitMonth(month, len(days), sum(map(work.is_worked, days)), rain, calm)


def _find_days(context: DocumentContext, month: date, name: str) -> Fraction | None:
    row = _find_month(context, month)
    days = context.project.get((*row, name)) if row else None
    return None if days is None else Fraction(days)


def _find_wind(context: DocumentContext, month: date) -> Any:
    """The mean wind of a month as it prints; nothing where it is not given."""
    row = _find_month(context, month)
    path = (*row, "mean_wind")
    return context.display(path) if row and context.project.get(path) is not None else ""


def _find_month(context: DocumentContext, month: date) -> tuple[str, ...]:
    """The path of what is given of the climate of a month; empty where nothing is."""
    name = MONTHS[month.month - 1]
    return next((row for row in _list_months(context) if context.project.get((*row, "month")) == name), ())


def _list_months(context: DocumentContext) -> Iterator[tuple[str, ...]]:
    for mark in context.project.members.get(("climate", "months"), ()):
        yield "climate", "months", mark


def _count_spray_days(context: DocumentContext) -> int:
    """The days on which a coat is sprayed; 0 where no schedule is known."""
    schedule = find_schedule(context)
    works = [one for one in schedule.activities if one.kind == "work"] if schedule else []
    sprayed = [one for one in works if one.step in SPRAYED]
    days = {
        days_after(one.start.date(), n) for one in sprayed for n in range((one.end.date() - one.start.date()).days + 1)
    }
    work = find_work_days(root_of(context.project.view(())))
    return sum(map(work.is_worked, days))


def _line(context: DocumentContext, one: FitMonth) -> tuple[Any, ...]:
    told, wind = (f"{one.month:%B %Y}", str(one.days), str(one.worked)), _find_wind(context, one.month)
    if one.rain is None or one.unfit is None:
        return (*told, DisplayValue("[Rain days]", open=True, asks="climate.months"), wind, "", OPEN)
    return (
        *told,
        format_decimal(one.rain, 3),
        wind,
        format_decimal(one.unfit, 3, 1),
        format_decimal(one.worked - one.unfit, 3, 1),
    )


def _list_unusable(context: DocumentContext, one: FitMonth) -> Iterator[tuple[Any, ...]]:
    """The elevations that have no usable spray hours in a month, on which none of its days is fit."""
    for mark in list_marks(context, "elevations"):
        try:
            months = list_usable_months(cast(Elevation, context.project.view(("elevations", mark))))
        except Absent:
            continue
        if any(usable.month.month == one.month.month and not usable.hours for usable in months):
            yield f"{one.month:%B}, {mark}: no usable spray hours", "", "", "", "", "", "0"


def _sum_up(months: tuple[FitMonth, ...]) -> tuple[Any, ...]:
    days, worked = sum(one.days for one in months), sum(one.worked for one in months)
    unfit = [one.unfit for one in months]
    known = [days for days in unfit if days is not None]
    told = ("Season", str(days), str(worked), "", "")
    if len(known) < len(unfit):
        return (*told, "", OPEN)
    lost = sum(known, Fraction(0))
    return (*told, _tell(lost), _tell(worked - lost))


def _tell(days: Fraction) -> str:
    return format_decimal(days, 3, 1)
