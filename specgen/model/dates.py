"""Dates reckoned from one another, at the ends of the calendar too."""

from datetime import date, timedelta
from fractions import Fraction


def days_after(day: date, days: int) -> date:
    """The date so many days later, or the last there is."""
    return date.max if days > (date.max - day).days else day + timedelta(days=days)


def older(day: date, years: int | Fraction, than: date) -> bool:
    """Whether a date lies more than so many years, to the whole month, before another."""
    months = day.year * 12 + day.month + int(years * 12)
    return (months, day.day) < (than.year * 12 + than.month, than.day)
