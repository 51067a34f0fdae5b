"""The drawings of sections: their numbers stand in the project, their words on the sheet and apart from each other."""

import re
from itertools import combinations

import pytest
from fontTools.ttLib import TTFont
from lxml import etree

from specgen.documents.catalogue import templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.figures.drawings import draw_named
from specgen.documents.figures.scales import tell_scale
from specgen.documents.mockup import has_mesh_edge_on_line
from specgen.model.block import Figure
from tests.documents.support import context_of, context_of_example

SECTIONS = ("wall_section", "joint_profile", "sealant_joint", "water_details", "mockup_sketch")
EXAMPLES = ("clean", "first-look", "large", "metric", "old-wall", "stops")
SPACE = "{http://www.w3.org/2000/svg}"


def drawn(example: str, name: str) -> tuple[Figure, ...]:
    return draw_named(name, context_of_example(example))


def words_of(figure: Figure) -> list[str]:
    return [node.text for node in etree.fromstring(figure.svg.encode()).iter(f"{SPACE}text")]


def boxes_of(figure: Figure) -> list[tuple[str, float, float, float, float]]:
    """Each label with the rectangle of its letters, by the font's own advances and heights."""
    root = etree.fromstring(figure.svg.encode())
    size = float(root.get("font-size"))
    boxes = []
    for node in root.iter(f"{SPACE}text"):
        font = FONTS[node.get("font-weight") == "bold"]
        cmap, advances, units = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
        wide = sum(advances[cmap[ord(sign)]][0] for sign in node.text) * size / units
        x, y = float(node.get("x")), float(node.get("y"))
        left = x - {"start": 0, "middle": wide / 2, "end": wide}[node.get("text-anchor", "start")]
        boxes.append((node.text, left, y - 0.69 * size, left + wide, y + 0.1 * size))
    return boxes


FONTS = {
    bold: TTFont(templates_folder() / "fonts" / f"SheetSans-{'Bold' if bold else 'Regular'}.ttf")
    for bold in (False, True)
}


def test_long_names_stay_on_the_sheet_and_apart(tmp_path) -> None:
    """Marks of 40 signs, and a text of 200 signs without a space."""
    marks = [f"WINDOW-OF-THE-GREAT-READING-ROOM-NO-{n}" for n in range(8)]
    bead = {
        "kind": "eifs_to_eifs",
        "width": "3/4 in",
        "depth": "3/8 in",
        "rod_diameter": "1 in",
        "rod_kind": "closed_cell",
    }
    change = {
        "joints": dict.fromkeys(marks, bead),
        "details": {mark: {"kind": "parapet", "cap": "yes", "at": "x"} for mark in marks},
        "accessories": [{"kind": "cap", "description": "X" * 200}],
    }
    context = context_of(tmp_path, change)
    for name in ("sealant_joint", "water_details"):
        check_words(draw_named(name, context))


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("example", EXAMPLES)
def test_words_lie_on_the_sheet_apart_from_each_other_and_two_millimeters_high(example: str, name: str) -> None:
    check_words(drawn(example, name))


def check_words(figures: tuple[Figure, ...]) -> None:
    for figure in figures:
        root = etree.fromstring(figure.svg.encode())
        assert root.get("viewBox") == f"0 0 {figure.width:g} {root.get('height')[:-2]}"
        assert float(root.get("font-size")) * FONTS[False]["OS/2"].sCapHeight / FONTS[False]["head"].unitsPerEm >= 2
        boxes = boxes_of(figure)
        assert boxes
        for text, left, top, right, bottom in boxes:
            assert left >= 0 and top >= 0 and right <= figure.width and bottom <= figure.height, text
        for one, other in combinations(boxes, 2):
            apart = one[3] <= other[1] or other[3] <= one[1] or one[4] <= other[2] or other[4] <= one[2]
            assert apart, (one, other)


@pytest.mark.parametrize("name", SECTIONS)
@pytest.mark.parametrize("example", EXAMPLES)
def test_nothing_is_drawn_outside_of_the_sheet(example: str, name: str) -> None:
    for figure in drawn(example, name):
        root = etree.fromstring(figure.svg.encode())
        for path in root.iter(f"{SPACE}path"):
            numbers = [float(found) for found in re.findall(r"-?\d+\.\d+", path.get("d"))]
            assert all(0 <= x <= figure.width for x in numbers[::2]), path.get("d")
            assert all(0 <= y <= figure.height for y in numbers[1::2]), path.get("d")


@pytest.mark.parametrize("name", SECTIONS)
def test_the_same_project_gives_the_same_drawing(name: str) -> None:
    assert drawn("clean", name) == drawn("clean", name)


def test_every_layer_of_the_wall_is_named() -> None:
    walls = drawn("clean", "wall_section")
    assert [figure.caption[0].text for figure in walls] == ["Build-up of wall W1", "Build-up of wall W2"]
    told = " ".join(words_of(walls[0]))
    for layer in (
        "Cold-formed steel studs, 16 in on center",
        "Glass-mat gypsum sheathing, 5/8 in, ASTM C1177",
        "Fluid-applied WRB, 1 coat, minimum 12 mil dry",
        "EPS board, 3 in, ASTM C578 Type I, rasped up to 1/16 in",
        "Smoothing coat, 2 coats, maximum 1/32 in total",
        "Tinted primer, 1 coat, minimum 1.5 mil dry",
        "Gloss, 2 coats, minimum 1.2 mil dry each",
    ):
        assert layer in told
        assert layer in walls[0].alt
    assert "other layers not to scale" in told
    assert "WRB" not in " ".join(words_of(walls[1]))


def test_the_remaining_board_is_what_rasping_and_the_joint_leave() -> None:
    """3 in, less 1/16 in rasped, less a joint of 1/2 in: 2-7/16 in."""
    (figure,) = drawn("clean", "joint_profile")
    assert {"2-7/16 in", "2-15/16 in", "3/4 in", "1/2 in"} <= set(words_of(figure))
    assert "Remaining board: 2-7/16 in; minimum 3/4 in" in figure.alt


def test_a_metric_project_is_drawn_in_millimeters() -> None:
    """50 mm, less 2 mm rasped, less a joint of 12 mm: 36 mm."""
    (figure,) = drawn("metric", "joint_profile")
    assert {"36 mm", "48 mm", "20 mm", "12 mm"} <= set(words_of(figure))
    assert " in" not in figure.alt.replace(" in ", "")


def test_board_is_drawn_to_its_scale() -> None:
    """A board of 50 mm at 1:2 is 25 mm wide."""
    (figure,) = drawn("metric", "wall_section")
    assert "Scale 1:2 for board; other layers not to scale." in words_of(figure)
    assert 25.0 in {round(right - left, 2) for left, right in level_lines(figure)}


def level_lines(figure: Figure) -> list[tuple[float, float]]:
    """The ends of each level line of two points."""
    found = []
    for path in etree.fromstring(figure.svg.encode()).iter(f"{SPACE}path"):
        points = re.fullmatch(r"M(\S+) (\S+)L(\S+) (\S+)", path.get("d"))
        if points and points[2] == points[4]:
            found.append(tuple(sorted((float(points[1]), float(points[3])))))
    return found


def test_joints_that_are_built_alike_share_a_section() -> None:
    (figure,) = drawn("clean", "sealant_joint")
    assert {"J1, J4", "J2, J3", "J5", "rod Ø 1-1/4 in", "Bond faces: tinted primer, masked, free of gloss"} <= set(
        words_of(figure)
    )
    assert "J5: 5/8 in wide, 3/8 in deep, backer rod 7/8 in in diameter" in figure.alt


@pytest.mark.parametrize(
    ("details", "shown"),
    [
        ({"P": {"kind": "parapet", "at": "all", "cap": "yes"}}, ["Parapet with cap"]),
        ({"P": {"kind": "parapet", "at": "all", "cap": "no"}}, []),
        ({"R": {"kind": "roof_end", "at": "eave", "diverter": "yes"}}, ["Roof end with kick-out flashing"]),
        ({"R": {"kind": "roof_end", "at": "eave", "diverter": "no"}}, []),
        ({"R": {"kind": "roof_below", "at": "rake"}}, ["Roof below with flashing"]),
        ({"L": {"kind": "ledge", "at": "hood", "cap": "no"}}, ["Ledge of board"]),
        ({"L": {"kind": "ledge", "at": "hood", "cap": "yes"}}, ["Ledge with metal cap"]),
        ({"N": {"kind": "penetration", "at": "pipe", "sealed": "yes"}}, ["Penetration with collar"]),
        ({"N": {"kind": "penetration", "at": "pipe", "sealed": "no"}}, []),
    ],
)
def test_a_water_detail_is_drawn_only_where_the_project_has_it(tmp_path, details, shown) -> None:
    figures = draw_named("water_details", context_of(tmp_path, {"details": details}))
    titles = {
        *("Parapet with cap", "Roof end with kick-out flashing", "Roof below with flashing"),
        *("Ledge of board", "Ledge with metal cap", "Penetration with collar"),
    }
    assert [word for figure in figures for word in words_of(figure) if word in titles] == shown


def test_a_detail_on_a_wall_without_a_barrier_is_drawn_apart() -> None:
    told = " ".join(figure.alt for figure in drawn("clean", "water_details"))
    # E3 and its parapet PA3 are concrete block without a barrier, and not drained.
    assert "Parapet with cap (WRB) at PA1, PA2. Parapet with cap (no WRB) at PA3." in told
    assert "Lower edge with starter (WRB) at E1, E2. Lower edge with starter (no WRB) at E3." in told
    assert "1 Starter with drip, open for drainage" in told and "4 Starter with drip." in told


def test_build_ups_share_a_scale() -> None:
    told = " ".join(figure.alt for figure in drawn("clean", "wall_section"))
    assert re.findall(r"Scale (\d+) in = 1 ft", told) == ["3", "3"]


def test_an_outside_corner_is_drawn_once_for_both_of_its_faces(tmp_path) -> None:
    ends = {"E1": {"right_end": "outside_corner", "right_meets": "E2"}}
    ends |= {"E2": {"left_end": "outside_corner", "left_meets": "E1"}}
    figures = draw_named("water_details", context_of(tmp_path, {"elevations": ends}))
    said = [word for figure in figures for word in words_of(figure)]
    assert (said.count("Outside corner, from above"), said.count("E1/E2")) == (1, 1)


def test_every_place_of_the_mockup_plan_is_numbered() -> None:
    (figure,) = drawn("clean", "mockup_sketch")
    told = words_of(figure)
    numbers = ["1", "2", "3", "4a", "4b", "4c", "5", "6", "7", "8", "9", "10", "11", "12"]
    assert all(told.count(number) == 2 for number in numbers)
    assert {"7 ft", "14 ft", "10 ft"} <= set(told)
    layers = "d board; e heavy mesh; f detail mesh; g base coat with standard mesh; h leveling pass; i smoothing coat 1"
    assert f"{layers}; j smoothing coat 2; k primer; l gloss 1; m gloss 2" in figure.alt


def test_the_joints_of_the_mockup_are_dimensioned_about_a_full_panel() -> None:
    """A panel of 4 ft 6 in by 4 ft: of 10 ft 6 ft are left, a third of which stays below it; 2 ft 6 in of 7 ft beside.

    The corner of the west face is its right one, so the mockup turns at the right.
    """
    (figure,) = drawn("clean", "mockup_sketch")
    told = words_of(figure)
    assert [told.count(length) for length in ("4 ft 6 in", "2 ft 6 in", "4 ft", "2 ft")] == [1, 1, 1, 3]
    assert "a vertical joint 4 ft 6 in from the right and horizontal ones 2 ft, 6 ft, and 8 ft up" in figure.alt


def test_a_joint_that_runs_along_tells_which_wall_lies_below_it() -> None:
    """J2 and J3 share a section and are level; the others stand upright."""
    (figure,) = drawn("clean", "sealant_joint")
    assert [words_of(figure).count(side) for side in ("below", "above")] == [1, 1]
    assert (
        "J2, J3: 1 in wide, 1/2 in deep, backer rod 1-1/4 in in diameter, the wall below it at the left" in figure.alt
    )


LINED = {
    "width": "9 ft",
    "height": "9 ft",
    "wall": "W1",
    "openings": {"A": {"kind": "window", "x": "4 ft", "y": "3 ft", "width": "2 ft", "height": "3 ft"}},
    "floor_lines": {},
}
MOCKUP = {
    "kind": "free_standing",
    "facing": "S",
    "width": "6 ft",
    "height": "9 ft",
    "includes": ["full_panel", "opening"],
}


@pytest.mark.parametrize(
    ("upright", "level", "told"),
    [
        # The line at 4 ft ends on two corners; 9 ft less a row of 3 ft leaves three of 2 ft.
        (["4 ft"], ["3 ft"], "horizontal ones 2 ft, 5 ft, and 7 ft up"),
        # No line meets a corner: a row of 3 ft in the middle.
        (["3 ft"], ["2 ft"], "horizontal ones 3 ft and 6 ft up"),
    ],
)
def test_an_opening_stands_on_the_mockup_as_the_joints_meet_it_on_the_work(upright, level, told, tmp_path) -> None:
    layout = {"mode": "given", "vertical_lines": upright, "horizontal_lines": level}
    change = {"elevations": {"E1": LINED | {"layout": layout}}, "joints": {}, "mockup": MOCKUP}
    (figure,) = draw_named("mockup_sketch", context_of(tmp_path, change))
    assert told in figure.alt


@pytest.mark.parametrize(("end", "side"), [("left", "right"), ("right", "left")])
def test_the_mockup_turns_at_the_end_at_which_its_face_does(end: str, side: str, tmp_path) -> None:
    faces = {"E1": LINED | {"facing": "S", f"{side}_end": "outside_corner"}, "E2": LINED | {"facing": "W"}}
    faces["E2"][f"{end}_end"] = "outside_corner"
    mockup = MOCKUP | {"facing": "W", "includes": ["full_panel", "outside_corner"]}
    context = context_of(tmp_path, {"elevations": faces, "joints": {}, "mockup": mockup})
    (figure,) = draw_named("mockup_sketch", context)
    assert f"from the {end} and" in figure.alt


@pytest.mark.parametrize(("edge", "meets"), [("3 ft 6 in", True), ("3 ft", False)])
def test_heavy_mesh_ends_on_a_joint_of_the_mockup_where_it_does_on_the_work(edge: str, meets: bool, tmp_path) -> None:
    """The lower edge lies 6 in above grade, so a zone up to 3 ft 6 in ends on the line 3 ft up."""
    layout = {"mode": "given", "vertical_lines": ["4 ft"], "horizontal_lines": ["3 ft"]}
    zones = [{"from": "6 in", "to": edge, "class": "high"}, {"from": edge, "to": "9 ft 6 in", "class": "standard"}]
    face = LINED | {"layout": layout, "base_above_grade": "6 in", "impact_zones": zones}
    context = context_of(tmp_path, {"elevations": {"E1": face}, "joints": {}, "mockup": MOCKUP})
    assert has_mesh_edge_on_line(context) is meets


@pytest.mark.parametrize(
    ("scale", "system", "told"),
    [  # Usual scales of US drawings, common practice, no source; those of ISO 5455.
        (1, "ip", "Full size"),
        (2, "ip", "Scale 6 in = 1 ft"),
        (4, "ip", "Scale 3 in = 1 ft"),
        (8, "ip", "Scale 1-1/2 in = 1 ft"),
        (16, "ip", "Scale 3/4 in = 1 ft"),
        (48, "ip", "Scale 1/4 in = 1 ft"),
        (5, "si", "Scale 1:5"),
        (1, "si", "Full size"),
    ],
)
def test_a_scale_is_told_as_drawings_of_its_units_have_it(scale: int, system: str, told: str) -> None:
    assert tell_scale(scale, system) == told


def test_joints_of_a_mockup_without_a_panel_to_copy_are_dimensioned_as_drawn(tmp_path) -> None:
    """6 ft wide and 9 ft high, no lines of the work known: the half, and thirds."""
    mockup = {"kind": "free_standing", "width": "6 ft", "height": "9 ft", "includes": ["full_panel", "joint_crossing"]}
    (figure,) = draw_named("mockup_sketch", context_of(tmp_path, {"mockup": mockup}))
    assert words_of(figure).count("3 ft") == 5
    assert {"6 ft", "9 ft"} <= set(words_of(figure))


def test_nothing_is_drawn_of_what_is_not_known(tmp_path) -> None:
    context: DocumentContext = context_of(tmp_path)
    assert [name for name in ("joint_profile", "sealant_joint", "mockup_sketch") if draw_named(name, context)] == []
