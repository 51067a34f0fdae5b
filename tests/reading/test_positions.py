"""YAML text to plain data with the place of everything; what cannot be read is told once and clearly."""

from pathlib import Path

import pytest

from specgen.reading import positions
from specgen.reading.positions import TBD, read_text
from specgen.vocabulary.problem import Refused


def read(folder: Path, text: str | bytes) -> positions.Text:
    file = folder / "a.yaml"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_text(file, "a.yaml")


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


def test_scalars_stay_the_text_they_are(tmp_path: Path) -> None:
    data = read(tmp_path, "a: no\nb: 010\nc: 1:50\nd: 07 24 00\ne: 2027-03-01\nf: 1.0\ng: 'quoted'\n").data
    assert data == {"a": "no", "b": "010", "c": "1:50", "d": "07 24 00", "e": "2027-03-01", "f": "1.0", "g": "quoted"}


@pytest.mark.parametrize("value", ["", "~", "null", "tbd", "TBD"])
def test_what_is_not_known_yet_counts_as_absent(value: str, tmp_path: Path) -> None:
    assert read(tmp_path, f"a: {value}\n").data == {"a": TBD}


def test_a_quoted_tbd_is_text(tmp_path: Path) -> None:
    assert read(tmp_path, "a: 'tbd'\n").data == {"a": "tbd"}


def test_a_key_that_stands_twice_names_both_lines(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, "a: {b: 1}\nc: 2\na: 3\n").problems
    assert "in line 1 and in line 3" in problem.message
    assert (problem.path, problem.line) == ("a", 3)


def test_a_merge_key_gives_what_is_not_given_itself(tmp_path: Path) -> None:
    data = read(tmp_path, "a: &x {b: 1, c: 2}\nd: {<<: *x, c: 3}\n").data
    assert data["d"] == {"c": "3", "b": "1"}


@pytest.mark.parametrize(
    ("text", "said", "line"),
    [
        ("a:\n\tb: 1\n", "a tab stands in the indentation", 2),
        ("a: 1\n---\nb: 2\n", "more than one document", 2),
        ("a: b: c\n", "a second colon", 1),
        ("a: [1, 2\n", "no YAML", 2),
        ("a: 'x\n", "no YAML", 2),
        (b"a: \x00\n", "U+0000 is not allowed", 1),
        ("a: 1\nb: x\u0007\n", "U+0007 is not allowed", 2),
        ("a: \ue000\n", "U+E000 is not allowed", 1),
        ("a: x\u0085\ufffe\n", "U+FFFE is not allowed", 1),
    ],
)
def test_what_is_no_yaml_is_told_with_its_line(text: str | bytes, said: str, line: int, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        read(tmp_path, text)
    (problem,) = refused.value.problems
    assert said in problem.message
    assert problem.line == line


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"a: \xff\n", "not UTF-8"),
        ("- a\n", "does not open with a mapping"),
        ("just words\n", "does not open with a mapping"),
    ],
)
def test_what_is_no_project_file_is_told(text: str | bytes, said: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=said):
        read(tmp_path, text)


def test_a_byte_order_mark_is_read_over(tmp_path: Path) -> None:
    assert read(tmp_path, b"\xef\xbb\xbfa: 1\n").data == {"a": "1"}


def test_a_node_inside_itself_is_a_problem_and_not_the_end(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, "a: &a [*a, 1]\n").problems
    assert "inside itself" in problem.message


def test_a_file_nested_too_deep_is_refused(tmp_path: Path) -> None:
    assert read(tmp_path, "a: " + "[" * 60 + "]" * 60 + "\n").problems
    with pytest.raises(Refused):
        read(tmp_path, "a: " + "[" * 5000 + "]" * 5000 + "\n")


def test_aliases_that_stand_for_millions_are_refused(tmp_path: Path) -> None:
    lines = ["a: &a [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"{chr(98 + n)}: &{chr(98 + n)} [{', '.join(['*' + chr(97 + n)] * 10)}]" for n in range(9)]
    with pytest.raises(Refused, match="aliases repeat"):
        read(tmp_path, "\n".join(lines))


def test_a_few_aliases_are_what_they_stand_for(tmp_path: Path) -> None:
    assert read(tmp_path, "a: &x {b: 1}\nc: *x\nd: *x\n").data["d"] == {"b": "1"}


@pytest.mark.parametrize("name", ["none.yaml", ".", "/dev/null"])
def test_a_file_that_cannot_be_read_is_told(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refused):
        read_text(tmp_path / name, name)


def test_a_file_that_is_too_large_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(positions, "MOST_BYTES", 10)
    with pytest.raises(Refused, match="larger"):
        read(tmp_path, "a: 0123456789\n")
