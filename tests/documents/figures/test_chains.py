"""Dimensions of openings: those beside each other on one chain, those above or below on another, and told which."""

from tests.documents.figures.test_elevation import faults, sheets_of

LINES = {"mode": "given", "vertical_lines": ["5 ft", "10 ft", "15 ft"], "horizontal_lines": ["5 ft", "10 ft"]}


def opening(kind, x, y, width, height):
    return {"kind": kind, "x": f"{x} ft", "y": f"{y} ft", "width": f"{width} ft", "height": f"{height} ft"}


def drawn(folder, openings):
    face = {"width": "20 ft", "height": "15 ft", "openings": openings, "floor_lines": {}, "layout": LINES}
    _, (sheet,) = sheets_of(folder, face, {})
    assert faults(sheet) == []
    return sheet


def test_windows_and_the_door_below_them_have_a_chain_each(tmp_path):
    """Windows at 3 to 6 and 13 to 16 ft, a door at 8 to 12 ft of 20 ft; no jamb lies on a line at 5, 10 or 15 ft."""
    openings = {
        "WD1": opening("window", 3, 11, 3, 3),
        "WD2": opening("window", 13, 11, 3, 3),
        "DR1": opening("door", 8, 0, 4, 7),
    }
    sheet = drawn(tmp_path, openings)
    words = sheet.words
    # 3, 3, 7, 3 and 4 ft; then 8, 4 and 8 ft; together they would be 3, 3, 2, 4, 1, 3 and 4 ft.
    assert words.count("8′-0″") == 2
    assert not {"2′-0″"} & set(words)
    told = (
        "Dimensions from the wall outward: below the wall joints, jambs of WD1, WD2, jambs of DR1, overall; beside the "
        "wall joints, sills and heads of DR1, WD1, WD2, overall"
    )
    assert told in " ".join(words)


def test_openings_above_each_other_with_the_same_jambs_share_a_chain(tmp_path):
    openings = {"WD1": opening("window", 3, 1, 3, 3), "WD2": opening("window", 3, 11, 3, 3)}
    words = drawn(tmp_path, openings).words
    assert words.count("14′-0″") == 1
    assert "below the wall joints, jambs of WD1, WD2, overall" in " ".join(words)


def test_openings_in_many_rows_share_one_chain(tmp_path):
    openings = {f"WD{n}": opening("window", 2 + n, 3 * n, 3, 2) for n in range(5)}
    words = " ".join(drawn(tmp_path, openings).words)
    assert "below the wall joints, jambs of WD0 to WD4, overall" in words


def test_joints_alone_are_not_told(tmp_path):
    words = drawn(tmp_path, {"WD1": opening("window", 5, 5, 5, 5)}).words
    assert not any("from the wall outward" in word for word in words)
