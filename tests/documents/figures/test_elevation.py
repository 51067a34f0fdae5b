"""Elevation sheets, looked at by their structure: true scale, labels apart and high enough, nothing left out."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specgen.documents.figures.elevation import draw_elevations
from tests.documents.figures.faces import FACE, JOINTS, draw_of, large_face
from tests.documents.figures.sheets import Sheet, overlapping, read_sheet

FOOT = 304.8
# What a millimeter on paper is on the wall, by how the scale is said; 1/8 in to the foot is 1 to 96.
SCALES = {
    "1/2 in = 1 ft": 24,
    "3/8 in = 1 ft": 32,
    "1/4 in = 1 ft": 48,
    "3/16 in = 1 ft": 64,
    "1/8 in = 1 ft": 96,
    "3/32 in = 1 ft": 128,
    "1/16 in = 1 ft": 192,
    "1:20": 20,
    "1:50": 50,
    "1:100": 100,
    "1:200": 200,
}
# ANSI/ASME Y14.1 and ISO 216, lying on their side.
PAPERS = {"letter": (279.4, 215.9), "tabloid": (431.8, 279.4), "a4": (297, 210), "a3": (420, 297)}


def sheets_of(folder, face=None, joints=JOINTS, sheet=None, more=None):
    drawn = next(draw_elevations([draw_of(folder, face, joints, more)], sheet))
    return drawn, [read_sheet(each.svg) for each in drawn]


def faults(sheet: Sheet) -> list[str]:
    """What is wrong with the labels of a sheet."""
    found = [f"{one} over {other}" for one, other in overlapping(sheet)]
    found += [
        f"{t.text} is outside"
        for t in sheet.texts
        if t.left < 8 or t.top < 8 or t.right > sheet.width - 8 or t.bottom > sheet.height - 8
    ]
    return found + [f"{t.text} is {t.high} mm high" for t in sheet.texts if t.high < 2.0]


def span(sheet: Sheet, kind: str, side: int) -> float:
    places = [point[side] for point in sheet.points(kind)]
    return max(places) - min(places)


@pytest.mark.parametrize("paper", [None, *PAPERS])
def test_a_sheet_is_true_to_its_scale_on_every_paper(paper, tmp_path):
    (drawn,), (sheet,) = sheets_of(tmp_path, sheet=paper)
    ratio = SCALES[drawn.scale]
    assert (sheet.width, sheet.height) == PAPERS[paper or "letter"]
    assert f"Scale {drawn.scale}" in sheet.words
    assert span(sheet, "edge", 0) == pytest.approx(40 * FOOT / ratio, rel=1e-3)
    assert span(sheet, "movement", 0) == pytest.approx(40 * FOOT / ratio, rel=1e-3)
    assert span(sheet, "joint", 1) == pytest.approx(24 * FOOT / ratio, rel=1e-3)
    assert faults(sheet) == []


def test_a_bar_of_the_scale_is_as_long_as_it_says(tmp_path):
    (drawn,), (sheet,) = sheets_of(tmp_path)
    feet = next(int(word.removesuffix(" ft")) for word in sheet.words if re.fullmatch(r"\d+ ft", word))
    bar = [float(n) for n in re.findall(r"M([\d.]+) [\d.]+H([\d.]+)V", sheet.strokes["cell"])[0]]
    assert bar[1] - bar[0] == pytest.approx(feet * FOOT / SCALES[drawn.scale], rel=1e-3)


def test_dimensions_levels_marks_and_title_stand_on_the_sheet(tmp_path):
    (drawn,), (sheet,) = sheets_of(tmp_path)
    words = sheet.words
    assert words.count("5′-0″") == 8
    assert words.count("4′-0″") == 6
    assert {"40′-0″", "24′-0″", "0′-0″ datum, 0′-6″ above grade", "12′-0″ floor F2", "24′-0″ top"} <= set(words)
    assert {"A", "V1", "V7", "H1", "H4", "Z1", "N", "Trial", "Facing south", "Sheet 1 of 1"} <= set(words)
    assert words.count("J1") == 1
    assert "Z1: impact class high, 0′-0″ to 6′-6″ above datum (7′-0″ above grade)" in words
    assert "J1: opening perimeter, 3/4 in wide" in words
    assert drawn.alt.startswith("Elevation E1, South face, 40′-0″ by 24′-0″: 47 panels, 1 opening, ")


def test_kinds_of_joints_are_told_apart_by_line_and_by_label(tmp_path):
    _, (sheet,) = sheets_of(tmp_path)
    assert sheet.dashes["joint"] is None
    assert len(sheet.dashes["movement"].split()) == 6
    assert {"Aesthetic joint V, H", "Movement joint J1, J2"} <= set(sheet.words)
    long = {y for y in {y for _, y in sheet.points("movement")} if span_at(sheet, "movement", y) > 100}
    assert len(long) == 1
    assert not long & {y for _, y in sheet.points("joint")}


def span_at(sheet: Sheet, kind: str, y: float) -> float:
    places = [x for x, at in sheet.points(kind) if at == y]
    return max(places) - min(places)


def told_marks(sheets: list[Sheet], panels: list[str]) -> list[str]:
    """The marks of panels on the sheets, by themselves or in the key."""
    words = [word for sheet in sheets for word in sheet.words]
    keyed = [re.fullmatch(r"(?:Sheet \d+: )?\d+ = (.+)", word) for word in words]
    return sorted([word for word in words if word in panels] + [match[1] for match in keyed if match])


def test_every_panel_has_its_mark_once(tmp_path):
    # 35 ft are seven columns, A to G: the marks of level lines are H1, H2 and so on.
    lines = FACE["layout"] | {"vertical_lines": [f"{place} ft" for place in range(5, 35, 5)]}
    layout, facts = draw_of(tmp_path, {"width": "35 ft", "layout": lines})
    marks = sorted(panel.mark.removeprefix("E1-") for panel in layout.panels)
    assert told_marks([read_sheet(next(draw_elevations([(layout, facts)]))[0].svg)], marks) == marks


def test_a_large_face_is_spread_over_sheets_that_meet(tmp_path):
    face, joints = large_face()
    layout, facts = draw_of(tmp_path, face, joints)
    drawn = next(draw_elevations([(layout, facts)]))
    sheets = [read_sheet(each.svg) for each in drawn]
    assert [each.name for each in drawn] == [f"E1-{number}" for number in range(1, len(drawn) + 1)]
    assert [problem for sheet in sheets for problem in faults(sheet)] == []
    marks = sorted({panel.mark.removeprefix("E1-") for panel in layout.panels})
    told = told_marks(sheets, marks)
    assert len(marks) == 81 * 30 - 400
    assert {mark for mark in marks if mark not in told} == set()
    for number, sheet in enumerate(sheets, 1):
        others = {int(word.split()[-1]) for word in sheet.words if word.startswith("Match line, sheet")}
        assert others
        assert all(f"Match line, sheet {number}" in sheets[other - 1].words for other in others)
        assert f"Sheet {number} of {len(sheets)}" in sheet.words
    whole = sum(feet(word) for sheet in sheets[:3] for word in sheet.words if word.endswith("of 300′-0″"))
    assert whole == 300


def feet(word: str) -> int:
    return int(word.split("′")[0])


def test_metric_work_is_dimensioned_in_millimeters(tmp_path):
    lines = {"mode": "given", "vertical_lines": ["1.5 m", "3 m", "4.5 m"], "horizontal_lines": ["1.5 m"]}
    face = {"width": "6 m", "height": "3 m", "openings": {}, "floor_lines": {}, "layout": lines}
    (drawn,), (sheet,) = sheets_of(tmp_path, face, {}, more={"package": {"purpose": "design_draft", "units": "si"}})
    assert (sheet.width, sheet.height) == PAPERS["a4"]
    assert sheet.words.count("1500") == 6
    assert {"6000", "3000", "Dimensions in millimeters"} <= set(sheet.words)
    assert drawn.scale == "1:50"
    assert not [word for word in sheet.words if "ft" in word or "′" in word]


def test_a_name_of_sixty_characters_fits_the_title_block(tmp_path):
    name = "Wide Meadow Mutual Waterworks and Museum Building, Wing W MM"
    assert len(name) == 60
    _, (sheet,) = sheets_of(tmp_path, more={"project": {"name": name}})
    assert name in " ".join(sheet.words)
    assert faults(sheet) == []


def test_panels_too_narrow_for_a_mark_are_told_by_a_key(tmp_path):
    lines = {
        "mode": "given",
        "vertical_lines": ["5 ft 0-1/8 in", "5 ft 2 in", "10 ft", "10 ft 1 in", "10 ft 2 in", "15 ft"],
        "horizontal_lines": ["3 in"],
    }
    face = {"width": "31 ft", "height": "24 in", "openings": {}, "floor_lines": {}, "impact_zones": [], "layout": lines}
    _, (sheet,) = sheets_of(tmp_path, face, {})
    assert faults(sheet) == []
    marks = [f"{column}{row}" for column in "ABCDFGK" for row in (1, 2)]
    assert told_marks([sheet], marks) == marks
    assert "5′-0⅛″" in sheet.words
    keyed = [word.split(" = ")[0] for word in sheet.words if " = " in word and "ft" not in word]
    assert all(sheet.words.count(number) >= 1 for number in keyed)


def test_a_gable_keeps_its_marks_within_its_slopes(tmp_path):
    outline = ["0 ft, 0 ft", "30 ft, 0 ft", "30 ft, 14 ft", "15 ft, 24 ft", "0 ft, 14 ft"]
    face = {
        "width": "30 ft",
        "outline": outline,
        "openings": {},
        "floor_lines": {},
        "layout": FACE["layout"] | {"vertical_lines": [f"{x} ft" for x in (5, 10, 15, 20, 25)]},
    }
    (drawn,), (sheet,) = sheets_of(tmp_path, face, {})
    assert faults(sheet) == []
    ratio = SCALES[drawn.scale]
    wall = [point for point in sheet.points("edge") if point[1] < sheet.height - 44]
    left, ground, peak = min(x for x, _ in wall), max(y for _, y in wall), min(y for _, y in wall)
    assert ground - peak == pytest.approx(24 * FOOT / ratio, rel=1e-3)
    inside = [t for t in sheet.texts if re.fullmatch("[A-F][1-6]", t.text)]
    assert len(inside) > 20
    for text in inside:
        for x in (text.left, text.right):
            along = (x - left) / (FOOT / ratio)
            top = 14 + 10 * (1 - abs(along - 15) / 15)
            assert (ground - text.top) / (FOOT / ratio) < top, text.text


def test_the_same_layout_gives_the_same_sheets(tmp_path):
    layout, facts = draw_of(tmp_path)
    assert next(draw_elevations([(layout, facts)])) == next(draw_elevations([(layout, facts)]))


def test_signs_of_markup_in_names_are_text(tmp_path):
    _, (sheet,) = sheets_of(tmp_path, {"name": "Front & <Back>"})
    assert "Elevation E1, Front & <Back>, seen from outside" in sheet.words


@st.composite
def small_faces(draw):
    """A wall with lines, a floor and an opening anywhere, in inches."""
    width, height = draw(st.integers(24, 900)), draw(st.integers(24, 400))
    upright = sorted(draw(st.sets(st.integers(1, width - 1), max_size=8)))
    level = sorted(draw(st.sets(st.integers(1, height - 1), max_size=5)))
    x, y = draw(st.integers(0, width - 12)), draw(st.integers(0, height - 12))
    wide, high = draw(st.integers(12, width - x)), draw(st.integers(12, height - y))
    floor, joint = draw(st.integers(0, height)), draw(st.integers(1, height - 1))
    lines = {
        "mode": "given",
        "vertical_lines": [f"{place} in" for place in upright],
        "horizontal_lines": [f"{place} in" for place in level],
    }
    opening = {"kind": "window", "x": f"{x} in", "y": f"{y} in", "width": f"{wide} in", "height": f"{high} in"}
    face = {
        "width": f"{width} in",
        "height": f"{height} in",
        "openings": {"A": opening} if (wide, high) != (width, height) else {},
        "floor_lines": {"F2": {"height": f"{floor} in"}},
        "impact_zones": [],
        "layout": lines,
    }
    return face, JOINTS | {"J2": JOINTS["J2"] | {"at": f"{joint} in"}}


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(small_faces(), st.sampled_from([None, *PAPERS]))
def test_labels_of_any_face_keep_apart_and_every_panel_is_told(tmp_path, drawn_face, paper):
    face, joints = drawn_face
    joints = joints if face["openings"] else {"J2": joints["J2"]}
    layout, facts = draw_of(tmp_path, face, joints)
    sheets = [read_sheet(each.svg) for each in next(draw_elevations([(layout, facts)], paper))]
    assert [problem for sheet in sheets for problem in faults(sheet)] == []
    words = " ".join(word for sheet in sheets for word in sheet.words)
    marks = [panel.mark.removeprefix("E1-") for panel in layout.panels]
    assert [mark for mark in marks if not re.search(rf"\b{mark}\b", words)] == []
    assert sum((panel.net_area for panel in layout.panels), Fraction(0)) > 0


def test_days_end_at_joints_and_are_no_larger_than_the_area_of_a_day(tmp_path):
    layout, facts = draw_of(tmp_path)
    # 24 ft high, 5 ft wide: a column is 120 sq ft, that with the opening of 5 by 4 ft is 100; 250 sq ft are two.
    facts = replace(facts, day_area=Fraction(250) * Fraction(3048, 10_000) ** 2)
    (drawn,) = next(draw_elevations([(layout, facts)]))
    sheet = read_sheet(drawn.svg)
    ratio = SCALES[drawn.scale]
    left = min(x for x, y in sheet.points("movement"))
    ends = sorted({round((x - left) * ratio / FOOT, 1) for x, _ in sheet.points("day")})
    assert ends == [0, 10, 20, 30, 40]
    assert [word for word in sheet.words if re.fullmatch(r"Day \d", word)] == ["Day 1", "Day 2", "Day 3", "Day 4"]
    assert "Gloss, both coats, in a day: maximum 250 sq ft; days as marked" in sheet.words
    assert faults(sheet) == []


def test_a_day_less_than_a_column_is_told_and_not_drawn(tmp_path):
    layout, facts = draw_of(tmp_path)
    facts = replace(facts, day_area=Fraction(100) * Fraction(3048, 10_000) ** 2)
    sheet = read_sheet(next(draw_elevations([(layout, facts)]))[0].svg)
    assert "day" not in sheet.strokes
    told = "Gloss, both coats, in a day: maximum 100 sq ft; less than one column of panels; break at level joints"
    assert told in " ".join(sheet.words)


def test_a_day_that_nobody_reckoned_is_set_on_site(tmp_path):
    _, (sheet,) = sheets_of(tmp_path)
    assert "Day areas: set on site, from joint to joint" in sheet.words


OFF_LINES = {"A": {"kind": "window", "x": "11 ft 3 in", "y": "5 ft", "width": "4 ft 6 in", "height": "2 ft 6 in"}}


def test_openings_off_the_joint_lines_have_a_chain_of_their_own(tmp_path):
    """Jambs at 11-1/4 and 15-3/4 ft of 40 ft; sill at 5 ft and head at 7-1/2 ft of 24 ft."""
    (drawn,), (sheet,) = sheets_of(tmp_path, {"openings": OFF_LINES})
    assert {"11′-3″", "4′-6″", "24′-3″"} <= set(sheet.words)
    assert {"2′-6″", "16′-6″"} <= set(sheet.words)
    ratio = SCALES[drawn.scale]
    left = min(x for x, _ in sheet.points("movement"))
    ends = {round((x - left) * ratio / FOOT, 2) for x, _ in sheet.points("dimension")}
    assert {11.25, 15.75} <= ends
    assert faults(sheet) == []


def test_openings_on_the_joint_lines_are_dimensioned_by_those(tmp_path):
    _, (sheet,) = sheets_of(tmp_path)
    assert sheet.words.count("10′-0″") == 0


ACCESS = {"X1": {"elevation": "E1", "kind": "frame_scaffold", "tie_location": "opening"}}


def centers(sheet: Sheet) -> list[tuple[float, float]]:
    """The middles of the lozenges of ties on the wall."""
    closed = re.findall(r"M([\d.]+) ([\d.]+)L[\d.]+ ([\d.]+)L([\d.]+) [\d.]+L[\d.]+ [\d.]+Z", sheet.strokes["tie"])
    found = [((float(x) + float(right)) / 2, float(y)) for x, y, _, right in closed]
    return [(x, y) for x, y in found if y < sheet.height - 8 - 36]


def test_ties_stand_where_they_are_given(tmp_path):
    given_ties = {"X1": ACCESS["X1"] | {"ties": ["11 ft, 6 ft", "14 ft, 6 ft"]}}
    (drawn,), (sheet,) = sheets_of(tmp_path, more={"access": given_ties})
    left, base = min(x for x, _ in sheet.points("edge")), max(y for _, y in sheet.points("edge"))
    ratio = SCALES[drawn.scale] / FOOT
    places = [(round((x - left) * ratio, 2), round((base - y) * ratio, 2)) for x, y in centers(sheet)]
    assert places == [(11, 6), (14, 6)]
    assert {"Scaffold tie", "X1: frame scaffold, 2 ties in openings, as drawn"} <= set(sheet.words)
    assert faults(sheet) == []


def test_ties_without_places_are_told_and_not_drawn(tmp_path):
    _, (sheet,) = sheets_of(tmp_path, more={"access": ACCESS})
    assert "X1: frame scaffold, any tie in an opening, none in the face" in sheet.words
    assert "Scaffold tie" not in sheet.words


def test_the_joint_above_a_sill_pan_has_no_line_at_the_sill(tmp_path):
    opening = FACE["openings"]["A"] | {"sill_pan": "yes"}
    _, (whole,) = sheets_of(tmp_path)
    _, (sheet,) = sheets_of(tmp_path, {"openings": {"A": opening}})
    assert len(sheet.points("movement")) == len(whole.points("movement")) - 2
    assert "J1: heads and jambs, open below, 3/4 in wide" in sheet.words


def test_the_foot_of_the_wall_stops_at_the_jambs_of_a_door(tmp_path):
    door = {"kind": "door", "x": "10 ft", "y": "0 ft", "width": "5 ft", "height": "8 ft"}
    (drawn,), (sheet,) = sheets_of(tmp_path, {"openings": {"A": door}})
    left, base = min(x for x, _ in sheet.points("edge")), max(y for _, y in sheet.points("edge"))
    ratio = SCALES[drawn.scale] / FOOT
    foot = sorted({round((x - left) * ratio, 2) for x, y in sheet.points("edge") if y == base})
    assert {10.0, 15.0} <= set(foot)


def test_what_meets_the_wall_is_told_where_it_has_no_dimensions(tmp_path):
    more = {"details": {"RE1": {"kind": "roof_end", "elevation": "E1", "at": "eave of the porch"}}}
    _, (sheet,) = sheets_of(tmp_path, more=more)
    assert any(word.startswith("Not drawn: RE1 eave of the porch. ") for word in sheet.words)


def test_a_water_detail_is_drawn_where_it_is_given(tmp_path):
    sides = {"x": "5 ft", "y": "9 ft", "width": "10 ft", "height": "2 ft"}
    more = {
        "details": {
            "RB1": {"kind": "roof_below", "elevation": "E1", "at": "over the porch"} | sides,
            "PN1": {"kind": "penetration", "elevation": "E1", "at": "hose bibb", "x": "24 ft", "y": "2 ft"},
            "RE1": {"kind": "roof_end", "elevation": "E1", "at": "eave", "x": "0 ft", "y": "9 ft"},
        }
    }
    (drawn,), (sheet,) = sheets_of(tmp_path, more=more)
    ratio = SCALES[drawn.scale] / FOOT
    left, base = min(x for x, _ in sheet.points("edge")), max(y for _, y in sheet.points("edge"))
    corners = {(round((x - left) * ratio, 2), round((base - y) * ratio, 2)) for x, y in sheet.points("detail")}
    assert corners == {(5, 9), (15, 9), (15, 11), (5, 11)}
    tips = re.findall(r"M([\d.]+) ([\d.]+)L", sheet.strokes["sign"])[:2]
    assert {(round((float(x) - left) * ratio, 2), round((base - float(y)) * ratio, 2)) for x, y in tips} == {
        (24, 2),
        (0, 9),
    }
    assert {"RB1", "PN1", "RE1", "Water detail", "Place of a water detail"} <= set(sheet.words)
    assert not any(word.startswith("Not drawn") for word in sheet.words)
    # A mark stands within the wall, not on its edge.
    assert all(text.left > left for text in sheet.texts if text.text == "RE1")
    assert faults(sheet) == []


def test_the_line_of_a_roof_is_drawn_and_what_it_and_a_ledge_take_is_told(tmp_path):
    """A roof of 10 ft that falls 2 ft to the end at its right, over two lines; a ledge over one of them."""
    at = {"elevation": "E1", "at": "porch"}
    details = {
        "RB1": at
        | {"kind": "roof_below", "x": "17 ft", "y": "9 ft", "width": "10 ft", "height": "2 ft"}
        | {"clearance": "0 in"},
        "RE1": at | {"kind": "roof_end", "x": "27 ft", "y": "9 ft"},
        "LG1": at | {"kind": "ledge", "x": "28 ft", "y": "2 ft", "width": "4 ft", "height": "9 in"},
    }
    (drawn,), (sheet,) = sheets_of(tmp_path, more={"details": details})
    ratio = SCALES[drawn.scale] / FOOT
    left, base = min(x for x, _ in sheet.points("edge")), max(y for _, y in sheet.points("edge"))
    places = {(round((x - left) * ratio, 2), round((base - y) * ratio, 2)) for x, y in sheet.points("detail")}
    assert places == {(17, 11), (27, 9), (28, 2), (32, 2), (32, 2.75), (28, 2.75)}
    told = " ".join(sheet.words)
    assert "panels and aesthetic joints end at RB1; aesthetic joints stop at LG1; panels are listed without RE1" in told
    # The panel from 20 to 25 ft is cut in two; its parts have their marks on the drawing or in its key.
    assert all(mark in told for mark in ("D3", "F3a", "F3b", "G3", "RB1", "LG1"))
    assert "D3a" not in told and "G3a" not in told
    assert faults(sheet) == []


def test_an_end_that_is_a_movement_joint_has_the_line_of_one(tmp_path):
    end = {"elevation": "E1", "kind": "dissimilar_material", "runs": "vertical", "at": "40 ft", "width": "1 in"}
    _, (plain,) = sheets_of(tmp_path)
    _, (sheet,) = sheets_of(tmp_path, joints=JOINTS | {"J3": end})
    right = max(x for x, _ in sheet.points("edge"))
    assert sum(x == right for x, _ in plain.points("edge")) == 4  # the end, and that of the top and of the foot
    assert sum(x == right for x, _ in sheet.points("edge")) == 2
    assert sum(x == right for x, _ in sheet.points("movement")) >= 2


def test_a_wall_without_lines_is_parted_where_the_sheet_ends(tmp_path):
    face = {
        "width": "300 ft",
        "openings": {},
        "layout": {"mode": "given", "vertical_lines": [], "horizontal_lines": []},
    }
    drawn, sheets = sheets_of(tmp_path, face, {})
    assert len(sheets) > 1
    parts = [word for sheet in sheets for word in sheet.words if word.endswith("of 300′-0″")]
    assert len(parts) == len(sheets)
    for each, sheet in zip(drawn, sheets, strict=True):
        assert span(sheet, "edge", 0) <= 300 * FOOT / len(sheets) / SCALES[each.scale] * 1.001
        assert faults(sheet) == []


@pytest.mark.parametrize("paper", PAPERS)
def test_marks_and_names_of_sixty_characters_keep_to_the_sheet(paper, tmp_path):
    long = "W" * 58
    face = {
        "name": f"{long} N",
        "floor_lines": {f"{long}F1": {"height": "4 ft"}, f"{long}F2": {"height": "12 ft"}},
        "openings": {f"{long}A": FACE["openings"]["A"]},
    }
    joints = {
        f"{long}J1": JOINTS["J1"] | {"serves": [f"{long}A"]},
        f"{long}J2": JOINTS["J2"] | {"kind": "building_expansion", "runs": "vertical", "at": "20 ft"},
    }
    _, sheets = sheets_of(tmp_path, face, joints, paper)
    assert [problem for sheet in sheets for problem in faults(sheet)] == []
    words = " ".join(word for sheet in sheets for word in sheet.words)
    assert f"{long}A" in words
    assert "12′-0″ floor WWW" in words


def test_the_sheets_of_some_elevations_are_numbered_through(tmp_path):
    faces = [draw_of(tmp_path), draw_of(tmp_path, *large_face(12))]
    sheets = [read_sheet(sheet.svg) for every in draw_elevations(faces) for sheet in every]
    told = [word for sheet in sheets for word in sheet.words if word.startswith("Sheet ") and " of " in word]
    assert told == [f"Sheet {number} of {len(sheets)}" for number in range(1, len(sheets) + 1)]
    assert len(sheets) > 2


def test_the_mark_of_an_angled_panel_stands_in_the_middle_of_its_largest_rectangle(tmp_path):
    # A panel of 5 ft by 5 ft less a window of 4 ft by 3 ft at its upper right corner: the leg below is
    # 5 ft by 2 ft = 10 sq ft, the leg on the left 1 ft by 5 ft = 5 sq ft, what is right of it below 4 ft by 2 ft.
    window = {"kind": "window", "x": "1 ft", "y": "2 ft", "width": "4 ft", "height": "3 ft"}
    layout = {"mode": "given", "vertical_lines": [], "horizontal_lines": []}
    face = {"width": "5 ft", "height": "5 ft", "openings": {"A": window}, "layout": layout}
    _, (sheet,) = sheets_of(tmp_path, face | {"floor_lines": {}, "impact_zones": []}, {})
    (mark,) = (text for text in sheet.texts if text.text == "A1")
    across, up = zip(*sheet.points("edge"), strict=True)
    foot = FOOT / SCALES["1/2 in = 1 ft"]
    assert (mark.left + mark.right) / 2 == pytest.approx((min(across) + max(across)) / 2, abs=0.1)
    assert (mark.top + mark.bottom) / 2 == pytest.approx(max(up) - foot, abs=0.3)
