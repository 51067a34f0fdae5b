"""A task to be placed in time: what it waits for, how long it takes, and who is at it."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from specgen.model.calendar import DAY, Shift, WorkCalendar, add_clock_time
from specgen.model.field import Path
from specgen.model.hour_calendar import HourCalendar, KeptOffCalendar, MonthHours
from specgen.model.schedule import ActivityKind
from specgen.model.source import Source

# What goes on by the clock, through nights and days off.
BY_CLOCK: frozenset[ActivityKind] = frozenset(("review", "delivery", "mockup", "drying"))
NOBODY = ""
_LEAST = timedelta(minutes=15)  # nobody begins with less of the shift left, unless the work is over by then


class Offer(NamedTuple):
    """A crew that can do a task, by its mark, and the time that it takes; nobody's crew is not kept from other work."""

    crew: str
    length: timedelta


class GivenDay(NamedTuple):
    """A moment before which a task does not begin, and the field that says so."""

    moment: datetime
    path: Path


class Task(NamedTuple):
    """An activity without its dates; the first offer is taken where none is over sooner.

    `hours` are those of the shift in which it can be worked at; without them the whole shift. What is `at_once` waits
    for no shift: a hold that is released as the last day of the work before it ends. While a task is worked at `alone`,
    no other crew is at work: spray mist keeps everyone else away. A crew that `goes_on` turns to nothing else before
    what follows, and is not begun before both are over `within` a stretch of the clock: tape comes off again.
    """

    mark: str
    title: str
    kind: ActivityKind
    offers: tuple[Offer, ...] = (Offer(NOBODY, timedelta()),)
    after: tuple[str, ...] = ()
    not_before: GivenDay | None = None
    in_one_shift: bool = False
    elevation: str = ""
    step: str = ""
    source: Source | None = None
    hours: MonthHours = ()
    at_once: bool = False
    alone: bool = False
    goes_on: bool = False
    within: timedelta | None = None
    row: str = ""  # as in Activity


def take(length: timedelta) -> tuple[Offer, ...]:
    """The offer of a stretch of time that is nobody's work."""
    return (Offer(NOBODY, length),)


class Clock(NamedTuple):
    """How tasks lie in time; without a calendar only those that go on by the clock, and holds at any hour.

    While one crew sprays the others are `kept_off`; what they were at goes on afterward.
    """

    calendar: WorkCalendar | None
    kept_off: tuple[Shift, ...] = ()

    def narrow(self, hours: MonthHours) -> "Clock":
        """The same for what can be worked at in some hours of the shift alone; without them it is the same."""
        whole = self.calendar
        if whole is None or not hours:
            return self
        return Clock(HourCalendar(whole.days, whole.shift_start, whole.shift, hours), self.kept_off)

    def keep_off(self, task: Task, start: datetime, end: datetime) -> "Clock":
        """The same with the crews kept off while a task is worked at from a start to an end."""
        calendar = self._find_calendar(task)
        return (
            self if calendar is None else self._replace(kept_off=(*self.kept_off, *_list_worked(calendar, start, end)))
        )

    def beside_spraying(self, hours: MonthHours = ()) -> "Clock":
        """The same for a crew that is kept off, and works in some hours of the shift alone where there are any."""
        whole = self.calendar
        if whole is None or not self.kept_off:
            return self.narrow(hours)
        return Clock(KeptOffCalendar(whole.days, whole.shift_start, whole.shift, self.kept_off, hours))

    def first_start(self, task: Task, moment: datetime, length: timedelta) -> datetime:
        """The first start of a task from a moment on. Raises Refused at the end of the calendar."""
        calendar = self._find_calendar(task)
        if calendar is None:
            return moment
        if task.in_one_shift:
            return calendar.fit_in_shift(moment, length)
        start = calendar.find_start(moment)
        end = calendar.find_shift(start).end
        return calendar.find_start(end) if end - start < min(_LEAST, length) else start

    def end(self, task: Task, start: datetime, length: timedelta) -> datetime:
        """The end of a task. Raises Refused at the end of the calendar."""
        calendar = self._find_calendar(task)
        return add_clock_time(start, length) if calendar is None else calendar.add_work(start, length)

    def end_of_shift(self, task: Task, moment: datetime) -> datetime:
        """The end of the shift, or of the stretch of it, under way at a moment. Raises Refused."""
        calendar = self._find_calendar(task)
        return moment if calendar is None else calendar.find_shift(moment).end

    def last_start(self, task: Task, end: datetime, length: timedelta) -> datetime:
        """The last start of a task that is over at a moment."""
        calendar = self._find_calendar(task)
        if calendar is None:
            return end - length
        if task.in_one_shift:
            return calendar.last_start_in_shift(end, length)
        start = calendar.last_start(end, length)
        shift = calendar.find_shift(start)
        least = min(_LEAST, length)
        return max(shift.start, shift.end - least) if shift.end - start < least else start

    def _find_calendar(self, task: Task) -> WorkCalendar | None:
        """The calendar of a task; None for what goes on by the clock."""
        if task.kind in BY_CLOCK or task.at_once:
            return None
        kept_off = task.offers[0].crew != NOBODY and not task.alone
        return (self.beside_spraying(task.hours) if kept_off else self.narrow(task.hours)).calendar

    def next_start(self, moment: datetime) -> datetime:
        """The next moment of work. Raises Refused at the end of the calendar."""
        return moment if self.calendar is None else self.calendar.find_start(moment)

    def left_of_shift(self, moment: datetime) -> timedelta:
        """What is left of the shift under way at a moment; a day without a calendar."""
        return DAY if self.calendar is None else self.calendar.left_of_shift(moment)


def _list_worked(calendar: WorkCalendar, start: datetime, end: datetime) -> Iterator[Shift]:
    """The stretches of a calendar in which work from a start to an end is done."""
    while start < end:
        span = calendar.find_shift(start)
        if span.start >= end:
            break
        yield Shift(max(start, span.start), min(span.end, end))
        start = span.end
