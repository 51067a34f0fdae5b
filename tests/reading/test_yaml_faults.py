"""Slips that make a file no YAML: the line that is at fault, the cause, and the line as it should stand.

Where the parser stops is no concern of the one who wrote the file. What is told is a rule of ours.
"""

from pathlib import Path

import pytest

from specgen.model.problem import Refused
from specgen.reading.positions import read_text

HEAD = "format: 1\nelevations:\n  E1:\n    wall: W1\n"
# About, text, what is said, what is right, line and column.
SLIPS = [
    ("no colon", HEAD + "    facing S\n    width: 40 ft\n", "this line has no colon", "write facing: S", 5, 5),
    ("no colon, last", HEAD + "    facing S\nwalls:\n  W1: {}\n", "this line has no colon", "write facing: S", 5, 5),
    ("no colon, equals", HEAD + "    facing = S\n    width: 4 ft\n", "this line has no colon", "write facing: S", 5, 5),
    ("no colon of a section", "format: 1\nelevations\n  E1:\n    wall: W1\n", "no colon", "write elevations:", 2, 1),
    ("no colon of a mark", "elevations:\n  E1\n    wall: W1\n    color: C1\n", "no colon", "write E1:", 2, 3),
    ("no name", HEAD + "    12 ft\n    width: 40 ft\n", "no colon after its name", "write a name, a colon", 5, 5),
    ("a question mark", HEAD + "    facing: ?\n    width: 40 ft\n", "a ? alone is not a value", "write tbd", 5, 13),
    (
        "no space",
        HEAD + "    facing:S\n    width: 40 ft\n",
        "there is no space after the colon",
        "write facing: S",
        5,
        5,
    ),
    ("no space, first", "elevations:\n  E1:\n    facing:S\n    width: 4 ft\n", "no space", "write facing: S", 3, 5),
    ("one space too many", HEAD + "     color: C1\n", "deeper than line 4", "by 4 spaces, as line 4", 5, 6),
    ("one space too few", HEAD + "   color: C1\n", "indented by 3 spaces", "line 4 has 4: indent both alike", 5, 4),
    (
        "the first too deep",
        "elevations:\n  E1:\n      wall: W1\n    color: C1\n",
        "this line is indented by 4 spaces",
        "line 3 has 6: indent both alike",
        4,
        5,
    ),
    (
        "the first too shallow",
        "walls:\n  W1:\n    wrb:\n    kind: felt\n      product: Barrier 12\n",
        "this line is indented as wrb above it",
        "indent it by 6 spaces, as line 5, if it belongs under wrb",
        4,
        5,
    ),
    (
        "the first too shallow, comments between",
        "walls:\n  W1:\n    framing: steel\n    # It bears\n    substrate:\n    # The kind\n    kind: CMU\n"
        "      # How it is\n      condition: [sound]\n      # How old\n",
        "this line is indented as substrate above it, and line 9 is indented deeper",
        "indent it by 6 spaces, as line 9, if it belongs under substrate",
        7,
        5,
    ),
    (
        "the first two too shallow",
        "walls:\n  W1:\n    wrb:\n    kind: felt\n    product: B\n      coats: 2\n",
        "this line is indented as wrb above it",
        "indent it by 6 spaces, as line 6",
        4,
        5,
    ),
    ("a second colon", "project:\n  name: Phase 2: North\n", "a second colon", "put the text in quotes", 2, 16),
    ("a second colon in braces", "project: {name: Phase 2: North}\n", "two colons", "put the text in quotes", 1, 24),
    ("no comma", "w: {kind: eps thickness: 2 in}\n", "two colons", "put a comma before thickness", 1, 24),
    ("no comma between texts", 'w: {a: "b" c: d}\n', "follows the closing quote", "", 1, 8),
    ("a quote left open", 'p:\n  name: "Trial\n  number: "2731"\nq: 1\n', "not closed in this line", "close it", 2, 9),
    ("a single quote left open", "p:\n  name: 'Trial\n  number: 7\n", "not closed in this line", "close it", 2, 9),
    (
        "a quote in braces left open",
        'p: {name: "Trial, number: "2731"}\nq: 1\n',
        "follows the closing",
        "",
        1,
        11,
    ),
    (
        "a length in quotes",
        "e:\n  width: '40'-0\"'\n  height: 3\n",
        "follows the closing quote",
        "write 40'-0\"",
        2,
        10,
    ),
    ("a length in its signs", 'e:\n  width: "40\'-0""\n  x: 3\n', "follows the closing quote", "write 40'-0\"", 2, 10),
    ("text after quotes", 'e:\n  name: "North" wing\n  c: 3\n', "'wing' follows", "write North wing", 2, 9),
    ("a bracket left open", "e:\n  outlets: [base, heads\n  kind: x\n", "is not closed", "put ] after", 2, 12),
    ("a brace left open", "e:\n  w: {kind: eps, b: 2\n  kind: x\nf: 1\n", "is not closed", "put } after", 2, 6),
    ("a brace too many", "e:\n  w: {kind: eps}}\n  c: 3\n", "'}' follows a value", "remove it", 2, 17),
    ("a comment with a brace", "project: {name: Job #2731}\nwalls: {}\n", "taken for a comment", "in quotes", 1, 21),
    ("a sign", "e:\n  w: @silver\n", "begins with a sign of YAML", 'quotes: "@silver"', 2, 6),
    ("a percent sign in front", "e:\n  w: %8\n", "begins with a sign of YAML", "write 8%", 2, 6),
    ("a star", "e: *40\n", "'*40' refers to no anchor above", 'quotes: "*40"', 1, 4),
    ("a star alone", "e: * later\n", "begins with a sign of YAML", 'quotes: "* later"', 1, 5),
    ("a backslash", 'a: "\\q"\n', "a backslash in double quotes", "single quotes", 1, 0),
    (
        "a letter",
        "March 1, 2027\n\nRe: Trial, Section 07 24 00: EIFS\nDear Ms. Ashlar,\nwe confirm that the coats: fit.\n",
        "this is a letter or another text",
        "name the project file",
        1,
        1,
    ),
    (
        "a letter without colons",
        "Dear Ms. Ashlar,\nall coats fit.\nyours truly\n",
        "this is a letter",
        "project file",
        1,
        1,
    ),
    ("a table", "mark,width,height\nA,4 ft,5 ft\n", "does not begin with a name and a colon", "`format: 1`", 1, 1),
]


@pytest.mark.parametrize(("about", "text", "said", "right", "line", "column"), SLIPS, ids=[row[0] for row in SLIPS])
def test_a_slip_is_told_at_its_own_line(
    about: str, text: str, said: str, right: str, line: int, column: int, tmp_path: Path
) -> None:
    (tmp_path / "a.yaml").write_text(text, "utf-8")
    with pytest.raises(Refused) as raised:
        read_text(tmp_path / "a.yaml", "a.yaml")
    (problem,) = raised.value.problems
    assert said in problem.message
    assert right in problem.hint
    assert problem.line == line
    assert problem.column == column or not column
