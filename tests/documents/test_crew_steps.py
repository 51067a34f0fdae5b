"""What the procedure tells a crew where a wall moves, takes water in, or stands behind a scaffold."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.formats import text
from tests.documents.support import document_of
from tests.documents.test_procedure import procedure, step_of

FLOOR: dict[str, Any] = {
    "elevations": {"E1": {"wall": "W1", "width": "20 ft"}},
    "joints": {"J1": {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "at": "12 ft"}},
}
FLUID: dict[str, Any] = {"walls": {"W1": {"wrb": {"kind": "fluid_applied"}}}}


def test_a_barrier_crosses_a_floor_line_on_a_membrane(tmp_path: Path) -> None:
    said = step_of(procedure(tmp_path / "a", FLOOR | FLUID), "Water-resistive barrier")
    assert "Carry the WRB across the floor line on flexible membrane, looped to take the movement." in said
    bare = {"walls": {"W1": {"wrb": {"kind": "none"}}}}
    assert "Carry the WRB" not in procedure(tmp_path / "b", FLOOR | bare)


# 29 CFR 1926.451(c)(1): a scaffold over four times as high as its base is wide is tied.
@pytest.mark.parametrize(("height", "tied"), [("20 ft", False), ("24 ft", False), ("25 ft", True)])
def test_ties_are_required_above_four_times_the_base(height: str, tied: bool, tmp_path: Path) -> None:
    scaffold = {
        "elevation": "E1",
        "kind": "frame_scaffold",
        "height": height,
        "base": "6 ft",
    }
    change = {"elevations": {"E1": {"wall": "W1"}}, "access": {"X1": scaffold}}
    said = step_of(procedure(tmp_path, change), "Access and site safety")
    assert ("Ties not required" in said) is not tied
    assert ("Tie a scaffold over 4 times as high" in said) is tied
    planned = change | {"access": {"X1": scaffold | {"tie_location": "opening"}}}
    said = step_of(procedure(tmp_path / "planned", planned), "Access and site safety")
    assert "ties only in openings not glazed while the scaffold stands, guardrails" in said
    assert "Ties not required" not in said


@pytest.mark.parametrize(("ties", "sealed"), [("opening", True), ("none", False)])
def test_tie_places_are_sealed_before_the_last_viewing_where_there_are_ties(
    ties: str, sealed: bool, tmp_path: Path
) -> None:
    scaffold = {"elevation": "E1", "kind": "frame_scaffold", "tie_location": ties}
    said = procedure(tmp_path, {"elevations": {"E1": {"wall": "W1"}}, "access": {"X1": scaffold}})
    assert ("tie places are sealed" in step_of(said, "Final viewing")) is sealed


def test_the_permission_to_spray_past_the_lot_line_is_obtained_or_at_hand(tmp_path: Path) -> None:
    change = {"elevations": {"E1": {"wall": "W1", "fire_separation": "48 ft"}}, "protection": {"exclusion": "60 ft"}}
    said = step_of(procedure(tmp_path / "a", change), "Preparation for spraying")
    assert "before spraying, obtain written permission of the neighbor" in said
    papers = {"A1": {"kind": "letter", "covers": ["safety"]}, "A2": {"kind": "letter", "covers": ["gloss"]}}
    said = step_of(procedure(tmp_path / "b", change | {"attachments": papers}), "Preparation for spraying")
    assert "keep the written permission on site and within its days and hours (A1)." in said
    assert "before spraying, obtain" not in said


# Isocyanates sensitize skin and airways, and polyurethane sealants hold them: common practice, no source.
@pytest.mark.parametrize(("chemistry", "warned"), [("polyurethane", True), ("silicone", False)])
def test_the_hazard_of_a_sealant_goes_by_its_chemistry(chemistry: str, warned: bool, tmp_path: Path) -> None:
    change = {"joints": {"J1": {"sealant": "S1"}}, "sealants": {"S1": {"chemistry": chemistry}}}
    assert ("holds isocyanates" in step_of(procedure(tmp_path, change), "Sealant joints")) is warned


def test_the_corner_of_an_opening_is_reinforced_per_the_drawing_that_is_attached() -> None:
    said = text.write_text(document_of("clean", "D08"))
    assert "carry the detail mesh through the groove, per DW2." in said


@pytest.mark.parametrize(("kind", "tested"), [("concrete", True), ("concrete_masonry", False)])
def test_adhesive_on_formed_concrete_is_pulled_before_boards(kind: str, tested: bool, tmp_path: Path) -> None:
    said = procedure(tmp_path, {"walls": {"W1": {"substrate": {"kind": kind}}}})
    assert ("Test the adhesive on the concrete by pull-off" in said) is tested
    assert ("Bond of the adhesive to concrete, pull-off | ASTM D7234" in said) is tested


def test_a_wall_top_of_which_nothing_is_told_is_kept_dry_until_it_is_capped(tmp_path: Path) -> None:
    words = "Keep rain out of the top of each wall until it is capped"
    assert words in step_of(procedure(tmp_path / "a"), "Flashings and terminations")
    details = {"PA1": {"kind": "parapet", "elevation": "E1", "at": "full length", "cap": "yes"}}
    assert words not in procedure(tmp_path / "b", {"elevations": {"E1": {"wall": "W1"}}, "details": details})


def test_people_keep_the_usual_distance_where_the_project_sets_none(tmp_path: Path) -> None:
    # Common practice, no source: 60 ft is the row on the exclusion, retyped.
    change = {"site": {"surroundings": ["public_way_below"]}}
    said = step_of(procedure(tmp_path / "a", change), "Preparation for spraying")
    assert re.search(
        r"Close the area within 60 ft\S* of spraying, or within the distance set", said.replace("\u00a0", " ")
    )
    given = procedure(tmp_path / "b", change | {"protection": {"exclusion": "75 ft"}})
    assert "Keep people and vehicles a minimum of 75 ft" in given and "within the distance set" not in given


def test_a_face_behind_a_scaffold_is_viewed_again_when_the_scaffold_is_down() -> None:
    said = text.write_text(document_of("clean", "D08"))
    last = step_of(said, "Final viewing")
    # Its scaffolds have no ties.
    assert "Do not begin until the scaffold is down and damage is repaired." in last
    assert "HOLD POINT 14" in last
    assert re.search(r"^14 \| Final viewing \| the architect", said, re.MULTILINE)


def test_rain_stops_the_work_unless_a_tent_is_planned(tmp_path: Path) -> None:
    elevation = {"elevations": {"E1": {"wall": "W1"}}}
    for kind, said in (("shade_cloth", "forecast"), ("tent", "forecast, unless the wall is tented")):
        change = elevation | {"shade": {"SH1": {"elevation": "E1", "kind": kind}}}
        assert f"Rain | all work until dry | none present or {said}\n" in procedure(tmp_path / kind, change)


def test_the_checklist_follows_the_procedure_with_the_cleaning_last() -> None:
    said = text.write_text(document_of("clean", "D08")).rpartition("Attachment: crew checklist")[2]
    heads = [line.split(" | ")[0] for line in said.splitlines() if " | ( ) " in line]
    assert heads[-4:] == ["Acceptance of the finish", "Metal caps", "Sealant joints", "Cleaning of spray equipment"]


def test_a_smoothing_coat_is_bought_with_its_reserve_and_the_mockup() -> None:
    (row,) = re.findall(
        r"^Quantity, all coats \| ([^|]*)\|", text.write_text(document_of("clean", "D08")), re.MULTILINE
    )
    # Pails of 5 gal and 8 % are those of the coating system, retyped; one pail for the mockup, five for the work.
    assert re.match(
        r"24\.\d gal, 6 pails of 5 gal, mockup \(1 pail\) and 8% reserve included", re.sub(r"\[[a-z]\]", "", row)
    )


def test_a_color_too_hot_for_one_face_is_held_on_each_face_of_it() -> None:
    said = text.write_text(document_of("metric", "D08", True))
    assert "C1 river silver, No. 207; hold for HEA-03b, D05" in said
    assert "E2 Street side | north-northwest | W1 | C1 river silver, No. 207; hold for HEA-03b, D05 |" in said
    assert "Adhesion of sealant S1 | on tinted primer | ASTM C1382 | pending" in said
