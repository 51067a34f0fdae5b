"""A calendar of some hours of each shift, on paper and as whole days of it must be. Rules of our own."""

from datetime import datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.calendar import WorkDays
from specgen.model.hour_calendar import HourCalendar
from specgen.model.problem import Refused

HOUR = timedelta(hours=1)
# Shifts from 6 to 16; forenoon and evening in July, 7 to 9 in August, nothing in the other months.
JULY, AUGUST = ((7 * HOUR, 10 * HOUR), (14 * HOUR, 16 * HOUR)), ((7 * HOUR, 9 * HOUR),)
CALENDAR = HourCalendar(WorkDays(), time(6), 10 * HOUR, ((),) * 6 + (JULY, AUGUST) + ((),) * 4)


def at(text: str) -> datetime:
    return datetime.fromisoformat(f"2027-{text}")


def test_work_goes_on_from_stretch_to_stretch_past_noon_and_the_weekend() -> None:
    # July 16, 2027 is a Friday: 2 h from 8, 2 h from 14, 1 h on Monday.
    assert CALENDAR.find_start(at("07-16T06:00")) == at("07-16T07:00")
    assert CALENDAR.add_work(at("07-16T08:00"), 5 * HOUR) == at("07-19T08:00")
    assert CALENDAR.last_start(at("07-19T08:00"), 5 * HOUR) == at("07-16T08:00")


def test_what_a_day_must_hold_waits_for_a_day_that_does() -> None:
    # From 9 on Friday 3 h are left; August has 2 h a day, so that what does not fit before waits for next July.
    assert CALENDAR.left_of_shift(at("07-16T09:00")) == 3 * HOUR
    assert CALENDAR.fit_in_shift(at("07-16T09:00"), 3 * HOUR) == at("07-16T09:00")
    assert CALENDAR.fit_in_shift(at("07-16T09:00"), 4 * HOUR) == at("07-19T07:00")
    assert CALENDAR.fit_in_shift(at("08-02T06:00"), 3 * HOUR) == datetime(2028, 7, 3, 7)
    assert CALENDAR.last_start_in_shift(at("08-10T06:00"), 3 * HOUR) == at("07-30T09:00")


def test_a_month_without_hours_is_passed_over() -> None:
    assert CALENDAR.find_start(at("09-01T06:00")) == datetime(2028, 7, 3, 7)
    assert CALENDAR.find_shift_before(at("07-01T06:00")).start == datetime(2026, 8, 31, 7)


def test_work_longer_than_any_day_and_a_year_without_hours_are_refused() -> None:
    with pytest.raises(Refused, match="work of 6:00:00 does not end in the 5:00:00 of a shift"):
        CALENDAR.fit_in_shift(at("07-16T06:00"), 6 * HOUR)
    with pytest.raises(Refused, match="no month has hours that can be worked"):
        HourCalendar(WorkDays(), time(6), 10 * HOUR)


@given(
    st.datetimes(datetime(2027, 6, 1), datetime(2027, 9, 30)).map(lambda one: one.replace(second=0, microsecond=0)),
    st.integers(1, 40 * 60).map(lambda minutes: timedelta(minutes=minutes)),
)
def test_the_last_start_of_work_ends_it_in_time_and_no_later_start_does(moment: datetime, work: timedelta) -> None:
    end = CALENDAR.add_work(moment, work)
    last = CALENDAR.last_start(end, work)
    assert CALENDAR.add_work(last, work) == end
    assert CALENDAR.add_work(last + timedelta(minutes=1), work) > end
