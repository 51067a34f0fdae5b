"""The shift of a site in the hours of a file: a shift is told by the clock, the hours of a station by standard time."""

from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from specgen.standards import load_standards
from specgen.weather.faces import Asked, judge_faces
from specgen.weather.hours import HourlyData, Station
from specgen.weather.judging import OUTSIDE
from tests.support import project_of

DENVER = Station(39.7, -105.0, -7)
SHIFT = {
    "site": {"time_zone": "America/Denver", "longitude": "-105 deg", "latitude": "39.7 deg"},
    "schedule": {"shift_start": "06:00", "shift_hours": 10},
    "shade": {},
}


def list_in_shift(folder: Path, first: datetime, station: Station | None, hours: int = 24) -> list[datetime]:
    starts = [first + timedelta(hours=hour) for hour in range(hours)]
    warm = {"air": [20.0] * hours, "humidity": [50.0] * hours, "wind": [1.0] * hours, "rain": [0.0] * hours}
    data = HourlyData("hours", starts, list(range(2, hours + 2)), dict(warm), station)
    judged = judge_faces(project_of(folder, SHIFT), load_standards(), data, Asked("boards", "air", False))
    return [start for start, bits in zip(starts, judged.faces[0].causes, strict=True) if not bits & OUTSIDE]


@pytest.mark.parametrize(
    ("day", "first", "last"),
    # By hand: summer time is standard time and an hour, so that 06:00 to 16:00 is 05:00 to 15:00.
    [(datetime(2027, 6, 14), 5, 14), (datetime(2027, 1, 14), 6, 15)],
)
def test_a_shift_is_held_against_standard_time_by_the_clock(
    tmp_path: Path, day: datetime, first: int, last: int
) -> None:
    found = list_in_shift(tmp_path, day, DENVER)
    assert [start.hour for start in found] == list(range(first, last + 1))


def test_the_clock_is_that_of_the_time_zone_data_on_every_day_of_the_year(tmp_path: Path) -> None:
    # A second way: each hour as an instant, told by the zone itself. The nights of the change lie outside the shift.
    zone, standard = ZoneInfo("America/Denver"), ZoneInfo("Etc/GMT+7")
    found = set(list_in_shift(tmp_path, datetime(2027, 1, 1), DENVER, 8760))
    starts = [datetime(2027, 1, 1) + timedelta(hours=hour) for hour in range(8760)]
    expected = {start for start in starts if 6 <= start.replace(tzinfo=standard).astimezone(zone).hour < 16}
    assert found == expected


def test_hours_that_people_wrote_are_taken_as_the_clock(tmp_path: Path) -> None:
    found = list_in_shift(tmp_path, datetime(2027, 6, 14), None)
    assert [start.hour for start in found] == list(range(6, 16))
