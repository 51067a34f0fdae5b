"""Hours in the order of time: gaps, repeated hours, the nights clocks change, leap days, typical years."""

from datetime import datetime, timedelta
from pathlib import Path

from specgen.weather.hours import HourlyData
from specgen.weather.reading import read_hours

HOUR = timedelta(hours=1)


def read(folder: Path, times: list[str], air: list[str] | None = None) -> HourlyData:
    told = air or [str(50 + at) for at in range(len(times))]
    file = folder / "h.csv"
    file.write_text(
        "time,air F,rh\n" + "".join(f"{time},{t},60\n" for time, t in zip(times, told, strict=True)), "utf-8"
    )
    return read_hours(file)


def hours(first: str, last: str) -> list[str]:
    at, end = datetime.fromisoformat(first), datetime.fromisoformat(last)
    return [f"{at + HOUR * n:%Y-%m-%d %H:%M}" for n in range(int((end - at) / HOUR) + 1)]


def test_a_gap_is_told_with_its_row_and_its_hours_are_missing(tmp_path: Path) -> None:
    data = read(tmp_path, ["2027-06-14 07:00", "2027-06-14 11:00"])
    assert [start.hour for start in data.starts] == [7, 8, 9, 10, 11]
    assert [value is None for value in data.column("air")] == [False, True, True, True, False]
    assert (data.missing, data.rows) == (3, [2, 0, 0, 0, 3])
    assert "before row 3: 3 hours missing from 2027-06-14 08:00, not counted as fit" in data.notes


def test_the_hour_that_is_there_twice_when_clocks_go_back_is_two_hours(tmp_path: Path) -> None:
    # In the United States clocks go back at 2:00 on the first Sunday of November: the 7th in 2027.
    times = ["2027-11-07 00:00", "2027-11-07 01:00", "2027-11-07 01:00", "2027-11-07 02:00"]
    data = read(tmp_path, times)
    assert [start.hour for start in data.starts] == [0, 1, 1, 2]
    assert data.missing == 0
    assert "the clock goes back, and both hours count" in data.notes[0]


def test_the_hour_that_is_not_there_when_clocks_go_forward_is_not_missing(tmp_path: Path) -> None:
    # And forward at 2:00 on the second Sunday of March: the 14th in 2027.
    data = read(tmp_path, ["2027-03-14 00:00", "2027-03-14 01:00", "2027-03-14 03:00"])
    assert [start.hour for start in data.starts] == [0, 1, 3]
    assert data.missing == 0


def test_offsets_tell_both_nights_by_themselves(tmp_path: Path) -> None:
    back = ["2027-11-07T01:00-04:00", "2027-11-07T01:00-05:00", "2027-11-07T02:00-05:00"]
    assert [start.hour for start in read(tmp_path, back).starts] == [1, 1, 2]
    forward = ["2027-03-14T01:00-05:00", "2027-03-14T03:00-04:00"]
    assert read(tmp_path, forward).missing == 0


def test_an_hour_told_twice_counts_once_where_it_is_alike_and_not_at_all_else(tmp_path: Path) -> None:
    times = ["2027-06-14 07:00", "2027-06-14 07:00", "2027-06-14 08:00"]
    alike = read(tmp_path, times, ["60", "60", "61"])
    assert (len(alike), alike.missing) == (2, 0)
    assert alike.notes[0] == "rows 2, 3 tell the same hour alike, 2027-06-14 07:00: one counts"
    other = read(tmp_path, times, ["60", "72", "61"])
    assert (len(other), other.column("air")[0]) == (2, None)
    assert "rows 2, 3 tell the same hour differently" in other.notes[0]


def test_a_leap_day_is_a_day_and_no_gap_where_a_year_has_none(tmp_path: Path) -> None:
    leap = read(tmp_path, hours("2028-02-28 22:00", "2028-03-01 01:00"))
    assert (len(leap), leap.missing) == (28, 0)
    plain = read(tmp_path, hours("2027-02-28 22:00", "2027-03-01 01:00"))
    assert (len(plain), plain.missing) == (4, 0)


TYPICAL = [
    *hours("1997-01-31 20:00", "1997-01-31 23:00"),
    *hours("1984-02-01 00:00", "1984-02-29 23:00")[:672],
    *hours("1999-03-01 00:00", "1999-03-01 03:00"),
]


def test_a_year_of_months_of_different_years_keeps_their_order(tmp_path: Path) -> None:
    data = read(tmp_path, TYPICAL, ["60"] * len(TYPICAL))
    assert data.typical
    assert (len(data), data.missing) == (4 + 672 + 4, 0)
    assert [data.starts[at].year for at in (0, 4, -1)] == [1997, 1984, 1999]


def test_two_years_that_follow_each_other_are_no_typical_year(tmp_path: Path) -> None:
    data = read(tmp_path, hours("2026-12-31 22:00", "2027-01-01 01:00"))
    assert not data.typical
    assert data.missing == 0
