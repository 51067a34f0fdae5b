"""The attachment index: what covers each material, and whether each paper counts."""

import datetime
from pathlib import Path

import pytest

from specgen.documents.attachments import count_months
from tests.documents.example import changed_clean, changed_small, page_of, rows_below
from tests.documents.support import context_of_example


def test_the_matrix_shows_what_covers_each_material() -> None:
    page = page_of(context_of_example("clean"), "D18")
    head, *rows = rows_below(page, "DOCUMENTS OF EACH MATERIAL")
    assert head == ["Material", "Data sheet", "Safety data sheet", "Test report", "Letter", "Instructions", "Other"]
    told = {row[0]: row[1:] for row in rows}
    assert told["WRB"] == ["PD1", "SD1", "TR6", "LT1, LT2", "IN4", "CT4"]
    assert told["Adhesive"] == ["PD2", "SD1", "TR3 to TR6", "LT1", "IN1", "CT4"]
    assert told["Sheathing"][-1] == "DW1"
    # Board, mesh and rod are neither liquid nor powder, and need no safety data sheet.
    assert [told[name][1] for name in ("Board", "Mesh", "Backer rod")] == ["–", "–", "–"]
    assert told["Gloss"] == ["PD7", "SD2", "TR8, TR9", "LT1, LT2, LT4, LT7", "IN3", "CT1, WA1"]
    # The adhesion of sealant is tested on the primer, which a report on the sealant speaks of too.
    assert told["Primer"] == ["PD6", "SD2", "TR7", "LT1, LT2", "IN3", "CT1"]
    assert told["Safety"][-1] == "SP1 to SP3"
    assert "[pending]" not in page and "still required" not in page


def test_mesh_comes_with_the_base_coat_on_which_the_letters_are(tmp_path: Path) -> None:
    change = {"attachments": {"LT1": {"covers": ["base_coat", "gloss"]}, "LT2": {"covers": ["base_coat", "sealant"]}}}
    rows = rows_below(page_of(changed_clean(tmp_path, change), "D18"), "DOCUMENTS OF EACH MATERIAL")[1:]
    told = {row[0]: row[4] for row in rows}
    # The rod is of another maker than the sealant, and no letter names it.
    assert (told["Base coat"], told["Mesh"], told["Backer rod"]) == ("LT1, LT2", "same manufacturer", "–")


def test_an_owed_sheet_that_is_not_listed_is_pending(tmp_path: Path) -> None:
    change = {"attachments": {"PD3": {"covers": ["mesh"]}, "SD1": {"covers": ["adhesive", "base_coat", "sealant"]}}}
    context = changed_clean(tmp_path, change)
    page = page_of(context, "D18")
    told = {row[0]: row[1:] for row in rows_below(page, "DOCUMENTS OF EACH MATERIAL")[1:]}
    assert (told["Board"][:2], told["WRB"][:2]) == (["[pending]", "–"], ["PD1", "[pending]"])
    # The data sheet of the board and the safety data sheet of the barrier.
    assert "Documents still required: 2, by party in D19." in page
    # Both are told where the set says what it still lacks; no value is open.
    assert "\nDocuments still required: 2.\n" in page_of(context, "D19")
    assert "Documents still required: 2, see D19.\n" in page_of(context, "D02")
    assert "Open items: by party" not in page_of(context, "D02")


def test_a_value_that_is_open_is_pointed_to_where_no_document_is_missing(tmp_path: Path) -> None:
    context = changed_clean(tmp_path, {"site": {"altitude": None}})
    assert "Open items: by party, see D19." in page_of(context, "D02")
    assert "Documents still required" not in page_of(context, "D02") + page_of(context, "D19")
    assert "Values asked for: " in page_of(context, "D19")


def test_the_table_tells_state_age_and_item_of_each_attachment() -> None:
    page = page_of(context_of_example("clean"), "D18")
    assert "Contract award: January 18, 2027. Maximum age of a test report at award: 3 years." in page
    rows = {row[0]: row for row in rows_below(page, "ATTACHMENTS")}
    assert len(rows) == 1 + 32 + 8 + 5  # the head; those of the project, the firm, and the coatings
    assert rows["PD4"] == [
        "PD4",
        "Sealant and backer rod data sheets",
        "Data sheet",
        "sealant, backer rod",
        "March 2, 2026",
        "marked",
        "I1",
    ]
    assert rows["TR1"][2:] == [
        "Test report",
        "base coat, mesh",
        "January 20, 2026",
        "signed; ASTM E2568; wall W1; 11 months",
        "I5",
    ]
    assert rows["TR8"][5] == "signed; ASTM C1549; color C1; issued after award"
    assert rows["LT1"][5] == "signed; names the project"
    assert rows["CT3"][4] == "October 3, 2025, valid through October 3, 2028"
    order = [mark for mark in rows if mark.startswith("TR")]
    assert order == [f"TR{number}" for number in range(1, 11)]


def test_a_paper_that_does_not_count_is_told_as_it_is(tmp_path: Path) -> None:
    change = {
        "attachments": {
            "A1": {"kind": "letter", "signed": "no", "project_named": "no"},
            "A2": {"kind": "data_sheet", "marked": "no"},
            "A3": {"kind": "test_report"},
        }
    }
    rows = {row[0]: row for row in rows_below(page_of(changed_small(tmp_path, change), "D18"), "ATTACHMENTS")}
    assert rows["A1"][5] == "not signed; does not name the project"
    assert rows["A2"][5] == "not marked"
    assert rows["A3"][5] == "[Signed attachment]"


# Counted on a calendar.
@pytest.mark.parametrize(
    ("issued", "award", "months"),
    [
        ((2025, 11, 5), (2027, 1, 18), 14),
        ((2026, 1, 20), (2027, 1, 18), 11),
        ((2026, 1, 18), (2027, 1, 18), 12),
        ((2026, 12, 31), (2027, 1, 18), 0),
        ((2024, 2, 29), (2027, 2, 28), 35),
    ],
)
def test_the_age_is_in_whole_months(issued: tuple[int, int, int], award: tuple[int, int, int], months: int) -> None:
    assert count_months(datetime.date(*issued), datetime.date(*award)) == months
