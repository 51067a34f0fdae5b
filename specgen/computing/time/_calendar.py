"""The keys of a calendar, and what is told of the days off that a calculation passes over."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import NamedTuple

from specgen.computing.calendars import make_work_days
from specgen.model.calendar import WEEKEND, WEEKEND_TAKEN, WorkDays
from specgen.model.source import Kind, Source
from specgen.reading.working_days import read_day_off
from specgen.resolving.public_holidays import find_holidays

CALENDAR = "the working calendar"
USUAL = "weekend"  # the days off where none are given
SOURCES = (Source(Kind.COMPUTED, "days counted one by one; no work on days off and public holidays"),)
DAYS_OFF_ABOUT = "days of the week and dates off, such as sat,sun,2026-11-27; none for no days off"
HOLIDAYS_ABOUT = "country or part of one whose public holidays are off, such as US, US-CO; pip install 'specgen[site]'"
_MOST_TOLD = 6  # days off told one by one


class DaysOff(NamedTuple):
    """Days off, and whether they are taken because none were given."""

    days: tuple[str, ...]
    taken: bool = False


def read_days_off(text: str) -> DaysOff:
    """Days of the week and dates, with commas between them; raises InvalidValue."""
    if text == USUAL:
        return DaysOff(WEEKEND, taken=True)
    return DaysOff(tuple(read_day_off(day) for day in text.split(",")))


def read_holidays(text: str) -> str:
    """A code that has holidays; raises Refused for any other."""
    find_holidays(text)
    return text


def find_days(off: DaysOff | None, holidays: str | None) -> WorkDays:
    """The working days of these keys. Raises Refused."""
    return make_work_days(off.days if off else (), holidays or "")


def tell_days(off: DaysOff | None, holidays: str | None, days: WorkDays, first: date, last: date) -> Iterator[str]:
    """The days off from one day to another, and where they come from."""
    passed = [day for n in range((last - first).days + 1) if not days.is_worked(day := first + timedelta(days=n))]
    if passed:
        told = ", ".join(_tell_day(day, days) for day in passed[:_MOST_TOLD])
        more = f", and {len(passed) - _MOST_TOLD} more" if len(passed) > _MOST_TOLD else ""
        yield f"Days off passed over: {told}{more}."
    if off is not None and off.taken:
        yield WEEKEND_TAKEN
    if holidays:
        yield f"Public holidays of {holidays} are taken with the days on which they are observed; the contract governs."


def _tell_day(day: date, days: WorkDays) -> str:
    return f"{day:%a} {day.isoformat()}{' (public holiday)' if day in days.holidays else ''}"
