"""Dates reckoned from one another: rules of ours at the ends of the calendar, the library's arithmetic inside it."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.dates import days_after


@given(st.dates(max_value=datetime.date(9900, 1, 1)), st.integers(0, 30000))
def test_days_are_added_as_the_calendar_of_the_language_adds_them(day: datetime.date, days: int) -> None:
    assert days_after(day, days) == day + datetime.timedelta(days=days)


@pytest.mark.parametrize(("day", "days"), [("9999-12-31", 1), ("9999-12-01", 31), ("2027-01-01", 10**7)])
def test_the_calendar_ends_with_its_last_day(day: str, days: int) -> None:
    assert days_after(datetime.date.fromisoformat(day), days) == datetime.date.max
