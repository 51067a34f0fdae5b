"""The days of each month of the season that are worked and not expected to rain: those that spraying can count on."""

from calendar import monthrange
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
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

_RAIN = "Rain days of the month"
_HEADER = ("Month", "Days of the season", "Working days", _RAIN, "Expected with rain", "Expected dry", "Mean wind")
_WIDTHS = (22, 12, 12, 15, 14, 13, 12)


class FitMonth(NamedTuple):
    """A month of the season: its days within it, those worked, and those of them that are expected to rain."""

    month: date
    days: int
    worked: int
    rain: Fraction | None  # of the whole month; None where not given

    @property
    def unfit(self) -> Fraction | None:
        """The working days that are expected to rain, as rain is spread over the month."""
        return None if self.rain is None else self.worked * self.rain / monthrange(self.month.year, self.month.month)[1]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each month, and their sum; the wind of a month is told, and no day is taken off for it."""
    months = list_fit_months(context)
    if not months:
        ends = [context.display(("schedule", name)) for name in ("spray_start", "spray_end")]
        return TableView(_HEADER, (([ends[0], " to ", ends[1]], "", "", "", "", OPEN, ""),), _WIDTHS)
    lines = [line for one in months for line in (_line(context, one), *_list_unusable(context, one))]
    if len(months) > 1:
        lines.append(_sum_up(months))
    needed = _count_spray_days(context)
    if needed:
        lines.append(("Spray days in the schedule", "", str(needed), "", "", "", ""))
    return TableView(_HEADER, tuple(lines), _WIDTHS)


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
    return FitMonth(month, len(days), sum(map(work.is_worked, days)), _find_rain(context, month))


def _find_rain(context: DocumentContext, month: date) -> Fraction | None:
    row = _find_month(context, month)
    days = context.project.get((*row, "rain_days")) if row else None
    return None if days is None else Fraction(days)


def _find_month(context: DocumentContext, month: date) -> tuple[str, ...] | None:
    """The climate of a month; None where it is not given."""
    for mark in context.project.members.get(("climate", "months"), ()):
        row = ("climate", "months", mark)
        if context.project.get((*row, "month")) == MONTHS[month.month - 1]:
            return row
    return None


def _tell_wind(context: DocumentContext, month: date) -> Any:
    row = _find_month(context, month)
    wind = (*row, "mean_wind") if row else None
    return context.display(wind) if wind and context.project.is_given(wind) else ""


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
    told = (f"{one.month:%B %Y}", str(one.days), str(one.worked))
    if one.rain is None or one.unfit is None:
        return (
            *told,
            DisplayValue("[Rain days]", open=True, asks="climate.months"),
            "",
            OPEN,
            _tell_wind(context, one.month),
        )
    return (
        *told,
        format_decimal(one.rain, 3),
        format_decimal(one.unfit, 3, 1),
        format_decimal(one.worked - one.unfit, 3, 1),
        _tell_wind(context, one.month),
    )


def _list_unusable(context: DocumentContext, one: FitMonth) -> Iterator[tuple[Any, ...]]:
    """The elevations that have no usable spray hours in a month, on which none of its days is fit."""
    for mark in list_marks(context, "elevations"):
        try:
            months = list_usable_months(cast(Elevation, context.project.view(("elevations", mark))))
        except Absent:
            continue
        if any(usable.month.month == one.month.month and not usable.hours for usable in months):
            yield f"{one.month:%B}, {mark}: no usable spray hours", "", "", "", "", "0", ""


def _sum_up(months: tuple[FitMonth, ...]) -> tuple[Any, ...]:
    days, worked = sum(one.days for one in months), sum(one.worked for one in months)
    unfit = [one.unfit for one in months]
    known = [days for days in unfit if days is not None]
    told = ("Season", str(days), str(worked), "")
    if len(known) < len(unfit):
        return (*told, "", OPEN, "")
    lost = sum(known, Fraction(0))
    return (*told, _tell(lost), _tell(worked - lost), "")


def _tell(days: Fraction) -> str:
    return format_decimal(days, 3, 1)
