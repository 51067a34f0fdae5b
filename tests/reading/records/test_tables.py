"""A record as CSV: columns by name or label in any order, units in the head or the cell, and its hard cases.

What a cell means follows common practice, no source, save where a test names one.
"""

import datetime
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.model.record import EntryPlace
from specgen.quantities.quantity import Quantity
from specgen.reading.grid import Cell
from specgen.reading.records import cell_reading
from tests.reading.records.faulty import CHANGED, SHIFT, TABLES
from tests.reading.records.support import read, site_of, survey, told

DAY = datetime.date(2027, 6, 15)


def test_columns_stand_in_any_order_under_a_name_or_a_label_with_units_in_the_head_or_the_cell(tmp_path: Path) -> None:
    records = read(
        tmp_path,
        "Peak gust,air (F),Relative humidity,Entry date,elevation,STEP,started at\n"
        "7 mph,61,58%,2027-06-15,E1,gloss,07:10\n"
        "12 km/h,60.5,58,6/15/2027,south face,Gloss,9:10 am\n",
    )
    first, second = records.of("log")
    assert (records.faults, records.remarks) == ((), ())
    assert first.values == {
        "gust": Quantity.of(7, "mph"),
        "air": Quantity.of(61, "F"),
        "humidity": 58,
        "date": DAY,
        "elevation": "E1",
        "step": "gloss",
        "started_at": datetime.time(7, 10),
    }
    assert second.get("gust") == Quantity.of(12, "km/h")
    assert (second.get("date"), second.get("started_at")) == (DAY, datetime.time(9, 10))
    assert (second.get("air"), second.get("humidity")) == (Quantity.of("60.5", "F"), 58)
    assert first.place == EntryPlace("log.csv", 2)


def test_a_byte_order_mark_semicolons_and_decimal_commas_are_read(tmp_path: Path) -> None:
    text = "\ufeffdate;elevation;air (C);wind;water\r\n2027-06-15;E1;12,5;1,5 m/s;6,5\r\n"
    records = read(tmp_path, text.encode(), change={"package": {"units": "si"}})
    (entry,) = records.of("log")
    assert not records.faults
    assert entry.get("air") == Quantity.of("12.5", "C")
    assert entry.get("wind") == Quantity.of("1.5", "m/s")
    assert entry.get("water") == Fraction(13, 2)


def test_a_comma_that_may_part_thousands_is_asked_back(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a comma that may part thousands"])
    assert told(records.faults) == [("log.csv, B2", "water_added", "the comma of '1,200' can be read in two ways")]
    assert records.of("log")[1].get("water_added") == Quantity.of("0.95", "mL")


def test_a_file_saved_in_utf_16_with_tabs_is_read_and_one_of_the_windows_page_is_told(tmp_path: Path) -> None:
    text = "date\televation\tarea\n2027-06-15\tE1\tcaf\u00e9 side\n"
    assert read(tmp_path, text.encode("utf-16")).of("log")[0].get("area") == "caf\u00e9 side"
    old = read(tmp_path, text.encode("cp1252"))
    assert old.of("log")[0].get("area") == "caf\u00e9 side"
    assert [remark.message for remark in old.remarks] == ["not in UTF-8; read as cp1252"]


def test_all_faults_of_a_file_are_told_together_each_at_its_cell_and_the_other_readings_are_kept(
    tmp_path: Path,
) -> None:
    records = read(tmp_path, TABLES["faults of cells"])
    assert told(records.faults) == [
        ("log.csv, D2", "wind", "1,048 mph is above 120 mph, outside the range of this field"),
        ("log.csv, E2", "air", "the column tells no unit"),
        ("log.csv, B3", "elevation", "there is no elevation 'E9'"),
        ("log.csv, C3", "step", "'glos' is not a choice for this field"),
        ("log.csv, F3", "humidity", "580 is above 100, outside the range of this field"),
        ("log.csv, G3", "started_at", "'25:10' is not a time of day"),
    ]
    first, second = records.of("log")
    assert "wind" not in first.values
    assert (first.get("humidity"), first.get("step")) == (58, "gloss")
    assert second.values == {"date": DAY, "wind": Quantity.of(5, "mph")}
    hints = [fault.hint for fault in records.faults]
    assert hints[1] == "call it air (F) or air (C)"
    assert hints[3].startswith("did you mean gloss?")


def test_a_column_of_another_collection_is_told_and_one_of_none_is_not_read(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a column of another collection"])
    log = "the entries of the site record"
    assert told(records.faults) == [
        ("log.csv, D1", "", f"'hours_dry' is a column of the releases between coats, not of {log}"),
        ("log.csv, F1", "", f"'humidty' is not a column of {log}"),
    ]
    (remark,) = records.remarks
    assert (remark.file, remark.hint) == ("log.csv, E1", "it is not read")


def test_the_same_column_twice_and_a_unit_of_something_else_are_told_at_the_head(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a column twice, and a unit of something else"])
    assert [(fault.file, fault.message) for fault in records.faults][:2] == [
        ("log.csv, C1", "the columns 'air (F)' and 'Air temperature (F)' are both air"),
        ("log.csv, D1", "'psi' is not a unit of speed"),
    ]


@pytest.mark.parametrize(
    ("head", "collection"),
    [
        ("step,elevation,area,date,time,hours_dry,by", "release"),
        ("done_on,elevation,step,outcome,by", "inspection"),
        ("criterion,reading,passed,signed_by", "result"),
    ],
)
def test_the_collection_of_a_table_is_found_by_its_columns(head: str, collection: str, tmp_path: Path) -> None:
    cells = {
        "step": "primer", "elevation": "E1", "area": "left", "date": "2027-06-15", "time": "07:00", "hours_dry": "15",
        "by": "Plumb Line", "done_on": "2027-06-15", "outcome": "accepted", "criterion": "gloss", "reading": "74",
        "passed": "yes", "signed_by": "L. Novak",
    }  # fmt: skip
    records = read(tmp_path, f"{head}\n{','.join(cells[name] for name in head.split(','))}\n")
    assert not records.faults
    assert len(records.of(collection)) == 1
    assert set(records.of(collection)[0].values) == set(head.split(","))


def test_settings_of_the_mockup_are_values_of_the_project_and_a_second_one_is_told(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        "a.csv": "gun,stream_length,water\nG1,7-1/2 in,6\n",
        "b.yaml": "format: 1\naccepted: {water: 7, distance: 18 in}\n",
    }
    project = survey(tmp_path, files, {"guns": {"G1": {}}})
    assert project.value(("accepted", "stream_length")) == Quantity.of("7.5", "in")
    assert project.value(("accepted", "distance")) == Quantity.of(18, "in")
    assert project.get(("accepted", "water")) == 6
    (fault,) = project.records.faults
    assert (fault.file, fault.line, fault.path) == ("b.yaml", 2, "accepted.water")
    assert fault.message == "another value stands in a.csv, row 2"


def test_lists_ticks_and_blanks_of_cells(tmp_path: Path) -> None:
    records = read(
        tmp_path,
        'date,step,panels,stirred,strained,tank_clean,area\n2027-06-15,gloss,"E1-03, E1-04",x,no,,n/a\n'
        "2027-06-16,gloss,E1-05; E1-06,Y,N,-,\n\n,,,,,,\n",
    )
    first, second = records.of("log")
    assert first.get("panels") == ("E1-03", "E1-04")
    assert (first.get("stirred"), first.get("strained")) == (True, False)
    assert second.get("panels") == ("E1-05", "E1-06")
    assert not {"tank_clean", "area"} & {*first.values, *second.values}


def test_an_empty_list_of_faults_is_a_value(tmp_path: Path) -> None:
    text = "step,elevation,date,hours_dry,defects\nprimer,E1,2027-06-15,15,none\nprimer,E2,2027-06-15,15,damp\n"
    first, second = read(tmp_path, text).of("release")
    assert (first.get("defects"), second.get("defects")) == ((), ("damp",))


def test_an_entry_that_stands_twice_is_told_and_counted_once_in_one_file_or_in_two(tmp_path: Path) -> None:
    other = "air (F),started_at,step,elevation,date\n61.0,7:10 am,gloss,e1,2027-06-15\n60,9:10 am,gloss,E1,2027-06-15\n"
    project = survey(tmp_path, {"mon.csv": TABLES["an entry twice"], "all.csv": other})
    records = project.records
    assert len(records.of("log")) == 2
    assert [(remark.file, remark.message) for remark in records.remarks] == [
        ("mon.csv, row 3", "this entry stands already in mon.csv, row 2"),
        ("all.csv, row 2", "this entry stands already in mon.csv, row 2"),
    ]
    assert [(file.name, file.entries) for file in records.files] == [("mon.csv", 1), ("all.csv", 1)]
    assert project.members[("log",)] == ("0", "1")


def test_two_readings_of_one_moment_that_differ_are_told_and_both_kept(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["two readings of one moment"])
    assert len(records.of("log")) == 2
    (remark,) = records.remarks
    assert (remark.file, remark.message) == ("log.csv, row 3", "air differs from the entry in log.csv, row 2")


def test_two_crews_on_one_face_at_one_time_are_two_entries_without_a_word(tmp_path: Path) -> None:
    rows = "2027-06-15,E1,gloss,red,07:10,4\n2027-06-15,E1,gloss,blue,07:10,5\n"
    records = read(tmp_path, f"date,elevation,step,crew,started_at,wet_film (mil)\n{rows}")
    assert (len(records.of("log")), records.remarks) == (2, ())


def test_a_gust_below_the_wind_is_told_at_its_row(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a gust below the wind"])
    assert told(records.faults) == [("log.csv, row 2", "gust", "3 mph is below 9 mph, the wind of the same entry")]


def test_a_day_that_no_calendar_has_is_told_and_a_leap_day_is_read(tmp_path: Path) -> None:
    # 2028 is a leap year and 2027 is none: the Gregorian calendar, ISO 8601.
    records = read(tmp_path, TABLES["a day of no calendar"])
    assert [entry.get("date") for entry in records.of("log")][:2] == [datetime.date(2028, 2, 29)] * 2
    assert told(records.faults) == [("log.csv, A4", "date", "'2027-02-29' is not a date")]


def test_a_shift_over_midnight_ends_on_the_next_day_and_one_longer_than_a_shift_is_told(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["longer than a shift"])
    night, turned = records.of("log")
    assert night.ended == datetime.datetime(2027, 6, 16, 1, 15)
    assert (turned.ended, [remark.file for remark in records.remarks]) == (
        datetime.datetime(2027, 6, 16, 7, 10),
        ["log.csv, row 3"],
    )
    assert records.remarks[0].message == "it ends 22 hours after it began, on the next day"


HALVES = "date,elevation,started_at\n2027-07-13,E1,6:20 am\n2027-07-13,E1,1:20 PM\n2027-07-14,E1,"


def test_a_time_without_am_or_pm_beside_others_with_them_is_told_where_it_lies_outside_the_shift(
    tmp_path: Path,
) -> None:
    text, change = CHANGED["a time of neither half outside the shift"]
    records = read(tmp_path, text, change=change)
    (remark,) = records.remarks
    assert (remark.file, remark.hint) == ("log.csv, C4", "write 1:20 am or 1:20 pm")
    assert remark.message == (
        "started_at: 1:20 has no am or pm, as others of its column have; it is read as 01:20, outside the shift"
    )
    assert records.of("log")[2].get("started_at") == datetime.time(1, 20)


@pytest.mark.parametrize("cell", ["9:40", "13:20", "0120", "01:20", "4:10 am"])
def test_a_time_within_the_shift_or_of_a_clock_of_24_hours_is_taken_as_it_stands(tmp_path: Path, cell: str) -> None:
    assert read(tmp_path, f"{HALVES}{cell}\n", change=SHIFT).remarks == ()


def test_a_column_without_am_and_pm_is_one_of_24_hours(tmp_path: Path) -> None:
    text = "date,elevation,started_at\n2027-07-13,E1,1:20\n2027-07-14,E1,7:20\n"
    assert read(tmp_path, text, change=SHIFT).remarks == ()


def test_where_no_shift_is_known_each_time_without_am_or_pm_beside_others_with_them_is_told(tmp_path: Path) -> None:
    (remark,) = read(tmp_path, TABLES["a time of neither half"]).remarks
    assert remark.message == "started_at: 9:40 has no am or pm, as others of its column have; it is read as 09:40"


def test_a_row_longer_than_the_head_is_told(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a row longer than the head"])
    assert told(records.faults) == [("log.csv, C2", "", "the row has more cells than the head has columns")]


def test_the_head_may_stand_below_a_title_and_a_file_without_one_is_refused(tmp_path: Path) -> None:
    records = read(tmp_path, "Week 24\n\ndate,elevation\n2027-06-15,E1\n")
    assert records.of("log")[0].place.line == 4
    (fault,) = read(tmp_path, TABLES["no titles"]).faults
    assert (fault.file, fault.message) == ("log.csv", "no row has the titles of a record")


def test_what_was_read_of_a_file_that_grows_is_told_by_its_entries_and_a_last_row_cut_short(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["the last row cut short"])
    assert records.files[0].entries == 2
    assert [remark.message for remark in records.remarks] == ["the last row has no line end: it may be cut short"]
    assert told(records.faults) == [("log.csv, B3", "elevation", "there is no elevation 'E'")]


def test_a_step_that_no_wall_takes_is_told_once(tmp_path: Path) -> None:
    text, change = CHANGED["a step that no wall takes"]
    records = read(tmp_path, text, change=change)
    (remark,) = records.remarks
    assert remark.message == "no wall of this project takes the step water-resistive barrier (WRB)"


def test_more_faults_than_anyone_reads_are_counted(tmp_path: Path) -> None:
    faults = read(tmp_path, TABLES["many faults"]).faults
    assert len(faults) == 101
    assert faults[-1].message == "and 50 more faults"


def test_a_text_is_converted_once_however_many_rows_say_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    real = cell_reading.read_answer

    def count_asked(cell: Cell, *more: Any) -> Any:
        asked.append(str(cell.value))
        return real(cell, *more)

    monkeypatch.setattr(cell_reading, "read_answer", count_asked)
    rows = "".join(f"2027-06-15,E{1 + n % 3},{n % 60:02d} psi\n" for n in range(3_000))
    read(tmp_path, f"date,elevation,atomizing_pressure\n{rows}")
    assert len(asked) == 1 + 3 + 60


def test_entries_of_a_file_are_reached_as_members_are(tmp_path: Path) -> None:
    project = survey(tmp_path, {"log.csv": "date,elevation,air (F)\n2027-06-15,E1,61\n2027-06-15,E2,62\n"})
    assert project.view(("log", "1")).air == Quantity.of(62, "F")
    assert project.view(("log", "1")).elevation.mark == "E2"
    assert project.find_referring(("log",), "elevation", "E2") == ("1",)
    place = project.place(("log", "1", "air"))
    assert (place.file, place.line) == ("log.csv", 3)
    assert project.inputs[-1].use == "records"


def test_a_file_of_another_kind_is_refused_with_what_would_be_right(tmp_path: Path) -> None:
    assert site_of(tmp_path).records.files == ()
    (fault,) = read(tmp_path, "hello", "log.txt").faults
    assert (fault.message, fault.hint) == (
        "a record is a YAML, CSV, XLSX, or PDF file",
        "name a YAML, CSV, XLSX, or PDF file",
    )
