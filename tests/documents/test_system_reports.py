"""The reports behind figures that a draft asks for: a figure alone settles nothing."""

from pathlib import Path
from typing import Any

from tests.documents.example import drafted
from tests.documents.open_page import list_lines
from tests.support import merged

# A wall that drains over a barrier, of which no figure is known.
WALL: dict[str, Any] = {
    "walls": {
        "W1": {
            "wrb": {"kind": "fluid_applied"},
            "drainage": {"kind": "grooved_board"},
            "attachment": {"method": "adhesive_notched_trowel"},
        }
    }
}
# IBC 2021, 1407.4.1, has drainage tested by ASTM E2273; wind by ASTM E330: from memory; others: common practice, no
# source.
REPORTS = [
    "ASTM E330 report, wind load of the adhered wall (W1)",
    "ASTM E2273 report, drainage of this wall (W1)",
    "Test report of the water-resistive barrier, to its standard (W1)",
]


def asked(folder: Path, change: dict[str, Any]) -> dict[str, str]:
    """Before what each document and value is needed."""
    drafted(folder, change)
    return {item: before for _, before, item, *_ in list_lines(folder)}


def test_each_figure_that_decides_a_wall_is_asked_for_with_its_report(tmp_path: Path) -> None:
    assert [asked(tmp_path, WALL)[name] for name in REPORTS] == ["decision on the walls"] * 3


# Common practice, no source: the wind on an adhered wall is an engineer's calculation, signed and sealed.
def test_the_calculation_that_decides_on_wind_is_asked_of_the_engineer(tmp_path: Path) -> None:
    drafted(tmp_path, WALL)
    (asked,) = (row[:2] for row in list_lines(tmp_path) if row[2].startswith("Wind load calculation"))
    assert asked == ["Engineer", "decision on the walls"]


def test_no_report_is_asked_for_on_what_a_wall_does_without(tmp_path: Path) -> None:
    bare = {"walls": {"W1": {"wrb": {"kind": "none"}, "drainage": {"kind": "none"}}}}
    found = asked(tmp_path, merged(WALL, bare))
    assert [name in found for name in REPORTS] == [True, False, False]


def test_a_figure_that_is_given_names_its_own_report(tmp_path: Path) -> None:
    given = {"walls": {"W1": {"drainage": {"efficiency": 94}, "attachment": {"ultimate_strength": "180 psf"}}}}
    found = asked(tmp_path, merged(WALL, given))
    assert [name in found for name in REPORTS] == [False, False, True]


def test_mesh_and_accessories_have_data_sheets_before_they_are_described(tmp_path: Path) -> None:
    found = asked(tmp_path, WALL)
    assert any(item.startswith("Data sheets: ") and item.split(";")[0].endswith("mesh, accessories") for item in found)


# ASTM E2568 is the specification of class PB systems; its report is asked for once, whatever the code.
def test_the_report_on_the_system_is_asked_for_under_a_code_that_has_no_section_on_it(tmp_path: Path) -> None:
    system = {"code": {"model": "other"}, "walls": {"W1": {"base_coat": {"class": "PB"}}}}
    found = [item for item in asked(tmp_path, merged(WALL, system)) if item.startswith("Test report")]
    assert [item for item in found if "ASTM E2568" in item] == ["Test report: ASTM E2568"]


# Common practice, no source: heat and sun that a material bears are in its manufacturer's written instructions, and how
# each sprayed coat is mixed and applied.
def test_instructions_that_the_procedure_calls_pending_are_asked_of_their_manufacturer(tmp_path: Path) -> None:
    listed = {"attachments": {"IN1": {"kind": "instructions", "covers": ["base_coat"], "title": "Base coat"}}}
    drafted(tmp_path, merged(WALL, listed))
    found = {item: party for party, _, item, *_ in list_lines(tmp_path) if item.startswith("Written instructions: ")}
    assert found == {
        "Written instructions: water-resistive barrier (WRB)": "WRB manufacturer",
        "Written instructions: adhesive": "EIFS manufacturer",
        "Written instructions: smoothing, primer, gloss": "Finish manufacturer",
    }


# Common practice, no source: what the procedure says is not shown is asked of who shows it.
def test_a_landing_that_is_not_shown_is_asked_of_the_architect(tmp_path: Path) -> None:
    door = {"kind": "door", "x": "3 ft", "y": "0 ft", "width": "3 ft", "height": "7 ft"}
    face = {"wall": "W1", "width": "30 ft", "height": "12 ft", "base_above_grade": "8 in"}
    drafted(tmp_path, merged(WALL, {"elevations": {"E1": {**face, "openings": {"DR1": door}}}}))
    asked_for = {item: party for party, _, item, *_ in list_lines(tmp_path)}
    assert asked_for["Landing at the door: size, and top below the sill, or none (DR1)"] == "Architect"
    shown = {"openings": {"DR1": {**door, "landing": "concrete, 5 ft wide"}}}
    drafted(tmp_path, merged(WALL, {"elevations": {"E1": {**face, **shown}}}))
    assert not [item for _, _, item, *_ in list_lines(tmp_path) if item.startswith("Landing")]
