"""The working calendar of a project, and the texts that days off and shifts are written in."""

from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from fractions import Fraction

from specgen.model.absence import read_all
from specgen.model.calendar import WEEK, WEEKEND, WorkCalendar, WorkDays
from specgen.model.project import asked_once
from specgen.model.typed_views import Description
from specgen.resolving.public_holidays import find_holidays


@asked_once
def find_work_days(project: Description) -> WorkDays:
    """The working days of a project; Saturday and Sunday are off where it names no days. Raises Refused."""
    off = project.schedule.get("days_off")
    return make_work_days(WEEKEND if off is None else off, project.schedule.get("holidays") or "")


def is_weekend_taken(project: Description) -> bool:
    """Whether Saturday and Sunday are off only because the project names no days off."""
    return project.schedule.get("days_off") is None


@asked_once
def find_calendar(project: Description) -> WorkCalendar:
    """The working calendar of a project: its working days and the shift. Raises Absent, Refused."""
    start, hours = read_all(lambda: project.schedule.shift_start, lambda: project.schedule.shift_hours)
    return WorkCalendar(find_work_days(project), start, to_stretch(Fraction(hours)))


def make_work_days(off: Iterable[str], holidays: str = "") -> WorkDays:
    """The working days beside days of the week and dates that are off, and the holidays of a code. Raises Refused."""
    days = frozenset(off)
    dates = frozenset(date.fromisoformat(day) for day in days - set(WEEK))
    return WorkDays(days & set(WEEK), dates, find_holidays(holidays) if holidays else ())


def to_stretch(hours: Fraction) -> timedelta:
    """A number of hours, in whole minutes; a begun minute is a whole one."""
    return timedelta(minutes=-(-hours * 60 // 1))


def midnight(day: date) -> datetime:
    """The moment at which a day begins."""
    return datetime.combine(day, time())
