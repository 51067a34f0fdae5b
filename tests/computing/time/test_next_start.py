"""The next start of work and the last of working days: by hand, by a library of calendars, by published days."""

import datetime
import sys
from itertools import pairwise
from typing import Any

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.model.calendar import WEEK
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.public_holidays import find_holidays
from specgen.terminal.working import format_working, working_to_data
from tests.computing._figures import worked

# Days on which federal holidays are observed. 2024: retyped from "Office Holidays" of the U.S. Probation Office,
# Western District of Oklahoma (okep.uscourts.gov/office-holidays). 2026 and 2027: by hand from 5 U.S.C. 6103 and the
# rule which that page prints, Saturday's holiday on Friday, Sunday's on Monday.
OBSERVED = {
    2024: "01-01 01-15 02-19 05-27 06-19 07-04 09-02 10-14 11-11 11-28 12-25",
    2026: "01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25",
    2027: "01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31",
}


def start(**keys: str) -> str:
    return worked("next-start", keys).moment


def finish(**keys: str) -> str:
    return worked("finish", keys).moment


THURSDAY = {"done": "2026-07-02T15:00", "shift": "07:00-15:30"}


@pytest.mark.parametrize(
    ("keys", "moment"),
    [
        # Dry on Friday, July 3 at 15:00, on which July 4 is observed: Monday.
        ({**THURSDAY, "dry": "24h", "holidays": "US"}, "2026-07-06T07:00"),
        ({**THURSDAY, "dry": "24h"}, "2026-07-03T15:00"),
        ({**THURSDAY, "dry": "24.5 h"}, "2026-07-06T07:00"),  # the end of the shift is no start
        ({**THURSDAY, "dry": "24h", "days_off": "fri"}, "2026-07-04T07:00"),
        ({**THURSDAY, "dry": "36h", "days_off": "none"}, "2026-07-04T07:00"),
        ({**THURSDAY, "dry": "0h"}, "2026-07-02T15:00"),
        ({**THURSDAY, "dry": "24h", "days_off": "sat,sun,2026-07-03,2026-07-06"}, "2026-07-07T07:00"),
        # Past midnight: dry on Friday at 3, in the shift of Thursday.
        ({"done": "2026-07-02T15:00", "dry": "12", "shift": "22:00-06:00"}, "2026-07-03T03:00"),
        # Dry on Saturday at 3, in the shift of Friday; at 6 that is over.
        ({"done": "2026-07-03T03:00", "dry": "24", "shift": "22:00-06:00"}, "2026-07-04T03:00"),
        ({"done": "2026-07-03T06:00", "dry": "24", "shift": "22:00-06:00"}, "2026-07-06T22:00"),
        # Round the clock.
        ({"done": "2026-07-02T15:00", "dry": "12h", "shift": "00:00-24:00"}, "2026-07-03T03:00"),
        ({"done": "2026-07-03T15:00", "dry": "12h", "shift": "00:00-24:00"}, "2026-07-06T00:00"),
        # A leap day: February 29, 2028 is a Tuesday.
        ({"done": "2028-02-28T15:00", "dry": "24h", "shift": "07:00-15:30"}, "2028-02-29T15:00"),
        ({"done": "2028-02-29T15:00", "dry": "24h", "shift": "07:00-15:30"}, "2028-03-01T15:00"),
        # Half a minute counts.
        ({"done": "2026-07-02T15:00", "dry": "30 s", "shift": "07:00-15:30"}, "2026-07-02T15:00:30"),
    ],
)
def test_the_next_start_is_that_of_a_calendar_on_paper(keys: dict[str, str], moment: str) -> None:
    assert start(**keys) == moment


@pytest.mark.parametrize(
    ("keys", "day"),
    [
        # June 29, 30, July 1 and 2; July 3 is observed; Monday, July 6.
        ({"start": "2026-06-29", "working_days": "5", "holidays": "US"}, "2026-07-06"),
        ({"start": "2026-06-29", "working_days": "5"}, "2026-07-03"),
        ({"start": "2026-07-04", "working_days": "1"}, "2026-07-06"),
        ({"start": "2026-07-04", "working_days": "1", "days_off": "none"}, "2026-07-04"),
        ({"start": "2028-02-28", "working_days": "3"}, "2028-03-01"),
        # Christmas of 2027 is a Saturday and observed on Friday, so is New Year's Day of 2028, on December 31.
        ({"start": "2027-12-23", "working_days": "2", "holidays": "US"}, "2027-12-27"),
        ({"start": "2027-12-30", "working_days": "2", "holidays": "US"}, "2028-01-03"),
    ],
)
def test_the_last_working_day_is_that_of_a_calendar_on_paper(keys: dict[str, str], day: str) -> None:
    assert finish(**keys) == day


@pytest.mark.parametrize("year", OBSERVED)
def test_federal_holidays_are_off_on_the_days_that_are_published(year: int) -> None:
    found = find_holidays("US")
    first = datetime.date(year, 1, 1)
    days = (first + datetime.timedelta(days=n) for n in range(366 if year % 4 == 0 else 365))
    worked_week = [day for day in days if day.weekday() < 5]
    assert [f"{day:%m-%d}" for day in worked_week if day in found] == OBSERVED[year].split()


def test_a_state_has_holidays_of_its_own() -> None:
    # Colorado: Frances Xavier Cabrini Day, first Monday of October (Colorado Revised Statutes 24-11-101, 2020).
    day = datetime.date(2026, 10, 5)
    assert day in find_holidays("US-CO")
    assert day not in find_holidays("US")


@settings(deadline=None)
@given(
    st.dates(datetime.date(2026, 1, 1), datetime.date(2029, 12, 31)),
    st.integers(1, 300),
    st.sets(st.sampled_from(WEEK), min_size=1, max_size=6),
    st.sets(st.dates(datetime.date(2026, 1, 1), datetime.date(2030, 12, 31)), max_size=10),
)
def test_working_days_are_those_of_a_library_of_calendars(
    first: datetime.date, days: int, week: set[str], dates: set[datetime.date]
) -> None:
    # numpy.busday_offset.
    mask = [name not in week for name in WEEK]
    end = numpy.busday_offset(first, days - 1, "forward", weekmask=mask, holidays=sorted(dates))
    off = ",".join([*week, *map(str, sorted(dates))])
    made = worked("finish", {"start": str(first), "working_days": str(days), "days_off": off})
    assert made.moment == str(end)
    assert first + datetime.timedelta(days=made.result) == end.astype(object)


def told(made: Working) -> tuple[str, Any]:
    return format_working(made), working_to_data(made)


def test_the_result_is_a_moment_and_the_working_adds_up_to_it() -> None:
    text, data = told(worked("next-start", {**THURSDAY, "dry": "24h", "holidays": "US"}))
    assert "result   2026-07-06T07:00  (governed by the shift)" in text
    assert (data["result"], data["unit"]) == ("2026-07-06T07:00", "")
    # 103 h after the midnight before July 2.
    hours = data["steps"][-1]["value"]
    midnight = datetime.datetime(2026, 7, 2)
    assert midnight + datetime.timedelta(hours=hours) == datetime.datetime.fromisoformat(data["result"])
    passed = "Days off passed over: Fri 2026-07-03 (public holiday), Sat 2026-07-04 (public holiday), Sun 2026-07-05."
    assert passed in data["notes"]


def test_the_weekend_is_told_as_practice_where_nobody_named_it() -> None:
    taken = "Saturday and Sunday are days off: common practice, no source."
    for name, keys in (
        ("finish", {"start": "2026-06-29", "working_days": "5"}),
        ("next-start", {**THURSDAY, "dry": "1h"}),
    ):
        assert taken in worked(name, keys).notes
        assert taken not in worked(name, keys | {"days_off": "sat,sun"}).notes


def test_many_days_off_are_counted_and_not_told_one_by_one() -> None:
    made = worked("finish", {"start": "2026-06-29", "working_days": "30"})
    first = made.notes[0]
    assert first.startswith("Days off passed over: Sat 2026-07-04, Sun 2026-07-05, ")
    assert first.endswith(", and 4 more.")  # five weekends
    assert sorted(made.notes[1:]) != sorted(made.notes)


@pytest.mark.parametrize(
    ("name", "keys", "said"),
    [
        ("next-start", {"shift": "7-15:30"}, "shift: '7-15:30' is not a shift (write 07:00-15:30)"),
        ("next-start", {"shift": "7am-3:30pm"}, "shift: '7am-3:30pm' is not a shift (write 07:00-15:30)"),
        ("next-start", {"shift": "0700-1530"}, "shift: '0700-1530' is not a shift (write 07:00-15:30)"),
        ("next-start", {"shift": "07:00 to 15:30"}, "shift: '07:00 to 15:30' is not a shift (write 07:00-15:30)"),
        ("next-start", {"shift": "07:00–15:30"}, "shift: '07:00–15:30' is not a shift (write 07:00-15:30)"),
        ("next-start", {"shift": "12pm-12am"}, "shift: '12pm-12am' is not a shift (write 12:00-00:00)"),
        ("next-start", {"shift": "days"}, "shift: 'days' is not a shift (write start and end, such as 07:00-15:30)"),
        ("next-start", {"shift": "24:00-08:00"}, "shift: '24:00-08:00' is not a shift (write 00:00-08:00)"),
        (
            "next-start",
            {"shift": "07:60-15:30"},
            "shift: '07:60-15:30' is not a shift (write start and end, such as 07:00-15:30)",
        ),
        ("next-start", {"shift": ""}, "shift must be given (start and end of the shift, such as 07:00-15:30)"),
        ("next-start", {"done": "2026-07-02"}, "done: '2026-07-02' is not a day with a time (write 2026-07-02T15:00)"),
        (
            "next-start",
            {"done": "July 2, 2026 3 pm"},
            "done: 'July 2, 2026 3 pm' is not a day with a time (write 2026-07-02T15:00)",
        ),
        (
            "next-start",
            {"done": "2026-02-29T15:00"},
            "done: '2026-02-29T15:00' is not a day with a time "
            "(write year-month-day and hours, such as 2026-07-02T15:00)",
        ),
        (
            "next-start",
            {"done": "2026-07-02T15:00Z"},
            "done: '2026-07-02T15:00Z' has an offset from UTC (write the local time, 2026-07-02T15:00)",
        ),
        (
            "next-start",
            {"done": "2026-07-02T15:00-06:00"},
            "done: '2026-07-02T15:00-06:00' has an offset from UTC (write the local time, 2026-07-02T15:00)",
        ),
        ("next-start", {"dry": "-1"}, "dry is -1 h (it lies from 0 h to 2000 h)"),
        ("next-start", {"days_off": "Saturday"}, "days_off: 'Saturday' is not a day off (write sat)"),
        (
            "next-start",
            {"days_off": "sat;sun"},
            "days_off: 'sat;sun' is not a day off (write mon to sun, or a date such as 2027-07-05)",
        ),
        (
            "next-start",
            {"days_off": "7/4/2026"},
            "days_off: '7/4/2026' is not a day off (write 2026-07-04 or 2026-04-07)",
        ),
        (
            "next-start",
            {"days_off": ",".join(WEEK)},
            "every day of the week is off (leave the working days out of days_off)",
        ),
        (
            "next-start",
            {"holidays": "USA"},
            "'USA' is not the code of a country with known holidays (write US)",
        ),
        (
            "next-start",
            {"holidays": "US-Colorado"},
            "'US-Colorado' is not the code of a part of US with known holidays (write US-CO)",
        ),
        ("next-start", {"unit": "h"}, "the result cannot be given in 'h' (it is a day or a moment: leave unit out)"),
        (
            "next-start",
            {"done": "9999-12-31T15:00"},
            "the work runs past the last day of the calendar (check the dates, hours and rates)",
        ),
        ("finish", {"working_days": "0"}, "working_days is 0 (it lies from 1 to 10000)"),
        ("finish", {"working_days": "2.5"}, "working_days is not a whole number of days (write 5)"),
        ("finish", {"start": "6/29/2026"}, "start: '6/29/2026' is not a date (write 2026-06-29)"),
        (
            "finish",
            {"start": "9999-12-30"},
            "the work runs past the last day of the calendar (check the dates, hours and rates)",
        ),
    ],
)
def test_what_is_wrong_is_told_with_what_is_meant(name: str, keys: dict[str, str], said: str) -> None:
    sound = {"next-start": {**THURSDAY, "dry": "24h"}, "finish": {"start": "2026-06-29", "working_days": "5"}}[name]
    with pytest.raises(Refused) as refused:
        worked(name, sound | keys)
    assert [str(problem) for problem in refused.value.problems] == [said]


def test_without_the_library_holidays_ask_for_it_and_nothing_else_does(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "holidays", None)
    find_holidays.cache_clear()
    assert finish(start="2026-06-29", working_days="5") == "2026-07-03"
    with pytest.raises(Refused) as refused:
        finish(start="2026-06-29", working_days="5", holidays="US")
    assert [str(problem) for problem in refused.value.problems] == [
        "the holidays of US need a library (pip install 'specgen[site]')"
    ]


@settings(deadline=None)
@given(
    st.datetimes(datetime.datetime(2026, 1, 1), datetime.datetime(2027, 12, 31)),
    st.lists(st.integers(0, 500), min_size=2, max_size=4),
    st.integers(0, 23),
    st.integers(1, 24),
)
def test_more_drying_leads_to_no_earlier_start(
    done: datetime.datetime, hours: list[int], first: int, length: int
) -> None:
    shift = f"{first:02}:00-{(first + length) % 24:02}:00"
    moments = [start(done=done.isoformat(timespec="minutes"), dry=f"{n}h", shift=shift) for n in sorted(hours)]
    assert all(before <= after for before, after in pairwise(moments))
