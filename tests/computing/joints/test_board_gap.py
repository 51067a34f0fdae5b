"""Gap between boards at a sealant joint: from the joint and the coats on each edge, by hand."""

from pathlib import Path
from typing import Any

import pytest

from specgen.computing.joints.board_gap import round_up_gap
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.quantities.parse import parse_any_quantity
from tests.computing._figures import resolver_of, worked
from tests.support import merged

LAMINA = {"base_coat": "3/32 in", "smoothing": "1/32 in"}


# An eighth of an inch of base coat and smoothing on each edge: a joint of 3/4 in takes 7/8 in beside a frame and 1 in
# between boards. 25 mm and twice 3.3 mm are 31.6 mm.
@pytest.mark.parametrize(
    ("given", "gap"),
    [
        ({"width": "3/4 in", "edges": "1"} | LAMINA, 7 / 8),
        ({"width": "3/4 in"} | LAMINA, 1),
        ({"width": "1 in", "base_coat": "3/32 in", "smoothing": "0 in"}, 1.1875),
        ({"width": "25 mm", "base_coat": "2.5 mm", "smoothing": "0.8 mm"}, 31.6),
    ],
)
def test_a_gap_is_the_joint_and_the_coats_on_its_edges(given: dict[str, str], gap: float) -> None:
    assert worked("board-gap", given).result == pytest.approx(gap)


@pytest.mark.parametrize(
    ("gap", "unit", "read"),
    [(0.875, "in", "7/8 in"), (0.876, "in", "15/16 in"), (31.6, "mm", "32 mm"), (15.0, "mm", "15 mm")],
)
def test_a_gap_is_read_up_to_the_next_mark_of_a_rule(gap: float, unit: str, read: str) -> None:
    assert round_up_gap(gap, unit) == parse_any_quantity(read)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [({"width": "0 in"}, "width is 0 in"), ({"edges": "3"}, "edges is 3"), ({"base_coat": "-1 in"}, "base_coat")],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("board-gap", {"width": "3/4 in"} | LAMINA | wrong)


def project(**joint: Any) -> dict[str, Any]:
    """A wall with one joint of 1 in on its only elevation."""
    return {
        "walls": {"W1": {"base_coat": {"dry_thickness": "1/8 in"}}},
        "elevations": {"E1": {"wall": "W1"}},
        "coating": {"smoothing": {"total_thickness": "1/16 in"}},
        "joints": {"J1": {"elevation": "E1", "width": "1 in"} | joint},
    }


# 1 in and 3/16 in of coats, or 1/8 in of base coat alone, on one edge or on two.
@pytest.mark.parametrize(
    ("kind", "face", "gap"),
    [
        ("opening_perimeter", "primer", 1.1875),
        ("dissimilar_material", "primer", 1.1875),
        ("floor_line", "primer", 1.375),
        ("floor_line", "base_coat", 1.25),
        ("opening_perimeter", "sealant_primer_on_base_coat", 1.125),
    ],
)
def test_a_joint_of_a_project_takes_the_coats_of_its_wall(kind: str, face: str, gap: float, tmp_path: Path) -> None:
    made = resolver_of(tmp_path, project(kind=kind, bond_face=face))(("joints", "J1"), "board-gap")
    assert made.result == pytest.approx(gap)


def test_without_a_bond_face_nobody_knows_the_coats_on_the_edge(tmp_path: Path) -> None:
    with pytest.raises(Absent):
        resolver_of(tmp_path, project(kind="floor_line"))(("joints", "J1"), "board-gap")


@pytest.mark.parametrize(("flashed", "told"), [("yes", True), ("no", False)])
def test_at_a_flashed_head_no_board_edge_stands_beside_the_bead(flashed: str, told: bool, tmp_path: Path) -> None:
    head = {"elevations": {"E1": {"openings": {"A": {"kind": "window", "head_flashing": flashed}}}}}
    change = merged(project(kind="opening_perimeter", bond_face="primer", serves=["A"]), head)
    made = resolver_of(tmp_path, change)(("joints", "J1"), "board-gap")
    assert any(note.startswith("At jambs; at a head") for note in made.notes) is told


@pytest.mark.parametrize(("drained", "told"), [("adhesive_ribbons", True), ("none", False)])
def test_below_a_flashing_the_gap_is_that_of_the_board_below_alone(drained: str, told: bool, tmp_path: Path) -> None:
    """Board and lamina are not set a gap apart: what drains above the flashing and the edge above it are added."""
    wall = {"walls": {"W1": {"drainage": {"kind": drained}}}}
    change = merged(project(kind="floor_line", bond_face="primer", runs="horizontal"), wall)
    made = resolver_of(tmp_path, change)(("joints", "J1"), "board-gap")
    assert any(note.startswith("From the board below to the flashing") for note in made.notes) is told
