"""What the procedure says to a crew: no code of a rule, nobody who is not there, no paper that says nothing."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.documents.example import changed_clean, page_of
from tests.documents.test_procedure import procedure, step_of

LATE = {
    "primer": "wash, abrade with very fine paper, and prime again",
    "gloss": "clean and abrade with very fine paper",
}


def told(folder: Path, change: Any, name: str = "D08") -> str:
    """A document of the clean example with a change, without the letters of sources."""
    return re.sub(r"\[[a-z]\]", "", page_of(changed_clean(folder, change), name))


def test_a_caution_has_no_code_and_says_what_its_months_share_once(tmp_path: Path) -> None:
    said = step_of(told(tmp_path, {}), "Preparation for spraying")
    assert (
        "! Caution: Days in a month of spraying reach 85 °F (July), 83 °F (August); in the sun, a wall can pass"
        " 90 °F in air below 80 °F. Spray each elevation only under shade cloth"
    ) in said
    assert not re.search(r"(?:Caution|Note) [A-Z]{3}-\d\d|\(project\)", told(tmp_path, {}))


def test_the_meeting_calls_the_parties_that_the_project_has(tmp_path: Path) -> None:
    said = told(tmp_path, {})
    assert (
        "architect, general contractor, applicator, competent person for access (T. Underbough), sheet metal"
        " fabricator (Pewter Lane Sheet Metal), sealant applicator (Tallow Joint Works), inspector"
    ) in said
    assert "scaffold contractor" not in said
    alone = procedure(tmp_path / "two")
    assert "architect, general contractor, applicator, sealant applicator, inspector, EIFS manufacturer, and" in alone


def test_a_film_past_its_recoat_time_is_prepared_as_its_maker_says(tmp_path: Path) -> None:
    said = procedure(tmp_path, {"primer": {"most_recoat_hours": 168}, "gloss": {"most_recoat_hours": 72}})
    asked = "obtain grit and method of preparation from the finish manufacturer in writing"
    assert f"within 168 h of the primer; past it, {asked} before coating." in step_of(said, "Release of primer")
    assert f"For a later coat or repair, first {asked}." in step_of(said, "Gloss finish")
    assert "per IN3" not in step_of(said, "Release of primer") + step_of(said, "Gloss finish")


@pytest.mark.parametrize(("coat", "title"), [("primer", "Release of primer"), ("gloss", "Gloss finish")])
def test_the_preparation_of_the_maker_is_said_where_it_is_given(coat: str, title: str, tmp_path: Path) -> None:
    change = {coat: {"most_recoat_hours": 72, "late_recoat": LATE[coat]}}
    said = step_of(procedure(tmp_path, change), title)
    assert LATE[coat] in said
    assert "obtain grit" not in said


def test_a_penetration_sealed_on_the_primer_is_masked_and_the_material_beside_a_face_pulled(tmp_path: Path) -> None:
    said = told(tmp_path, {"joints": {"J6": {"other_face": "corner panel of coated aluminum"}}})
    assert "PN1, E3 Stack house: Mask the joint around the penetration where sealant bonds to the primer." in said
    assert "and collar material, and on the adjoining material at J6, J7, J8, J9, place a test bead" in said
    assert "| tinted primer, corner panel of coated aluminum\n" in said
    assert "Joint bond faces masked before gloss (J1 to J9, PN1)" in told(tmp_path, {}, "D12")
    assert "\nJ1 to J9, PN1 | S1: class 50, polyurethane | tinted primer of the finish;" in told(tmp_path, {}, "D02")
    assert (
        "Frames and head flashing at J1, J4, J5; floor-line flashing at J2, J3; corner panel of coated aluminum at J6"
        in told(tmp_path, {}, "D02")
    )


def test_shop_made_metal_asks_for_a_shop_drawing_until_one_covers_it(tmp_path: Path) -> None:
    words = "Sheet metal: before fabrication, submit a shop drawing of each flashing and cap"
    assert words in told(tmp_path, {"attachments": {"DW3": {"covers": ["wrb"]}}})
    drawing = {"kind": "drawing", "covers": ["accessories"], "title": "Caps and flashings", "issued_on": "2027-02-01"}
    assert words not in told(tmp_path, {"attachments": {"DW3": drawing}})


def test_what_a_cup_is_read_with_is_numbered(tmp_path: Path) -> None:
    words = "material thermometer and stopwatch, numbered and in calibration before the first reading"
    cup = {"kind": "zahn_4_cup", "calibrated_to": "2027-12-31"}
    assert words in procedure(tmp_path, {"instruments": {"T-0": cup}})
    kinds = ("zahn_4_cup", "material_thermometer", "stopwatch")
    listed = {f"T-{n}": {"kind": kind, "calibrated_to": "2027-12-31"} for n, kind in enumerate(kinds)}
    said = procedure(tmp_path / "two", {"instruments": listed})
    assert "T-0 Zahn No. 4 cup; T-1 material thermometer; T-2 stopwatch | December 31, 2027" in said


def test_the_joint_layout_is_released_for_the_mockup_too(tmp_path: Path) -> None:
    said = told(tmp_path, {})
    layout = step_of(said, "Board layout")
    # Joints of the boards keep clear of its lines, so that it is released before they are laid out.
    assert "Do not begin until the architect has released the joint layout of Document D07 in writing" in layout
    points = [line.split(" | ")[1] for line in said.splitlines() if line.startswith(("5 | ", "– | Joint layout"))]
    assert [point.partition(";")[0].partition(":")[0] for point in points][-2:] == [
        "Joint layout",
        "Rasping and leveling",
    ]
    assert "– | Joint layout; latest April 13, 2027, first board layout, on the mockup | the architect" in said
    assert "(A. Fennimark), and the architect too for what is first in place, 24 h in advance" in said


def test_a_crew_shows_who_is_trained_for_each_of_its_steps(tmp_path: Path) -> None:
    said = told(tmp_path, {}, "D04")
    assert "T. Underbough, M. Brightlath (CT1): First smoothing coat; Second smoothing coat. " in said
    # CT4 is training on flashings and caps too; a scaffold and a substrate bear no manufacturer's coat.
    assert "T. Underbough, M. Brightlath (CT4): Water-resistive barrier; Flashings and terminations; " in said
    assert "No certificate" not in said and ". Sheet metal by Pewter Lane Sheet Metal | yes" in said
    assert "No material of a manufacturer: Access and site safety; Substrate; Final viewing" in said
    assert "bead | 2 | Q. Tallowmere | Q. Tallowmere (CT2): Sealant joints | yes" in said


def test_the_set_is_the_submission_of_the_items_that_it_answers(tmp_path: Path) -> None:
    said = told(tmp_path, {}, "D03")
    rows = [line.split(" | ") for line in said.splitlines() if re.match(r"I\d+ \| ", line)]
    assert len(rows) == 12
    assert {(row[8], row[9], row[10]) for row in rows} == {
        ("March 1, 2027", "____", "____"),
        # The architect approved the deviation by RFI before the set went out.
        ("March 1, 2027", "DV1 approved", "February 24, 2027"),
    }
