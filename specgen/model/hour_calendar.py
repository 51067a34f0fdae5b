"""Working calendars of which only some stretches of each shift can be worked: by month, or while nobody sprays."""

from abc import abstractmethod
from bisect import bisect_left
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from specgen.model.calendar import Shift, WorkCalendar, add_clock_time
from specgen.model.dates import MONTHS
from specgen.model.problem import refuse

Stretch = tuple[timedelta, timedelta]  # from and to, after the midnight that begins the day of the shift
MonthHours = tuple[tuple[Stretch, ...], ...]  # of each month from January to December


@dataclass(frozen=True)
class StretchCalendar(WorkCalendar):
    """Working days of which each shift can be worked in stretches; work goes on from one stretch to the next."""

    @property
    def longest(self) -> timedelta:
        """The most that a shift can hold."""
        return self.shift

    @abstractmethod
    def _list_stretches(self, shift: Shift) -> list[Shift]:
        """The stretches of a shift that can be worked."""

    def find_shift(self, moment: datetime) -> Shift:
        """The stretch under way at a moment, or the next one. Raises Refused at the end of the calendar."""
        shifts = self._list_shifts(moment)
        return next(span for shift in shifts for span in self._list_stretches(shift) if span.end > moment)

    def find_shift_before(self, moment: datetime) -> Shift:
        """The last stretch that begins before a moment."""
        shifts = self._list_shifts_before(moment)
        return next(span for shift in shifts for span in reversed(self._list_stretches(shift)) if span.start < moment)

    def fit_in_shift(self, moment: datetime, work: timedelta) -> datetime:
        """The first start from a moment on of work that the stretches of the same shift hold; Refused where none do."""
        self._require_fit(work)
        found = (list(self._list_spans(shift, moment)) for shift in self._list_shifts(moment))
        return next(spans[0].start for spans in found if spans and _sum(spans) >= work)

    def last_start_in_shift(self, end: datetime, work: timedelta) -> datetime:
        """The last start of work that ends by a moment, in the shift it begins in. Raises Refused as `fit_in_shift`."""
        self._require_fit(work)
        found = (list(self._list_until(shift, end)) for shift in self._list_shifts_before(end))
        return _go_back(next(spans for spans in found if spans and _sum(spans) >= work), work)

    def left_of_shift(self, moment: datetime) -> timedelta:
        """What can still be worked of the shift under way at a moment."""
        return _sum(self._list_spans(super().find_shift(moment), moment))

    def _list_shifts(self, moment: datetime) -> Iterator[Shift]:
        while True:
            shift = super().find_shift(moment)
            yield shift
            moment = shift.end

    def _list_shifts_before(self, moment: datetime) -> Iterator[Shift]:
        while True:
            shift = super().find_shift_before(moment)
            yield shift
            moment = shift.start

    def _list_spans(self, shift: Shift, moment: datetime) -> Iterator[Shift]:
        """What is left of the stretches of a shift from a moment on."""
        for start, end in self._list_stretches(shift):
            if end > moment:
                yield Shift(max(start, moment), end)

    def _list_until(self, shift: Shift, moment: datetime) -> Iterator[Shift]:
        """The stretches of a shift that begin before a moment, up to it."""
        for start, end in self._list_stretches(shift):
            if start < moment:
                yield Shift(start, min(end, moment))

    def _require_fit(self, work: timedelta) -> None:
        if work > self.longest:
            raise refuse(f"work of {work} does not end in the {self.longest} of a shift", "split the work")


@dataclass(frozen=True)
class HourCalendar(StretchCalendar):
    """The same by the hours of each month that can be worked.

    The month is that of the day on which the shift begins. Raises Refused where no month has such hours.
    """

    hours: MonthHours = ((),) * len(MONTHS)

    def __post_init__(self) -> None:
        """Refuses a year without such hours, in which no search would end."""
        super().__post_init__()
        if not self.longest:
            raise refuse("no month has hours that can be worked", "move the shift")

    @property
    def longest(self) -> timedelta:
        """The hours of a shift in the month that has most."""
        return max(map(sum_stretches, self.hours))

    def _list_stretches(self, shift: Shift) -> list[Shift]:
        return _list_hours(shift, self.hours)


@dataclass(frozen=True)
class KeptOffCalendar(StretchCalendar):
    """The same for crews that are kept off the work for some stretches, told in the order of time.

    `hours` are those of each month that they can work at all; without them the whole shift.
    """

    kept_off: tuple[Shift, ...] = ()
    hours: MonthHours = ()

    def _list_stretches(self, shift: Shift) -> list[Shift]:
        spans = _list_hours(shift, self.hours) if self.hours else [shift]
        return [part for span in spans for part in self._list_left(span)]

    def _list_left(self, span: Shift) -> Iterator[Shift]:
        """What is left of a stretch beside those for which the crews are kept off."""
        at = span.start
        first = bisect_left(self.kept_off, span.start, key=lambda away: away.end)
        for away in self.kept_off[first:]:
            if away.start >= span.end:
                break
            if away.start > at:
                yield Shift(at, away.start)
            at = max(at, away.end)
        if at < span.end:
            yield Shift(at, span.end)


def _list_hours(shift: Shift, hours: MonthHours) -> list[Shift]:
    """The stretches of a shift by the hours of the month in which it begins."""
    midnight = datetime.combine(shift.start.date(), time())
    of_month = hours[shift.start.month - 1]
    return [Shift(add_clock_time(midnight, start), add_clock_time(midnight, end)) for start, end in of_month]


def sum_stretches(stretches: Iterable[Stretch]) -> timedelta:
    """How long stretches are together."""
    return sum((end - start for start, end in stretches), timedelta())


def _sum(spans: Iterable[Shift]) -> timedelta:
    return sum((span.end - span.start for span in spans), timedelta())


def _go_back(spans: list[Shift], work: timedelta) -> datetime:
    """The start of so much work that is over at the end of the last of some stretches."""
    for span in reversed(spans):
        if work <= span.end - span.start:
            return span.end - work
        work -= span.end - span.start
    return spans[0].start
