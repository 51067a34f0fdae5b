"""What the sheets of a package list: types and figures retyped from the examples and from small projects."""

import datetime
import shutil
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.documents.context import DocumentContext
from specgen.documents.sheets import make_sheets
from specgen.model.sheet import Sheet
from tests.documents.support import context_of, context_of_example
from tests.support import EXAMPLES

EVERY = frozenset({"D03", "D07", "D13", "D18", "D19"})
ITEM = {"section": "07 24 00", "title": "Shop drawings", "group": "action"}


def sheets_of(context: Any, *documents: str) -> dict[str, Sheet]:
    return {sheet.name: sheet for _, sheet in make_sheets(context, frozenset(documents or EVERY))}


def cells_of(sheet: Sheet, row: int) -> dict[str, Any]:
    return {column.title: cell for column, cell in zip(sheet.columns, sheet.rows[row], strict=True)}


def test_each_sheet_stands_where_its_document_is_in_the_set() -> None:
    context = context_of_example("clean")
    names = ["Submittal register", "Attachments", "Open items", "Panel list", "Joint list", "Areas"]
    assert list(sheets_of(context)) == names
    assert list(sheets_of(context, "D08", "D07")) == ["Panel list", "Joint list"]
    assert sheets_of(context, "D08") == {}


def test_every_row_has_a_cell_of_its_kind_for_each_column() -> None:
    kinds: dict[str, tuple[type, ...]] = {"text": (str,), "date": (datetime.date,), "number": (int, float)}
    for name in ("clean", "old-wall", "metric"):
        for sheet in sheets_of(context_of_example(name)).values():
            assert len(sheet.name) <= 31
            assert len({column.title for column in sheet.columns}) == len(sheet.columns) <= 26
            for row in sheet.rows:
                pairs = list(zip(sheet.columns, row, strict=True))
                assert all(cell is None or isinstance(cell, kinds[column.kind]) for column, cell in pairs)


def test_the_register_has_real_dates_and_leaves_the_review_to_be_filled_in() -> None:
    register = sheets_of(context_of_example("clean"))["Submittal register"]
    assert len(register.rows) == 12
    item = cells_of(register, 1)
    assert (item["Item"], item["Section"], item["Paragraph"]) == ("I2", "07 24 00", "1.3.B")
    assert item["Submit"] == datetime.date(2027, 3, 1)
    submitted = datetime.date(2027, 3, 1)  # the date of the set
    assert (item["Submitted"], item["Action"], item["Date of action"]) == (submitted, None, None)


def test_the_register_of_a_contract_by_numbered_descriptions_has_its_columns(tmp_path: Path) -> None:
    items = {"I1": ITEM | {"sd_type": "SD-02", "classification": "G"}}
    context = context_of(tmp_path, {"contract": {"procedure": "ufgs_013300", "items": items}})
    item = cells_of(sheets_of(context)["Submittal register"], 0)
    assert (item["SD number"], item["Classification"], item["Submit"]) == ("SD-02", "G", None)
    assert {"Transmittal number", "Action code", "Authority date"} <= item.keys()


def test_a_column_is_wide_enough_for_each_word_of_its_head(tmp_path: Path) -> None:
    context = context_of(tmp_path, {"contract": {"procedure": "ufgs_013300", "items": {"I1": ITEM}}})
    for sheet in sheets_of(context).values():
        assert all(max(map(len, c.title.split())) < c.width for c in sheet.columns)


def test_an_empty_register_says_so(tmp_path: Path) -> None:
    sheets = sheets_of(context_of(tmp_path))
    assert (sheets["Submittal register"].rows, sheets["Submittal register"].empty) == ((), "No items in the register")
    assert (sheets["Attachments"].rows, sheets["Attachments"].empty) == ((), "No attachments")
    assert "Panel list" not in sheets


def test_an_attachment_tells_its_dates_its_file_and_the_item_it_answers() -> None:
    attachments = sheets_of(context_of_example("clean"))["Attachments"]
    marks = [row[0] for row in attachments.rows]
    letter = cells_of(attachments, marks.index("CT3"))
    assert letter["Title"] == "Inspector's certificate for EIFS"
    assert (letter["Issued"], letter["Valid through"]) == (datetime.date(2025, 10, 3), datetime.date(2028, 10, 3))
    assert (letter["Kind"], letter["Signed"], letter["Item"]) == ("Certificate", "yes", "I7")
    assert cells_of(attachments, marks.index("PD1"))["Covers"] == "WRB"


def test_an_attachment_that_is_not_signed_says_so(tmp_path: Path) -> None:
    change = {"attachments": {"A1": {"kind": "letter", "signed": "no"}, "A2": {"title": "Plan"}}}
    first, second = (cells_of(sheets_of(context_of(tmp_path, change))["Attachments"], n) for n in (0, 1))
    assert (first["Kind"], first["Signed"]) == ("Letter", "no")
    assert (second["Kind"], second["Signed"], second["Title"]) == (None, None, "Plan")


def test_the_open_items_are_one_a_row_by_the_party_that_owes_them() -> None:
    items = sheets_of(context_of_example("old-wall"))["Open items"]
    found = [cells_of(items, n) for n in range(len(items.rows))]
    asked = next(
        item for item in found if item["Value or document"] == "How many days does review of a resubmittal take?"
    )
    assert (asked["From"], asked["Name"], asked["Holds up"]) == ("Architect", "Office of Quiet Rooms", "SCH-04")
    assert (asked["Answer"], asked["Date"]) == (None, None)
    parties = [item["From"] for item in found]
    assert [p for n, p in enumerate(parties) if p not in parties[:n]] == list(dict.fromkeys(parties))
    assert parties == sorted(parties, key=list(dict.fromkeys(parties)).index)


@pytest.mark.parametrize(("units", "unit", "first"), [("ip", "in", 54), ("si", "mm", 54 * 25.4)])
def test_lists_of_the_layout_name_the_unit_of_their_figures(
    units: str, unit: str, first: float, tmp_path: Path
) -> None:
    shutil.copytree(EXAMPLES / "clean", tmp_path, dirs_exist_ok=True)
    file = tmp_path / "project.yaml"
    file.write_text(file.read_text("utf-8").replace("  units: ip\n", f"  units: {units}\n", 1), "utf-8")
    case = pipeline.check(file)
    context = DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)
    sheets = sheets_of(context, "D07")
    assert cells_of(sheets["Panel list"], 0)[f"Width, {unit}"] == pytest.approx(first)
    assert f"Net area, sq {unit}" in {c.title for c in sheets["Panel list"].columns}
    assert f"Length, {unit}" in {c.title for c in sheets["Joint list"].columns}


def test_the_panel_and_joint_lists_have_the_lengths_of_the_layout() -> None:
    sheets = sheets_of(context_of_example("clean"))
    first = cells_of(sheets["Panel list"], 0)
    assert first == {
        "Elevation": "E1",
        "Panel": "E1-A1",
        "From left, in": 0,
        "From base, in": 0,
        "Width, in": 54,
        "Height, in": 48,
        "Least side, in": 48,
        "Net area, sq in": 54 * 48,
    }
    joint = cells_of(sheets["Joint list"], 0)
    assert (joint["Joint"], joint["Kind"], joint["Start from left, in"]) == ("E1-V1", "aesthetic", 54)
    assert (joint["End from base, in"], joint["Length, in"]) == (24 * 12, 24 * 12)


def test_areas_are_numbers_that_add_up() -> None:
    south = cells_of(sheets_of(context_of_example("clean"))["Areas"], 0)
    assert (south["Elevation"], south["Batch"]) == ("E1 South face", "BT1")
    assert (south["Gross, sq ft"], south["Openings, sq ft"], south["Net, sq ft"]) == (45 * 24, 144, 45 * 24 - 144)
    parts = (south["Net, sq ft"], south["Joint sides, sq ft"], south["Returns, sq ft"])
    assert sum(parts) == pytest.approx(south["Coated, sq ft"], abs=0.02)


def test_an_elevation_that_is_not_known_has_no_areas(tmp_path: Path) -> None:
    face = cells_of(sheets_of(context_of(tmp_path, {"elevations": {"E1": {"name": "Yard"}}}))["Areas"], 0)
    assert face["Elevation"] == "E1 Yard"
    assert [cell for title, cell in face.items() if title not in ("Elevation", "Batch")] == [None] * 7
