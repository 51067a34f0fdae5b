"""Hours between two moments of a record: the one place that takes one moment from another."""

from datetime import UTC, datetime, timedelta
from fractions import Fraction
from zoneinfo import ZoneInfo

from specgen.model.project import Project
from specgen.reading.time_zones import AT, find_zone

_HOUR = timedelta(hours=1)


def elapsed_hours(project: Project, begin: datetime, end: datetime) -> Fraction:
    """Hours from one local moment to another, below zero where the second is the earlier.

    Where the time zone of the site is known they are real hours across the night on which the clocks change. A time
    that this night has twice is the first of the two, unless the second moment would then lie before the first.
    """
    zone = _find_zone(project)
    if zone is None:
        return _count(end - begin)
    since, until = begin.replace(tzinfo=zone).astimezone(UTC), end.replace(tzinfo=zone).astimezone(UTC)
    if until < since <= (later := end.replace(tzinfo=zone, fold=1).astimezone(UTC)):
        until = later
    return _count(until - since)


def hours_text(hours: Fraction) -> str:
    """Hours and full minutes: `24 h`, `11 h 59 min`, `45 min`; what lies below zero is none."""
    whole, minutes = divmod(int(max(hours, Fraction(0)) * 60), 60)
    said = [f"{whole} h"] if whole or not minutes else []
    return " ".join([*said, *([f"{minutes} min"] if minutes else [])])


def _count(apart: timedelta) -> Fraction:
    return Fraction(apart // timedelta(seconds=1), _HOUR // timedelta(seconds=1))


def _find_zone(project: Project) -> ZoneInfo | None:
    name = project.get(AT)
    return find_zone(name) if name else None
