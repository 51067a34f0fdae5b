"""The mark below a value: which part of a line it stands under, shown with the marks in place."""

import pytest

from specgen.model.finding import Place
from specgen.terminal.source_mark import find_value, mark_place

# A line, the key that a place names, and what the mark stands under.
CASES = [
    ("project: {name: Yard}", "name", "Yard"),
    ("  kind: eps   # packing foam", "kind", "eps"),
    ("    base_coat: {passes: 1, dry_thickness: 3/64 in, cure_hours: 12}", "dry_thickness", "3/64 in"),
    ("    base_coat: {passes: 1, dry_thickness: 3/64 in, cure_hours: 12}", "cure_hours", "12"),
    # Braces that opened in a line above.
    ("       width: 3/8 in, depth: 5/8 in,   # narrow", "width", "3/8 in"),
    ("       width: 3/8 in, depth: 5/8 in,   # narrow", "depth", "5/8 in"),
    ("       bond_face: gloss}", "bond_face", "gloss"),
    # A comma, a colon and a sign of a remark within a text.
    ("  title: Yard, north side  # as drawn", "title", "Yard, north side"),
    ('  title: "Job #2731, {north}"', "title", '"Job #2731, {north}"'),
    ("x: {title: 'it''s, here', a: 1}", "title", "'it''s, here'"),
    ("  includes: [full_panel, day_stop]", "includes", "[full_panel, day_stop]"),
    ("  number: A#7", "number", "A#7"),
    ("    - {kind: standard, order: 2}", "order", "2"),
    ("  - order: 2", "order", "2"),
    # What stands below, or nowhere: the key itself.
    ("walls:", "walls", "walls"),
    ("  W1:   # the only one", "W1", "W1"),
    ("  openings: &all", "openings", "openings"),
    ("  W1: {kind: eps}", "W1", "W1"),
    ("  note: |", "note", "note"),
    ("  - kept", "kept", "kept"),
]


@pytest.mark.parametrize(("row", "key", "under"), CASES)
def test_the_mark_stands_under_the_value(row: str, key: str, under: str) -> None:
    start, end = find_value(row, row.index(key))
    assert row[start:end] == under


def drawn(rows: list[str], line: int, column: int, width: int) -> list[str]:
    place = Place("a", "project.yaml", line, column)
    return [line.text for line in mark_place(place, lambda file: rows, width)]


def test_the_line_stands_above_its_mark() -> None:
    assert drawn(["format: 1", "\tkind: eps"], 2, 2, 80) == ["        2 |  kind: eps", "          |        ^^^"]


def test_a_long_line_is_cut_around_its_mark() -> None:
    row = "a: {" + ", ".join(f"key{n}: value{n}" for n in range(40)) + "}"
    text, mark = drawn([row], 1, row.index("key20") + 1, 70)
    assert len(text) <= 70 and text.startswith("        1 | ...") and text.endswith("...")
    assert text[mark.index("^") : mark.rindex("^") + 1] == "value20"


def test_a_line_that_is_not_at_hand_is_not_drawn() -> None:
    assert drawn([], 3, 1, 80) == []
    assert drawn(["a: 1"], 0, 0, 80) == []
