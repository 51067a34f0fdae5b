"""What D02 tells of a wall before it is all given: flashing by place, coats to the gloss, sealed joints."""

from pathlib import Path
from typing import Any

import pytest

from tests.documents.example import drafted, rows_below
from tests.documents.open_page import list_lines

FLASHING, WALLS = "FLASHING, DRAINAGE, AND SEALANT JOINTS", "Wall | Coats over the board, in order"
DRAINED = {"drainage": {"kind": "grooved_board"}}
BARRIER = {"substrate": {"kind": "existing_brick"}, "wrb": {"kind": "none"}, "drainage": {"kind": "none"}}
TWO = {"E1": {"wall": "W1"}, "E2": {"wall": "W1"}}


def places_of(folder: Path, wall: Any, **more: Any) -> dict[str, tuple[str, str]]:
    """The elevations and the detail of each place, in a draft of one wall on two elevations."""
    change = {"walls": {"W1": wall}, "elevations": TWO, "building": {"stories": 2}} | more
    _, *rows = rows_below(drafted(folder, change, ("D02",))["D02"], FLASHING)
    return {place: (elevations, detail) for elevations, place, detail in rows}


def told_below(page: str, head: str) -> list[list[str]]:
    """The cells of the rows below the head of a table."""
    lines = page.partition(f"\n{head}\n")[2].splitlines()
    number = next(n for n, line in enumerate(lines) if " | " not in line)
    return [line.split(" | ") for line in lines[:number]]


# Common practice, no source: water is kept out at the base, the openings, the floor lines, and the top of a wall,
# drained or not.
@pytest.mark.parametrize("wall", [DRAINED, BARRIER], ids=["drained", "barrier"])
def test_each_place_of_a_wall_is_pending_by_party_and_stage_until_it_is_told(wall: Any, tmp_path: Path) -> None:
    places = places_of(tmp_path, wall)
    assert list(places) == ["base of the wall", "openings", "floor lines with no joint", "top of the wall"]
    for elevations, detail in places.values():
        assert elevations == "E1, E2"
        assert detail.startswith("pending: [") and ", from the architect, before " in detail


def test_a_wall_without_drainage_is_accepted_on_its_flashing_and_so_asked_for_it_first(tmp_path: Path) -> None:
    places = places_of(tmp_path, BARRIER)
    for place in ("base of the wall", "openings", "top of the wall"):
        assert places[place][1].endswith("], from the architect, before repair and pull tests"), place
    drafted(tmp_path, {"walls": {"W1": BARRIER}, "elevations": TWO})
    asked = [line[:3] for line in list_lines(tmp_path)]
    for item in (
        "Openings with place, size, and flashing (E1, E2)",
        "Water details: top of each wall, heads, jambs, penetrations, fixtures",
    ):
        assert ["Architect", "repair and pull tests", item] in asked, item


def test_a_place_that_is_told_of_is_pending_no_more(tmp_path: Path) -> None:
    told = {"wall": "W1", "grade_clearance": "9 in", "openings": {}, "floor_lines": {}}
    details = {
        "PA1": {"kind": "parapet", "elevation": "E1", "at": "full length", "cap": "yes"},
        "EA1": {"kind": "eave", "elevation": "E2", "at": "full length", "sealed": "yes"},
    }
    places = places_of(tmp_path, BARRIER, elevations={"E1": told, "E2": told}, details=details)
    assert places == {
        "base of the wall": ("E1, E2", "9 in above grade"),
        "PA1: parapet, full length": ("E1", "metal cap: yes"),
        "EA1: eave, full length": ("E2", "sealed joint at the soffit: yes"),
    }


def test_a_building_of_one_story_has_no_floor_line(tmp_path: Path) -> None:
    assert "floor lines with no joint" not in places_of(tmp_path, DRAINED, building={"stories": 1})


def test_all_places_wait_for_the_elevations_while_none_is_given(tmp_path: Path) -> None:
    (row,) = rows_below(drafted(tmp_path, {"elevations": {}}, ("D02",))["D02"], FLASHING)[1:]
    assert row[0] == "[Elevations]" and row[1].startswith("base of the wall; openings; floor lines; top of the wall")


def test_a_build_up_goes_on_to_the_gloss_and_asks_for_what_is_open(tmp_path: Path) -> None:
    change = {
        "walls": {"W1": {"base_coat": {"passes": 2, "dry_thickness": "3/32 in"}}},
        "colors": {"C1": {"reference": "champagne silver"}},
        "gloss_target": {"units": 65, "angle": 60},
    }
    ((walls, coats),) = told_below(drafted(tmp_path, change, ("D02",))["D02"], WALLS)
    assert (walls, coats) == (
        "W1",
        # Coats of gloss are counted as smoothing coats are, two proposed until their number is given.
        "base coat 3/32 in, 2 passes (EIFS manufacturer to confirm), [Mesh layers]; 2[p] smoothing coats; primer; "
        "2[p] coats of gloss, C1 champagne silver, 65 gloss units at 60°",
    )


# Common practice, no source: sealant bonds to the primer, never to the gloss, so the face is masked before it.
@pytest.mark.parametrize(
    ("face", "sequence", "told"),
    [
        (
            "primer",
            "after_gloss",
            "primer of the finish; sealed after the gloss: mask bond faces when the primer is dry, before the gloss",
        ),
        ("base_coat", "before_gloss", "base coat; sealed before the gloss: cure the sealant, then mask it"),
        ("gloss", "after_gloss", "gloss: not permitted, see D05"),
    ],
)
def test_joints_say_how_the_gloss_keeps_off_the_face_that_sealant_bonds_to(
    face: str, sequence: str, told: str, tmp_path: Path
) -> None:
    joint = {"elevation": "E1", "kind": "opening_perimeter", "bond_face": face}
    change = {
        "elevations": TWO,
        "sealants": {"S1": {"c920_class": "50", "chemistry": "silicone", "sequence": sequence}},
        "joints": {"J1": joint, "J2": joint},
    }
    page = drafted(tmp_path, change, ("D02",))["D02"]
    assert told_below(page, "Joints | Sealant | Bond face and gloss") == [["J1, J2", "S1: class 50, silicone", told]]


# International Building Code, Table 601, as the Municipal Code of Chicago, 14B-6-601, prints it: exterior bearing walls
# of type IIIB 2 hours, of type IIB none.
@pytest.mark.parametrize(("kind", "hours"), [("IIIB", "minimum 2 h"), ("IA", "minimum 3 h"), ("IIB", "")])
def test_a_bearing_wall_has_the_rating_of_its_construction_type(kind: str, hours: str, tmp_path: Path) -> None:
    code = {"model": "ibc", "edition": 2018, "construction_type": kind}
    change = {"code": code, "walls": {"W1": {"insulation": {"kind": "eps"}}}}
    page = drafted(tmp_path, change, ("D02",))["D02"]
    (row,) = [line for line in page.splitlines() if line.startswith("Foam plastic, fire-resistance-rated wall")]
    assert (f"type {kind}: exterior bearing walls {hours} (Table 601)" in row) is bool(hours)
