"""The lists as CSV: read back by the standard library, and safe in a spreadsheet."""

import csv
import datetime
import io

import pytest

from specgen.formats.csv_sheet import write_csv
from specgen.model.sheet import Sheet, SheetColumn
from tests.formats.sheets import AWKWARD, LIKE_FORMULAS, sheet_of, texts


def read(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def test_a_sheet_is_a_table_with_its_head_and_dates_a_program_reads() -> None:
    content = write_csv(sheet_of(("I1", datetime.date(2027, 3, 9), -12.5), ("I2", None, 3)))
    assert content == b'\xef\xbb\xbf"Item","Due","Width, in"\r\n"I1","2027-03-09",-12.5\r\n"I2","",3\r\n'
    assert datetime.date.fromisoformat(read(content)[1][1]) == datetime.date(2027, 3, 9)


@pytest.mark.parametrize("text", LIKE_FORMULAS)
def test_what_a_spreadsheet_would_run_gets_one_apostrophe(text: str) -> None:
    assert read(write_csv(texts(text)))[1][0] == f"'{text}"


@pytest.mark.parametrize("text", [*AWKWARD, "I1", "a = b", "1-2", "'", "it's", " a"])
def test_any_other_text_stands_as_it_is(text: str) -> None:
    assert read(write_csv(texts(text)))[1][0] == text


def test_texts_stand_in_quotes_whatever_splits_a_list_elsewhere() -> None:
    assert b'"a;=1+1"' in write_csv(texts("a;=1+1"))


def test_what_cannot_be_written_is_left_out() -> None:
    assert read(write_csv(texts("a\x00b\ud800c", "\x00=1")))[1:] == [["abc", "", ""], ["'=1", "", ""]]


def test_an_empty_list_has_its_head_and_says_so() -> None:
    empty = Sheet("Register", (SheetColumn("Item", 9), SheetColumn("Due", 9)), (), "No items in the register")
    assert read(write_csv(empty)) == [["Item", "Due"], ["No items in the register"]]
    assert read(write_csv(empty._replace(empty=""))) == [["Item", "Due"]]


def test_ten_thousand_rows_are_all_there() -> None:
    rows = read(write_csv(sheet_of(*((f"I{n}", None, n) for n in range(10_000)))))
    assert (len(rows), rows[-1]) == (10_001, ["I9999", "", "9999"])
