"""Hours between two moments: by the clock, and as real hours in the nights on which the clocks change.

In the zone America/Denver clocks went forward on March 14, 2027 at 2:00 a.m. and went back on November 7, 2027 at
2:00 a.m. (15 U.S.C. 260a: second Sunday in March, first Sunday in November).
"""

from datetime import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from specgen.recording.elapsed import elapsed_hours, hours_text
from tests.support import project_of

DENVER = {"site": {"time_zone": "America/Denver"}}
SPRING, FALL = "2027-03-14", "2027-11-07"


@pytest.mark.parametrize(
    ("zone", "begin", "end", "hours"),
    [
        ({}, "2027-06-14T15:00", "2027-06-15T07:30", "16.5"),
        ({}, "2027-03-13T20:00", f"{SPRING}T08:00", "12"),
        (DENVER, "2027-06-14T15:00", "2027-06-15T07:30", "16.5"),
        # One hour is skipped, one is told twice.
        (DENVER, "2027-03-13T20:00", f"{SPRING}T08:00", "11"),
        (DENVER, "2027-11-06T20:00", f"{FALL}T08:00", "13"),
        # The later moment is told by the clock before the earlier one.
        (DENVER, f"{FALL}T01:50", f"{FALL}T01:10", "1/3"),
        (DENVER, f"{FALL}T01:10", f"{FALL}T01:50", "2/3"),
        ({}, "2027-06-15T07:00", "2027-06-15T06:00", "-1"),
        # Over a leap day.
        ({}, "2028-02-28T12:00", "2028-03-01T12:00", "48"),
    ],
)
def test_hours_between_two_moments(zone: dict[str, str], begin: str, end: str, hours: str, tmp_path: Path) -> None:
    project = project_of(tmp_path, zone)
    found = elapsed_hours(project, datetime.fromisoformat(begin), datetime.fromisoformat(end))
    assert found == Fraction(hours)


@pytest.mark.parametrize(
    ("hours", "text"),
    [("24", "24 h"), ("1439/60", "23 h 59 min"), ("3/4", "45 min"), ("0", "0 h"), ("-2", "0 h"), ("1/120", "0 h")],
)
def test_hours_in_words(hours: str, text: str) -> None:
    assert hours_text(Fraction(hours)) == text
