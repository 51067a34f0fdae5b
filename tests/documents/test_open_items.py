"""The list of open items: by the party that owes each, with what it holds up, and the stops."""

from pathlib import Path
from typing import Any

from tests.documents.example import changed_clean, changed_small, page_of, rows_below
from tests.documents.support import context_of_example

HEAD = "From | Needed before | Value or document | Holds up | Answer, date"


def items_of(page: str) -> list[list[str]]:
    """The rows of the table of open items."""
    assert HEAD in page
    lines = page.partition(f"{HEAD}\n")[2].split("\n\n")[0].split("\nMarks: ")[0].splitlines()
    return [line.split(" | ") for line in lines]


def test_a_package_without_open_items_says_none() -> None:
    page = page_of(context_of_example("clean"), "D19")
    assert page.endswith("\nSTOPS\nNone.\n\nOPEN ITEMS\nNone.\n")


def test_one_value_left_out_is_one_line_at_its_party(tmp_path: Path) -> None:
    change = {"code": {"local_fasteners_required": "tbd"}}
    page = page_of(changed_clean(tmp_path, change), "D19")
    (row,) = items_of(page)
    assert row[0] == "Architect: Lintel and Quoin Architects"
    assert row[1] == "decision on the walls"
    assert row[2] == "( ) Fasteners required by local code: yes/no"
    assert row[3] == "ATT-03"
    assert "STOPS\nNone found so far; rules not evaluated: see D02." in page


def test_members_that_lack_the_same_share_a_line(tmp_path: Path) -> None:
    change: dict[str, Any] = {"elevations": {mark: {"critical_light": "tbd"} for mark in ("E1", "E2", "E3")}}
    rows = items_of(page_of(changed_clean(tmp_path, change), "D19"))
    (row,) = (row for row in rows if "light" in row[2])
    assert row[2] == "( ) Does low light rake the elevation? yes/no (E1, E2, E3)"


def test_a_document_is_asked_of_who_owes_it_with_its_date(tmp_path: Path) -> None:
    page = page_of(changed_clean(tmp_path, {"attachments": {"SD1": {"covers": ["accessories"]}}}), "D19")
    owed = {row[0].partition(":")[0]: row for row in items_of(page)}
    assert set(owed) == {"EIFS manufacturer", "Sealant manufacturer", "WRB manufacturer"}
    assert owed["EIFS manufacturer"][1:4] == [
        "mockup",
        "( ) Safety data sheets: adhesive, base coat",
        "SUB-02",
    ]
    # The mockup of the example is planned on April 12, 2027.
    assert ["Needed before", "Mockup"] in rows_below(page, "OPEN ITEMS")
    assert ["Reply by", "April 12, 2027"] in rows_below(page, "OPEN ITEMS")


def test_stops_stand_by_the_party_that_resolves_them(tmp_path: Path) -> None:
    change = {"walls": {mark: {"attachment": {"method": "mechanical"}} for mark in ("W1", "W2")}}
    page = page_of(changed_clean(tmp_path, change), "D19")
    stops = page.partition("\nSTOPS\n")[2].partition("\n\nOPEN ITEMS")[0]
    assert "Findings and measures: D05." in stops
    told = [line.split(" | ") for line in stops.splitlines() if " | " in line][1:]
    (row,) = (row for row in told if "ATT-01a" in row[1])
    assert row[0] == "Architect: Lintel and Quoin Architects"
    assert row[1].startswith("ATT-01a (W1, W2)") and row[2] == "boards"


def test_a_project_of_two_lines_lists_its_items_by_party(tmp_path: Path) -> None:
    rows = items_of(page_of(changed_small(tmp_path, {}), "D19"))
    parties = [row[0].partition(":")[0] for row in rows]
    # Those of a party stand together.
    assert [party for number, party in enumerate(parties) if number == 0 or parties[number - 1] != party] == list(
        dict.fromkeys(parties)
    )
    architect = [row for row in rows if row[0].startswith("Architect")]
    assert ["( ) Model code", "ATT-08, COD-01 to COD-04"] in [row[2:4] for row in architect]
