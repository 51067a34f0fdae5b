"""Answers that come back are checked as a project file is, placed in it with all else kept, and told."""

import datetime
import re
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.asking.workbooks import answered, filled, saved_by_calc
from tests.running import Ended, run_main
from tests.support import EXAMPLES

JOB = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial, number: "0712"}   # the job\twith a tab
elevations:
  E1: {name: South face, wall: W1, width: 40 ft, height: 20 ft}
walls:
  W1:   # the tower
    substrate: {kind: concrete}
    attachment: {method: adhesive_full_bed}
    insulation:
      kind: eps   # as the last job
      flame_spread: tbd
# the end
"""
INDEX, SMOKE, CLASS = (
    "walls.W1.insulation.flame_spread",
    "walls.W1.insulation.smoke_developed",
    "walls.W1.base_coat.class",
)
THICK = "walls.W1.insulation.thickness"


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "project.yaml"
    file.write_text(JOB, "utf-8")
    return file


def take(capsys: Any, job: Path, *books: bytes, more: tuple[str, ...] = ()) -> Ended:
    names = []
    for number, book in enumerate(books, 1):
        names.append(job.with_name(f"{number}.xlsx"))
        names[-1].write_bytes(book)
    ended = run_main(capsys, "take", str(job), *map(str, names), *more)
    folder = f"{job.parent}/"
    return Ended(ended.code, ended.out.replace(folder, ""), ended.err.replace(folder, ""))


def test_answers_are_placed_with_who_gave_them_and_no_line_of_the_user_is_lost(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({INDEX: 20, THICK: "3 in", CLASS: "PB", SMOKE: None}, number="0712"))
    assert ended.code == 0
    assert ended.out.splitlines() == [
        "1.xlsx: 3 answers of L. Ferrow, EIFS manufacturer, 2027-02-01",
        f"  {INDEX}: 20",
        f"  {THICK}: 3 in",
        f"  {CLASS}: PB",
    ]
    text = job.read_text("utf-8")
    assert "      flame_spread: 20\n" in text
    assert "      thickness: 3 in\n" in text
    assert [line for line in JOB.splitlines() if line not in text.splitlines()] == ["      flame_spread: tbd"]
    answers = text[text.index("answers:") :].replace("'on'", "on")
    for line in (
        "party: eifs_source",
        "by: L. Ferrow",
        "on: 2027-02-01",
        "sheet: 1.xlsx",
        f"      - {INDEX} = 20\n      - {THICK} = 3 in\n      - {CLASS} = PB\n",
    ):
        assert line in answers
    assert job.with_name("project.yaml.before").read_text("utf-8") == JOB
    assert "it is kept as project.yaml.before" in ended.err


def test_a_file_that_was_given_to_take_is_read_by_check(job: Path, capsys: Any) -> None:
    take(capsys, job, answered({INDEX: 20, THICK: "3 in", CLASS: "PB"}))
    ended = run_main(capsys, "check", str(job), "--format", "json")
    assert ended.code in (0, 1)


def test_the_same_workbook_taken_twice_changes_nothing(job: Path, capsys: Any) -> None:
    book = answered({INDEX: 20, THICK: "3 in"})
    take(capsys, job, book)
    once = job.read_bytes()
    ended = take(capsys, job, book)
    assert (ended.code, ended.out) == (0, "Nothing was added; 2 values in the project already.")
    assert job.read_bytes() == once
    assert not job.with_name("project.yaml.before-2").exists()


def test_a_value_changed_by_hand_prints_as_its_own_and_check_tells_both(job: Path, capsys: Any) -> None:
    take(capsys, job, answered({THICK: "3 in", INDEX: 20}))
    job.write_text(job.read_text("utf-8").replace("thickness: 3 in", "thickness: 4 in"), "utf-8")
    told = run_main(capsys, "check", str(job)).out
    assert "Changed since they were answered; each prints as the project's own" in told
    assert f"{THICK}: now 4 in; was 3 in, answered by L. Ferrow, EIFS manufacturer, 2027-02-01" in " ".join(
        told.split()
    )
    assert f"{INDEX}: now" not in told
    back = job.read_text("utf-8").replace("thickness: 4 in", 'thickness: 3"')
    job.write_text(back, "utf-8")
    assert "Changed since" not in run_main(capsys, "check", str(job)).out


def test_a_value_emptied_after_it_was_taken_refuses_nothing_and_can_be_answered_anew(job: Path, capsys: Any) -> None:
    take(capsys, job, answered({THICK: "3 in", INDEX: 20}))
    job.write_text(job.read_text("utf-8").replace("thickness: 3 in", "thickness:"), "utf-8")
    assert run_main(capsys, "check", str(job)).code in (0, 1)
    assert take(capsys, job, answered({THICK: "4 in"}, by="S. Other")).code == 0
    told = run_main(capsys, "check", str(job))
    assert told.code in (0, 1)
    assert "Changed since" not in told.out


def test_the_same_value_written_in_another_way_is_no_conflict(job: Path, capsys: Any) -> None:
    take(capsys, job, answered({THICK: "1-1/2 in"}))
    assert take(capsys, job, answered({THICK: "1.5 in"}, by="S. Other")).code == 0


def test_what_is_right_is_taken_and_each_fault_is_told_at_its_cell(job: Path, capsys: Any) -> None:
    faulty = {
        INDEX: 20,
        SMOKE: 9999,
        "walls.W3.insulation.kind": "eps",
        "walls.W1.insulation.densty": 1,
        THICK: datetime.datetime(2027, 3, 4),
        "": "lost",
    }
    ended = take(capsys, job, answered(faulty))
    assert ended.code == 1
    assert f"  {INDEX}: 20" in ended.out
    told = [line for line in ended.err.splitlines() if "1.xlsx, Questions" in line]
    assert [line.split(": ")[2] for line in told[:4]] == [
        SMOKE,
        "walls.W3.insulation.kind",
        "walls.W1.insulation.densty",
        THICK,
    ]
    assert "9999 is above 2000" in told[0]
    assert "the project no longer has a wall 'W3' (known: W1)" in told[1]
    assert "'densty' is the name of no field" in told[2]
    assert "specgen: 1.xlsx, Questions!H8: " in told[3]
    assert "the cell holds a date" in told[3]
    assert "the row names no field (leave 1.xlsx, Questions!J9 as it was sent)" in told[4]


def test_with_all_or_nothing_one_fault_leaves_all_as_it_is(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({INDEX: 20, SMOKE: 9999}), more=("--all-or-nothing",))
    assert ended.code == 2
    assert "nothing was taken, as --all-or-nothing asks" in ended.err
    assert "9999 is above 2000" in ended.err
    assert job.read_text("utf-8") == JOB
    assert sorted(file.name for file in job.parent.iterdir()) == ["1.xlsx", "project.yaml"]


def test_a_value_that_is_there_is_shown_beside_the_other_and_kept(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({"walls.W1.insulation.kind": "xps", INDEX: 20}))
    assert ended.code == 1
    assert "1 conflict, not taken; decide, and write the value in the file" in ended.out
    assert re.search(r"^    project\.yaml:11 +eps$", ended.out, re.MULTILINE)
    assert "    1.xlsx, Questions!H4  xps  L. Ferrow, EIFS manufacturer, 2027-02-01" in ended.out
    assert "      kind: eps   # as the last job\n" in job.read_text("utf-8")
    assert "flame_spread: 20" in job.read_text("utf-8")


def test_of_two_unlike_answers_in_one_call_neither_is_taken(job: Path, capsys: Any) -> None:
    second = answered({INDEX: 25, SMOKE: 300}, party="finish_source", by="I. Pane")
    ended = take(capsys, job, answered({INDEX: 20, THICK: "3 in"}), second)
    assert ended.code == 1
    assert "    1.xlsx, Questions!H4  20  L. Ferrow, EIFS manufacturer, 2027-02-01" in ended.out
    assert "    2.xlsx, Questions!H4  25  I. Pane, finish manufacturer, 2027-02-01" in ended.out
    text = job.read_text("utf-8")
    assert "flame_spread: tbd" in text
    assert "- walls.W1.insulation.smoke_developed = 300" in text
    assert "Q2:" in text


def test_an_answer_against_one_of_before_tells_who_gave_that(job: Path, capsys: Any) -> None:
    take(capsys, job, answered({INDEX: 20}))
    ended = take(capsys, job, answered({INDEX: 25}, party="finish_source", by="I. Pane", on="2027-02-09"))
    assert ended.code == 1
    first, second = [line for line in ended.out.splitlines() if line.startswith("    ")]
    assert re.fullmatch(r"    project\.yaml:12 +20  L\. Ferrow, EIFS manufacturer, 2027-02-01", first)
    assert second == "    1.xlsx, Questions!H4  25  I. Pane, finish manufacturer, 2027-02-09"


NOT_TAKEN = [
    ({"name": "Other"}, "the sheet is of another project: its name is 'Other', not 'Trial'"),
    ({"number": "0713"}, "the sheet is of another project: its number is '0713', not '0712'"),
    ({"party": "painter"}, "'painter' is not a choice for this field"),
    ({"party": ""}, "the sheet does not say which party it is for"),
    ({"by": ""}, "1.xlsx, Project!B8: it is not said who answered (write the name there, or give --by NAME)"),
]


@pytest.mark.parametrize(
    ("how", "message"),
    NOT_TAKEN,
)
def test_a_workbook_that_cannot_be_taken_is_told_and_the_others_are_taken(
    how: Any, message: str, job: Path, capsys: Any
) -> None:
    alone = take(capsys, job, answered({INDEX: 20}, **how))
    assert alone.code == 2
    assert message in alone.err
    assert job.read_text("utf-8") == JOB
    ended = take(capsys, job, answered({THICK: "3 in"}, party="finish_source"), answered({INDEX: 20}, **how))
    assert ended.code == 1
    assert message.replace("1.xlsx", "2.xlsx") in ended.err
    assert "thickness: 3 in" in job.read_text("utf-8")
    assert "flame_spread: tbd" in job.read_text("utf-8")


DAYS = [
    ("11/20/2026", (), "2026-11-20", "1.xlsx, Project!B9: '11/20/2026' is read as 2026-11-20"),
    ("", (), "", "1.xlsx, Project!B9: the date is missing; the answers are taken without one"),
    ("soon", (), "", "1.xlsx, Project!B9: 'soon' is not a plain date; the answers are taken without one"),
    ("soon", ("--on", "11/26/2026"), "2026-11-26", "'soon' is not a plain date; --on gives 2026-11-26"),
]


@pytest.mark.parametrize(
    ("day", "more", "kept", "told"),
    DAYS,
)
def test_a_date_of_signing_never_holds_answers_up(
    day: str, more: tuple[str, ...], kept: str, told: str, job: Path, capsys: Any
) -> None:
    ended = take(capsys, job, answered({INDEX: 20}, on=day), more=more)
    assert ended.code == 0
    assert told in ended.out
    text = job.read_text("utf-8")
    assert "flame_spread: 20" in text
    assert (f"on: {kept}" if kept else "by: L. Ferrow\n    sheet:") in text.replace("'on'", "on")
    assert run_main(capsys, "check", str(job)).code in (0, 1)


def test_who_and_when_of_the_call_are_told_where_the_sheet_says_otherwise(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({INDEX: 20}), more=("--by", "S. Other", "--on", "2027-03-01"))
    assert "1.xlsx, Project!B8: the sheet says L. Ferrow; --by is not used" in ended.out
    assert "1.xlsx, Project!B9: the sheet says 2027-02-01; --on is not used" in ended.out


def test_a_date_of_the_call_that_is_at_fault_is_told_as_such(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({INDEX: 20}), more=("--on", "soon"))
    assert ended.code == 2
    assert "--on: 'soon' is not a date" in ended.err


def test_a_file_that_is_not_there_costs_its_own_answer_only_and_is_told_at_its_cell(job: Path, capsys: Any) -> None:
    second = answered({SMOKE: 300, "coating_system": "coating-system.yaml"}, party="finish_source", by="I. Pane")
    ended = take(capsys, job, answered({INDEX: 20}, party="applicator"), second)
    assert ended.code == 1
    assert [line for line in ended.err.splitlines() if "Questions!" in line][0].startswith(
        "specgen: 2.xlsx, Questions!H5: coating_system"
    )
    text = job.read_text("utf-8")
    assert "flame_spread: 20" in text
    assert "smoke_developed: 300" in text
    assert "coating_system" not in text


def test_what_is_wrong_is_told_with_the_number_of_the_question_and_the_party(job: Path, capsys: Any) -> None:
    def number(book: Any) -> None:
        book["Questions"]["A4"] = 3
        book["Project"]["B5"] = "EIFS manufacturer"

    ended = take(capsys, job, filled(answered({INDEX: 9999}), number))
    assert f"1.xlsx, Questions!H4 (No. 3, EIFS manufacturer): {INDEX}: 9999 is above" in ended.err


@pytest.mark.parametrize("word", ["OK", "confirmed", "Confirmed.", "agreed"])
def test_a_proposal_that_is_confirmed_is_taken(word: str, job: Path, capsys: Any) -> None:
    def propose(book: Any) -> None:
        book["Questions"]["B4"] = "Thickness. Proposed: 3 in (75 mm); write it to confirm, or correct it."

    ended = take(capsys, job, filled(answered({THICK: word}), propose))
    assert ended.code == 0, ended
    assert "thickness: 3 in\n" in job.read_text("utf-8")
    assert "confirms what was proposed, 3 in" in ended.out


def test_who_answered_and_when_may_be_given_with_the_call(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({INDEX: 20}, by="", on=""), more=("--by", "L. Ferrow", "--on", "2027-02-01"))
    assert ended.code == 0
    assert "by: L. Ferrow" in job.read_text("utf-8")


def test_a_day_that_a_spreadsheet_made_a_date_is_taken(job: Path, capsys: Any) -> None:
    def put_day(book: Any) -> None:
        book["Project"]["B9"] = datetime.datetime(2027, 2, 1)
        book["Project"]["B9"].number_format = "mm-dd-yy"

    ended = take(capsys, job, filled(answered({INDEX: 20}), put_day))
    assert ended.code == 0
    assert "2027-02-01" in ended.out


def test_a_remark_stands_as_a_comment_and_one_without_an_answer_is_told(job: Path, capsys: Any) -> None:
    book = answered({THICK: "3 in", SMOKE: "n/a"}, remarks={THICK: "report TR-12", SMOKE: "see our letter"})
    ended = take(capsys, job, book)
    assert ended.code == 0
    assert "# report TR-12" in job.read_text("utf-8")
    assert f"Questions!H5: {SMOKE}: remark without an answer: see our letter" in ended.out


def test_an_answer_that_turns_a_range_upside_down_is_told_and_the_rest_is_taken(job: Path, capsys: Any) -> None:
    job.write_text(JOB + "smoothing: {sand_after_least_minutes: 90}\n", "utf-8")
    high = "smoothing.sand_after_most_minutes"
    ended = take(capsys, job, answered({high: 60, INDEX: 20}, party="finish_source"))
    assert ended.code == 1
    assert f"1.xlsx, Questions!H4: {high}: 60 is below 90" in ended.err
    assert "most_minutes" not in job.read_text("utf-8")
    assert "flame_spread: 20" in job.read_text("utf-8")


def test_a_mark_of_nothing_is_told(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, answered({"walls.W1.wrb.bond_report": "A9", INDEX: 20}))
    assert ended.code == 1
    assert "1.xlsx, Questions!H4: walls.W1.wrb.bond_report: there is no attachment 'A9'" in ended.err
    assert "A9" not in job.read_text("utf-8")


def test_what_is_wrong_in_the_file_already_is_no_fault_of_an_answer(job: Path, capsys: Any) -> None:
    job.write_text(JOB.replace("kind: eps ", "kind: esp "), "utf-8")
    ended = take(capsys, job, answered({INDEX: 20, "walls.W1.insulation.kind": "xps"}))
    assert ended.code == 1
    assert re.search(r"^    project\.yaml:11 +esp$", ended.out, re.MULTILINE)
    assert "flame_spread: 20" in job.read_text("utf-8")


def test_answers_about_the_firm_and_the_coating_go_into_their_own_files(tmp_path: Path, capsys: Any) -> None:
    whole = {}
    for name, given in (
        ("firm.yaml", "years: 14, "),
        ("coating-system.yaml", "  shelf_life_months: 9\n"),
        ("project.yaml", ""),
    ):
        whole[name] = (EXAMPLES / "clean" / name).read_text("utf-8")
        assert given in whole[name]
        (tmp_path / name).write_text(whole[name].replace(given, "", 1) if given else whole[name], "utf-8")
    job, name = tmp_path / "project.yaml", "Wickerwell Branch Library"
    first = answered({"gloss.shelf_life_months": 9}, party="finish_source", by="I. Pane", name=name)
    second = answered({"people.P1.years": 14}, party="applicator", by="L. Mallow", name=name)
    ended = take(capsys, job, first, second)
    assert ended.code == 0, ended
    assert "  shelf_life_months: 9\n" in (tmp_path / "coating-system.yaml").read_text("utf-8")
    assert re.search(r"P1: \{name: T\. Underbough.* years: 14[,}]", (tmp_path / "firm.yaml").read_text("utf-8"))
    text = job.read_text("utf-8")
    assert [line for line in whole["project.yaml"].splitlines() if line not in text.splitlines()] == []
    assert "- gloss.shelf_life_months = 9" in text
    assert "- people.P1.years = 14" in text
    for kept in ("coating-system.yaml.before", "firm.yaml.before", "project.yaml.before"):
        assert f"kept as {kept}" in ended.err


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_marks_line_ends_and_a_last_line_without_end_are_kept(ending: str, job: Path, capsys: Any) -> None:
    source = b"\xef\xbb\xbf" + JOB.rstrip("\n").replace("\n", ending).encode()
    job.write_bytes(source)
    assert take(capsys, job, answered({THICK: "3 in"})).code == 0
    after = job.read_bytes()
    assert after.startswith(b"\xef\xbb\xbf")
    assert all(line in after.split(ending.encode()) for line in source.split(ending.encode()))
    assert ending == "\n" or b"\n" not in after.replace(b"\r\n", b"")


def test_a_question_sheet_filled_in_and_saved_by_a_spreadsheet_program_is_taken(tmp_path: Path, capsys: Any) -> None:
    job = tmp_path / "project.yaml"
    job.write_bytes((EXAMPLES / "stops" / "project.yaml").read_bytes())
    assert run_main(capsys, "ask", str(job), "--out", str(tmp_path / "sheets"), "--formats", "xlsx").code == 0
    given = {
        "parties.eifs_source.name": " Graywether  Wall Systems ",
        "walls.W1.insulation.rasp_allowance": "1/16",
        "walls.W1.insulation.board_joint_to_reveal": '4"',
        "walls.W1.insulation.board_joint_to_opening_corner": "=4*2",
        "parties.finish_source.name": "?",
    }

    def fill(book: Any) -> None:
        book["Project"]["B11"], book["Project"]["B12"] = "T. Trow", "2027-02-01"
        for row in book["Questions"].iter_rows(min_row=4):
            if row[9].value in given:
                row[7].value = given[row[9].value]
                row[7].number_format = "General" if str(row[7].value).startswith("=") else "@"

    book = saved_by_calc(tmp_path, filled((tmp_path / "sheets" / "applicator.xlsx").read_bytes(), fill))
    ended = take(capsys, job, book)
    assert ended.code == 0, ended
    assert "1.xlsx: 4 answers of T. Trow, Three Trowels Company, 2027-02-01" in ended.out
    for line in (
        "  parties.eifs_source.name: Graywether Wall Systems",
        "  walls.W1.insulation.rasp_allowance: 1/16 in",
        '  walls.W1.insulation.board_joint_to_reveal: 4"',
        "  walls.W1.insulation.board_joint_to_opening_corner: 8 in",
        "a formula; its value 8 is taken",
    ):
        assert line in ended.out
    assert run_main(capsys, "check", str(job), "--severity", "stop").code == 1


def test_without_the_library_one_line_says_what_to_install(job: Path, capsys: Any, monkeypatch: Any) -> None:
    monkeypatch.setitem(__import__("sys").modules, "openpyxl", None)
    ended = take(capsys, job, answered({INDEX: 20}))
    assert ended.code == 2
    assert "install specgen with its extra sheets" in ended.err
    assert len(ended.err.splitlines()) == 1


def test_a_starter_takes_answers_about_a_wall_of_which_nothing_is_known(tmp_path: Path, capsys: Any) -> None:
    job = tmp_path / "project.yaml"
    run_main(capsys, "new", str(job))
    before = job.read_text("utf-8").splitlines()
    given = {"walls.W1.substrate.kind": "glass mat gypsum", "walls.W1.insulation.kind": "EPS", "project.name": "Clinic"}
    ended = take(capsys, job, answered(given, party="architect", by="A. Quoin", name=""))
    assert ended.code == 0, ended
    after = job.read_text("utf-8").splitlines()
    lost = [line for line in before if line not in after]
    assert {line.strip() for line in lost} <= {"name:", "kind:"}
    for line in ("    kind: glass_mat_gypsum", "      kind: eps", "  name: Clinic"):
        assert any(found.startswith(line.strip()) for found in map(str.strip, after)), line


def test_a_text_of_several_lines_is_kept_whole(job: Path, capsys: Any) -> None:
    field = "elevations.E1.no_joint_reason"
    ended = take(capsys, job, answered({field: "One frame.\nNo expansion joint: see 5'-6\" detail # 3"}))
    assert ended.code == 0, ended
    assert '"One frame. No' not in ended.out
    assert f"  {field}: One frame. No expansion joint: see 5'-6\" detail # 3" in ended.out
    again = take(capsys, job, answered({field: "One frame.\nNo expansion joint: see 5'-6\" detail # 3"}))
    assert again.out == "Nothing was added; 1 value in the project already."


def test_two_parties_that_agree_are_no_conflict_and_zeros_before_a_number_do_not_count(job: Path, capsys: Any) -> None:
    second = answered({INDEX: 20.0}, party="finish_source", by="I. Pane", number="712")
    ended = take(capsys, job, answered({INDEX: "20"}), second)
    assert ended.code == 0, ended
    assert job.read_text("utf-8").count("party: ") == 1


@pytest.mark.parametrize("name", ["first-look", "stops", "metric", "gable-hall", "old-wall"])
def test_every_question_answered_by_its_own_example_is_taken(name: str, tmp_path: Path, capsys: Any) -> None:
    for file in (EXAMPLES / name).glob("*.yaml"):
        (tmp_path / file.name).write_bytes(file.read_bytes())
    job = tmp_path / "project.yaml"
    before = {file.name: file.read_text("utf-8") for file in tmp_path.glob("*.yaml")}
    words = ("--out", str(tmp_path / "sheets"), "--formats", "xlsx", "--for", "mockup")
    assert run_main(capsys, "ask", str(job), *words).code == 0
    asked = 0
    for sheet in sorted((tmp_path / "sheets").glob("*.xlsx")):
        found = dict[str, str]()

        def fill(book: Any, found: dict[str, str] = found) -> None:
            project = book["Project"]
            for row in project.iter_rows(min_row=3):
                row[1].value = {"Answered by": "A. Body", "Date": "2027-02-01"}.get(row[0].value, row[1].value)
            for row in book["Questions"].iter_rows(min_row=4):
                form, example = str(row[3].value), str(row[4].value or "")
                if row[9].value and form != "words" and not form.startswith(("mark", "name", "as listed")):
                    choices = re.fullmatch(r"(?:one|any) of: ([^,;]+).*", form)
                    row[7].value = found[row[9].value] = example or (choices[1] if choices else "yes")

        if "Questions" not in openpyxl.load_workbook(sheet).sheetnames:
            continue  # a table of members
        ended = take(capsys, job, filled(sheet.read_bytes(), fill))
        asked += len(found)
        told = [line for line in ended.err.splitlines() if "Questions!" in line]
        # What is right by itself may lie against another value of this project, which is told by that.
        assert all(re.search(r"(is|lies) (below|before|above)|ends|overlap|reach|wall is", line) for line in told), (
            ended
        )
        assert "conflict" not in ended.out
    assert asked > 20
    for file, text in before.items():
        # Letter by letter all that was there is there in its order: nothing but what stood as unknown is gone.
        letters = iter((tmp_path / file).read_text("utf-8"))
        assert all(letter in letters for letter in re.sub(r": tbd\b", ":", text)), file
    assert run_main(capsys, "check", str(job)).code in (0, 1)


def test_what_comes_with_a_merge_key_is_left_as_it_is_and_told(job: Path, capsys: Any) -> None:
    text = JOB.replace("  W1:   # the tower", "  W1: &tower").replace("# the end\n", "  W2: {<<: *tower}\n")
    job.write_text(text, "utf-8")
    ended = take(capsys, job, answered({INDEX: 20, "walls.W2.insulation.thickness": "3 in"}))
    assert ended.code == 1
    assert "walls.W2.insulation comes with a merge key; write the section out to give it values of its own" in ended.out
    assert "walls.W2.insulation.flame_spread has the value too, as it repeats" in ended.out
    after = job.read_text("utf-8")
    assert after.startswith(text.replace("flame_spread: tbd", "flame_spread: 20"))
