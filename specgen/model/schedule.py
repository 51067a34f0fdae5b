"""A schedule: activities by elevation and step in local time, what sets its end, the hours that can be used."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Literal, NamedTuple

from specgen.model.field import Path
from specgen.model.source import Source

# How an activity fills its time: work only in shifts, drying in clock hours, a review in days, a hold until released.
# Days kept for weather are shifts.
ActivityKind = Literal["review", "delivery", "mockup", "work", "drying", "hold", "weather"]


class Activity(NamedTuple):
    """One bar of a schedule."""

    mark: str  # `E1.gloss.2`: elevation, step, and the coat or day area where there is more than one
    title: str
    kind: ActivityKind
    start: datetime
    end: datetime
    elevation: str = ""  # its mark; empty for what belongs to the whole project
    step: str = ""
    crew: str = ""  # the mark of the crew that is at it
    after: tuple[str, ...] = ()  # marks of the activities it waits for
    driven_by: str = ""  # the one of these, or the one before of its crew, that sets its start
    spare: timedelta = timedelta()  # by which it can move without moving the end
    source: Source | None = None  # of the hours of a drying
    row: str = ""  # the title under which it is told by itself; empty for what is told with its step


@dataclass(frozen=True)
class Schedule:
    """The activities in order of their start, the marks of those that set the end, and what is to be told of it."""

    activities: tuple[Activity, ...]
    chain: tuple[str, ...]  # from the first to the last
    end: datetime
    notes: tuple[str, ...] = ()
    missing: tuple[Path, ...] = ()  # fields for want of which activities are left out, and the end is not that of all
    untimed: tuple[str, ...] = ()  # what takes no time in it, so that the end is the earliest


class Span(NamedTuple):
    """Hours of a day."""

    start: time
    end: time


class UsableMonth(NamedTuple):
    """The spray hours of an elevation on the middle day of a month, and what takes the others of the shift."""

    month: date  # its first day
    spans: tuple[Span, ...]
    hours: float
    lost: tuple[tuple[str, float], ...] = ()  # cause and hours: `dark`, `direct sun`, `set-up and cleaning`
