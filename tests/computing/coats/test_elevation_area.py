"""The net area of an elevation: by hand, by a units library, and together as the coats take it."""

from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing._figures import line, resolver_of
from tests.computing.units_library import UNITS
from tests.support import case_of

FACE: dict[str, Any] = {"width": "45 ft", "height": "24 ft"}
WINDOW = {"kind": "window", "width": "9 ft", "height": "4 ft"}
DOOR = {"kind": "door", "width": "3 ft", "height": "6 ft 8 in"}


def area(folder: Path, face: Any, **more: Any) -> Working:
    made = resolver_of(folder, {"elevations": {"E1": face}} | more)(("elevations", "E1"), "elevation-area")
    assert isinstance(made, Working)
    return made


# 45 by 24 is 1080; a window of 36 and a door of 20 sq ft are taken off, by hand.
@pytest.mark.parametrize(
    ("openings", "wanted"), [({}, 1080), ({"A": WINDOW}, 1044), ({"A": WINDOW, "B": DOOR}, 1024), ({"B": DOOR}, 1060)]
)
def test_openings_are_taken_off(openings: Any, wanted: float, tmp_path: Path) -> None:
    made = area(tmp_path, FACE | {"openings": openings})
    assert made.result == pytest.approx(wanted)
    assert made.unit == "ft2"


def test_a_deck_ledger_is_taken_off_and_a_roof_is_not(tmp_path: Path) -> None:
    """A ledger 12 ft by 9 in covers 9 sq ft; a roof meets the wall by its edge, a pipe without sides covers nothing."""
    details = {
        "DL1": {"kind": "deck_ledger", "elevation": "E1", "width": "12 ft", "height": "9 in"},
        "RB1": {"kind": "roof_below", "elevation": "E1", "width": "9 ft", "height": "2 ft"},
        "PN1": {"kind": "penetration", "elevation": "E1", "x": "4 ft", "y": "2 ft"},
        "DL2": {"kind": "deck_ledger", "width": "12 ft", "height": "9 in"},
    }
    faces = {"E1": FACE | {"openings": {"A": WINDOW}}, "E2": FACE | {"openings": {}}}
    resolve = resolver_of(tmp_path, {"elevations": faces, "details": details})
    made, other = (resolve(("elevations", mark), "elevation-area") for mark in ("E1", "E2"))
    assert (made.result, other.result) == (pytest.approx(1080 - 36 - 9), pytest.approx(1080))
    assert [given.origin for given in made.inputs][-2:] == ["details.DL1.width", "details.DL1.height"]


@pytest.mark.parametrize(
    ("change", "covered"),
    [
        ({}, 0),  # nothing tells which way it falls
        ({"height": None}, 9 * 0.25),
        ({"height": None, "clearance": "0 in"}, 0),
        ({"height": None, "clearance": None}, 0),
        ({"height": None, "x": None}, 0),
    ],
)
def test_a_roof_takes_the_wall_up_to_the_board_above_its_line(change: Any, covered: float, tmp_path: Path) -> None:
    """9 ft of roof, the board 3 in above it."""
    roof = {"kind": "roof_below", "elevation": "E1", "x": "0 ft", "y": "9 ft", "width": "9 ft", "height": "2 ft"}
    given = {key: value for key, value in (roof | {"clearance": "3 in"} | change).items() if value is not None}
    made = area(tmp_path, FACE | {"openings": {}}, details={"RB1": given})
    assert made.result == pytest.approx(1080 - covered)
    assert ("Not deducted: RB1." in made.notes) == (not covered)


def test_a_units_library_finds_the_same_square_meters(tmp_path: Path) -> None:
    wanted = 45 * UNITS.ft * 24 * UNITS.ft - 9 * UNITS.ft * 4 * UNITS.ft
    package = {"purpose": "design_draft", "units": "si"}
    made = area(tmp_path, FACE | {"openings": {"A": WINDOW}}, package=package)
    assert made.unit == "m2"
    assert made.result == pytest.approx(wanted.to("m**2").magnitude)


def test_each_input_names_its_field(tmp_path: Path) -> None:
    made = area(tmp_path, FACE | {"openings": {"A": WINDOW}})
    assert [given.origin for given in made.inputs] == [
        "elevations.E1.width",
        "elevations.E1.height",
        "elevations.E1.openings.A.width",
        "elevations.E1.openings.A.height",
    ]


def test_the_coats_take_all_elevations_together(tmp_path: Path) -> None:
    coating = {
        "gloss": {"dry_film": "1 mil", "volume_solids": 40, "transfer_efficiency": 50, "coats": 1, "max_water": 0}
        | {"reserve": 0, "pail": "5 gal"}
    }
    elevations = {"E1": FACE | {"openings": {"A": WINDOW}}, "E2": FACE | {"openings": {}}}
    case = case_of(tmp_path, {"elevations": elevations, "coating": coating})
    resolve = Resolver(case.project, computing.find)
    areas = [resolve(("elevations", mark), "elevation-area").result for mark in ("E1", "E2")]
    assert line(resolve(("gloss",), "coating-quantity"), "A") == pytest.approx(1.05 * sum(areas))


@pytest.mark.parametrize(
    ("face", "path"),
    [
        ({"width": "45 ft", "openings": {}}, "elevations.E1.height"),
        ({"width": "45 ft", "height": "9 ft", "openings": {"A": {"width": "3 ft"}}}, "elevations.E1.openings.A.height"),
        ({"width": "45 ft", "height": "9 ft"}, "elevations.E1.openings"),
    ],
)
def test_what_is_missing_is_named_and_not_made_up(face: Any, path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent) as absent:
        area(tmp_path, face)
    assert ".".join(absent.value.path) == path
