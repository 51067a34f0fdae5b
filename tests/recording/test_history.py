"""What was done at a place before or after a moment. The records and what is wanted of them are worked out by hand."""

from dataclasses import replace
from datetime import date, datetime, time
from typing import Any

import pytest

from specgen.model.record import Entry, EntryPlace, Records
from specgen.recording.history import History

DAY = date(2027, 6, 14)


def history(*rows: dict[str, Any], collection: str = "log") -> History:
    """The history of these entries, all on one elevation, day and step unless they tell another."""
    usual = {"elevation": "E1", "date": DAY, "step": "gloss"}
    entries = tuple(Entry(collection, n, usual | row, EntryPlace("log.csv", n + 2)) for n, row in enumerate(rows))
    return History(Records({collection: entries}))


def at(hour: int, minute: int = 0) -> datetime:
    return datetime(2027, 6, 14, hour, minute)


def number(entry: Entry | None) -> int | None:
    return None if entry is None else entry.number


RELEASES = history(
    {"time": time(15)},
    {"time": time(7), "area": "left bay"},
    {},
    {"time": time(8), "elevation": "E2"},
    collection="release",
)


@pytest.mark.parametrize(
    ("until", "area", "last"),
    [
        (at(6, 59), "", None),
        (at(7), "", 1),
        (at(7), "Left  Bay", 1),
        (at(7), "right bay", None),
        (at(15), "right bay", 0),
        # One without a time stands at the end of its day.
        (at(23, 58), "", 0),
        (at(23, 59).replace(second=59), "left bay", 2),
    ],
)
def test_the_last_entry_before_a_moment(until: datetime, area: str, last: int | None) -> None:
    assert number(RELEASES.find_last("release", "E1", "gloss", until, area)) == last


@pytest.mark.parametrize(("since", "area", "first"), [(at(7), "", 1), (at(7), "right bay", 0), (at(15, 1), "", 2)])
def test_the_next_entry_after_a_moment(since: datetime, area: str, first: int) -> None:
    assert number(RELEASES.find_next("release", "E1", "gloss", since, area)) == first


def test_of_two_crews_the_pass_that_ended_last_counts() -> None:
    passes = history(
        {"coat": 1, "started_at": time(8), "ended_at": time(15)},
        {"coat": 1, "started_at": time(9), "ended_at": time(10)},
        {"coat": 2, "started_at": time(16), "ended_at": time(0, 30)},
        {"started_at": time(17)},
    )
    assert number(passes.find_last_pass("E1", "gloss", at(9))) == 0
    assert number(passes.find_last_pass("E1", "gloss", at(14))) == 0
    assert number(passes.find_last_pass("E1", "gloss", at(23))) == 2
    assert number(passes.find_last_pass("E1", "gloss", at(23), coat=1)) == 0
    assert passes.find_last_pass("E1", "gloss", at(8)) is None
    assert passes.find_last_pass("E1", "primer", at(23)) is None


def test_the_first_entry_of_work_of_a_day_and_area_tells_a_lapse() -> None:
    log = history(
        {"started_at": time(9), "ended_at": time(10)},
        {"started_at": time(8), "ended_at": time(9)},
        {"started_at": time(7), "air": 60},
        {"started_at": time(7), "ended_at": time(8), "area": "left bay"},
        {"pail": "1"},
        {"started_at": time(8), "date": date(2027, 6, 15)},
        {"step": "primer"},
    )
    assert list(log.firsts_of_work) == [3, 1, 6, 5]


def test_pails_of_a_coat_are_held_against_the_first_and_the_one_before() -> None:
    log = history(
        {"water": 4, "coat": 1, "date": date(2027, 6, 15), "batch": "B2"},
        {"water": 5, "coat": 1, "area": "left bay", "batch": "B1"},
        {"water": 6, "coat": 2, "batch": "B3"},
        {"elevation": "E2", "date": date(2027, 6, 16)},
    )
    late, early, second, other = log.records.of("log")
    assert number(log.find_first_with("water", late)) == 1
    assert number(log.find_first_with("water", replace(late, values={**late.values, "area": "right bay"}))) == 0
    assert number(log.find_first_with("water", second)) == 2
    assert log.find_first_with("water", other) is None
    assert number(log.find_previous_with("batch", late)) == 2
    assert log.find_previous_with("batch", early) is None
