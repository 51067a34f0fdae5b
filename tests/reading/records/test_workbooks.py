"""A record as a workbook, made by another library: dates, times, and shares as a spreadsheet program holds them."""

import datetime
from pathlib import Path
from typing import Any

import openpyxl

from specgen.model.record import EntryPlace
from specgen.quantities.quantity import Quantity
from tests.asking.workbooks import written_by_xlsxwriter
from tests.reading.records.support import read, told


def book_of(folder: Path, sheets: dict[str, list[list[Any]]], looks: dict[str, str] | None = None) -> bytes:
    """A workbook with these rows on its sheets; `looks` are number formats by the name of a cell on the first sheet."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    for cell, look in (looks or {}).items():
        book.worksheets[0][cell].number_format = look
    book.save(folder / "made.xlsx")
    return (folder / "made.xlsx").read_bytes()


def test_days_times_numbers_and_percentages_of_cells(tmp_path: Path) -> None:
    head = ["date", "elevation", "started_at", "ended_at", "air (F)", "humidity", "stirred", "gust"]
    rows = [
        head,
        [datetime.date(2027, 6, 15), "E1", datetime.time(7, 10), 0.3506944, 61, 0.58, True, 7],
        [46188, "E2", "7:10 am", datetime.time(8, 25), 60.5, 58, "x", "7 mph"],
    ]
    records = read(tmp_path, book_of(tmp_path, {"June": rows}, {"F2": "0%", "H2": '0" mph"'}), "log.xlsx")
    assert not records.faults
    first, second = records.of("log")
    assert first.values == {
        "date": datetime.date(2027, 6, 15),
        "elevation": "E1",
        "started_at": datetime.time(7, 10),
        "ended_at": datetime.time(8, 25),  # 505 of the 1,440 minutes of a day
        "air": Quantity.of(61, "F"),
        "humidity": 58,
        "stirred": True,
        "gust": Quantity.of(7, "mph"),
    }
    # Day 1 is 1900-01-01, and 1900 counts as a leap year: ECMA-376, Part 1, 18.17.4.1.
    assert second.get("date") == datetime.date(2026, 6, 15)
    assert second.place == EntryPlace("log.xlsx", 3, 0, "June")


def test_each_sheet_is_a_table_of_its_own_and_one_without_titles_is_passed_over(tmp_path: Path) -> None:
    sheets = {
        "notes": [["read at the wall"]],
        "log": [["date", "elevation"], [datetime.date(2027, 6, 15), "E1"]],
        "release": [["date", "elevation"], [datetime.date(2027, 6, 16), "E2"]],
    }
    records = read(tmp_path, book_of(tmp_path, sheets), "log.xlsx")
    assert [len(records.of(name)) for name in ("log", "release")] == [1, 1]


def test_faults_are_told_by_sheet_and_cell(tmp_path: Path) -> None:
    rows = [
        ["date", "elevation", "wind (mph)", "air"],
        [datetime.datetime(2027, 6, 15, 7, 10), "E9", 1048, 61],
    ]
    records = read(tmp_path, book_of(tmp_path, {"log": rows}), "log.xlsx")
    assert told(records.faults) == [
        ("log.xlsx, log!A2", "date", "the cell holds a day and a time, 2027-06-15 07:10"),
        ("log.xlsx, log!B2", "elevation", "there is no elevation 'E9'"),
        ("log.xlsx, log!C2", "wind", "1048 mph is above 120 mph, outside the range of this field"),
        ("log.xlsx, log!D2", "air", "the column tells no unit"),
    ]


def test_a_formula_without_a_value_is_told_and_one_with_a_value_is_read(tmp_path: Path) -> None:
    rows = [["date", "elevation", "humidity"], [datetime.date(2027, 6, 15), "E1", "=50+8"]]
    records = read(tmp_path, book_of(tmp_path, {"log": rows}), "log.xlsx")
    assert told(records.faults) == [("log.xlsx, log!C2", "humidity", "the cell holds a formula without a value")]


def test_a_workbook_of_another_library_and_a_broken_one(tmp_path: Path) -> None:
    good = written_by_xlsxwriter({"log": [["date", "elevation"], ["2027-06-15", "E1"]]})
    assert len(read(tmp_path, good, "log.xlsx").of("log")) == 1
    (fault,) = read(tmp_path, good[: len(good) // 2], "log.xlsx").faults
    assert (fault.file, fault.message) == ("log.xlsx", "the workbook is damaged or cut short")
