"""The night in which the clocks of a site change: an hour that does not exist, and one that exists twice.

In 2027 clocks of the United States go forward on March 14 and back on November 7, each at 2 am: 15 U.S.C. 260a.
"""

from pathlib import Path

from tests.reading.records.faulty import CHANGED
from tests.reading.records.support import read, told

ROWS, DENVER = CHANGED["nights of the clocks"]


def test_an_hour_that_the_clock_skips_is_told_with_what_it_showed(tmp_path: Path) -> None:
    records = read(tmp_path, ROWS, change=DENVER)
    message = "there is no 02:30 on 2027-03-14: the clocks went forward in this night"
    assert told(records.faults) == [("log.csv, row 2", "started_at", message)]
    assert records.faults[0].hint == "write the time that the clock showed, such as 03:30"


def test_an_hour_that_the_clock_tells_twice_is_told_and_kept(tmp_path: Path) -> None:
    records = read(tmp_path, ROWS, change=DENVER)
    assert [(remark.file, remark.message) for remark in records.remarks] == [
        ("log.csv, row 4", "started_at: this time is told twice by the clock: the clocks went back in this night")
    ]
    assert len(records.of("log")) == 4


def test_no_night_changes_where_the_zone_has_none_or_is_not_named(tmp_path: Path) -> None:
    # Arizona keeps standard time all year: Arizona Revised Statutes 1-242.
    for change in ({}, {"site": {"time_zone": "America/Phoenix"}}):
        records = read(tmp_path, ROWS, change=change)
        assert (records.faults, records.remarks) == ((), ())
