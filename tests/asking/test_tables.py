"""Tables of members: their columns, the members that exist as they would be typed, in a workbook and as CSV."""

import csv
import io
from pathlib import Path
from typing import Any

import pytest

from specgen.asking.files import make_table_files
from specgen.model.problem import Refused
from tests.asking.asked import lacking
from tests.asking.test_question_book import OFFICE, converted
from tests.documents.example import changed_small
from tests.formats.docx.validator import findings
from tests.formats.sheets import read_back

FACE: dict[str, Any] = {
    "name": "=North & South",
    "facing": "NNE",
    "width": "40 ft 6 in",
    "height": "24 ft",
    "prominent": "yes",
    "layout": {"mode": "given", "vertical_lines": ["5 ft", "10 ft"]},
    "openings": {
        "A": {"kind": "window", "x": "5'-6\"", "y": "3 ft", "width": "4 ft", "height": "4 ft", "sill_pan": "yes"},
        "B": {"kind": "louver", "x": "15 ft"},
    },
}
PROJECT: dict[str, Any] = {
    "elevations": {"E1": FACE, "E2": {"name": "Court"}},
    "people": {"P1": {"name": "D. Amaya", "role": "competent_person", "years": 6, "signed_on": "2027-02-20"}},
    "attachments": {"A1": {"kind": "sds", "covers": ["wrb", "base_coat"], "title": "3/4"}},
}


def lines_of(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"))))


def test_openings_of_all_elevations_stand_in_one_table(tmp_path: Path) -> None:
    made = make_table_files(changed_small(tmp_path, PROJECT), "openings", ("xlsx", "csv"))
    assert list(made) == ["openings.xlsx", "openings.csv"]
    page = read_back(made["openings.xlsx"])["openings"]
    assert [cell.value for cell in page[1]] == [
        "Mark",
        "Elevation",
        "Opening type",
        "Opening from the left edge, ft",
        "Opening from the lower edge, ft",
        "Opening width, ft",
        "Opening height, ft",
        "Sill pan",
        "Head flashing",
        "Landing at the door",
    ]
    names = ["mark", "elevation", "kind", "x", "y", "width", "height", "sill_pan", "head_flashing", "landing"]
    assert [cell.value for cell in page[2]] == names
    rows = [[cell.value for cell in page[row]] for row in (3, 4, 5)]
    assert rows == [
        ["A", "E1", "window", "5'-6\"", "3 ft", "4 ft", "4 ft", "yes", None, None],
        # A row may be added for a door, so that its landing has a column though none is given yet.
        ["B", "E1", "louver", "15 ft", None, None, None, None, None, None],
        [None] * 10,
    ]
    assert [[cell or None for cell in line] for line in lines_of(made["openings.csv"])[1:]] == [names, *rows[:2]]


def test_elevations_have_the_fields_below_them_and_none_of_their_lists_of_members(tmp_path: Path) -> None:
    made = make_table_files(changed_small(tmp_path, PROJECT), "elevations", ("csv",))
    titles, names, first, second = lines_of(made["elevations.csv"])
    assert (titles[0], names[0], first[0], second[0]) == ("Mark", "mark", "E1", "E2")
    told = dict(zip(names, first, strict=True))
    assert (told["width"], told["facing"], told["prominent"]) == ("40 ft 6 in", "NNE", "yes")
    assert (told["layout.mode"], told["layout.vertical_lines"]) == ("given", "5 ft, 10 ft")
    assert told["name"] == "'=North & South"  # a spreadsheet would run it
    assert not [name for name in names if name.startswith(("openings", "floor_lines", "impact_zones"))]


def test_choices_are_told_in_words_and_dates_as_a_file_has_them(tmp_path: Path) -> None:
    context = changed_small(tmp_path, PROJECT)
    _, names, person = lines_of(make_table_files(context, "people", ("csv",))["people.csv"])
    told = dict(zip(names, person, strict=True))
    assert (told["role"], told["years"], told["signed_on"]) == ("competent person", "6", "2027-02-20")
    _, names, sheet = lines_of(make_table_files(context, "attachments", ("csv",))["attachments.csv"])
    told = dict(zip(names, sheet, strict=True))
    assert told["kind"] == "safety data sheet"
    assert told["covers"] == "water-resistive barrier (WRB), base coat"


def test_cells_are_text_that_can_be_filled_in_and_offer_choices(tmp_path: Path) -> None:
    page = read_back(make_table_files(changed_small(tmp_path, PROJECT), "openings", ("xlsx",))["openings.xlsx"])[
        "openings"
    ]
    assert page.protection.sheet and not page.protection.password
    assert page.freeze_panes == "B3"
    assert [cell.protection.locked for row in (1, 2) for cell in page[row]] == [True] * 20
    for row in (3, 4, 5, 40):
        assert {(cell.protection.locked, cell.number_format) for cell in page[row]} == {(False, "@")}
    rules = {str(rule.sqref)[:2]: rule for rule in page.data_validations.dataValidation}
    assert {place: rule.type for place, rule in rules.items() if rule.type == "list"} == {
        "B3": "list",
        "C3": "list",
        "H3": "list",
        "I3": "list",
    }
    assert rules["F3"].prompt == "Layout, net area. Form: ft. Example: 4 ft."


@pytest.mark.parametrize("name", ["openings", "elevations", "joints", "mesh.layers", "rates", "spec_sections"])
def test_every_table_is_written_of_a_whole_project_and_is_valid(tmp_path: Path, name: str) -> None:
    context = lacking(tmp_path)
    made = make_table_files(context, name, ("xlsx", "csv"))
    assert made == make_table_files(context, name, ("xlsx", "csv"))
    (tmp_path / "table.xlsx").write_bytes(made[f"{name}.xlsx"])
    assert findings(tmp_path / "table.xlsx") == []
    assert len(lines_of(made[f"{name}.csv"])) >= 4


def test_a_blank_table_has_its_head(tmp_path: Path) -> None:
    made = make_table_files(changed_small(tmp_path, {}), "joints", ("csv",))
    assert len(lines_of(made["joints.csv"])) == 2


def test_a_table_that_there_is_not_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="there is no table 'opening' .did you mean openings."):
        make_table_files(changed_small(tmp_path, {}), "opening", ("csv",))


@pytest.mark.skipif(OFFICE is None, reason="no spreadsheet program")
def test_a_spreadsheet_program_keeps_the_members_as_text(tmp_path: Path) -> None:
    content = make_table_files(changed_small(tmp_path, PROJECT), "attachments", ("xlsx",))["attachments.xlsx"]
    saved = converted(tmp_path, content, "xlsx").read_bytes()
    before, after = read_back(content)["attachments"], read_back(saved)["attachments"]
    for row in (1, 2, 3):
        assert [cell.value for cell in after[row]] == [cell.value for cell in before[row]]
    assert [cell.data_type for cell in after[3] if cell.value == "3/4"] == ["s"]
