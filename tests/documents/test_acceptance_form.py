"""The mockup acceptance form: the project's own criteria join the standard lines, omitted lines say so.

Which lines there are, and what they say, is held in tests/standards/work_rows.yaml and the goldens.
"""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import building, pipeline
from specgen.model.block import Blank, CheckBox, Table
from specgen.model.problem import Refused
from tests.documents.support import context_of_example, document_of
from tests.documents.support import lines_of as printed_of
from tests.support import SMALL, merged, written

GIVEN: dict[str, Any] = {
    "finish": {"flatness_long": "1/8 in", "flatness_short": "1/16 in"},
    "gloss_target": {"units": 62, "angle": "60", "tolerance": 5},
    "colors": {"C1": {"tolerance": 2, "angles": ["15", "45", "110"], "metallic": "yes"}},
}


def lines_of(folder: Path, change: Any) -> dict[str, list[str]]:
    """The rows of the form for the small project with a change, by criterion; the letters of sources fall off."""
    folder.mkdir(exist_ok=True)
    file = written(folder, merged(merged(SMALL, GIVEN), change))
    building.build(file, folder / "out", ("txt",), ("D10",), draft=True)
    (made,) = (folder / "out").glob("D10*.txt")
    rows = [line.split(" | ") for line in made.read_text("utf-8").splitlines() if " | " in line]
    return {row[1].split("[")[0]: row for row in rows if len(row) == 14}


def limit_of(folder: Path, name: str, own: list[dict[str, Any]], **more: Any) -> str:
    return lines_of(folder, {"mockup": {"criteria": own, **more}})[name][3]


LONG, GLOSS = "Base coat flatness, long straightedge", "Specular gloss"


@pytest.mark.parametrize(
    ("own", "line", "limit"),
    [
        ({"name": "flatness_long", "limit": "1/16 in"}, LONG, "Maximum 1/16 in (project criterion)"),
        ({"name": "flatness_long", "limit": "1/4 in"}, LONG, "Maximum 1/8 in"),
        ({"name": "flatness_long", "limit": "at most 1/8 in"}, LONG, "Maximum 1/8 in"),
        (
            {"name": "flatness_long", "limit": "no gap at a lap"},
            LONG,
            "Maximum 1/8 in. Project criterion: no gap at a lap",
        ),
        (
            {"name": "gloss", "limit": "62 within 3 units"},
            GLOSS,
            "62 within 3 gloss units at 60 degrees, each reading (project criterion)",
        ),
        # A mean lets a panel stand outside, so that only the project's own words say one: common practice, no source.
        (
            {"name": "gloss", "limit": "mean 62 within 3 units"},
            GLOSS,
            "62 ± 5 gloss units at 60 degrees. Project criterion: mean 62 within 3 units",
        ),
        ({"name": "gloss", "limit": "62 within 9"}, GLOSS, "62 ± 5 gloss units at 60 degrees, each reading"),
        (
            {"name": "gloss", "limit": "70 within 5"},
            GLOSS,
            "62 ± 5 gloss units at 60 degrees, each reading. Project criterion: 70 within 5",
        ),
        (
            {"name": "color", "method": "E2194", "limit": "1.5"},
            "Color difference, 15 degrees",
            "CIEDE2000 difference from the approved sample maximum 1.5, each reading (project criterion)",
        ),
        (
            {"name": "mesh", "limit": "corners true"},
            "Mesh concealment",
            "No mesh pattern, color, or lap edge visible; no cat faces; corners true",
        ),
    ],
)
def test_the_stricter_figure_counts_and_of_words_both_print(
    own: dict[str, Any], line: str, limit: str, tmp_path: Path
) -> None:
    assert limit_of(tmp_path, line, [own]) == limit


def test_of_two_own_figures_the_stricter_counts(tmp_path: Path) -> None:
    own = [{"name": "flatness_long", "limit": "3/32 in"}, {"name": "flatness_long", "limit": "1/16 in"}]
    assert limit_of(tmp_path / "a", LONG, own) == "Maximum 1/16 in (project criterion)"
    assert limit_of(tmp_path / "b", LONG, own[::-1]) == "Maximum 1/16 in (project criterion)"


def test_a_figure_for_several_lines_tightens_each_that_it_can(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"mockup": {"criteria": [{"name": "flatness", "limit": "3/32 in"}]}})
    assert lines[LONG][3] == "Maximum 3/32 in (project criterion)"
    assert lines["Base coat flatness, short straightedge"][3] == "Maximum 1/16 in"
    assert "Flatness: project criterion" not in lines


def test_words_for_several_lines_stand_behind_them_and_no_standard_line_is_lost(tmp_path: Path) -> None:
    own = [
        {"name": "flatness", "method": "straightedges", "instrument": "LS-1", "limit": "1/8 in in 10 ft", "readings": 7}
    ]
    plain, lines = lines_of(tmp_path / "a", {}), lines_of(tmp_path / "b", {"mockup": {"criteria": own}})
    assert [name for name in lines if name in plain] == list(plain)
    names = list(lines)
    at = names.index("Flatness: project criterion")
    assert names[at - 1] == "Base coat flatness, short straightedge"
    assert lines[names[at]][2:4] == ["Straightedges (LS-1)", "1/8 in in 10 ft"]


def test_a_method_that_names_a_standard_chooses_the_line(tmp_path: Path) -> None:
    own = [{"name": "adhesion", "method": "D7234 with a 2 in dolly", "limit": "board fails first"}]
    lines = lines_of(tmp_path, {"mockup": {"criteria": own}})
    assert lines["Adhesion by pull-off"][2] == "D7234 with a 2 in dolly"
    assert lines["Adhesion by pull-off"][3].endswith(
        "smoothing, primer, and gloss. Project criterion: board fails first"
    )
    assert lines["Adhesion by tape"][2:4] == [
        "ASTM D3359, method B up to 5 mil total dry film, A above[b]",
        lines_of(tmp_path / "b", {})["Adhesion by tape"][3],
    ]


def test_a_criterion_that_names_no_line_is_added_at_the_end(tmp_path: Path) -> None:
    own = [{"name": "other", "method": "tap with a knuckle", "limit": "no hollow sound", "readings": 2}]
    lines = lines_of(tmp_path, {"mockup": {"criteria": own}})
    assert list(lines)[-1] == "Project criterion"
    assert lines["Project criterion"][2:5] == ["Tap with a knuckle", "No hollow sound", "2 readings"]
    assert lines["Record of settings"][3] == "Complete and signed"


def test_an_omitted_line_says_so_and_who_decided(tmp_path: Path) -> None:
    left = {"omit": ["adhesion_tape"], "omit_decided_by": "architect", "omit_reason": "pull-off governs"}
    row = lines_of(tmp_path, {"mockup": left})["Adhesion by tape"]
    assert row[3] == "Not used. Decided by: architect. Reason: pull-off governs."
    assert set(row[5:]) == {"–"}
    assert lines_of(tmp_path / "b", {"mockup": {"omit": ["adhesion_tape"]}})["Adhesion by tape"][3] == "Not used."


def test_an_own_criterion_of_an_omitted_line_stands_alone(tmp_path: Path) -> None:
    own = {"omit": ["gloss"], "criteria": [{"name": "gloss", "limit": "62 within 3"}]}
    lines = lines_of(tmp_path, {"mockup": own})
    assert lines[GLOSS][3] == "Not used."
    assert lines["Gloss: project criterion"][3] == "62 within 3"


def test_an_unknown_name_is_refused_with_the_nearest(tmp_path: Path) -> None:
    file = written(tmp_path, merged(SMALL, {"mockup": {"omit": ["adhesion_tap"]}}))
    with pytest.raises(Refused, match="adhesion_tap") as told:
        pipeline.read(file)
    (problem,) = told.value.problems
    assert "adhesion_tape" in problem.hint


def test_each_reading_asked_for_has_a_box(tmp_path: Path) -> None:
    lines = lines_of(tmp_path / "a", {})
    assert lines["Base coat flatness, short straightedge"][5:11] == ["____"] * 5 + ["–"]
    assert lines[GLOSS][5:12] == ["____"] * 7  # six readings and their mean
    more = lines_of(tmp_path / "b", {"mockup": {"criteria": [{"name": "gloss", "readings": 14}]}})
    assert more[GLOSS][4] == "Full panel; 14 readings"
    made = document_of("clean", "D10")
    table = next(b for b in made.blocks if isinstance(b, Table) and len(b.header) == 14)
    rows = [row for row in table.rows if "Gloss wet film" in str(row[1])]
    boxes = [part for row in rows for cell in row[5:11] for part in cell if isinstance(part, Blank)]
    assert len(boxes) == 2 * 5  # five readings on each of the two coats of this example


def test_each_coat_and_each_angle_has_its_own_readings_mean_and_result(tmp_path: Path) -> None:
    written(tmp_path, {"format": 1, "gloss": {"coats": 2}, "primer": {"coats": 1}}, "coating.yaml")
    lines = lines_of(tmp_path, {"coating_system": "coating.yaml"})
    coats = [row for name, row in lines.items() if name.startswith("Gloss dry film")]
    assert [row[1].split("[")[0] for row in coats] == ["Gloss dry film, coat 1", "Gloss dry film, coat 2"]
    assert [row[0][-1] for row in coats] == ["a", "b"] and coats[0][2:5] == coats[1][2:5]
    assert coats[1][5:12] == [*["____"] * 5, "–", "____"]
    assert all("pass" in row[12] for row in coats)
    assert "Primer dry film, coat 1" not in lines and lines["Primer dry film"][4] == "Coupons, test area; 5 each coat"
    angles = [row for name, row in lines.items() if name.startswith("Color difference")]
    assert [row[1].split(", ")[1].split("[")[0] for row in angles] == ["15 degrees", "45 degrees", "110 degrees"]
    assert [row[0][-1] for row in angles] == ["a", "b", "c"] and len({row[3] for row in angles}) == 1
    assert len({row[0] for row in lines.values()}) == len(lines)
    second = {"C2": {"tolerance": 2, "metallic": "no"}}
    lines = lines_of(tmp_path, {"coating_system": "coating.yaml", "colors": second})
    assert [name for name in lines if name.startswith("Color difference")] == [
        "Color difference, C1, 15 degrees",
        "Color difference, C1, 45 degrees",
        "Color difference, C1, 110 degrees",
        "Color difference, C2",
    ]


def test_the_eye_is_no_mark_and_the_hours_have_a_box_of_their_own(tmp_path: Path) -> None:
    own = [{"name": "look", "method": "from 10 ft", "instrument": "eye", "limit": "no hot spot"}]
    lines = lines_of(tmp_path, {"mockup": {"criteria": [*own, {"name": "primer_dryness", "readings": 3}]}})
    assert lines["Finish appearance"][2] == "From 10 ft"
    assert lines["Finish appearance"][3].endswith("Project criterion: no hot spot")
    assert lines["Primer dryness before gloss"][4:11] == ["Full panel; 5 readings", *["____"] * 6]


def test_a_line_of_more_readings_than_stand_abreast_goes_on_below_itself(tmp_path: Path) -> None:
    lines = lines_of(tmp_path, {"mockup": {"criteria": [{"name": "gloss", "readings": 13}]}})
    assert lines["Specular gloss, continued"][4:12] == ["Reading 13", "____", *["–"] * 6]


def test_a_deviation_that_moves_a_limit_is_named_at_it() -> None:
    made = document_of("clean", "D10")
    table = next(b for b in made.blocks if isinstance(b, Table) and len(b.header) == 14)
    named = [str(row[1]) for row in table.rows if "deviation DV1" in str(row[3])]
    # On the panel of the working gun, and on that of the spare one.
    assert len(named) == 2 and all("Specular gloss" in line for line in named)


def test_the_form_has_its_boxes_viewing_remarks_evidence_and_signatures() -> None:
    made = document_of("clean", "D10")
    tables = {
        tuple(str(getattr(part, "text", "")) for cell in b.header for part in cell): b
        for b in made.blocks
        if isinstance(b, Table)
    }
    signing = tables["Party", "Company", "Signs for", "Printed name and title", "Signature", "Date"]
    assert [(row[0][0].text, row[2][0].text) for row in signing.rows] == [  # type: ignore[union-attr]
        ("Applicator", "the work and its own readings"),
        ("Sealant applicator", "criteria 31 and 32"),
        ("General contractor", "receipt; no decision"),
        ("Inspector", "readings made or witnessed"),
        ("Architect", "the decision"),
        ("Owner", "receipt; no decision"),
    ]
    assert all(isinstance(row[3][0], Blank) and isinstance(row[4][0], Blank) for row in signing.rows)
    assert len(tables["Line", "Remarks, with the number of the criterion", "Closed: date, initials"].rows) == 4
    assert not any("Second viewing on (date)" in head for head in tables)
    readings = next(table for head, table in tables.items() if head[0] == "Criteria")
    assert all(isinstance(cell[0], Blank) for row in readings.rows for cell in row)
    seen = next(table for head, table in tables.items() if head[0] == "Viewing")
    assert [len([p for cell in row for p in cell if isinstance(p, Blank)]) for row in seen.rows] == [6, 6]
    choices = [part.label for b in made.blocks for part in getattr(b, "content", ()) if isinstance(part, CheckBox)]
    assert choices == ["Accepted", "Accepted as noted", "Correct, and view again", "Not accepted; build a new mockup"]


def coats(folder: Path, gloss: str) -> dict[str, list[str]]:
    films = {"primer": {"coats": 1, "dry_film": "1.5 mil"}, "gloss": {"coats": 2, "dry_film": gloss}}
    written(folder, {"format": 1} | films, "coating.yaml")
    return lines_of(folder, {"coating_system": "coating.yaml"})


@pytest.mark.parametrize(("gloss", "method", "limit"), [("1.75 mil", "B", "4B"), ("1.8 mil", "A", "4A")])
def test_the_film_decides_the_method_of_the_tape_test(gloss: str, method: str, limit: str, tmp_path: Path) -> None:
    # ASTM D3359-09e2, 1.2: method B is not for films thicker than 5 mil. 1.5 + 2 x 1.75 is 5.0, 1.5 + 2 x 1.8 is 5.1.
    line = coats(tmp_path, gloss)["Adhesion by tape"]
    assert (line[2], line[3].split("[")[0]) == (f"ASTM D3359, method {method}", f"Minimum {limit}")


def test_the_thickest_film_allowed_decides_it_where_one_is(tmp_path: Path) -> None:
    # The same edition: 1.5 + 2 x 1.2 is 3.9 mil as specified, 2.4 + 2 x 2 is 6.4 as allowed.
    films = {"primer": {"coats": 1, "dry_film": "1.5 mil"}, "gloss": {"coats": 2, "dry_film": "1.2 mil"}}
    most = {"primer": {"most_dry_film": "2.4 mil"}, "gloss": {"most_dry_film": "2 mil"}}
    written(tmp_path, {"format": 1} | merged(films, most), "coating.yaml")
    assert lines_of(tmp_path, {"coating_system": "coating.yaml"})["Adhesion by tape"][2] == "ASTM D3359, method A"


@pytest.mark.parametrize("document", ["D09", "D10"])
def test_the_hold_of_a_color_stands_beside_its_place(document: str) -> None:
    # Its face is hotter in still air than the board bears (ASTM C578, 165 F): who sprays the mockup reads these alone.
    text = "\n".join(printed_of(document, context_of_example("metric")))
    assert "color C1 (hold for HEA-03b, D05)" in text.replace("Color", "color")


def test_water_has_a_box_each_coat_and_a_cup_a_row_each_coat(tmp_path: Path) -> None:
    lines = coats(tmp_path, "1.2 mil")
    assert lines["Thinning water"][5:11] == [*["____"] * 3, *["–"] * 3]
    assert {"Primer cup time", "Gloss cup time, coat 1", "Gloss cup time, coat 2"} <= set(lines)


def test_the_wet_film_is_recorded_and_what_it_lacks_stands_in_brackets_that_count(tmp_path: Path) -> None:
    line = coats(tmp_path, "1.2 mil")["Gloss wet film, coat 1"]
    assert re.sub(r"\[[a-z]\]", "", line[3]).startswith(
        "Target for 1.2 mil dry at [Gloss volume solids] solids; dry film governs"
    )
    assert "done" in line[12] and "pass" not in line[12]


def test_a_least_film_of_the_project_that_names_no_mean_binds_each_reading(tmp_path: Path) -> None:
    own = {"mockup": {"criteria": [{"name": "film_gloss_dry", "limit": "minimum 1.2 mil"}]}}
    folder = tmp_path / "own"
    folder.mkdir()
    written(folder, {"format": 1, "gloss": {"coats": 1, "dry_film": "1.2 mil"}}, "coating.yaml")
    line = lines_of(folder, {"coating_system": "coating.yaml"} | own)["Gloss dry film"]
    assert line[3] == "Minimum 1.2 mil, each reading (project criterion)"
    folder = tmp_path / "standard"
    folder.mkdir()
    written(folder, {"format": 1, "gloss": {"coats": 1, "dry_film": "1.2 mil"}}, "coating.yaml")
    standard = lines_of(folder, {"coating_system": "coating.yaml"})["Gloss dry film"]
    assert re.sub(r"\[[a-z]\]", "", standard[3]) == "Mean minimum 1.2 mil; no reading below 85% of that minimum"


def test_each_size_of_joint_that_the_mockup_can_show_has_its_box(tmp_path: Path) -> None:
    floor = {"kind": "floor_line", "width": "1 in", "depth": "1/2 in"}
    window = {"kind": "opening_perimeter", "width": "3/4 in", "depth": "3/8 in"}
    change: dict[str, Any] = {
        "elevations": {"E1": {"wall": "W1", "facing": "S"}, "E2": {"wall": "W1", "facing": "N"}},
        "joints": {"J1": {**window, "elevation": "E1"}, "J2": {**floor, "elevation": "E2"}},
        "mockup": {"kind": "free_standing", "facing": "S", "includes": ["sealant_joint"]},
    }
    lines = lines_of(tmp_path / "a", change)
    assert lines["Sealant adhesion"][4:8] == ["Place 1; 1 each size", "____", "____", "–"]
    faces = "Sealant bond faces and bead"
    assert lines[faces][3].startswith(
        "Width and depth 3/4 in by 3/8 in to 1/2 in (J1); 1 in by 1/2 in, tolerance of the depth per the sealant "
        "manufacturer's written instructions (J2); no gloss on the bond"
    )
    # Common practice, no source: a bead is half as deep as it is wide, and at most 1/2 in.
    near = {"mockup": {"kind": "in_place"}, "joints": {"J1": {"tolerance": "1/8 in"}}}
    built = lines_of(tmp_path / "b", merged(change, near))
    assert built[faces][3].startswith("Width and depth 3/4 in ± 1/8 in by 3/8 in to 1/2 in (J1); no gloss")
    assert built[faces][5:7] == ["____", "–"]


def test_mesh_has_a_box_each_zone_that_the_plan_lists(tmp_path: Path) -> None:
    layers = [
        {"kind": "high_impact", "zone": "high"},
        {"kind": "detail", "zone": "all"},
        {"kind": "standard", "zone": "all"},
    ]
    lines = lines_of(tmp_path / "a", {"walls": {"W1": {"mesh": {"layers": layers}}}})
    # Detail mesh lines edges and joints; the zones are those of the other kinds.
    assert lines["Mesh concealment"][5:8] == ["____", "____", "–"]
    two = {"W1": {"mesh": {"layers": layers}}, "W2": {"mesh": {"layers": layers[1:]}}}
    lines = lines_of(tmp_path / "c", {"walls": two})  # W1: high-impact, standard; W2: standard
    assert lines["Mesh concealment"][5:9] == [*["____"] * 3, "–"]
    assert lines_of(tmp_path / "b", {})["Mesh concealment"][5:7] == ["____", "–"]


def test_the_form_names_the_hold_point_it_releases_and_limits_not_yet_agreed(tmp_path: Path) -> None:
    proposed = "1. Limits are proposed, for approval by the architect."
    lines_of(tmp_path / "a", {})
    (made,) = (tmp_path / "a" / "out").glob("D10*.txt")
    assert (
        "Acceptance releases Hold Point 2 of Document D08; acceptance as noted releases it when each remark is closed."
        in made.read_text("utf-8")
    )
    assert proposed in made.read_text("utf-8").splitlines()
    lines_of(tmp_path / "b", {"mockup": {"criteria": [{"name": "gloss", "limit": "62 within 3"}]}})
    (made,) = (tmp_path / "b" / "out").glob("D10*.txt")
    assert proposed not in made.read_text("utf-8").splitlines()


def test_the_clearance_of_a_mockup_in_place_is_that_of_its_own_elevation(tmp_path: Path) -> None:
    change: dict[str, Any] = {
        "elevations": {
            "E1": {"wall": "W1", "facing": "S", "grade_clearance": "9 in"},
            "E2": {"wall": "W1", "facing": "N", "grade_clearance": "6 in"},
        },
        "mockup": {"kind": "in_place", "facing": "S", "includes": ["grade_end"]},
    }
    assert "clearance minimum 9 in" in lines_of(tmp_path / "a", change)["Termination above grade"][3]
    apart = merged(change, {"mockup": {"kind": "free_standing"}})
    assert "clearance minimum 6 in" in lines_of(tmp_path / "b", apart)["Termination above grade"][3]


EDGE = "{} straightedge and feeler gauge; both diagonals and one {} line"
# Half of the width is finished beside the steps: 4 ft of 8 ft, 7 ft of 14 ft.
STEPS = {"includes": ["build_up_steps"]}


@pytest.mark.parametrize(
    ("name", "mockup", "said"),
    [
        ("a", {"width": "8 ft", "height": "8 ft"} | STEPS, EDGE.format("8 ft", "plumb")),
        ("b", {"width": "8 ft", "height": "8 ft"}, EDGE.format("8 ft", "level")),
        ("c", {"width": "14 ft", "height": "10 ft"} | STEPS, EDGE.format("10 ft", "plumb")),
        ("d", {"width": "14 ft", "height": "10 ft"}, EDGE.format("10 ft", "level")),
        ("e", {"width": "3 ft", "height": "2 ft"}, EDGE.format("4 ft", "level")),
        ("f", {}, EDGE.format("10 ft", "level")),
    ],
)
def test_the_long_straightedge_fits_a_side_of_the_finished_part(
    name: str, mockup: dict[str, Any], said: str, tmp_path: Path
) -> None:
    assert lines_of(tmp_path / name, {"mockup": mockup})[LONG][2].startswith(said)


def test_each_reading_has_one_place_and_the_form_its_key(tmp_path: Path) -> None:
    shown = {"mockup": {"includes": ["full_panel", "joint_crossing", "outside_corner"]}}
    lines = lines_of(tmp_path, shown)
    assert lines[GLOSS][4] == "Place 1; 6 readings"
    assert lines["Aesthetic joint straightness and edges"][4] == "Places 2 and 3; 4 readings"
    assert lines[LONG][4] == "Whole face; 3 readings"
    stepped = lines_of(tmp_path / "c", {"mockup": {"includes": ["full_panel", "build_up_steps"]}})
    assert stepped[LONG][4] == "Finished part; 3 readings"
    assert lines["Adhesion by tape"][4] == "Place 4; 3 readings"
    (made,) = (tmp_path / "out").glob("D10*.txt")
    told = "Places: 1 full panel; 2 aesthetic joint crossing; 3 outside corner; 4 test area."
    assert told in made.read_text("utf-8")
    shown["mockup"]["includes"] += ["opening"]
    lines = lines_of(tmp_path / "b", shown)
    assert lines["Aesthetic joint straightness and edges"][4] == "Places 2, 3, and 4; 4 readings"


BASE, WRB, PH = "Base coat thickness", "WRB thickness", "pH of face before primer"


def test_the_layers_below_the_coating_are_measured_on_the_walls_of_the_mockup(tmp_path: Path) -> None:
    walls: dict[str, Any] = {
        "W1": {"wrb": {"kind": "fluid_applied", "dry_thickness": "12 mil"}, "base_coat": {"dry_thickness": "3/32 in"}},
        "W2": {"wrb": {"kind": "building_wrap"}, "base_coat": {"dry_thickness": "1/8 in"}},
    }
    lines = lines_of(tmp_path / "a", {"walls": walls, "mockup": {"walls": ["W1"], "includes": ["build_up_steps"]}})
    assert lines[WRB][3:5] == ["Minimum 12 mil, dry, all coats together", "Place 2; 3 readings"]
    assert lines[BASE][3].split("[")[0] == "Minimum 3/32 in, maximum 1/4 in, dry, all passes together"
    lines = lines_of(tmp_path / "b", {"walls": walls, "mockup": {"walls": ["W2"]}})
    assert WRB not in lines and lines[BASE][3].startswith("Minimum 1/8 in, maximum")
    lines = lines_of(tmp_path / "c", {"walls": walls, "mockup": {"walls": ["W1", "W2"]}})
    assert lines[BASE][3].startswith("Minimum 3/32 in (W1), 1/8 in (W2), maximum 1/4 in")
    assert lines[WRB][3] == "Minimum 12 mil, dry, all coats together"


def test_a_layer_without_a_thickness_is_held_to_its_data_sheet_or_the_least_of_the_trade(tmp_path: Path) -> None:
    # ASTM C1397, summary in the catalog: base coat from 1/16 in to 1/4 in.
    lines = lines_of(tmp_path, {"walls": {"W1": {"wrb": {"kind": "fluid_applied"}}}})
    assert lines[WRB][3] == "Minimum per its data sheet, dry, all coats together"
    assert lines[BASE][3].replace("[b]", "").startswith("Minimum 1/16 in, maximum 1/4 in, dry, all passes")
    one = {"W1": {"base_coat": {"dry_thickness": "3/32 in"}}, "W2": {"base_coat": {"passes": 2}}}
    assert lines_of(tmp_path / "b", {"walls": one})[BASE][3].startswith("Minimum 1/16 in, maximum")


def test_a_criterion_of_the_project_tightens_the_thickness_of_the_walls_of_the_mockup(tmp_path: Path) -> None:
    walls = {"W1": {"base_coat": {"dry_thickness": "3/32 in"}}, "W2": {"base_coat": {"dry_thickness": "3/16 in"}}}
    own = {"walls": ["W1"], "criteria": [{"name": "base_coat_thickness", "limit": "minimum 1/8 in"}]}
    lines = lines_of(tmp_path, {"walls": walls, "mockup": own})
    said = "Minimum 1/8 in, maximum 1/4 in, dry, all passes together (project criterion)"
    assert lines[BASE][3].split("[")[0] == said


def test_the_face_is_read_for_its_ph_where_the_base_coat_is_cement(tmp_path: Path) -> None:
    cement = {"walls": {"W1": {"base_coat": {"kind": "cement_added"}}}}
    assert lines_of(tmp_path / "a", cement)[PH][3:5] == [
        "Maximum [Limit of pH under the primer]",
        "Whole face; 3 readings",
    ]
    assert PH not in lines_of(tmp_path / "b", {"walls": {"W1": {"base_coat": {"kind": "no_cement"}}}})
    asked = tmp_path / "c"
    asked.mkdir()
    written(asked, {"format": 1, "primer": {"most_ph": 10}}, "coating.yaml")
    line = lines_of(asked, {"coating_system": "coating.yaml", "walls": {"W1": {"base_coat": {"kind": "no_cement"}}}})[
        PH
    ]
    assert line[3].split("[")[0] == "Maximum 10"


def test_those_sign_whom_the_project_names_and_who_decides(tmp_path: Path) -> None:
    lines_of(tmp_path, {"parties": {"applicator": {"name": "Lark"}}, "mockup": {"approver": "architect"}})
    (made,) = (tmp_path / "out").glob("D10*.txt")
    text = made.read_text("utf-8").splitlines()
    rows = [line.split(" | ")[:2] for line in text if line.count(" | ") == 5]
    assert rows[-2:] == [["Applicator", "Lark"], ["Architect", "[Architect name]"]]
