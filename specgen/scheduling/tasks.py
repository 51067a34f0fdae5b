"""A task to be placed in time: what it waits for, how long it takes, and who is at it."""

from datetime import datetime, timedelta
from typing import NamedTuple

from specgen.model.calendar import DAY, WorkCalendar, add_clock_time
from specgen.model.field import Path
from specgen.model.schedule import ActivityKind
from specgen.model.source import Source

# What goes on by the clock, through nights and days off.
BY_CLOCK: frozenset[ActivityKind] = frozenset(("review", "delivery", "mockup", "drying"))
NOBODY = ""


class Offer(NamedTuple):
    """A crew that can do a task, by its mark, and the time that it takes; nobody's crew is not kept from other work."""

    crew: str
    length: timedelta


class GivenDay(NamedTuple):
    """A moment before which a task does not begin, and the field that says so."""

    moment: datetime
    path: Path


class Task(NamedTuple):
    """An activity without its dates; the first offer is taken where none is over sooner."""

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


def take(length: timedelta) -> tuple[Offer, ...]:
    """The offer of a stretch of time that is nobody's work."""
    return (Offer(NOBODY, length),)


class Clock(NamedTuple):
    """How tasks lie in time; without a calendar only those that go on by the clock, and holds at any hour."""

    calendar: WorkCalendar | None

    def first_start(self, task: Task, moment: datetime, length: timedelta) -> datetime:
        """The first start of a task from a moment on. Raises Refused at the end of the calendar."""
        if self.calendar is None or task.kind in BY_CLOCK:
            return moment
        if task.in_one_shift:
            return self.calendar.fit_in_shift(moment, length)
        return self.calendar.find_start(moment)

    def end(self, task: Task, start: datetime, length: timedelta) -> datetime:
        """The end of a task. Raises Refused at the end of the calendar."""
        if self.calendar is None or task.kind in BY_CLOCK:
            return add_clock_time(start, length)
        return self.calendar.add_work(start, length)

    def last_start(self, task: Task, end: datetime, length: timedelta) -> datetime:
        """The last start of a task that is over at a moment."""
        if self.calendar is None or task.kind in BY_CLOCK:
            return end - length
        if task.in_one_shift:
            return self.calendar.last_start_in_shift(end, length)
        return self.calendar.last_start(end, length)

    def next_start(self, moment: datetime) -> datetime:
        """The next moment of work. Raises Refused at the end of the calendar."""
        return moment if self.calendar is None else self.calendar.find_start(moment)

    def left_of_shift(self, moment: datetime) -> timedelta:
        """What is left of the shift under way at a moment; a day without a calendar."""
        return DAY if self.calendar is None else self.calendar.find_shift(moment).end - moment
