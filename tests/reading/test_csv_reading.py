"""A table as CSV is read whatever program wrote it."""

from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.reading.csv_reading import read_csv


def cells(folder: Path, content: bytes) -> dict[tuple[int, int], str]:
    file = folder / "a.csv"
    file.write_bytes(content)
    return {at: cell.words for at, cell in read_csv(file, "a.csv").grid.cells.items()}


TABLE = {(1, 1): "Mark", (1, 2): "Name", (2, 1): "E1", (2, 2): "South, low"}


@pytest.mark.parametrize(
    "content",
    [
        b'Mark,Name\nE1,"South, low"\n',
        b'\xef\xbb\xbfMark,Name\r\nE1,"South, low"\r\n',
        b"Mark;Name\nE1;South, low",
        b"sep=;\nMark;Name\nE1;South, low",
        b"Mark\tName\rE1\tSouth, low\r",
        "Mark\tName\nE1\tSouth, low\n".encode("utf-16"),
        b'"Mark" , "Name"\nE1,"South, low"\n'.replace(b" , ", b","),
    ],
)
def test_signs_codes_and_line_ends_are_told_apart(content: bytes, tmp_path: Path) -> None:
    found = cells(tmp_path, content)
    shift = 1 if content.startswith(b"sep") else 0
    assert {(row - shift, column): text for (row, column), text in found.items()} == TABLE


def test_letters_of_the_windows_code_page_are_read_and_told(tmp_path: Path) -> None:
    file = tmp_path / "a.csv"
    file.write_bytes("Mark,Name\nE1,Façade\n".encode("cp1252"))
    table = read_csv(file, "a.csv")
    assert table.grid.words(2, 2) == "Façade"
    assert table.notes == ("a.csv: not in UTF-8; read as cp1252",)


def test_a_quoted_cell_may_have_lines_and_quotes(tmp_path: Path) -> None:
    assert cells(tmp_path, b'Mark,Name\nE1,"a ""b""\nc"\nE2,d\n')[3, 1] == "E2"


# What stands in the file, and words of the message.
NO_TABLE = [
    (b"", "the table is empty"),
    (b"\n\n,,\n", "the table is empty"),
    (b'Mark,Name\nE1,"a\n', "row 2 is not CSV"),
    (b"\x81\x8d\xff\n", "the table is not text"),
    (b"Mark" + b",x" * 200, "more than 21,000 rows or 100 columns"),
    (b"E1\n" * 22_000, "more than 21,000 rows or 100 columns"),
    (b"Mark\n" + b"x" * 200_000, "not CSV"),
]


@pytest.mark.parametrize(
    ("content", "message"),
    NO_TABLE,
)
def test_what_is_no_table_is_told_in_one_line(content: bytes, message: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        cells(tmp_path, content)
    assert len(refused.value.problems) == 1
    assert message in str(refused.value)
