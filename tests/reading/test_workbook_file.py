"""What is named as a workbook is recognized, and refused in one line, before any library opens it."""

import io
import random
import struct
import zipfile
from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.reading.workbook_reading import read_workbook
from tests.asking.workbooks import saved_by_calc, with_parts, written_by_xlsxwriter

PLAIN = written_by_xlsxwriter({"A": [["x", 1], [None, 2.5]]})
TYPES = "[Content_Types].xml"
ENTITIES = b'<!DOCTYPE a [<!ENTITY x "y">]><a>&x;</a>'
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def told(folder: Path, content: bytes, name: str = "a.xlsx") -> str:
    file = folder / name
    file.write_bytes(content)
    with pytest.raises(Refused) as refused:
        read_workbook(file, name)
    return str(refused.value)


def zipped(parts: dict[str, bytes]) -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in parts.items():
            archive.writestr(name, part)
    return stream.getvalue()


def macro_types() -> bytes:
    with zipfile.ZipFile(io.BytesIO(PLAIN)) as archive:
        plain = b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"
        return archive.read(TYPES).replace(plain, b"application/vnd.ms-excel.sheet.macroEnabled.main+xml")


def encrypted_flag() -> bytes:
    """The plain workbook whose entries say that they are encrypted, in both places."""
    content = bytearray(PLAIN)
    for sign, at in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        place = content.find(sign)
        while place >= 0:
            content[place + at] |= 1
            place = content.find(sign, place + 4)
    return bytes(content)


def far_below() -> bytes:
    """A workbook with a cell far below: told, and not left out in silence."""
    content = written_by_xlsxwriter({"A": [["x"]]})
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        sheet = archive.read("xl/worksheets/sheet1.xml")
    row = b'<row r="1000000"><c r="A1000000"><v>1</v></c></row></sheetData>'
    return with_parts(content, {"xl/worksheets/sheet1.xml": sheet.replace(b"</sheetData>", row)})


# What stands in the file, and what is told of it.
NO_WORKBOOK = [
    (b"", "the file is empty"),
    (b"\0" * 99, "this is not a workbook"),
    (b"Mark,Width\n", "a table may be a CSV file"),
    (b"%PDF-1.7\n", "this is a PDF, not a workbook"),
    (OLE + b"\0" * 600 + "Workbook".encode("utf-16-le"), "the old format (.xls)"),
    (
        OLE + b"\0" * 600 + "EncryptedPackage".encode("utf-16-le"),
        "the workbook is encrypted (save it without a password)",
    ),
    (OLE + b"\0" * 600 + "WordDocument".encode("utf-16-le"), "a word-processing document"),
    (zipped({"word/document.xml": b"<a/>"}), "a word-processing document"),
    (zipped({"ppt/presentation.xml": b"<a/>"}), "a presentation"),
    (zipped({"xl/workbook.bin": b"a"}), "a binary workbook (.xlsb)"),
    (zipped({"a.txt": b"a"}), "a zip file, not a workbook"),
    (zipped({"mimetype": b"application/vnd.oasis.opendocument.spreadsheet"}), "an OpenDocument file (.ods or .odt)"),
    (written_by_xlsxwriter({f"S{number}": [["x"]] for number in range(41)}), "the workbook has more than 40 sheets"),
    (far_below(), "the sheet 'A' has more than 21,000 rows"),
    (with_parts(PLAIN, {"xl/vbaProject.bin": b"a"}), "the workbook holds macros"),
    (with_parts(PLAIN, {TYPES: macro_types()}), "the workbook holds macros"),
    (with_parts(PLAIN, {"xl/media/picture.png": b"\0" * 30_000_000}), "unpacks to more than 16 MB"),
    (with_parts(PLAIN, {"xl/sharedStrings.xml": ENTITIES}), "damaged or cut short"),
    (with_parts(PLAIN, {"xl/worksheets/sheet1.xml": b"<a>" * 5_000}), "damaged or cut short"),
    (with_parts(PLAIN, {"xl/worksheets/sheet1.xml": None}), "damaged or cut short"),
    (with_parts(PLAIN, {"xl/workbook.xml": b"<a/>"}), "damaged or cut short"),
    (PLAIN[: len(PLAIN) // 2], "damaged or cut short"),
    (encrypted_flag(), "the workbook is encrypted"),
]


@pytest.mark.parametrize(
    ("content", "message"),
    NO_WORKBOOK,
    ids=lambda value: value[:30] if isinstance(value, str) else "",
)
def test_what_is_no_workbook_to_be_opened_is_told_in_one_line(content: bytes, message: str, tmp_path: Path) -> None:
    line = told(tmp_path, content)
    assert line.startswith("a.xlsx: ")
    assert message in line
    assert "\n" not in line


def test_files_of_a_spreadsheet_program_in_other_formats_are_told_how_to_save(tmp_path: Path) -> None:
    for ending, message in (("ods", "OpenDocument"), ("xls", "the old format (.xls)")):
        (tmp_path / ending).mkdir()
        assert message in told(tmp_path, saved_by_calc(tmp_path / ending, PLAIN, ending))


def test_a_workbook_of_200_mb_is_refused_by_its_size_alone(tmp_path: Path) -> None:
    file = tmp_path / "a.xlsx"
    with file.open("wb") as large:
        large.truncate(200_000_000)
    with pytest.raises(Refused, match="larger than 20 MB"):
        read_workbook(file, "a.xlsx")


def test_a_small_file_that_unpacks_to_200_mb_is_refused_by_its_directory(tmp_path: Path) -> None:
    content = with_parts(PLAIN, {"xl/worksheets/sheet9.xml": b" " * 200_000_000})
    assert len(content) < 1_000_000
    assert "unpacks to more than 16 MB" in told(tmp_path, content)


def test_a_directory_that_lies_about_a_size_unpacks_no_more(tmp_path: Path) -> None:
    content = bytearray(with_parts(PLAIN, {"xl/worksheets/sheet9.xml": b" " * 40_000_000}))
    for place in range(len(content) - 4):
        if content[place : place + 4] == struct.pack("<I", 40_000_000):
            content[place : place + 4] = struct.pack("<I", 9)
    assert "damaged" in told(tmp_path, bytes(content))


def test_a_mutated_workbook_is_read_or_refused_in_one_line(tmp_path: Path) -> None:
    chance = random.Random(7)
    file, refused = tmp_path / "a.xlsx", 0
    for _ in range(150):
        content = bytearray(PLAIN)
        for _ in range(chance.randint(1, 6)):
            content[chance.randrange(len(content))] = chance.randrange(256)
        file.write_bytes(content[: chance.randrange(len(content))] if chance.random() < 0.2 else content)
        try:
            read_workbook(file, "a.xlsx")
        except Refused as fault:
            assert len(fault.problems) == 1
            refused += 1
    assert 50 < refused < 150


def test_mutated_parts_are_read_or_refused_in_one_line(tmp_path: Path) -> None:
    chance = random.Random(8)
    file, refused = tmp_path / "a.xlsx", 0
    with zipfile.ZipFile(io.BytesIO(PLAIN)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    for _ in range(150):
        name = chance.choice(sorted(parts))
        content = bytearray(parts[name])
        for _ in range(chance.randint(1, 4)):
            content[chance.randrange(len(content))] = chance.choice(b"<>&\"'/0A \xff")
        file.write_bytes(with_parts(PLAIN, {name: bytes(content)}))
        try:
            read_workbook(file, "a.xlsx")
        except Refused as fault:
            assert len(fault.problems) == 1
            refused += 1
    assert 20 < refused < 150
