"""Dates reckoned from one another: rules of ours at the ends of the calendar, the library's arithmetic inside it."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.dates import days_after, months_after


@given(st.dates(max_value=datetime.date(9900, 1, 1)), st.integers(0, 30000))
def test_days_are_added_as_the_calendar_of_the_language_adds_them(day: datetime.date, days: int) -> None:
    assert days_after(day, days) == day + datetime.timedelta(days=days)


@pytest.mark.parametrize(("day", "days"), [("9999-12-31", 1), ("9999-12-01", 31), ("2027-01-01", 10**7)])
def test_the_calendar_ends_with_its_last_day(day: str, days: int) -> None:
    assert days_after(datetime.date.fromisoformat(day), days) == datetime.date.max


# By the calendar: 2028 is a leap year.
@pytest.mark.parametrize(
    ("day", "months", "last"),
    [
        ("2027-06-07", 9, "2028-03-07"),
        ("2027-06-07", 12, "2028-06-07"),
        ("2027-01-31", 1, "2027-02-28"),
        ("2028-01-31", 1, "2028-02-29"),
        ("2027-12-31", 0, "2027-12-31"),
        ("9999-06-07", 9, "9999-12-31"),
    ],
)
def test_months_end_on_the_same_day_or_on_the_last_of_a_shorter_one(day: str, months: int, last: str) -> None:
    assert months_after(datetime.date.fromisoformat(day), months) == datetime.date.fromisoformat(last)
