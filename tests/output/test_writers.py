"""The formats of the whole set: their files in a package, and those written where none is named."""

import csv
import hashlib
import io
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from specgen.building import build
from specgen.formats.pdf import libraries
from specgen.output import writers
from tests.documents.support import document_of
from tests.support import EXAMPLES, SMALL, merged, written


def files_of(folder: Path, *formats: str, example: str = "clean", only: tuple[str, ...] = ()) -> dict[str, bytes]:
    build(EXAMPLES / example / "project.yaml", folder / "out", formats, only, draft=True)
    return {file.name: file.read_bytes() for file in (folder / "out").iterdir() if file.name != "manifest.json"}


def test_lists_stand_beside_their_documents_and_in_one_workbook(tmp_path: Path) -> None:
    files = files_of(tmp_path, "csv", "xlsx")
    assert sorted(files) == [
        "D03-submittal-register.csv",
        "D07-joint-list.csv",
        "D07-panel-list.csv",
        "D13-areas.csv",
        "D18-attachments.csv",
        "D19-open-items.csv",
        "registers-and-lists.xlsx",
    ]
    book = openpyxl.load_workbook(io.BytesIO(files["registers-and-lists.xlsx"]))
    assert book.sheetnames == ["Submittal register", "Attachments", "Open items", "Panel list", "Joint list", "Areas"]
    for name, page in zip(("D03-submittal-register", "D18-attachments"), book.worksheets, strict=False):
        rows = list(csv.reader(io.StringIO(files[f"{name}.csv"].decode("utf-8-sig"))))
        told = [[getattr(c.value, "date", lambda c=c: c.value or "")() for c in row] for row in page.rows]
        assert [[str(cell) for cell in row] for row in told] == rows


def test_every_page_of_a_draft_of_the_workbook_is_marked(tmp_path: Path) -> None:
    content = files_of(tmp_path, "xlsx")["registers-and-lists.xlsx"]
    for page in openpyxl.load_workbook(io.BytesIO(content)).worksheets:
        assert page.oddHeader.left.text == "Wickerwell Branch Library | Submittal 07 24 00-002"
        assert page.oddHeader.right.text == "Draft of revision 0"
        assert page.oddFooter.left.text == "March 1, 2027"


def test_a_document_without_a_list_has_none(tmp_path: Path) -> None:
    assert files_of(tmp_path, "csv", "xlsx", "txt", only=("D08",)).keys() == {"D08-installation-procedure.txt"}


def test_drawings_are_files_with_the_bytes_the_pages_are_set_from(tmp_path: Path) -> None:
    files = files_of(tmp_path, "svg", only=("D07", "D09"))
    assert sorted(files) == [
        "D07-figure-1-joint-profile.svg",
        "D07-figure-2-elevations.svg",
        "D07-figure-3-elevations.svg",
        "D07-figure-4-elevations.svg",
        "D07-figure-5-sealant-joint.svg",
        "D09-figure-1-mockup-sketch.svg",
    ]
    assert files["D09-figure-1-mockup-sketch.svg"] == _drawn("D09")[0]
    assert [content for name, content in sorted(files.items()) if name.startswith("D07")] == _drawn("D07")
    assert all(content.startswith(b"<svg") for content in files.values())


def _drawn(document: str) -> list[bytes]:
    return [block.svg.encode() for block in document_of("clean", document).blocks if hasattr(block, "svg")]


def test_names_of_any_script_and_texts_like_formulas_reach_both_lists(tmp_path: Path) -> None:
    items = {"I1": {"title": "=1+1", "section": "07 24 00"}, "I2": {"title": "קיר חיצוני", "section": "07 24 10"}}
    file = written(tmp_path, merged(SMALL, {"contract": {"items": items}, "project": {"name": "ספרייה"}}))
    build(file, tmp_path / "out", ("csv", "xlsx"), ("D03",), draft=True)
    rows = list(csv.reader(io.StringIO((tmp_path / "out" / "D03-submittal-register.csv").read_text("utf-8-sig"))))
    assert [row[3] for row in rows[1:]] == ["'=1+1", "קיר חיצוני"]
    page = openpyxl.load_workbook(tmp_path / "out" / "registers-and-lists.xlsx").worksheets[0]
    assert [page[f"D{n}"].value for n in (2, 3)] == ["=1+1", "קיר חיצוני"]
    assert page["D2"].data_type == "s"
    assert page.oddHeader.left.text == "ספרייה"


def test_the_same_input_gives_the_same_bytes(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    first, second = (files_of(tmp_path / name, "csv", "xlsx", "svg", example="metric") for name in "ab")
    assert first == second
    assert len({hashlib.sha256(content).digest() for content in first.values()}) == len(first) > 3


def test_a_package_that_names_no_format_has_all_that_are_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    always = {"docx", "html", "csv"}
    assert always | {"xlsx"} <= set(writers.default_formats())
    assert not {"txt", "svg"} & set(writers.default_formats())

    def find_nothing(name: str) -> Any:
        return None

    for module in (writers, libraries):
        monkeypatch.setattr(module, "find_spec", find_nothing)
    assert set(writers.default_formats()) == always
