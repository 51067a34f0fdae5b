"""Arithmetic on dates that is safe at the ends of the calendar."""

from calendar import monthrange
from datetime import date, timedelta
from fractions import Fraction

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


def days_after(day: date, days: int) -> date:
    """The date `days` later, or the last day of the calendar."""
    return date.max if days > (date.max - day).days else day + timedelta(days=days)


def months_after(day: date, months: int) -> date:
    """The same day so many months later, or the last of a month that is shorter; at most that of the calendar."""
    month = day.year * 12 + day.month - 1 + months
    year, number = month // 12, month % 12 + 1
    return date.max if year > date.max.year else date(year, number, min(day.day, monthrange(year, number)[1]))


def is_older(day: date, years: int | Fraction, than: date) -> bool:
    """Whether a date is more than `years`, rounded down to whole months, before another."""
    months = day.year * 12 + day.month + int(years * 12)
    return (months, day.day) < (than.year * 12 + than.month, than.day)


def months_between(start: date, end: date) -> tuple[date, ...]:
    """The first day of each month that has days from one date to another, over the turn of a year too."""
    first, last = (day.year * 12 + day.month - 1 for day in (start, end))
    return tuple(date(month // 12, month % 12 + 1, 1) for month in range(first, last + 1))
