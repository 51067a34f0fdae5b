"""A working calendar: days off, the shift, and days and moments reckoned by them, in local time."""

from collections.abc import Container, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import cached_property
from typing import NamedTuple

from specgen.model.problem import refuse

WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
# The days off where none are given, and what is told of them.
WEEKEND = ("sat", "sun")
WEEKEND_TAKEN = "Saturday and Sunday are days off: common practice, no source."
DAY, MINUTE = timedelta(days=1), timedelta(minutes=1)
_MOST_SHIFTS = 10_000  # of one stretch of work; more than a generation, so that a slip of a figure is told at once


class Shift(NamedTuple):
    """One shift; its end is no moment of work."""

    start: datetime
    end: datetime


@dataclass(frozen=True)
class WorkDays:
    """The days on which work is done: not on these days of the week, on these dates, nor on holidays.

    Raises Refused where no day of the week is left.
    """

    weekdays_off: frozenset[str] = frozenset(WEEKEND)  # of WEEK
    dates_off: frozenset[date] = frozenset()
    holidays: Container[date] = ()

    def __post_init__(self) -> None:
        """Refuses a week without a working day, in which no search would end."""
        if self.weekdays_off >= set(WEEK):
            raise refuse("every day of the week is off", "leave the working days out of days_off")

    @cached_property
    def _found(self) -> dict[date, date]:
        """The working days found already: a schedule asks for the same ones again and again."""
        return {}

    @cached_property
    def _numbers_off(self) -> frozenset[int]:
        return frozenset(WEEK.index(day) for day in self.weekdays_off)

    def is_worked(self, day: date) -> bool:
        """Whether work is done on a day."""
        return day.weekday() not in self._numbers_off and day not in self.dates_off and day not in self.holidays

    def find_day(self, day: date) -> date:
        """The day itself, or the first working day after it. Raises Refused at the end of the calendar."""
        if day not in self._found:
            self._found[day] = next(self._list_from(day))
        return self._found[day]

    def finish(self, start: date, days: int) -> date:
        """The last of so many working days, of which the start is the first; it rolls forward from a day off.

        Raises Refused at the end of the calendar, and for fewer than one day.
        """
        if days < 1:
            raise refuse(f"{days} working days have no last one", "write 1 or more")
        found = self._list_from(start)
        for _ in range(days - 1):
            next(found)
        return next(found)

    def count_off(self, start: date, days: int) -> int:
        """The days off among the calendar days that so many working days after a start take; 0 for none."""
        if not days:
            return 0
        return (self.finish(_step(start, 1), days) - start).days - days

    def count_back(self, end: date, days: int) -> date:
        """The last day behind which so many working days lie, up to an end that counts. Raises Refused."""
        day, left = end, days
        while left:
            left -= self.is_worked(day)
            day = _step(day, -1)
        return day

    def _list_from(self, day: date) -> Iterator[date]:
        while True:
            if self.is_worked(day):
                yield day
            day = _step(day, 1)


@dataclass(frozen=True)
class WorkCalendar:
    """Working days and the shift of each, which may run past midnight and then belongs to the day it begins on.

    Raises Refused for a shift that is not longer than nothing or longer than a day.
    """

    days: WorkDays
    shift_start: time
    shift: timedelta  # the length

    def __post_init__(self) -> None:
        """Refuses a shift that holds no work, or that runs into the next one."""
        if not timedelta() < self.shift <= DAY:
            raise refuse("the shift is not longer than 0 h and not longer than 24 h", "write 07:00-15:30")

    @property
    def runs_past_midnight(self) -> bool:
        """Whether a shift goes on after the midnight behind its start."""
        return timedelta(hours=self.shift_start.hour, minutes=self.shift_start.minute) + self.shift > DAY

    def find_shift(self, moment: datetime) -> Shift:
        """The shift under way at a moment, or the next one. Raises Refused at the end of the calendar."""
        day = moment.date()
        if day > date.min:  # the shift of the day before may not be over
            before = self._shift_on(_step(day, -1))
            if before.end > moment and self.days.is_worked(before.start.date()):
                return before
        day = self.days.find_day(day)
        shift = self._shift_on(day)
        return shift if shift.end > moment else self._shift_on(self.days.find_day(_step(day, 1)))

    def find_start(self, moment: datetime) -> datetime:
        """The next moment of work: the moment itself within a shift, else the start of the next one."""
        return max(moment, self.find_shift(moment).start)

    def add_work(self, moment: datetime, work: timedelta) -> datetime:
        """The end of so much work that begins at the next moment of work, from shift to shift. Raises Refused."""
        if work > self.shift * _MOST_SHIFTS:
            raise refuse(f"the work takes more than {_MOST_SHIFTS:,} shifts", "check area, output, and shift")
        shift, left = self.find_shift(moment), work
        at = max(moment, shift.start)
        while left > shift.end - at:
            left -= shift.end - at
            shift = self.find_shift(shift.end)
            at = shift.start
        return at + left

    def fit_in_shift(self, moment: datetime, work: timedelta) -> datetime:
        """The first start from a moment on of work that ends in the same shift; Refused where none is as long."""
        self._require_fit(work)
        shift = self.find_shift(moment)
        at = max(moment, shift.start)
        return at if work <= shift.end - at else self.find_shift(shift.end).start

    def left_of_shift(self, moment: datetime) -> timedelta:
        """What is left of the shift under way at a moment."""
        return self.find_shift(moment).end - moment

    def last_start(self, end: datetime, work: timedelta) -> datetime:
        """The last start of so much work that is over at a moment; of no work the last moment of a shift."""
        if not work and self.find_start(end) == end:
            return end
        shift, left = self.find_shift_before(end), work
        at = min(end, shift.end)
        while left > at - shift.start:
            left -= at - shift.start
            shift = self.find_shift_before(shift.start)
            at = shift.end
        return at - (left or MINUTE)  # the end of a shift is no moment of it

    def last_start_in_shift(self, end: datetime, work: timedelta) -> datetime:
        """The last start of work that ends by a moment, in the shift it begins in. Raises Refused as `fit_in_shift`."""
        self._require_fit(work)
        shift = self.find_shift_before(end)
        at = min(end, shift.end) - work
        return at if at >= shift.start else self.find_shift_before(shift.start).end - work

    def find_shift_before(self, moment: datetime) -> Shift:
        """The last shift that begins before a moment."""
        day = moment.date()
        while not (self.days.is_worked(day) and self._shift_on(day).start < moment):
            day = _step(day, -1)
        return self._shift_on(day)

    def _shift_on(self, day: date) -> Shift:
        start = datetime.combine(day, self.shift_start)
        return Shift(start, add_clock_time(start, self.shift))

    def _require_fit(self, work: timedelta) -> None:
        if work > self.shift:
            raise refuse(f"work of {work} does not end in a shift of {self.shift}", "split the work")


def add_clock_time(moment: datetime, stretch: timedelta) -> datetime:
    """A moment so much later by the clock, or earlier; nights and days off count. Raises Refused."""
    try:
        return moment + stretch
    except OverflowError:
        raise _refuse_end() from None


def _step(day: date, days: int) -> date:
    try:
        return day + timedelta(days=days)
    except OverflowError:
        raise _refuse_end() from None


def _refuse_end() -> Exception:
    return refuse("the work runs past the last day of the calendar", "check the dates, hours and rates")
