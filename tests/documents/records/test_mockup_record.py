"""Form D10 filled: readings on their lines, pass and fail, settings, who signed."""

from datetime import date
from typing import Any

import pytest

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


CUP = {**RESULT, "criterion": "primer_gloss_cup", "reading": "41 s; 41 s; 30 s; 72 °F"}
PARTS = (("coat 1", "15a"), ("Coat 2", "15b"), ("2", "15b"), ("gloss gun, coat 2", ""), ("coat 3", ""))


@pytest.mark.parametrize(("part", "number"), PARTS)
def test_a_result_stands_on_the_line_of_the_coat_it_names_and_one_of_no_line_is_listed(part: str, number: str) -> None:
    lines = lines_of({**CUP, "part": part})
    filled = [line[0] for line in lines if len(line) > 10 and line[5] == "41 s"]
    assert filled == ([number] if number else [])
    listed = [line[3] for line in lines if line[0] == "june.csv, row 2"]
    assert [said.rpartition("On no line: ")[2] for said in listed] == (
        [] if number else [f"there is no '{part}' on line 15."]
    )


def test_results_of_two_coats_that_name_neither_are_taken_in_their_order_where_they_fill_both_lines() -> None:
    later = {**CUP, "reading": "40 s; 40 s; 29 s; 74 °F"}
    lines = lines_of(CUP, later)
    assert [line[5:9] for line in lines if line[0] in ("15a", "15b")] == [
        ["41 s", "41 s", "30 s", "72 °F"],
        ["40 s", "40 s", "29 s", "74 °F"],
    ]


def test_the_coats_of_one_line_that_were_signed_on_two_days_are_of_one_viewing() -> None:
    second = {**CUP, "part": "coat 2", "signed_on": date(2027, 4, 9)}
    lines = lines_of({**CUP, "part": "coat 1"}, second)
    assert [line[0] for line in lines if len(line) > 10 and line[5] == "41 s"] == ["15a", "15b"]


def test_readings_parted_by_commas_have_a_box_each_and_their_mean_is_computed() -> None:
    # (61 + 63 + 62 + 60 + 64 + 62) / 6 = 62, by hand.
    lines = lines_of({**RESULT, "criterion": "gloss", "reading": "61, 63, 62, 60, 64, 62"})
    row = next(line for line in lines if len(line) > 10 and line[1].startswith("Specular gloss"))
    assert row[5:12] == ["61", "63", "62", "60", "64", "62", "62"]


def test_a_mean_is_not_computed_of_words_or_of_two_units() -> None:
    for reading in ("61; no reading", "61 GU; 4 mil"):
        lines = lines_of({**RESULT, "criterion": "gloss", "reading": reading})
        row = next(line for line in lines if len(line) > 10 and line[1].startswith("Specular gloss"))
        assert row[11] == "____"


def test_readings_too_long_or_too_many_for_their_boxes_stand_in_a_table_of_their_own() -> None:
    lines = lines_of(
        {**RESULT, "criterion": "raking_light", "reading": "no shadow at a lap"},
        {**RESULT, "criterion": "smoothing_feel", "reading": "dust; none"},
    )
    assert line_of(lines, "Smoothing coat texture")[5] == "*"
    told = lines.index(["No.", "Criterion", "Readings"])
    assert [line[2] for line in lines[told + 1 : told + 3]] == ["no shadow at a lap", "dust; none"]


def test_a_line_for_record_is_done_when_it_is_recorded() -> None:
    lines = lines_of({**RESULT, "criterion": "primer_wet_film", "reading": "4.2, 4.4 mil"})
    assert line_of(lines, "Primer wet film")[12:] == ["(x) done", "LN"]


def test_a_criterion_that_the_form_has_no_line_for_is_listed_with_the_reason() -> None:
    lines = lines_of({**RESULT, "criterion": "", "own": "97"})
    (listed,) = [line[3] for line in lines if line[0] == "june.csv, row 2"]
    assert listed.endswith("On no line: the acceptance form of this project has no line 'own-97'.")


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


def test_the_decision_is_ticked_on_the_last_viewing_with_the_day_the_project_tells() -> None:
    accepted = context_with(make_entries(("result", RESULT)), "season")
    lines = text.write_text(documents_of(accepted)["D10-record"]).splitlines()
    assert any("By the architect: (x) Accepted ( ) Accepted as noted" in line for line in lines)
    assert "Architect | Mullion and Hart Architects | the decision | ____ | ____ | May 7, 2027" in lines
    first = {**RESULT, "passed": False, "signed_on": date(2027, 4, 2)}
    two = context_with(make_entries(("result", first), ("result", RESULT)), "season")
    assert "( ) Accepted ( ) Accepted as noted" in text.write_text(documents_of(two)["D10-record"])


def test_without_results_and_settings_there_is_no_filled_form() -> None:
    assert not any(name.startswith("D10") for name in documents_of(context_with([])))
