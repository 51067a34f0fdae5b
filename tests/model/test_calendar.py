"""Working days against a general library of calendars; shifts counted minute by minute, and by hand."""

from datetime import date, datetime, time, timedelta

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.model.calendar import WEEK, WorkCalendar, WorkDays
from specgen.model.problem import Refused

WEEKS = st.sets(st.sampled_from(WEEK), max_size=6)
DAYS = st.dates(date(2026, 1, 1), date(2029, 12, 31))
DATES = st.sets(DAYS, max_size=20)


def work_days(week: set[str], dates: set[date]) -> WorkDays:
    return WorkDays(frozenset(week), frozenset(dates))


def mask(week: set[str]) -> list[bool]:
    return [name not in week for name in WEEK]


@given(DAYS, st.integers(1, 300), WEEKS, DATES)
def test_the_last_working_day_is_that_of_a_library_of_calendars(
    start: date, days: int, week: set[str], dates: set[date]
) -> None:
    # numpy.busday_offset: `forward` rolls a start on a day off forward, and the start is day 1.
    end = numpy.busday_offset(start, days - 1, "forward", weekmask=mask(week), holidays=sorted(dates))
    assert work_days(week, dates).finish(start, days) == end.astype(object)


@given(DAYS, WEEKS, DATES)
def test_whether_a_day_is_worked_is_told_as_by_a_library_of_calendars(
    day: date, week: set[str], dates: set[date]
) -> None:
    assert work_days(week, dates).is_worked(day) == numpy.is_busday(day, weekmask=mask(week), holidays=sorted(dates))


@given(DAYS, st.integers(0, 90), WEEKS, DATES)
def test_counted_back_a_library_finds_as_many_working_days(
    end: date, days: int, week: set[str], dates: set[date]
) -> None:
    # numpy.busday_count counts from its first day up to, and without, its last.
    first = work_days(week, dates).count_back(end, days)
    one = timedelta(days=1)
    assert numpy.busday_count(first + one, end + one, weekmask=mask(week), holidays=sorted(dates)) == days


def test_a_leap_day_is_a_day_like_any_other() -> None:
    # February 28, 2028 is a Monday and 2028 a leap year (ISO 8601 calendar): day 2 is Tuesday the 29th, day 3 March 1.
    days = WorkDays()
    assert [days.finish(date(2028, 2, 28), n) for n in (1, 2, 3)] == [
        date(2028, 2, 28),
        date(2028, 2, 29),
        date(2028, 3, 1),
    ]


def test_a_week_without_a_working_day_is_refused_and_searched_by_nobody() -> None:
    with pytest.raises(Refused, match="every day of the week is off"):
        WorkDays(frozenset(WEEK))


def test_the_end_of_the_calendar_is_told() -> None:
    with pytest.raises(Refused, match="past the last day of the calendar"):
        WorkDays().finish(date(9999, 12, 30), 3)
    with pytest.raises(Refused, match="past the last day of the calendar"):
        calendar("22:00", 9).find_start(datetime(9999, 12, 31, 23))


def test_fewer_than_one_day_has_no_end() -> None:
    with pytest.raises(Refused, match="0 working days have no last one"):
        WorkDays().finish(date(2027, 3, 1), 0)


def calendar(start: str, hours: float, week: str = "sat sun", *dates: date) -> WorkCalendar:
    return WorkCalendar(
        WorkDays(frozenset(week.split()), frozenset(dates)), time.fromisoformat(start), timedelta(hours=hours)
    )


def at(text: str) -> datetime:
    return datetime.fromisoformat(text)


# July 2, 2026 is a Thursday. Worked by hand.
@pytest.mark.parametrize(
    ("moment", "start"),
    [
        ("2026-07-02T06:59", "2026-07-02T07:00"),
        ("2026-07-02T07:00", "2026-07-02T07:00"),
        ("2026-07-02T15:29", "2026-07-02T15:29"),
        ("2026-07-02T15:30", "2026-07-03T07:00"),  # the end of a shift is no start
        ("2026-07-03T15:30", "2026-07-06T07:00"),  # nor does anybody come on Saturday
        ("2026-07-04T10:00", "2026-07-06T07:00"),
    ],
)
def test_the_next_start_lies_within_a_shift(moment: str, start: str) -> None:
    assert calendar("07:00", 8.5).find_start(at(moment)) == at(start)


# The shift of Friday, July 3 ends on Saturday at 6; that of Saturday is not worked.
@pytest.mark.parametrize(
    ("moment", "start"),
    [
        ("2026-07-04T02:00", "2026-07-04T02:00"),
        ("2026-07-04T05:59", "2026-07-04T05:59"),
        ("2026-07-04T06:00", "2026-07-06T22:00"),
        ("2026-07-04T23:00", "2026-07-06T22:00"),
        ("2026-07-06T02:00", "2026-07-06T22:00"),  # the shift of Sunday is not worked
        ("2026-07-07T02:00", "2026-07-07T02:00"),
    ],
)
def test_a_shift_past_midnight_belongs_to_the_day_it_begins_on(moment: str, start: str) -> None:
    nights = calendar("22:00", 8)
    assert nights.find_start(at(moment)) == at(start)
    assert nights.runs_past_midnight
    assert not calendar("16:00", 8).runs_past_midnight


def test_a_shift_round_the_clock_stops_for_days_off_alone() -> None:
    always = calendar("06:00", 24)
    assert always.add_work(at("2026-07-02T08:00"), timedelta(hours=30)) == at("2026-07-03T14:00")
    # Friday's goes on till Saturday at 6; 10 h more are Monday's.
    assert always.add_work(at("2026-07-03T14:00"), timedelta(hours=26)) == at("2026-07-06T16:00")


def test_hours_of_work_are_counted_from_shift_to_shift() -> None:
    # Thursday from 15:00 half an hour, Friday 8.5 h, Monday 1 h.
    days = calendar("07:00", 8.5)
    assert days.add_work(at("2026-07-02T15:00"), timedelta(hours=10)) == at("2026-07-06T08:00")
    assert days.last_start(at("2026-07-06T08:00"), timedelta(hours=10)) == at("2026-07-02T15:00")
    # Work that ends with the shift ends on that day.
    assert days.add_work(at("2026-07-02T15:00"), timedelta(hours=9)) == at("2026-07-03T15:30")


def test_work_that_is_not_to_be_parted_waits_for_a_shift_that_holds_it() -> None:
    days = calendar("07:00", 8.5)
    assert days.fit_in_shift(at("2026-07-02T09:00"), timedelta(hours=6.5)) == at("2026-07-02T09:00")
    assert days.fit_in_shift(at("2026-07-02T09:01"), timedelta(hours=6.5)) == at("2026-07-03T07:00")
    assert days.last_start_in_shift(at("2026-07-06T08:00"), timedelta(hours=6.5)) == at("2026-07-03T09:00")
    with pytest.raises(Refused, match="does not end in a shift"):
        days.fit_in_shift(at("2026-07-02T09:00"), timedelta(hours=9))


@pytest.mark.parametrize("hours", [0, -1, 24.5])
def test_a_shift_that_is_none_is_refused(hours: float) -> None:
    with pytest.raises(Refused, match="not longer than 0 h and not longer than 24 h"):
        calendar("07:00", hours)


STARTS = st.times().map(lambda clock: clock.replace(minute=clock.minute // 30 * 30, second=0, microsecond=0))
CALENDARS = st.builds(
    lambda week, dates, start, halves: WorkCalendar(work_days(week, dates), start, timedelta(minutes=30 * halves)),
    WEEKS,
    st.sets(st.dates(date(2026, 6, 20), date(2026, 7, 20)), max_size=8),
    STARTS,
    st.integers(1, 48),
)
MOMENTS = st.datetimes(datetime(2026, 7, 1), datetime(2026, 7, 8)).map(
    lambda moment: moment.replace(minute=moment.minute // 30 * 30, second=0, microsecond=0)
)
HALF = timedelta(minutes=30)


def is_worked(of: WorkCalendar, moment: datetime) -> bool:
    """Whether a moment lies in the shift of its day or of the day before, asked of each by itself."""
    for day in (moment.date(), moment.date() - timedelta(days=1)):
        start = datetime.combine(day, of.shift_start)
        if of.days.is_worked(day) and start <= moment < start + of.shift:
            return True
    return False


@settings(deadline=None)
@given(CALENDARS, MOMENTS, st.integers(0, 40))
def test_work_ends_where_half_hours_counted_one_by_one_end(of: WorkCalendar, moment: datetime, halves: int) -> None:
    while not is_worked(of, moment):
        moment += HALF
    assert of.find_start(moment) == moment
    at, left = moment, halves
    while left:
        left -= is_worked(of, at)
        at += HALF
    assert of.add_work(moment, halves * HALF) == at


@settings(deadline=None)
@given(CALENDARS, MOMENTS, st.integers(0, 40))
def test_the_last_start_is_the_last_from_which_work_is_over_in_time(
    of: WorkCalendar, moment: datetime, halves: int
) -> None:
    work = halves * HALF
    last = of.last_start(moment, work)
    assert is_worked(of, last)
    assert of.add_work(last, work) <= moment
    assert of.add_work(last + timedelta(minutes=1), work) > moment


@settings(deadline=None)
@given(CALENDARS, MOMENTS, st.integers(1, 48))
def test_the_last_start_in_a_shift_ends_there_in_time(of: WorkCalendar, moment: datetime, halves: int) -> None:
    work = min(halves * HALF, of.shift)
    last = of.last_start_in_shift(moment, work)
    assert of.fit_in_shift(last, work) == last
    assert last + work <= moment
    assert of.fit_in_shift(last + timedelta(minutes=1), work) + work > moment
