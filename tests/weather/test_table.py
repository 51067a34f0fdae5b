"""Hourly data as CSV, in the ways in which loggers, offices and stations write it; the rows are invented."""

from datetime import datetime
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.weather.hours import HourlyData
from specgen.weather.reading import read_hours


def read(folder: Path, text: str | bytes) -> HourlyData:
    file = folder / "h.csv"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_hours(file)


def column(data: HourlyData, name: str) -> list[float | None]:
    return [None if value is None else round(value, 4) for value in data.column(name)]


def test_columns_stand_in_any_order_and_unit(tmp_path: Path) -> None:
    data = read(
        tmp_path,
        "Wind Speed (kt),Relative Humidity [%],Dry-bulb (C),rain_in,surface °F,Time\n"
        "10,60,20,0.1,68,2027-06-14T07:00\n",
    )
    assert column(data, "wind") == [5.1444]  # a knot is 1852 m in an hour
    assert (column(data, "humidity"), column(data, "air")) == ([60], [20])
    assert (column(data, "rain"), column(data, "surface")) == ([2.54], [20])
    assert data.starts == [datetime(2027, 6, 14, 7)]


# The same two hours, at 7:00 and 8:00 of 14 June, air 16.5 and 17 C.
SAME = [
    "time,air C,humidity %\n2027-06-14 07:00,16.5,60\n2027-06-14 08:00,17,60\n",
    "\ufefftime,air C,humidity %\r\n2027-06-14 07:00,16.5,60\r\n2027-06-14 08:00,17,60\r\n",
    "time;air C;humidity %\n14.06.2027 07:00;16,5;60\n14.06.2027 08:00;17;60\n",
    "sep=;\ntime;air C;humidity %\n2027-06-14 07:00;16,5;60\n2027-06-14 08:00;17,0;60\n",
    "time\tair C\thumidity %\n2027-06-14 07:00\t16.5\t60\n2027-06-14 08:00\t17\t60\n",
    "time,air F,humidity %\n6/14/2027 7:00 AM,61.7,60\n6/14/2027 8:00 AM,62.6,60\n",
    "date,time,air F,rh\n14/06/2027,7:00,61.7,60\n14/06/2027,8:00,62.6,60\n",
    "year,month,day,hour,air C,rh\n2027,6,14,7,16.5,60\n2027,6,14,8,17,60\n",
    "day of record,time,air F,rh\n14/06/2027,7:00,61.7,60\n14/06/2027,8:00,62.6,60\n",
    "year,month,day,hour of day,air C,rh\n2027,6,14,7,16.5,60\n2027,6,14,8,17,60\n",
    "rows behind\na station\ntime,air C,humidity\n2027-06-14 07:00:00,16.5,60\n2027-06-14 08:00:00,17,60\n",
    "time,air C,humidity %\n2027-06-14T07:00-05:00,16.5,60\n2027-06-14T08:00-05:00,17,60\n",
    "time,air C,humidity %\n2027-06-14 08:00,17,60\n2027-06-14 07:00,16.5,60\n",
]


@pytest.mark.parametrize("text", SAME)
def test_the_same_hours_however_they_are_written(text: str, tmp_path: Path) -> None:
    data = read(tmp_path, text)
    assert data.starts == [datetime(2027, 6, 14, 7), datetime(2027, 6, 14, 8)]
    assert column(data, "air") == [16.5, 17]
    assert column(data, "humidity") == [60, 60]


def test_the_text_may_be_in_the_code_of_an_office(tmp_path: Path) -> None:
    text = "time,air °C,humidity %\n2027-06-14 07:00,16.5,60\n"
    assert column(read(tmp_path, text.encode("utf-16")), "air") == [16.5]
    assert column(read(tmp_path, text.encode("cp1252")), "air") == [16.5]


def test_noon_and_midnight_of_twelve_hour_times(tmp_path: Path) -> None:
    times = ("6/14/2027 11:00 PM", "6/15/2027 12:00 AM", "6/15/2027 1:00 a.m.")
    data = read(tmp_path, "time,air F,rh\n" + "".join(f"{time},60,60\n" for time in times))
    assert [start.hour for start in data.starts] == [23, 0, 1]
    assert read(tmp_path, "time,air F,rh\n6/15/2027 12:00 PM,60,60\n").starts[0].hour == 12


def test_hours_counted_to_24_are_told_by_their_ends(tmp_path: Path) -> None:
    data = read(tmp_path, TO_24)
    assert [start.hour for start in data.starts] == list(range(24))
    assert "hours are counted 1 to 24: hour 1 is from 0:00 to 1:00" in data.notes
    # With 0:00 too, 24:00 is the midnight that the day ends with.
    both = read(tmp_path, "date,time,air F,rh\n06/14/2027,00:00,60,60\n06/14/2027,24:00,61,60\n")
    assert (both.starts[0], both.starts[-1]) == (datetime(2027, 6, 14), datetime(2027, 6, 15))


def test_what_cannot_be_is_told_with_its_row_and_is_missing(tmp_path: Path) -> None:
    data = read(tmp_path, IMPOSSIBLE)
    assert column(data, "wind") == [None, 2.2352]
    assert column(data, "humidity") == [60, None]
    assert [note for note in data.notes if note.startswith("row")] == [
        "row 3: humidity '140' is not possible (0 to 110 %); the hour is not counted as fit",
        "row 2: wind '1,048' is not possible (0 to 253 mph); the hour is not counted as fit",
    ]


def test_rain_is_told_in_words_or_depth_and_gone_readings_in_the_usual_ways(tmp_path: Path) -> None:
    cells = ("yes", "no", "T", "", "NA", "-9999")
    rows = "".join(f"2027-06-14 0{hour}:00,60,60,{cell}\n" for hour, cell in enumerate(cells))
    rain = read(tmp_path, "time,air F,rh,rain in\n" + rows).column("rain")
    assert [None if depth is None else depth > 0 for depth in rain] == [True, False, True, None, None, None]


def test_a_row_that_is_still_being_written_is_left_out(tmp_path: Path) -> None:
    data = read(tmp_path, CUT_SHORT)
    assert len(data) == 1
    assert "row 3 is cut short and was left out: the file was still being written" in data.notes


# Texts that are read, and of which something is told.
IMPOSSIBLE = 'time,air F,rh,wind mph\n2027-06-14 07:00,60,60,"1,048"\n2027-06-14 08:00,60,140,5\n'
TO_24 = "date,time,air F,rh\n" + "".join(f"06/14/2027,{hour:02}:00,60,60\n" for hour in range(1, 25))
CUT_SHORT = "time,air F,rh\n2027-06-14 07:00,60,60\n2027-06-14 08:0"
NOTED = (IMPOSSIBLE, TO_24, CUT_SHORT)
NO_TEXT = bytes(range(256)) * 4
NO_NUMBERS = "time,air C,humidity %\n2027-06-14 07:00,warm,60\n2027-06-14 08:00,17,damp\n2027-06-14 09:00,cold,60\n"
REFUSED = [
    ("", "h.csv: the file is empty"),
    ("a,b\n1,2\n", "h.csv: the file has no hourly weather (give a CSV file with columns such as time, air F"),
    ("time,air,rh\n2027-06-14 07:00,60,60\n", "h.csv:1:2: column 'air' has no unit (write air F or air C)"),
    ("time,air furlongs,rh\n", "h.csv: the file has no hours below its head"),
    ("time,air mph,rh\n2027-06-14 07:00,60,60\n", "h.csv:1:2: 'mph' is not a unit of air (write air F or air C)"),
    (
        "time,air F,humidty %\n2027-06-14 07:00,60,60\n",
        "h.csv:1: the head has no column humidity (did you mean humidity by 'humidty %'?)",
    ),
    ("air F,rh\n60,60\n", "h.csv:1: the head has no column time (name it time; there are: air F, rh)"),
    ("time,air F,rh\n2027-06-14 07:00,warm,60\n", "h.csv:2:2: 'warm' is not a reading of air (write a number in F"),
    ("time,air F,rh\n2027-02-29 07:00,60,60\n", "h.csv:2: '2027-02-29' is not a date (write 2027-06-14 07:00)"),
    ("time,air F,rh\n2027-06-14 25:00,60,60\n", "h.csv:2: '25:00' is not a time of day"),
    ("time,air F,rh\n6/14/2027 13:00 PM,60,60\n", "h.csv:2: '13:00 PM' is not a time of day"),
    ("time,air F,rh\n2027-06-14,60,60\n", "h.csv:2: '' is not a time of day"),
    ("time,air F,rh\n2027-06-14 07:00,60\n2027-06-14 08:00,60,60\n", "h.csv:2: the row has 2 cells"),
    ("time,air F,rh\n2027-06-14 07:00,60,0.6\n", "h.csv:1:3: no humidity lies above 1 % (write percent"),
    ("time,air F,rh\n0001-01-01 07:00,60,60\n", "h.csv:2: '0001-01-01' is not a date"),
    (
        "time,air F,rh\n2027-06-14 07:00,60,60\n2027-06-14 07:20,60,60\n",
        "h.csv:3: '07:20' does not stand whole hours from '07:00' in row 2 (give one row for each hour)",
    ),
    (
        "time,air F,rh\n2027-06-14T07:00-05:00,60,60\n2027-06-14T08:00,60,60\n",
        "h.csv:3: the time has no offset from universal time, as other rows have (write -05:00)",
    ),
    ("time,air F,rh\n2027-06-14 07:00,60,60\n1927-06-14 08:00,60,60\n", "h.csv:3: the hours span from 1927 to 2027"),
]


@pytest.mark.parametrize(("text", "told"), REFUSED)
def test_what_is_no_weather_is_refused_with_its_row(text: str, told: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        read(tmp_path, text)
    assert len(refused.value.problems) == 1
    assert told in str(refused.value.problems[0])


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="the file is not text"):
        read(tmp_path, NO_TEXT)


def test_all_cells_that_are_no_number_are_told_at_once(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        read(tmp_path, NO_NUMBERS)
    told = [(one.line, one.message.split(" ")[0]) for one in refused.value.problems]
    assert told == [(2, "'warm'"), (3, "'damp'"), (4, "'cold'")]
