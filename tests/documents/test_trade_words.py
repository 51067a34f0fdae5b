"""What sentences make of choices: in words, in series, by the standard of each, and nothing of an empty list."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.formats import text
from tests.documents.example import drafted
from tests.documents.support import written as document
from tests.documents.test_procedure import procedure, step_of
from tests.support import SMALL, merged

# Scopes of the standards, from their titles: dip-type cups, Ford cups, and flow cups.
CUPS = {
    "zahn_2": "(Zahn No. 2), per ASTM D4212.",
    "ford_4": "(Ford No. 4), per ASTM D1200.",
    "iso_5": "(ISO 5 mm), per ISO 2431.",
    "other": "Use one numbered cup throughout, per the cup manufacturer's written instructions.",
}


@pytest.mark.parametrize("cup", CUPS)
def test_a_cup_is_read_by_its_own_standard(cup: str, tmp_path: Path) -> None:
    said = procedure(tmp_path, {"primer": {"cup": cup}})
    assert CUPS[cup] in step_of(said, "Spray setup")
    # As in the list of references; a figure on readings of any cup may cite one of them besides.
    standards = ("ASTM D4212", "ASTM D1200", "ISO 2431")
    listed = [name for name in standards if re.search(rf"(?:^|\| ){name} \| ", said, re.MULTILINE)]
    assert listed == [name for name in standards if name in CUPS[cup]]


def test_a_cup_is_named_by_the_instrument_of_its_kind(tmp_path: Path) -> None:
    cups = {"T1": {"kind": "zahn_4_cup"}, "T2": {"kind": "other_cup"}}
    said = step_of(procedure(tmp_path, {"primer": {"cup": "other"}, "instruments": cups}), "Spray setup")
    assert "Use one numbered cup throughout (No. T2), per" in said


def drained(outlets: list[str]) -> dict[str, Any]:
    """The small project with a drained wall."""
    return {"walls": {"W1": {"drainage": {"kind": "grooved_board", "outlets": outlets}}}}


def test_outlets_are_told_where_there_are_any(tmp_path: Path) -> None:
    none = procedure(tmp_path / "none", drained([]))
    assert "Keep the drainage path and its outlets open." in none
    assert "grooved board." in none and "outlets at" not in none
    two = procedure(tmp_path / "two", drained(["base", "other"]))
    assert "its outlets (base and other places shown on the drawings) open" in two
    assert "grooved board; outlets at base and other places shown on the drawings." in two


def test_a_mockup_without_crews_and_details_says_so(tmp_path: Path) -> None:
    pages = drafted(tmp_path, {"mockup": {"crew": [], "includes": []}}, ("D08", "D09"))
    assert "Build the mockup with the production crews, equipment" in pages["D08"]
    assert "1. Build the mockup with the production crews.\n" in pages["D09"]
    assert "No detail is selected for the mockup" in pages["D09"]


WARRANTORS = {
    "nobody": ([], "from final acceptance."),
    "two": (["eifs_source", "general_contractor"], "by Graywether and the general contractor."),
    "three": (
        ["eifs_source", "sealant_source", "sealant_applicator"],
        "by Graywether, the sealant manufacturer, and the sealant applicator.",
    ),
}


@pytest.mark.parametrize("case", WARRANTORS)
def test_who_warrants_is_named_or_told_by_his_role(case: str, tmp_path: Path) -> None:
    roles, told = WARRANTORS[case]
    contract = {"warranty_years": 5, "warranty_start": "final_acceptance", "warrantors": roles}
    said = procedure(tmp_path, {"contract": contract, "parties": {"eifs_source": {"name": "Graywether"}}})
    assert told in said


def test_later_trades_stand_in_words(tmp_path: Path) -> None:
    said = procedure(tmp_path, {"schedule": {"later_trades": ["roof_edge", "masonry_wash", "signage"]}})
    assert "keep later trades (roof edge, masonry wash, and signage) off" in said


COLORS = {
    "none": ([], "Maximum CIEDE2000", False),
    "one": (["75"], "Maximum CIEDE2000 color difference 2 at 75 degrees.", True),
    "two": (["15", "75"], "Maximum CIEDE2000 color difference 2 at each of 15 and 75 degrees.", True),
}


@pytest.mark.parametrize("case", COLORS)
def test_angles_of_a_color_are_told_where_there_are_any(case: str, tmp_path: Path) -> None:
    angles, told, is_said = COLORS[case]
    color = {"reference": "board 1", "tolerance": 2, "angles": angles}
    said = procedure(tmp_path, {"colors": {"C1": color}})
    assert (told in said) is is_said
    assert ("maximum 2 at" in said) is is_said


def test_a_level_of_none_is_no_inspection(tmp_path: Path) -> None:
    change = {"inspection_level": "none", "inspector_engaged_by": "owner"}
    said = procedure(tmp_path, {"contract": change})
    assert "Inspection: no third-party inspection." in said


# ASTM C578 is of rigid cellular polystyrene alone, by its title.
@pytest.mark.parametrize(
    ("kind", "type_", "told"), [("eps", "II", True), ("eps", "not_stated", False), ("phenolic", "II", False)]
)
def test_the_type_of_a_board_is_that_of_polystyrene(kind: str, type_: str, told: bool, tmp_path: Path) -> None:
    said = procedure(
        tmp_path, {"walls": {"W1": {"insulation": {"kind": kind, "thickness": "2 in", "c578_type": type_}}}}
    )
    boards = step_of(said, "Insulation boards")
    assert ("2 in thick, ASTM C578 Type II; reject" in boards) is told
    assert ("2 in thick; reject" in boards) is not told
    assert "Type not stated" not in said


FILM = {"dry_film": "1.5 mil", "volume_solids": "40 %", "max_water": "5 %", "target_dry_film": "1.8 mil", "coats": 1}


@pytest.mark.parametrize("most", ["", "2.5 mil"])
def test_a_film_has_limits_where_it_has_two(most: str, tmp_path: Path) -> None:
    primer = FILM | ({"most_dry_film": most} if most else {})
    said = step_of(procedure(tmp_path, {"primer": primer, "package": {"units": "ip"}}), "Tinted primer")
    assert ("dry; limits 1.5 mil to 2.5 mil dry)" if most else "dry; minimum 1.5 mil dry)") in said
    assert "Spray 1 coat of primer, cross-hatch." in said


def test_a_tool_of_no_named_kind_is_that_of_the_mockup(tmp_path: Path) -> None:
    joint = {"profile": "v", "width": "3/4 in", "depth": "1/2 in", "tolerance": "1/16 in", "cut_tool": "other"}
    assert "Cut joints with the tool of the accepted mockup along" in procedure(tmp_path, {"aesthetic_joint": joint})


def test_walls_and_crews_are_named_in_series(tmp_path: Path) -> None:
    wall = merged(SMALL, {})["walls"]["W1"]
    crews = {mark: {"steps": ["mesh"]} for mark in ("C1", "C2")}
    said = procedure(tmp_path, {"walls": {"W2": wall, "W3": wall}, "crews": crews})
    kind = said.partition("on walls W1 (")[2].partition(")")[0]
    assert f"on walls W1 ({kind}), W2 ({kind}), and W3 ({kind})." in said
    assert "Base coat with standard mesh (crews C1 and C2)" in said


def test_a_lift_is_used_and_a_scaffold_erected(tmp_path: Path) -> None:
    access = {
        "X1": {"elevation": "E1", "kind": "boom_lift", "height": "40 ft", "tie_location": "movement_joint"},
        "X2": {"elevation": "E1", "kind": "outrigger", "tie_location": "movement_joint"},
        "X3": {"elevation": "E1", "kind": "frame_scaffold", "face_gap": "20 in", "tie_location": "movement_joint"},
    }
    change = {"access": access, "elevations": {"E1": {"wall": "W1"}}, "package": {"units": "ip"}}
    pages = drafted(tmp_path, change, ("D08", "D15"))
    for told in (
        "Use a boom lift.",
        "Erect an outrigger scaffold.",
        "Erect a frame scaffold, any tie in a movement joint.",
    ):
        assert told in pages["D15"]
    # Ties stand before the guards, which end the sentence.
    assert (
        "Provide frame scaffold, 20 in from the finished face, any tie in a movement joint, guardrails" in pages["D08"]
    )
    assert "Provide boom lift." in pages["D08"]


WATER = {
    "storm_drain": "Contain wash water and haul it off; none may enter a storm drain.",
    "contained": "Contain wash water and haul it off; keep it out of storm drains.",
}


@pytest.mark.parametrize("way", WATER)
def test_wash_water_goes_into_no_storm_drain(way: str, tmp_path: Path) -> None:
    assert WATER[way] in drafted(tmp_path, {"protection": {"wash_water": way}}, ("D15",))["D15"]


def test_a_tank_without_relief_valve_is_not_used(tmp_path: Path) -> None:
    tank = {"volume": "2.5 gal", "relief_valve": "no"}
    page = drafted(tmp_path, {"tank": tank, "package": {"units": "ip"}}, ("D15",))["D15"]
    assert "Do not use the pressure tank of 2.5 gal until a relief valve is fitted (none is fitted now)." in page


def test_nothing_is_ordered_for_a_face_that_its_opening_takes_whole(tmp_path: Path) -> None:
    size = {"width": "10 ft", "height": "9 ft"}
    opening = size | {"kind": "window", "x": "0 ft", "y": "0 ft"}
    face = size | {"wall": "W1", "openings": {"WD1": opening}}
    primer = FILM | {"transfer_efficiency": "35 %", "reserve": "10 %", "pail": "5 gal"}
    said = procedure(tmp_path, {"primer": primer, "elevations": {"E1": face}})
    assert "Dry film | " in said
    assert "0 pails" not in said and "0 gal" not in said


def test_a_sealant_of_no_named_grade_is_told_without_one(tmp_path: Path) -> None:
    sealant = {"c920_type": "other", "c920_grade": "other", "c920_class": "50"}
    said = procedure(tmp_path, {"sealants": {"S1": sealant}})
    assert "Sealant S1 | ASTM C920 Class 50, uses NT and O;" in said


def test_sheathing_stands_over_framing(tmp_path: Path) -> None:
    wall = {"substrate": {"kind": "cement_board", "base": "framed", "thickness": "5/8 in"}}
    assert "cement board over framing; [Water-resistive barrier (WRB)]; " in procedure(
        tmp_path, {"walls": {"W1": wall}}
    )


def test_the_mesh_of_a_wall_and_the_faces_of_joints_stand_in_series(tmp_path: Path) -> None:
    layers = [{"kind": "high_impact", "zone": "high"}, {"kind": "standard"}, {"kind": "intermediate"}]
    joint = {"elevation": "E1", "kind": "panel_joint", "width": "3/4 in", "depth": "3/8 in"}
    faces = ("primer", "base_coat", "smoothing_coat")
    rods = ({"rod_kind": "closed_cell", "rod_diameter": "1 in"}, {"rod_kind": "open_cell", "rod_diameter": "1 in"}, {})
    joints = {
        f"J{n}": joint | rod | {"bond_face": face, "bond_break_tape": "yes" if not rod else "no"}
        for n, (face, rod) in enumerate(zip(faces, rods, strict=True), 1)
    }
    change = {
        "walls": {"W1": {"mesh": {"layers": layers}, "insulation": {"kind": "eps", "thickness": "2 in"}}},
        "elevations": {"E1": {"wall": "W1"}},
        "joints": joints,
    }
    said = procedure(tmp_path, change)
    assert "; heavy mesh (high impact zone), standard mesh, and intermediate mesh" in said
    assert "Closed-cell backer rod, open-cell backer rod, or bond-breaker tape: bond break" in said
    assert "Bond faces: primer, base coat, or smoothing coat, masked" in said


def test_a_choice_names_a_part_as_the_file_has_it_and_prints_in_words(tmp_path: Path) -> None:
    words = "{% for role in contract.warrantors %}{{ role }}: {{ parties[role].name }}. {% endfor %}\n"
    change = {"contract": {"warrantors": ["eifs_source"]}, "parties": {"eifs_source": {"name": "Graywether"}}}
    assert "EIFS manufacturer: Graywether." in text.write_text(document(tmp_path, words, change))
