"""Marks can be told apart: what they may hold is ours to say; names of characters are those of the Unicode charts."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from specgen.reading.marks import find_mark_fault
from tests.support import SMALL, written

# Marks as drawings and schedules of jobs carry them (common practice, no source).
USED = [
    "W1",
    "E-1",
    "3/A5.01",
    "NORTH WALL",
    "Süd",
    "EIFS-2A",
    "(E) W3",
    "A&B",
    "W1'",
    "R+1",
    "#204",
    "W_1",
    "北面",
    "1",
]
FAULTS = [
    ("W1\u202e", "U+202E RIGHT-TO-LEFT OVERRIDE", "write the"),
    ("W1\n", "U+000A", "write W1"),
    ("W1\u00a0A", "U+00A0 NO-BREAK SPACE", "write W1 A"),
    ("E\u20111", "U+2011 NON-BREAKING HYPHEN", "write E-1"),
    ("Su\u0308d", "U+0308 COMBINING DIAERESIS", "write Süd"),
    ("\uff371", "U+FF37 FULLWIDTH LATIN CAPITAL LETTER W", "write W1"),
    ("\U0001d4161", "U+1D416 MATHEMATICAL BOLD CAPITAL W", "write W1"),
    ("W\u0661", "U+0661 ARABIC-INDIC DIGIT ONE", "letters, digits"),
    ("\u05d01", "U+05D0 HEBREW LETTER ALEF", "letters, digits"),
    ("W1\t", "U+0009", "write W1"),
    ("\x1b[2J", "U+001B", "letters, digits"),
    ("W1: yes", "U+003A COLON", "letters, digits"),
    ("W1  A", "spaces that are not seen", "write W1 A"),
    (" W1", "spaces that are not seen", "write W1"),
    ("--", "cannot be a mark", "the mark used on the drawings"),
]
# Two marks that look alike, and a word of what is said.
PAIRS = [
    ("W1", "w1", "capitals"),
    ("W1", "\u04101", "Cyrillic"),
    ("A1", "\u0391-2", "Greek"),
    ("A", "B\u0421", "Cyrillic"),
]


@pytest.mark.parametrize("mark", USED)
def test_marks_that_drawings_carry_are_taken(mark: str) -> None:
    assert find_mark_fault(mark) is None


@pytest.mark.parametrize(("mark", "said", "hint"), FAULTS, ids=[said for _, said, _ in FAULTS])
def test_a_mark_with_another_character_is_told_with_its_name(mark: str, said: str, hint: str) -> None:
    fault = find_mark_fault(mark)
    assert fault is not None
    assert said in fault[0]
    assert hint in fault[1] or said.startswith("U+202E")


@given(st.text(max_size=8))
def test_a_mark_that_is_taken_is_seen_whole(mark: str) -> None:
    if find_mark_fault(mark) is None:
        assert mark.isprintable()
        assert mark == mark.strip()
        assert "  " not in mark


def problems_of(folder: Path, *marks: str) -> list[Problem]:
    walls = dict.fromkeys(marks, SMALL["walls"]["W1"])
    with pytest.raises(Refused) as refused:
        pipeline.check(written(folder, yaml.safe_dump(SMALL | {"walls": walls}, allow_unicode=True, sort_keys=False)))
    return list(refused.value.problems)


@pytest.mark.parametrize(("one", "other", "said"), PAIRS, ids=[said for *_, said in PAIRS])
def test_two_marks_that_look_alike_are_refused_with_both_lines(one: str, other: str, said: str, tmp_path: Path) -> None:
    (problem,) = problems_of(tmp_path, one, other)
    assert (problem.line, "line 7" in problem.message, "line 12" in problem.message) == (12, True, True), problem
    assert said in problem.message


def test_a_mark_of_two_alphabets_is_refused(tmp_path: Path) -> None:
    (problem,) = problems_of(tmp_path, "W\u0410")
    assert "Cyrillic" in problem.message


@pytest.mark.parametrize("mark", ["firm A1", "Firm a1"])
def test_a_paper_marked_like_one_of_the_firm_is_refused(mark: str, tmp_path: Path) -> None:
    papers = {"attachments": {"A1": {"kind": "letter", "title": "Of the firm"}}}
    written(tmp_path, {"format": 1} | papers, "firm.yaml")
    # The job has an A1 too, so that of the firm is told apart by its file.
    both = {mark: {"kind": "letter", "title": "Of the job"}, "A1": {"kind": "letter", "title": "Of the job too"}}
    mine = {"firm": "firm.yaml", "attachments": both}
    with pytest.raises(Refused, match="'firm A1' is also a mark in project.yaml, line 14") as refused:
        pipeline.check(written(tmp_path, SMALL | mine))
    assert [(problem.file, problem.line) for problem in refused.value.problems] == [("firm.yaml", 3)]
