"""Documents D07 and D13: what the crew snaps, cuts and orders by."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import building
from specgen.formats import text
from specgen.model.block import Figure, Table
from tests.documents.example import changed_clean, page_of
from tests.documents.support import context_of, document_of, lines_of
from tests.running import run_main
from tests.support import SMALL, merged, written


def said(example: str, name: str) -> str:
    return text.write_text(document_of(example, name)).replace("\u00a0", " ")


def test_every_elevation_is_drawn_with_its_size_and_scale() -> None:
    drawn = [block for block in document_of("clean", "D07").blocks if isinstance(block, Figure)]
    titles = [block.caption[0].text for block in drawn[1:4]]
    assert titles == ["Elevation E1 South face", "Elevation E2 West face", "Elevation E3 Stack house"]
    # 3/32 in to a foot: 45 ft are 4.22 in, 107 mm, on a page of 232 mm.
    assert "45′-0″ by 24′-0″: 52 panels, 4 openings" in drawn[1].alt
    assert "scale 3/32 in = 1 ft" in drawn[1].alt


def test_the_drawings_of_a_document_fit_its_page() -> None:
    """A letter page on its side, 11 by 8-1/2 in, with margins of 0.9 in at the sides: 233 mm of text."""
    for block in document_of("clean", "D07").blocks:
        if isinstance(block, Figure):
            assert block.width <= 233 and block.height <= 160


BAND = ((4, "18 ft"), (5, "22 ft 6 in"))


def test_panels_are_listed_once_each_and_add_up_to_the_wall() -> None:
    """South face: 45 by 24 ft less four windows of 9 by 4 ft, 936 sq ft, in panels of 4 ft 6 in by 4 ft: 52.

    The roof at the west face makes four of two panels: over the first it falls from 11 ft to 10 ft, so below its 3 in
    2 ft 9 in to 1 ft 9 in stand, and above the 3 in to the board 9 in to 1 ft 9 in: 10.125 and 5.625 sq ft.
    """
    tables = [block for block in document_of("clean", "D07").blocks if isinstance(block, Table)]
    (panels,) = [table for table in tables if table.header[0][0].text == "Panels"]
    told = [["".join(part.text for part in cell).replace("\u00a0", " ") for cell in row] for row in panels.rows]
    marks = [f"{row[0][:3]}{mark.removeprefix(row[0][:3])}" for row in told for mark in row[0].split(", ")]
    assert len(marks) == len(set(marks)) == 52 + 44 + 2 + 42
    assert all(len(row[0].split(", ")) == len(row[2].split(", ")) for row in told)
    cut = {row[0]: row[3:6] for row in told if row[3] != "4 ft 6 in x 4 ft"}
    assert [*cut] == ["E2-A3a", "E2-A3b", "E2-B3a", "E2-B3b"]
    assert cut["E2-A3a"][:2] == ["4 ft 6 in x 2 ft 9 in", "10.13 sq ft"]
    assert cut["E2-A3b"][:2] == ["4 ft 6 in x 1 ft 9 in", "5.625 sq ft"]
    assert cut["E2-A3b"][2] == (
        "4 corners, sloped edge, 9 in high at the left, 1 ft 9 in at the right, least side 1 ft 3 in; "
        "a side under 2 ft: agreed February 25, 2027, LT7"
    )
    # C2 and C5 are windows.
    assert told[2][:3] == ["E1-C1, C3, C4, C6", "9 ft", "0 ft, 8 ft, 12 ft, 20 ft"]
    assert told[2][4:] == ["18 sq ft", "OK", "1", "BT1"]
    lines = "as given by the architect; drawing A-201, November 20, 2026"
    assert f"E1 South face | 45 ft x 24 ft | {lines} | 52 | 936 sq ft | 276 ft |" in said("clean", "D07")


def test_a_joint_line_is_as_long_as_its_runs() -> None:
    """V2 stands at 9 ft, the side of two windows of 4 ft each, where the joint of the window stands: 24 - 8 ft."""
    assert "E1-V2 | vertical | 9 ft from the left end | 3 | 16 ft" in said("clean", "D07")
    assert "E1-V1 | vertical | 4 ft 6 in from the left end | 1 | 24 ft" in said("clean", "D07")
    # The porch roof takes 3 in above and 3 in below its line of the west face; the band over the door, 9 in high and
    # 5 ft 6 in wide, stands across three lines, whose grooves stop at it: 20 ft less 8 ft of door and 9 in, and 40 ft
    # 6 in less 4 ft 6 in of louver and 5 ft 6 in of band.
    assert "E2-V1 | vertical | 4 ft 6 in from the left end | 2 | 23 ft 6 in" in said("clean", "D07")
    told = said("clean", "D07")
    assert all(f"E3-V{n} | vertical | {at} from the left end | 2 | 11 ft 3 in" in told for n, at in BAND)
    assert "E3-H3 | horizontal | 12 ft above the base | 3 | 30 ft 6 in" in said("clean", "D07")


def test_a_ledge_leaves_strips_of_the_panel_that_it_crosses(tmp_path: Path) -> None:
    """Panel F3 stands from 8 to 12 ft. A band from 11 ft 9 in leaves 3 ft 9 in, one of 9 in at 8 ft 4 in 4 in below."""
    assert "E3-F3 | 18 ft | 8 ft | 4 ft 6 in x 4 ft | 18 sq ft | LG1 across it leaves 3 ft 9 in below; OK" in said(
        "clean", "D07"
    )
    moved = {"x": "17 ft 6 in", "y": "8 ft 4 in", "width": "5 ft 6 in"}
    page = page_of(changed_clean(tmp_path, {"details": {"LG1": moved}}), "D07")
    cut = "LG1 across it leaves 4 in below, 2 ft 11 in above; a side under 2 ft: architect's consent required"
    assert f"E3-F3 | 18 ft | 8 ft | 4 ft 6 in x 4 ft | 18 sq ft | {cut} |" in page
    assert "E3-D3 | 13 ft 6 in | 8 ft | 4 ft 6 in x 4 ft | 18 sq ft | LG1 cuts into it; OK |" in page
    assert "| 1 under the minimum side: architect's consent required" in page


def test_a_panel_under_the_minimum_side_is_asked_about_until_a_letter_agrees(tmp_path: Path) -> None:
    """Below the porch roof B3a is 1 ft 9 in to 9 in high, 1 ft 3 in halfway; above it A3b as high."""
    asked = changed_clean(tmp_path, {"elevations": {"E2": {"layout": {"consent": "tbd"}}}})
    assert "Panel height 1 ft 3 in at E2-A3b, E2-B3a; minimum 2 ft." in page_of(asked, "D05")
    assert "least side 1 ft 3 in; a side under 2 ft: architect's consent required" in page_of(asked, "D07")
    assert "AJT-02d" in said("clean", "D05") and "AJT-02b" not in said("clean", "D05")


def test_what_each_water_detail_takes_of_the_layout_is_told() -> None:
    told = said("clean", "D07")
    for row in (
        "RB1 | E2 West face | roof below | rake of the porch roof, 0 ft to 9 ft, 11 ft down to 9 ft up | 0 ft | 9 ft | "
        "9 ft | 2 ft | panels and aesthetic joints end at it; deducted from the net area",
        "PA2 | E2 West face | parapet | full length | – | – | – | – | not counted",
        "LG1 | E3 Stack house | ledge | band of 1 in board, bonded in a full bed over DR1, 11 ft 9 in up | "
        "17 ft 6 in | 11 ft 9 in | 5 ft 6 in | 9 in | aesthetic joints stop at it",
    ):
        assert row in told


def test_the_joint_list_tells_what_each_joint_serves_and_leaves_open() -> None:
    line = next(line for line in said("clean", "D07").splitlines() if line.startswith("J2 |"))
    opened = "3/8 in between the flashing and the board above, full length"
    assert f"floor line 12 ft above the base, serves floor FL2 | {opened} | 12 ft | 45 ft |" in line
    assert line.endswith("| 1-1/4 in | tinted primer, flashing")


def test_the_areas_add_up_from_exact_figures() -> None:
    """V of 3/4 in by 1/2 in: sides of 5/8 in add 1/2 in; 276 ft, 251 ft 6 in and 273 ft of it: 11.5, 10.48 and
    11.38 sq ft. The porch roof takes 9 ft by 6 in of the west face: 864 less 72 less 4.5 are 787.5 sq ft.

    Returns are 3 % of the net area: 28.08, 23.63 and 22.68 sq ft. Each is rounded by itself, half of one to a whole.
    """
    told = said("clean", "D13")
    for row in (
        "E1 South face | 1080[a] | 144[a] | 936[a] | 276 ft | 12[a] | 28[a] | 976[a]",
        "E3 Stack house | 810[a] | 54[a] | 756[a] | 273 ft | 11[a] | 23[a] | 790[a]",
        "Total | 2894[a] | 275[a] | 2620[a] | 800 ft 6 in | 33[a] | 74[a] | 2727[a]",
    ):
        assert row in told


def test_the_mockup_and_the_work_are_ordered_apart_in_whole_pails() -> None:
    """Primer: 2727.25 sq ft at 1604 x 0.38 x 0.35 / 1.7 sq ft/gal, 10 % more: 23.91 gal. Mockup: 140/2727.25 of it.

    The 22.68 gal of the work take a fifth pail of 5 gal, the 40.15 gal of gloss at 1.4 mil a ninth.
    """
    told = said("clean", "D13")
    assert "Primer, Tinted primer 52 | Mockup | 140[a] | 1[c] | 125 sq ft/gal[a] | 1.12[a] | 10%[c]" in told
    assert "| 10%[c] | 1.23[a] | 1[a] x 5 gal[c]" in told
    assert "| 10%[c] | 22.68[a] | 5[a] x 5 gal[c]" in told
    assert "| 12%[c] | 40.15[a] | 9[a] x 5 gal[c]" in told


def test_the_batches_share_all_that_is_ordered() -> None:
    """Of 2727.25 sq ft the mockup is 140, the faces 975.58, 821.60 and 790.06; of gloss 42.32 gal in all."""
    shares = [
        float(line.rsplit(" | ", 1)[1].removesuffix(" gal[a]"))
        for line in said("clean", "D13").splitlines()
        if line.startswith(("BT1", "BT2", "BT3", "BM | Mockup | C1 sample board 2 |", "Total | –"))
    ]
    assert shares == [2.17, 15.14, 12.75, 12.26, 42.32]
    assert sum(shares[:4]) == pytest.approx(42.32)


def test_orders_arrive_before_they_are_needed() -> None:
    """Ordered May 17, 21 days: June 7; spraying starts July 12, 35 days later."""
    assert (
        "Work | C1 sample board 2 | May 17, 2027 | 21 days | June 7, 2027 | July 12, 2027, start of spraying | 35 days"
        in (said("clean", "D13"))
    )


def test_joints_are_taken_off_by_type_and_size() -> None:
    """J1 and J4: 68 + 34 ft. Masking: one face of 68 + 34 + 33 ft at openings, less their heads of 6 x 9 ft and
    2 x 4.5 ft, where the bead joins frame and flashing, and of 45 + 36 ft at floors, beside a flashing.

    Seven windows and louvers have four corners in the wall, the door two: it stands on the lower edge.
    """
    told = said("clean", "D13")
    for row in (
        "Joint cutting | V profile, 3/4 in x 1/2 in | 800 ft 6 in |",
        "Detail mesh | diagonals at the corners of openings | 30 pieces | E1 to E3",
        "Backer rod | closed-cell, 1 in | 102 ft | J1, J4",
        "Backer rod | closed-cell, 1-1/4 in | 81 ft | J2, J3",
        "Masking | one bond face; none at flashed heads | 241 ft | J1 to J9",
        "Masking | bond face around the collar | measure at the penetration | PN1",
    ):
        assert row in told


def test_sealant_is_told_in_the_measure_of_its_sausages() -> None:
    """J5: 33 ft of 5/8 in by 3/8 in are 92.8 cu in, and 10 % more 102.1; a gallon is 231 cu in, of 128 fl oz."""
    assert "S1, Sealant 61 | 5/8 in x 3/8 in | 0.44 gal (57 fl oz)[a] | J5" in said("clean", "D13")


def test_wall_materials_are_taken_off_by_their_net_area() -> None:
    """E1 and E2: 936 + 787.5 sq ft, less what the porch roof covers; E3: 756; all 2479.5.

    Heavy mesh stands below 8 ft of the faces: 45 x 8 less two windows of 9 ft by 4 ft, 36 x 8 less one, 40.5 x 8 less a
    door of 4.5 ft by 8 ft: 288 + 252 + 288 sq ft.
    """
    lines = said("clean", "D13").partition("\nWALL MATERIALS\n")[2].split("\n\n")[0].splitlines()
    assert lines[2:] == [
        "WRB | Barrier 12, fluid-applied | 1724[a] | E1, E2",
        "Adhesive | Wall adhesive 14, notched-trowel adhesive | 1724[a] | E1, E2",
        "Adhesive | Wall adhesive 14, full-bed adhesive | 756[a] | E3",
        "Board | System board 20, 3 in EPS | 2480[a] | E1 to E3",
        "Base coat | Base coat 31, 3/32 in dry in 2 passes[b] | 2480[a] | E1 to E3",
        "Base coat | Base coat 31, one pass more under heavy mesh | 828[a] | E1 to E3",
        "Heavy mesh | Mesh 150, high zone | 828[a] | E1 to E3",
        "Standard mesh | Mesh 45 | 2480[a] | E1 to E3",
        # 5.5 ft by 9 in.
        "Board, adhesive | System board 20, ledge LG1, full bed | 4[a] | E3",
        lines[-1],
    ]
    assert lines[-1].startswith("Not counted | sheathing joint treatment, flashing membrane, ")


@pytest.mark.parametrize(
    ("runs", "drainage", "told"),
    [
        ("horizontal", "adhesive_ribbons", "one bond face | 20 ft"),
        ("horizontal", "none", "two bond faces | 40 ft"),
        ("vertical", "adhesive_ribbons", "two bond faces | 40 ft"),
    ],
)
def test_a_flashing_takes_the_place_of_a_bond_face(tmp_path: Path, runs: str, drainage: str, told: str) -> None:
    joint = {"elevation": "E1", "kind": "floor_line", "runs": runs, "length": "20 ft", "bond_face": "primer"}
    change = {"walls": {"W1": {"drainage": {"kind": drainage}}}, "elevations": {"E1": {"wall": "W1"}}}
    lines = lines_of("D13", context_of(tmp_path, change | {"joints": {"J1": joint}}))
    assert f"Masking | {told} | J1" in lines


@pytest.mark.parametrize("purpose", ["mockup_submittal", "design_draft"])
def test_a_package_of_an_earlier_stage_has_no_documents_of_the_work(purpose: str, tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SMALL, {"package": {"purpose": purpose}}))
    draft = ["--draft"] if purpose != "design_draft" else []
    assert run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"), "--formats", "txt", *draft).code in (
        0,
        1,
    )
    assert {made.name[:3] for made in (tmp_path / "out").glob("*.txt")}.isdisjoint({"D07", "D13"})


def test_proposed_layouts_are_compared_in_numbers(tmp_path: Path) -> None:
    change = {
        "elevations": {
            "E1": {
                "wall": "W1",
                "width": "12 ft",
                "height": "9 ft",
                "openings": {},
                "floor_lines": {},
                "layout": {"mode": "request"},
            }
        },
        "joints": {},
    }
    building.build(written(tmp_path, merged(SMALL, change)), tmp_path / "out", ("txt",), ("D07",), draft=True)
    told = next((tmp_path / "out").glob("D07*.txt")).read_text("utf-8").replace("\u00a0", " ")
    # Panels of at most 5 by 5 ft: three columns and two rows.
    assert "E1 | 12 ft x 9 ft | proposed, running through | 6 | 108 sq ft | 30 ft | within the panel limits" in told
    assert "LAYOUTS PROPOSED" in told


def test_limits_of_a_meter_and_a_half_are_never_told_in_feet(tmp_path: Path) -> None:
    face = {"width": "6 m", "height": "3 m", "openings": {}, "floor_lines": {}, "layout": {"mode": "request"}}
    change = {"package": {"units": "si"}, "elevations": {"E1": {"wall": "W1"} | face}, "joints": {}}
    building.build(written(tmp_path, merged(SMALL, change)), tmp_path / "out", ("txt",), ("D07",), draft=True)
    told = next((tmp_path / "out").glob("D07*.txt")).read_text("utf-8").replace("\u00a0", " ")
    assert "maximum 1.5 m wide, 1.5 m high, and 2.3 m²" in told
    assert "1.5 m x 1.5 m" in told
    assert not re.search(r"4\.92|\d (ft|in|sq ft)\b", told)


@pytest.mark.parametrize(("document", "head"), [("D07", "Elevation"), ("D13", "Elevation"), ("D13", "Boxed batch")])
def test_a_table_of_elevations_that_are_not_given_asks_for_them(document: str, head: str, tmp_path: Path) -> None:
    project = written(tmp_path, merged(SMALL, {"elevations": {}}))
    building.build(project, tmp_path / "out", ("txt",), (document,), draft=True)
    (page,) = (tmp_path / "out").glob(f"{document}*.txt")
    lines = page.read_text("utf-8").splitlines()
    (at,) = (number for number, line in enumerate(lines) if line.startswith(f"{head} |"))
    assert lines[at + 1].startswith("[Elevations] |")


def test_joints_at_the_ends_of_a_face_are_placed_there() -> None:
    lines = {line[:2]: line for line in said("clean", "D07").splitlines() if line.startswith(("J6 |", "J7 |"))}
    assert "E1 South face: dissimilar material at the right end |" in lines["J6"]
    assert "E2 West face: dissimilar material at the left end |" in lines["J7"]
    assert lines["J6"].endswith("tinted primer, corner panel of coated aluminum")
