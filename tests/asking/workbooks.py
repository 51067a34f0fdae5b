"""Workbooks as people and programs make them: written by one library, saved anew by a spreadsheet program."""

import datetime
import io
import subprocess
import zipfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

import openpyxl
import xlsxwriter

Rows = Sequence[Sequence[Any]]

# When a workbook says that it was made: the same cells are the same bytes at any time.
MADE = datetime.datetime(2027, 1, 4)


def written_by_xlsxwriter(sheets: Mapping[str, Rows]) -> bytes:
    """A workbook with the cells of each sheet; texts as text, the rest as the library takes it."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True, "default_date_format": "d-mmm"})
    book.set_properties({"created": MADE})
    for name, rows in sheets.items():
        page = book.add_worksheet(name)
        for row, cells in enumerate(rows):
            for column, cell in enumerate(cells):
                if cell is not None:
                    page.write_string(row, column, cell) if isinstance(cell, str) else page.write(row, column, cell)
    book.close()
    return stream.getvalue()


def filled(content: bytes, fill: Callable[[Any], None]) -> bytes:
    """A workbook opened, filled in by a function and saved, as another program does it."""
    book = openpyxl.load_workbook(io.BytesIO(content))
    fill(book)
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def saved_by_calc(folder: Path, content: bytes, ending: str = "xlsx") -> bytes:
    """A workbook opened and saved anew by the spreadsheet program of LibreOffice."""
    given, out = folder / "given.xlsx", folder / "saved"
    given.write_bytes(content)
    profile = f"-env:UserInstallation=file://{folder / 'profile'}"
    words = ["soffice", "--headless", profile, "--convert-to", ending, "--outdir", str(out), str(given)]
    subprocess.run(words, check=True, capture_output=True, timeout=120)
    return (out / f"given.{ending}").read_bytes()


def with_parts(content: bytes, changes: Mapping[str, bytes | None]) -> bytes:
    """A zip file with parts put in, replaced, or, where None, left out."""
    stream = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            if name not in changes:
                new.writestr(zipfile.ZipInfo(name), old.read(name), zipfile.ZIP_DEFLATED)
        for name, part in changes.items():
            if part is not None:
                new.writestr(zipfile.ZipInfo(name), part, zipfile.ZIP_DEFLATED)
    return stream.getvalue()


def answered(
    answers: Mapping[str, Any],
    party: str = "eifs_source",
    by: str = "L. Ferrow",
    on: Any = "2027-02-01",
    name: str = "Trial",
    number: str = "",
    remarks: Mapping[str, str] | None = None,
) -> bytes:
    """A workbook of questions that came back, with these answers by field."""
    head = [
        "No.",
        "Question",
        "Why it is asked",
        "Unit or form",
        "Example",
        "Holds up",
        "Due",
        "Answer",
        "Remark",
        "Field",
    ]
    told = remarks or {}
    rows = [[None] * 7 + [answer, told.get(field), field] for field, answer in answers.items()]
    labels = {"Project": name, "Project number": number, "Party": party, "Party code": party, "Format": "1"}
    who = [*labels.items(), ("Answered by", by), ("Date", on)]
    return written_by_xlsxwriter({"Questions": [["Questions"], ["Fill in"], head, *rows], "Project": [[], [], *who]})
