"""Hourly data as EPW; a general solar library reads the same file."""

from pathlib import Path

import pytest
from pvlib.iotools import read_epw

from specgen.model.problem import Refused
from specgen.weather.reading import read_hours

# Invented: place, hours and readings. The order of the cells is that of the format's own data dictionary.
PLACE = "LOCATION,Wickerwell,KS,USA,invented,724500,37.65,-97.43,-6.0,408.0"
HEAD = [PLACE, *(f"LINE {number},0" for number in range(2, 9))]


def row(month: int = 6, day: int = 14, hour: int = 8, year: int = 2001, **cells: str) -> str:
    told = {
        "air": "16.5",
        "humidity": "60",
        "direct": "500",
        "diffuse": "120",
        "wind": "2.5",
        "observed": "0",
        "codes": "999999999",
        "depth": "0.0",
    } | cells
    made = ["0"] * 35
    made[:6] = [str(year), str(month), str(day), str(hour), "60", "A7A7"]
    places = {
        "air": 6,
        "humidity": 8,
        "direct": 14,
        "diffuse": 15,
        "wind": 21,
        "observed": 26,
        "codes": 27,
        "depth": 33,
    }
    for name, at in places.items():
        made[at] = told[name]
    return ",".join(made)


def write(folder: Path, rows: list[str], head: list[str] = HEAD) -> Path:
    file = folder / "y.epw"
    file.write_text("\n".join([*head, *rows]) + "\n", "utf-8")
    return file


def test_the_cells_are_those_that_another_reader_takes(tmp_path: Path) -> None:
    rows = [row(hour=hour, air=f"{hour}.5", wind=f"{hour / 4}", direct=str(hour * 10)) for hour in range(1, 25)]
    file = write(tmp_path, rows)
    data = read_hours(file)
    other, place = read_epw(str(file))
    wanted = {
        "air": "temp_air",
        "humidity": "relative_humidity",
        "wind": "wind_speed",
        "direct": "dni",
        "diffuse": "dhi",
        "rain": "liquid_precipitation_depth",
    }
    for ours, theirs in wanted.items():
        assert data.column(ours) == [float(value) for value in other[theirs]]
    assert [start.replace(tzinfo=None) for start in other.index.to_pydatetime()] == data.starts
    assert data.station == (place["latitude"], place["longitude"], place["TZ"])


def test_a_few_hours_are_told_by_their_ends_too(tmp_path: Path) -> None:
    assert read_hours(write(tmp_path, [row(hour=8)])).starts[0].hour == 7


def test_figures_that_stand_for_a_missing_reading_are_none(tmp_path: Path) -> None:
    gone = row(air="99.9", humidity="999", wind="999", direct="9999", diffuse="9999", depth="999", observed="9")
    data = read_hours(write(tmp_path, [gone, row(hour=9)]))
    assert {name: column[0] for name, column in data.columns.items()} == dict.fromkeys(data.columns)
    assert "rain" in data.columns


def test_rain_is_told_by_the_observer_where_no_depth_is(tmp_path: Path) -> None:
    # Codes: the second digit is rain, the third drizzle; 9 is none.
    codes = {"999999999": False, "919999999": True, "993999999": True}
    rows = [row(hour=at + 1, depth="999", codes=code) for at, code in enumerate(codes)]
    rain = read_hours(write(tmp_path, rows)).column("rain")
    assert [depth is not None and depth > 0 for depth in rain] == list(codes.values())


# Rows, and what is told of them.
NO_HOURS = [
    ([], "y.epw: the file has no hours below its head"),
    ([row(), "2001,6,14,9"], "y.epw:10: the row has 4 cells; an hour of EPW has 35"),
    ([row(hour=25)], "y.epw:9: '2001-6-14 hour 25' is not an hour of EPW"),
    ([row(hour=0)], "y.epw:9: '2001-6-14 hour 0' is not an hour of EPW"),
    ([row(month=13)], "y.epw:9: '2001-13-14 hour 8' is not an hour of EPW"),
    ([row(air="warm")], "y.epw:9:7: 'warm' is not a reading of air"),
]


@pytest.mark.parametrize(
    ("rows", "told"),
    NO_HOURS,
)
def test_a_row_that_is_none_is_refused(rows: list[str], told: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        read_hours(write(tmp_path, rows))
    assert told in str(refused.value.problems[0])


# First lines, and what is told of them.
NO_PLACE = [
    (PLACE.replace("37.65", "137.65"), "the first line tells no place on earth"),
    ("LOCATION,Wickerwell", "the first line tells no place"),
]


@pytest.mark.parametrize(("first", "told"), NO_PLACE)
def test_a_place_that_is_none_is_refused(first: str, told: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=told):
        read_hours(write(tmp_path, [row()], [first, *HEAD[1:]]))
