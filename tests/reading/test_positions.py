"""YAML text to plain data with the place of everything; what cannot be read is told once and clearly.

What YAML itself says is held against a general YAML library; what is refused beyond that is a rule of ours.
"""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Problem, Refused
from specgen.reading import file_text as source
from specgen.reading import positions
from specgen.reading.positions import MOST_DEPTH, read_text
from specgen.reading.unknown import TBD
from tests.support import EXAMPLES

FILES = sorted(EXAMPLES.rglob("*.yaml"))


def read(folder: Path, text: str | bytes) -> positions.Text:
    file = folder / "a.yaml"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_text(file, "a.yaml")


def refused(folder: Path, text: str | bytes) -> Problem:
    with pytest.raises(Refused) as raised:
        read(folder, text)
    (problem,) = raised.value.problems
    assert problem.file == "a.yaml"
    return problem


def test_every_path_keeps_its_line_and_column(tmp_path: Path) -> None:
    text = read(tmp_path, "a: 1\nb:\n  c: {d: x}\n  e:\n    - f: 2\n    - g\n")
    assert {".".join(p): (at.line, at.column) for p, at in text.places.items() if p} == {
        "a": (1, 1),
        "b": (2, 1),
        "b.c": (3, 3),
        "b.c.d": (3, 7),
        "b.e": (4, 3),
        "b.e.0": (5, 7),
        "b.e.0.f": (5, 7),
        "b.e.1": (6, 7),
    }


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(FILES[0].parents[1])))
def test_every_place_of_an_example_points_at_its_own_key(file: Path) -> None:
    lines = file.read_text("utf-8").split("\n")
    for path, place in read_text(file, file.name).places.items():
        if path and not path[-1].isdigit():
            written = lines[place.line - 1][place.column - 1 :].lstrip("\"'")
            assert written.startswith(path[-1]), (path, place)


@pytest.mark.parametrize(
    ("text", "path", "line", "column"),
    [
        ("a: \U0001f600\nb: 1\n", "b", 2, 1),
        ("a: {x: \U0001f600\U0001f600, b: 1}\n", "a.b", 1, 12),
        ("a: 1\r\nb: 1\r\n", "b", 2, 1),
        ("# one\n\n# two\na: 1\n", "a", 4, 1),
        ("a: |\n  two\n  lines\nb: 1\n", "b", 4, 1),
        ("a: >\n\n  two\n\nb: 1\n", "b", 5, 1),
        ("---\na: 1\n", "a", 2, 1),
        ("\ufeffa: 1\n", "a", 1, 1),
        ('"a": 1\n', "a", 1, 1),
        ("{a: 1,\n b: 2}\n", "b", 2, 2),
    ],
)
def test_a_place_counts_lines_and_signs_as_an_editor_does(
    text: str, path: str, line: int, column: int, tmp_path: Path
) -> None:
    place = read(tmp_path, text).places[tuple(path.split("."))]
    assert (place.path, place.file, place.line, place.column) == (path, "a.yaml", line, column)


def test_scalars_stay_the_text_they_are(tmp_path: Path) -> None:
    data = read(tmp_path, "a: no\nb: 010\nc: 1:50\nd: 07 24 00\ne: 2027-03-01\nf: 1.0\ng: 'quoted'\n").data
    assert data == {"a": "no", "b": "010", "c": "1:50", "d": "07 24 00", "e": "2027-03-01", "f": "1.0", "g": "quoted"}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("true", "true"),
        (".nan", ".nan"),
        (".inf", ".inf"),
        ("0x1F", "0x1F"),
        ("1_000", "1_000"),
        ("+1e3", "+1e3"),
        ("!!int 3", "3"),
        ('"say \\"hi\\""', 'say "hi"'),
        ("'it''s'", "it's"),
        ("'  kept  '", "  kept  "),
        ("|\n  two\n  lines", "two\nlines\n"),
        (">-\n  two\n  lines", "two lines"),
        ("5'-6 1/2\"", "5'-6 1/2\""),
        ("a # a comment", "a"),
        ("a#b", "a#b"),
    ],
)
def test_no_tag_and_no_look_of_a_scalar_changes_it(text: str, value: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"a: {text}\n").data == {"a": value}


@pytest.mark.parametrize("value", ["", "~", "null", "Null", "NULL", "tbd", "TBD", "Tbd", "  tbd  ", "tbd # later"])
def test_what_is_not_known_yet_counts_as_absent(value: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"a: {value}\nb: [{value.partition(' #')[0] or '~'}, x]\n").data == {
        "a": TBD,
        "b": [TBD, "x"],
    }


@pytest.mark.parametrize("value", ["tbd", "null", "~"])
def test_a_quoted_word_is_text(value: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"a: '{value}'\nb: \"{value}\"\n").data == {"a": value, "b": value}


@pytest.mark.parametrize("text", ["", "\n\n", "# nothing but this\n"])
def test_an_empty_file_is_told_to_be_empty(text: str, tmp_path: Path) -> None:
    assert refused(tmp_path, text).message == "the file is empty"


def test_an_empty_mapping_is_an_empty_description(tmp_path: Path) -> None:
    made = read(tmp_path, "{}\n")
    assert made.data == {}
    assert made.problems == []


# Text with a key that stands twice or more, the path, and each further line with the line that came first.
TWICE = [
    ("a: {b: 1}\nc: 2\na: 3\n", "a", [(1, 3)]),
    ("a:\n  b: 1\n  c: 2\n  b: 3\n", "a.b", [(2, 4)]),
    ("a: 1\na: 2\na: 3\n", "a", [(1, 2), (1, 3)]),
    ("a:\n  - b: 1\n    b: 2\n", "a.0.b", [(2, 3)]),
    ("a: 1\n'a': 2\n", "a", [(1, 2)]),
    ("a: {b: 1, b: 2}\n", "a.b", [(1, 1)]),
]


@pytest.mark.parametrize(("text", "path", "lines"), TWICE)
def test_a_key_that_stands_twice_names_both_lines(
    text: str, path: str, lines: list[tuple[int, int]], tmp_path: Path
) -> None:
    problems = read(tmp_path, text).problems
    assert [(p.path, p.line) for p in problems] == [(path, second) for _, second in lines]
    for problem, (first, second) in zip(problems, lines, strict=True):
        assert f"in line {first} and in line {second}" in problem.message
        assert problem.hint == "keep one of them"


def test_one_key_in_two_mappings_is_no_key_twice(tmp_path: Path) -> None:
    assert read(tmp_path, "a: {x: 1}\nb: {x: 1}\nc:\n  - x: 1\n  - x: 1\n").problems == []


# A mapping that merges others: its own keys win, then the first that is merged. YAML type repository, merge key.
MERGES = [
    "a: &x {b: 1, c: 2}\nd: {<<: *x, c: 3}\n",
    "a: &x {b: 1, c: 2}\nd: {c: 3, <<: *x}\n",
    "a: &x {b: 1}\ne: &y {b: 2, c: 3}\nd: {<<: [*x, *y]}\n",
    "a: &x {b: 1}\ne: &y {b: 2, c: 3}\nd: {<<: [*y, *x], e: 4}\n",
    "a: &x {b: {c: 1}}\nd: {<<: *x, b: {e: 2}}\n",
    "a: &x {}\nd: {<<: *x}\n",
]


@pytest.mark.parametrize("text", MERGES)
def test_a_merge_key_gives_what_a_general_library_gives(text: str, tmp_path: Path) -> None:
    made = read(tmp_path, text)
    theirs = yaml.safe_load(text)["d"]
    assert made.problems == []
    assert made.data["d"] == yaml.load(yaml.safe_dump(theirs), Loader=yaml.BaseLoader)


def test_a_merged_value_stands_where_it_is_written(tmp_path: Path) -> None:
    places = read(tmp_path, "a: &x\n  b: 1\nd:\n  <<: *x\n  c: 3\n").places
    assert {path: places["d", path].line for path in "bc"} == {"b": 2, "c": 5}


# Text, words of the message, and the line.
NO_YAML = [
    ("a:\n\tb: 1\n", "a tab is in the indentation", 2),
    ("a:\n  b: 1\n \tc: 2\n", "a tab is in the indentation", 3),
    ("a: 1\n---\nb: 2\n", "more than one document", 2),
    ("a: 1\n...\n---\nb: 2\n", "more than one document", 3),
    ("a: b: c\n", "a second colon", 1),
    ("a: 1\nname: Tom: Hall\n", "a second colon", 2),
    ("a: [1, 2\n", "is not closed", 1),
    ("a: {b: 1\n", "is not closed", 1),
    ("a: 'x\n", "not closed in this line", 1),
    ("a: *b\n", "refers to no anchor", 1),
    ("a: @b\n", "a sign of YAML", 1),
    ("a: 1\n b: 2\n", "", 2),
    ("a: 1\nb\n", "no colon", 2),
    ("a: &x 1\nb: *x *x\n", "follows a value", 2),
    ('a: "\\q"\n', "a backslash", 1),
    ('a: 1\nb: "\\uD800"\n', "a backslash", 2),
]


@pytest.mark.parametrize(
    ("text", "said", "line"),
    NO_YAML,
)
def test_what_is_no_yaml_is_told_with_its_line(text: str, said: str, line: int, tmp_path: Path) -> None:
    problem = refused(tmp_path, text)
    assert said in problem.message
    assert problem.line == line
    assert problem.column > 0


def test_a_tab_is_white_space_elsewhere(tmp_path: Path) -> None:
    assert read(tmp_path, "a:\t1\nb: x\ty\n").data == {"a": "1", "b": "x\ty"}


# Text, the sign that is refused, its line and column.
UNSEEN = [
    ("a: \x00\n", "U+0000", 1, 4),
    ("\x00a: 1\n", "U+0000", 1, 1),
    ("a: 1\nb: x\u0007\n", "U+0007", 2, 5),
    ("a: 1\r\nb: x\u0008y\r\n", "U+0008", 2, 5),
    ("a: \u001b[31mred\n", "U+001B", 1, 4),
    ("# \u000c\na: 1\n", "U+000C", 1, 3),
    ("a: x\u007f\n", "U+007F", 1, 5),
    ("a: \u009f\n", "U+009F", 1, 4),
    ("a: \ue000\n", "U+E000", 1, 4),
    ("a: \ue001\n", "U+E001", 1, 4),
    ("\U0001f600: 1\na: \uf8ff\n", "U+F8FF", 2, 4),
    ("a: x\ufffe\n", "U+FFFE", 1, 5),
    ("a: x\uffff\n", "U+FFFF", 1, 5),
    # The names are those of the Unicode code charts.
    ("a: x\u202ey\n", "U+202E RIGHT-TO-LEFT OVERRIDE", 1, 5),
    ("a: x\u2066y\n", "U+2066 LEFT-TO-RIGHT ISOLATE", 1, 5),
    ("a: x\u200fy\n", "U+200F RIGHT-TO-LEFT MARK", 1, 5),
    ("a: x\u061cy\n", "U+061C ARABIC LETTER MARK", 1, 5),
    ("a: x\u200by\n", "U+200B ZERO WIDTH SPACE", 1, 5),
    ("a: x\u2060y\n", "U+2060 WORD JOINER", 1, 5),
    ("a: x\u00ady\n", "U+00AD SOFT HYPHEN", 1, 5),
    ("a: x\u034fy\n", "U+034F COMBINING GRAPHEME JOINER", 1, 5),
    ("a: x\u3164y\n", "U+3164 HANGUL FILLER", 1, 5),
    ("a: x\ufe0fy\n", "U+FE0F VARIATION SELECTOR-16", 1, 5),
    ("a: x\U000e0041y\n", "U+E0041 TAG LATIN CAPITAL LETTER A", 1, 5),
    ("a: x\U000e0100y\n", "U+E0100 VARIATION SELECTOR-17", 1, 5),
    ("# a remark\u202e\na: x\n", "U+202E RIGHT-TO-LEFT OVERRIDE", 1, 11),
    ("a: x\u0378\n", "U+0378", 1, 5),
]


@pytest.mark.parametrize(("text", "sign", "line", "column"), UNSEEN, ids=[row[1] for row in UNSEEN])
def test_a_sign_that_is_not_seen_on_paper_is_refused_with_its_place(
    text: str, sign: str, line: int, column: int, tmp_path: Path
) -> None:
    problem = refused(tmp_path, text)
    assert problem.message.startswith(f"character {sign}")
    assert (problem.line, problem.column, problem.hint) == (line, column, "delete it, or type the words around it anew")


@pytest.mark.parametrize(
    "value",
    ["\U0001f600", "\u05e9\u05dc\u05d5\u05dd", "e\u0301", "\u00b0", "\u00a0", "\u3000", "\ud7a3", "\uf900"],
)
def test_signs_of_any_script_are_text(value: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"a: x{value}y\n").data == {"a": f"x{value}y"}


# What stands in the file, and words of the message.
NO_PROJECT = [
    (b"a: \xff\n", "the file is not UTF-8 (byte 0xff)"),
    (b"a: caf\xe9\n", "the file is not UTF-8 (byte 0xe9)"),
    ("a: 1\n".encode("utf-16"), "the file is UTF-16"),
    (b"a: \xed\xa0\x80\n", "the file is not UTF-8 (byte 0xed)"),
    (b"%PDF-1.7\n\xff", "this is a PDF, not a project file"),
    (b"\xd0\xcf\x11\xe0\xa1\xb1", "this is a file of a word processor or spreadsheet program, not a project file"),
    (b"\x89PNG\r\n\x1a\n", "this is a picture, not a project file"),
    (b"\xff\xd8\xff\xe0", "this is a picture, not a project file"),
    (b"PK\x03\x04word/\xff", "this is a Word file, not a project file"),
    (b"PK\x03\x04xl/\xff", "this is a workbook, not a project file"),
    (b"PK\x03\x04\xff", "this is a packed folder, not a project file"),
    ("- a\n", "does not begin with a name and a colon"),
    ("just words\n", "does not begin with a name and a colon"),
    ("'a'\n", "does not begin with a name and a colon"),
    ("[]\n", "does not begin with a name and a colon"),
]


@pytest.mark.parametrize(
    ("text", "said"),
    NO_PROJECT,
)
def test_what_is_no_project_file_is_told(text: str | bytes, said: str, tmp_path: Path) -> None:
    problem = refused(tmp_path, text)
    assert said in problem.message
    assert problem.hint


def test_a_byte_order_mark_is_read_over(tmp_path: Path) -> None:
    assert read(tmp_path, b"\xef\xbb\xbfa: 1\n").data == {"a": "1"}


# A node inside itself, and its path.
IN_ITSELF = [
    ("a: &a [*a, 1]\n", "a.0"),
    ("a: &a {b: *a}\n", "a.b"),
    ("a: &a {b: {c: [1, *a]}}\n", "a.b.c.1"),
    ("a: &a [&b [*a, *b]]\n", "a.0.0"),
]


@pytest.mark.parametrize(
    ("text", "path"),
    IN_ITSELF,
)
def test_a_node_inside_itself_is_a_problem_and_not_the_end(text: str, path: str, tmp_path: Path) -> None:
    problem = read(tmp_path, text + "z: 1\n").problems[0]
    assert "holds itself" in problem.message
    assert (problem.path, problem.line) == (path, 1)
    assert read(tmp_path, text + "z: 1\n").data["z"] == "1"


@pytest.mark.parametrize(("opening", "closing"), [("[", "]"), ("{a: ", "}")])
def test_a_file_is_nested_as_deep_as_it_says_and_no_deeper(opening: str, closing: str, tmp_path: Path) -> None:
    def nested(levels: int) -> list[Problem]:
        return read(tmp_path, "a: " + opening * levels + "x" + closing * levels + "\n").problems

    assert nested(MOST_DEPTH) == []
    (problem,) = nested(MOST_DEPTH + 1)
    assert problem.hint == f"at most {MOST_DEPTH} levels"


def test_a_file_nested_beyond_all_sense_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused):
        read(tmp_path, "a: " + "[" * 5000 + "]" * 5000 + "\n")


MILLIONS = "\n".join(
    [
        "a: &a [x, x, x, x, x, x, x, x, x, x]",
        *(f"{chr(98 + n)}: &{chr(98 + n)} [{', '.join(['*' + chr(97 + n)] * 10)}]" for n in range(9)),
    ]
)


def test_aliases_that_stand_for_millions_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="aliases repeat"):
        read(tmp_path, MILLIONS)


# More values than a file of the trade holds; the bound is ours.
MANY = "a: [" + "x, " * (positions.MOST_VALUES + 1) + "x]\n"


def test_a_file_of_more_values_than_anyone_writes_is_refused(tmp_path: Path) -> None:
    problem = refused(tmp_path, MANY)
    assert problem.message == f"the file holds more than {positions.MOST_VALUES:,} values"
    assert problem.hint == "split it, or leave some away"


def test_a_few_aliases_are_what_they_stand_for(tmp_path: Path) -> None:
    assert read(tmp_path, "a: &x {b: 1}\nc: *x\nd: *x\n").data["d"] == {"b": "1"}


EMPTY_ENTRY = "a:\n  - x\n  -\n"


def test_an_empty_entry_of_a_list_is_told(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, EMPTY_ENTRY).problems
    assert (problem.message, problem.line) == ("this entry of the list is empty", 3)
    assert problem.hint == "write it, or `tbd`, or delete it"


def test_a_key_that_is_no_plain_text_is_told(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, "a:\n  ? [x, y]\n  : 1\n  b: 2\n").problems
    assert (problem.message, problem.path) == ("a key must be plain text", "a")


@pytest.mark.parametrize("name", ["none.yaml", ".", "/dev/null"])
def test_a_file_that_cannot_be_read_is_told(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        read_text(tmp_path / name, name)
    assert raised.value.problems[0].file == name
    assert raised.value.problems[0].hint


def test_a_file_that_is_too_large_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(source, "_USE", replace(source._USE, most=10))
    with pytest.raises(Refused, match="larger"):
        read(tmp_path, "a: 0123456789\n")


KEYS = st.text("abxyz \u00e9\U0001f600", min_size=1, max_size=4)
LEAVES = st.one_of(
    st.text("ab 1:#-'\"{}[],&*!|>%@`~\\\u00e9\U0001f600", max_size=8), st.sampled_from(["tbd", "yes", "010", "~"])
)
DATA = st.dictionaries(
    KEYS,
    st.recursive(
        LEAVES, lambda d: st.one_of(st.lists(d, max_size=3), st.dictionaries(KEYS, d, max_size=3)), max_leaves=12
    ),
    max_size=4,
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("read")


@given(DATA, st.booleans())
def test_any_data_that_a_general_library_writes_is_read_as_it_was(
    folder: Path, data: dict[str, Any], flow: bool
) -> None:
    # Every scalar in quotes, so that none counts as absent.
    text = yaml.safe_dump(data, default_style='"', default_flow_style=flow, allow_unicode=True)
    made = read(folder, text)
    assert made.data == data
    assert made.problems == []


# Whole lines of what YAML is made of come nearer to the edges than letters at random.
PIECES = [
    *"ab:- {}[],&*!<'\"|>#%@`~?\t\\0\n",
    "<<: ",
    "*a ",
    "&a ",
    "tbd",
    "a: ",
    "- ",
    "\n  ",
    "!!str ",
    "---\n",
    "? ",
]


@given(st.lists(st.sampled_from(PIECES), max_size=30).map(lambda pieces: "".join(pieces) + "\n"))
def test_any_lines_are_read_or_refused_and_every_fault_has_its_line(folder: Path, text: str) -> None:
    try:
        problems: tuple[Problem, ...] | list[Problem] = read(folder, text).problems
    except Refused as raised:
        assert raised.problems
        problems = [p for p in raised.problems if "does not begin with a name and a colon" not in p.message]
    assert all(0 < problem.line <= text.count("\n") + 1 for problem in problems)
