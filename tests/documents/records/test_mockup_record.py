"""Form D10 filled: readings on their lines, pass and fail, settings, who signed."""

from datetime import date
from typing import Any

from specgen.formats import text
from tests.documents.records.entries import context_with, documents_of, judgment_of, make_entries, q

RESULT: dict[str, Any] = {
    "criterion": "flatness_short",
    "reading": "1/32 in",
    "passed": True,
    "signed_by": "L. Novak",
    "signed_on": date(2027, 4, 5),
}


def lines_of(*results: dict[str, Any], name: str = "D10-record", **accepted: Any) -> list[list[str]]:
    context = context_with(make_entries(*(("result", one) for one in results)), **accepted)
    return [line.split(" | ") for line in text.write_text(documents_of(context)[name]).splitlines()]


def line_of(lines: list[list[str]], criterion: str) -> list[str]:
    return next(line for line in lines if len(line) > 10 and line[1] == criterion)


def test_readings_of_a_line_stand_side_by_side_with_its_outcome_and_initials() -> None:
    lines = lines_of(RESULT, {**RESULT, "reading": "1/16 in"})
    assert line_of(lines, "Base coat flatness, short straightedge")[5:] == [
        *("1/32 in", "1/16 in", "____", "____", "____", "–", "–", "(x) pass ( ) fail", "LN")
    ]
    assert ["L. Novak (LN)", "April 5, 2027", "Base coat flatness, short straightedge"] in lines


def test_several_readings_in_one_text_are_taken_apart() -> None:
    lines = lines_of({**RESULT, "reading": "1/32 in; 1/16 in; 0 in"})
    assert line_of(lines, "Base coat flatness, short straightedge")[5:8] == ["1/32 in", "1/16 in", "0 in"]


def test_one_failed_reading_fails_its_line() -> None:
    lines = lines_of(RESULT, {**RESULT, "passed": False})
    assert line_of(lines, "Base coat flatness, short straightedge")[12] == "( ) pass (x) fail"


def test_what_was_signed_on_a_later_day_is_of_the_second_viewing() -> None:
    later = {**RESULT, "reading": "1/64 in", "signed_on": date(2027, 4, 9)}
    first, second = (lines_of({**RESULT, "passed": False}, later, name=n) for n in ("D10-record", "D10-record-2"))
    assert line_of(first, "Base coat flatness, short straightedge")[5] == "1/32 in"
    assert line_of(second, "Base coat flatness, short straightedge")[5] == "1/64 in"
    assert line_of(second, "Base coat flatness, short straightedge")[12] == "(x) pass ( ) fail"


def test_a_reading_whose_angle_is_not_told_stands_in_the_list_and_on_no_row() -> None:
    lines = lines_of({**RESULT, "criterion": "color_reading", "reading": "1.2"})
    assert line_of(lines, "Color difference, 15 degrees")[5] == "____"
    listed = next(line for line in lines if line[0] == "june.csv, row 2")
    told = "Criterion judged: color reading; Reading at the criterion: 1.2; Criterion passed: yes"
    assert listed[3] == f"{told}. On no line: not told whether line 23a, 23b or 23c."


def test_accepted_settings_stand_in_their_blanks() -> None:
    lines = lines_of(RESULT, crew="silver", stream_length=q("7.5", "in"), stream_tolerance=q("1", "in"))
    crew = next(line for line in lines if line[0] == "Crew")
    assert crew[1:4] == ["silver", "Stream length, ± tolerance, in", "7-1/2 ± 1"]


def test_a_result_outside_its_limit_bears_the_number_of_its_nonconformance() -> None:
    (entry,) = entries = make_entries(("result", RESULT))
    documents = documents_of(context_with(entries), judgment_of((entry, "passed"), (entry, "reading")))
    lines = [line.split(" | ") for line in text.write_text(documents["D10-record"]).splitlines()]
    line = line_of(lines, "Base coat flatness, short straightedge")
    assert (line[5], line[12]) == ("1/32 in ▲\u00a02", "(x) pass ( ) fail ▲\u00a01")


def test_without_results_and_settings_there_is_no_filled_form() -> None:
    assert not any(name.startswith("D10") for name in documents_of(context_with([])))
