"""A table of members goes into the project row by row, whole rows only, and nothing that is there is overwritten."""

import re
from pathlib import Path
from typing import Any

import pytest

from tests.asking.workbooks import filled, saved_by_calc, written_by_xlsxwriter
from tests.running import Ended, run_main
from tests.support import EXAMPLES

JOB = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
elevations:
  E1:
    name: South face
    width: 40 ft
    height: 20 ft
    openings:
      A: {kind: window, x: 3 ft, y: 3 ft, width: 4 ft, height: 5 ft}   # the first
  E2: {name: West face, width: 30 ft, height: 20 ft}
walls:
  W1:
    substrate: {kind: concrete}
    attachment: {method: adhesive_full_bed}
"""
HEAD = ["Mark", "Elevation", "kind", "x", "y", "Opening width", "HEIGHT"]
B = ["B", "E1", "window", "10 ft", "3'-0\"", "4 ft", "5 ft"]
C = ["C", "E2 West face", "Door", "1 ft", "0 ft", "1200 mm", "7 ft"]


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "project.yaml"
    file.write_text(JOB, "utf-8")
    return file


def take(capsys: Any, job: Path, content: bytes, name: str = "t.xlsx", kind: str = "openings") -> Ended:
    file = job.with_name(name)
    file.write_bytes(content)
    ended = run_main(capsys, "take", str(job), str(file), "--as", kind)
    folder = f"{job.parent}/"
    return Ended(ended.code, ended.out.replace(folder, ""), ended.err.replace(folder, ""))


def table(*rows: list[Any], head: list[Any] = HEAD, name: str = "openings") -> bytes:
    return written_by_xlsxwriter({name: [head, *rows]})


def lines_added(job: Path) -> list[str]:
    old = JOB.splitlines()
    return [line.strip() for line in job.read_text("utf-8").splitlines() if line not in old]


def test_new_members_are_added_and_every_line_is_kept(job: Path, capsys: Any) -> None:
    ended = take(capsys, job, table(B, C))
    assert ended.code == 0, ended
    assert ended.out.splitlines() == [
        "2 members, 10 values",
        "  elevations.E1.openings.B: kind, x, y, width, height",
        "  elevations.E2.openings.C: kind, x, y, width, height",
    ]
    text = job.read_text("utf-8")
    lost = [line for line in JOB.splitlines() if line not in text.splitlines()]
    assert lost in ([], ["  E2: {name: West face, width: 30 ft, height: 20 ft}"])
    assert "kind: window" in lines_added(job)
    assert "width: 1200 mm" in text
    assert "kind: door" in text
    assert run_main(capsys, "check", str(job)).code in (0, 1)


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("t.csv", b"Mark;Elevation;Kind;X;Y;Width;Height\nB;E1;window;10 ft;3 ft;4 ft;5 ft\n"),
        (
            "t.csv",
            b'\xef\xbb\xbfmark,elevation,Opening type,x (ft),y (ft),"width, in",height [ft]\r\n'
            b"B,E1,window,10,3,48,5\r\n",
        ),
        ("T.TSV", b"Mark\tElevation\tkind\tx\ty\twidth\theight\nB\te1\tWINDOW\t10 ft\t3 ft\t4 ft\t5 ft"),
    ],
)
def test_a_table_as_csv_is_taken_with_titles_in_any_case_and_units_in_them(
    name: str, content: bytes, job: Path, capsys: Any
) -> None:
    ended = take(capsys, job, content, name)
    assert ended.code == 0, ended
    assert "  elevations.E1.openings.B: kind, x, y, width, height" in ended.out
    project = run_main(capsys, "check", str(job), "--format", "json")
    assert project.code in (0, 1)
    text = job.read_text("utf-8")
    assert ("width: 48 in" in text) or ("width: 4 ft" in text)


def test_the_same_table_taken_twice_changes_nothing(job: Path, capsys: Any) -> None:
    take(capsys, job, table(B, C))
    once = job.read_bytes()
    ended = take(capsys, job, table(B, C))
    assert (ended.code, ended.out) == (0, "Nothing was added; 10 values in the project already.")
    assert job.read_bytes() == once


def test_a_member_with_another_value_is_shown_and_left_whole_while_others_are_taken(job: Path, capsys: Any) -> None:
    head = [*HEAD, "Sill pan"]
    ended = take(capsys, job, table(["A", "E1", "door", "3 ft", None, None, None, "yes"], [*B, True], head=head))
    assert ended.code == 1
    assert "1 conflict, not taken" in ended.out
    assert "  elevations.E1.openings.A.kind" in ended.out
    assert re.search(r"^    project\.yaml:10 +window$", ended.out, re.MULTILINE)
    first = "      A: {kind: window, x: 3 ft, y: 3 ft, width: 4 ft, height: 5 ft}   # the first\n"
    assert first in job.read_text("utf-8")
    assert "  elevations.E1.openings.B: kind, x, y, width, height, sill_pan" in ended.out


# A table of openings, and what is told of it.
FAULTY = [
    (
        table(B, head=[*HEAD[:5], "widht", "height"]),
        "openings!F1: 'widht' is no column of openings (did you mean width?)",
    ),
    (table([*B, "x"], head=[*HEAD, "Glazing"]), "openings!H1: 'Glazing' is no column of openings"),
    (table([*B, "4 ft"], head=[*HEAD, "width"]), "openings!H1: the column 'width' stands twice"),
    (
        table(B, head=["No.", *HEAD[1:]]),
        "the table has no column Mark (give the column of the marks the title Mark)",
    ),
    (table(["B", "E9", *B[2:]]), "openings!A2: there is no elevation 'E9'"),
    (table(["B", None, *B[2:]]), "openings!A2: it is not said which elevation 'B' belongs to"),
    (table([None, *B[1:]]), "openings!A2: the row has no mark"),
    (table(["\u202eB", *B[1:]]), "openings!A2: '\\u202eB' cannot be a mark"),
    (table(B, B), "openings!A3: 'B' stands twice, also in row 2"),
    (table(["B", "E1"]), "openings row 2: the row has a mark and no values"),
    (table([*B[:5], 4.0, "5 ft"]), "openings!F2: elevations.E1.openings.B.width: '4'"),
    (
        table([*B[:2], "gate", *B[3:]]),
        "openings!C2: elevations.E1.openings.B.kind: 'gate' is not a choice for this field",
    ),
    (table(B, ["D", "E1", "window", "11 ft", "3 ft", "4 ft", "5 ft"]), "the opening overlaps B in row 2 (move one"),
    (table(["B", "E1", "window", "39 ft", "3 ft", "4 ft", "5 ft"]), "elevations.E1.openings.B"),
    (table(["a", *B[1:]]), "'a' is taken for 'A'"),
    (written_by_xlsxwriter({"One": [HEAD, B], "Two": [HEAD, B]}), "no sheet of the workbook is named openings"),
]


@pytest.mark.parametrize(
    ("content", "message"),
    FAULTY,
    ids=lambda value: value[:40] if isinstance(value, str) else "",
)
def test_a_fault_in_one_cell_leaves_all_as_it_is(content: bytes, message: str, job: Path, capsys: Any) -> None:
    ended = take(capsys, job, content)
    assert ended.code == 2, ended
    assert message in ended.err
    assert len(ended.err.splitlines()) == 1
    assert job.read_text("utf-8") == JOB
    assert sorted(file.name for file in job.parent.iterdir()) == ["project.yaml", "t.xlsx"]


def test_a_file_of_another_kind_is_told(job: Path, capsys: Any) -> None:
    ended = run_main(capsys, "take", str(job), str(job.with_name("a.xlsx")), str(job), "--as", "openings")
    assert ended.code == 2
    assert "--as takes one table (name one file)" in ended.err
    ended = take(capsys, job, b"format: 1\n", "t.xlsx")
    assert "this is not a workbook" in ended.err
    job.with_name("t.xlsx").write_bytes(table(B))
    ended = run_main(capsys, "take", str(job), str(job.with_name("t.xlsx")))
    assert "it has no sheet Questions (a table is taken with --as openings)" in ended.err
    for name, hint in (
        ("op-openings.csv", "add --as openings"),
        ("x.csv", "add --as TABLE"),
    ):
        job.with_name(name).write_text("Mark\n", "utf-8")
        ended = run_main(capsys, "take", str(job), str(job.with_name(name)))
        assert f"this is a table, not a workbook of questions ({hint}" in ended.err


def test_items_of_a_list_stand_in_the_order_of_their_numbers_or_rows(job: Path, capsys: Any) -> None:
    rows = [[None, "gloss", "gloss meter"], ["none", None, None]]
    fault = "criteria row 3: the row says none beside others (delete one or the other)"
    criteria = table(*rows, head=["No.", "name", "instrument"], name="criteria")
    assert fault in take(capsys, job, criteria, kind="criteria").err
    rows = [["2", "gloss", "gloss meter"], [None, "color", "by eye"], [1.0, "flatness", "straightedge"]]
    criteria = table(*rows, head=["No.", "name", "instrument"], name="criteria")
    assert take(capsys, job, criteria, kind="mockup.criteria").code == 0
    names = re.findall(r"- name: (\w+)\n +instrument: ([\w ]+)", job.read_text("utf-8"))
    assert names == [("flatness", "straightedge"), ("gloss", "gloss meter"), ("color", "by eye")]
    ended = take(capsys, job, table(["5", "look"], head=["No.", "name"], name="criteria"), kind="criteria")
    assert "criteria row 2: number 5 follows no number 4 (number the rows in the order of the list)" in ended.err
    ended = take(capsys, job, table(["x", "look"], head=["No.", "name"], name="criteria"), kind="criteria")
    assert "criteria!A2: 'x' is no place in a list" in ended.err
    ended = take(
        capsys, job, table(["1", "gloss"], ["4", "look"], head=["No.", "name"], name="criteria"), kind="criteria"
    )
    assert (ended.code, "mockup.criteria.0.name" in ended.out) == (1, True)
    assert "  mockup.criteria.3: name" in ended.out


def test_none_says_that_a_list_is_empty_and_stands_against_members(job: Path, capsys: Any) -> None:
    head = ["Mark", "Elevation", "kind"]
    ended = take(capsys, job, table(["none", "E2", None], head=head))
    assert (ended.code, "  elevations.E2.openings: {}" in ended.out) == (0, True)
    assert "openings: {}" in job.read_text("utf-8")
    assert take(capsys, job, table(["None", "E2", None], head=head)).out.startswith("Nothing was added; 1 value")
    ended = take(capsys, job, table(["none", "E1", None], head=head))
    assert (ended.code, "project.yaml:9" in ended.out, "A: {kind: window" in job.read_text("utf-8")) == (1, True, True)
    ended = take(capsys, job, table(["none", "E2", "window"], head=head))
    assert "openings row 2: the row says none and has values (give it a mark)" in ended.err
    ended = take(capsys, job, table(["none", None], head=["No.", "name"]), kind="criteria")
    assert "mockup:\n  criteria: []" in job.read_text("utf-8")


def test_layers_of_walls_and_values_by_step_name_what_they_belong_to(job: Path, capsys: Any) -> None:
    rows = [["W1", "Gypsum board", "R-0.5"], ["W1", "Studs", None]]
    layers = table(*rows, head=["Wall", "name", "r_value"], name="walls.layers")
    ended = take(capsys, job, layers, kind="walls.layers")
    assert ended.out.splitlines() == [
        "2 members, 3 values",
        "  walls.W1.layers.0: name, r_value",
        "  walls.W1.layers.1: name",
    ]
    ended = take(capsys, job, table(["W9", "Studs"], head=["Wall", "name"]), kind="mesh.layers")
    assert "'name' is no column of mesh.layers" in ended.err
    crews = table(["red", "primer"], head=["Mark", "steps"], name="crews")
    assert take(capsys, job, crews, kind="crews").code == 0
    rates = table(["primer", "red", "90 ft2/h"], head=["Mark", "Crew", "value"], name="rates")
    ended = take(capsys, job, rates, kind="rates")
    assert "  crews.red.rates.primer: 90 ft2/h" in ended.out, ended
    ended = take(capsys, job, table(["paint", "red", "9 ft2"], head=["Mark", "Crew", "value"]), kind="rates")
    assert "'paint' is not known here" in ended.err


def test_a_table_of_ask_is_taken_by_its_own_name_with_others_and_who_filled_it_in(job: Path, capsys: Any) -> None:
    folder = job.parent / "sheets"
    ended = run_main(capsys, "ask", str(job), "--out", str(folder), "--for", "mockup")
    assert f"specgen take {job} {folder}/applicator.xlsx" in ended.err

    rows = {"colors": {"mark": "C1", "number": "7", "lrv": "60"}, "walls.layers": {"wall": "W1", "name": "Studs"}}

    def fill(book: Any) -> None:
        for name, values in rows.items():
            names = [cell.value for cell in book[name][2]]
            for field, value in values.items():
                book[name].cell(3, names.index(field) + 1).value = value
        for label, value in book["Project"].iter_rows(min_row=3, max_col=2):
            value.value = {"Answered by": "R. Ash", "Date": "2027-02-01"}.get(label.value, value.value)

    file = folder / "architect.xlsx"
    file.write_bytes(filled(file.read_bytes(), fill))
    ended = run_main(capsys, "take", str(job), str(file))
    assert ended.code == 0, ended
    assert "architect.xlsx, colors: 1 member, 2 values of R. Ash, " in ended.out
    assert "architect.xlsx, walls.layers: 1 member, 1 value of R. Ash, " in ended.out
    text = job.read_text("utf-8")
    assert "fields:\n      - colors.C1.number = 7\n      - colors.C1.lrv = 60\n" in text
    assert "sheet: architect.xlsx" in text
    ended = run_main(capsys, "take", str(job), str(file))
    assert (ended.code, ended.out) == (0, "Nothing was added; 8 values in the project already.")
    other = filled(file.read_bytes(), lambda book: book["Project"].__setitem__("B3", "Another job"))
    assert "the sheet is of another project" in take_by_name(capsys, job, other).err
    job.with_name("t.csv").write_text("Mark,number\nC2,8\n", "utf-8")
    ended = run_main(capsys, "take", str(job), str(job.with_name("t.csv")))
    assert "this is a table, not a workbook of questions (add --as TABLE; specgen take --help names them)" in ended.err


def take_by_name(capsys: Any, job: Path, content: bytes) -> Ended:
    job.with_name("o.xlsx").write_bytes(content)
    return run_main(capsys, "take", str(job), str(job.with_name("o.xlsx")))


def test_joints_people_and_attachments_come_from_tables_of_their_own(job: Path, capsys: Any) -> None:
    joints = table(["J1", "E1", "floor_line", "3/4 in"], head=["Mark", "elevation", "kind", "width"], name="joints")
    assert take(capsys, job, joints, kind="joints").code == 0
    papers = table(["A1", "letter", "board; mesh", "yes"], head=["mark", "kind", "covers", "signed"], name="a")
    assert take(capsys, job, papers, kind="attachments").code == 0
    people = table(["P1", "D. Amaya", "sprayer", "A1"], head=["Mark", "Name", "Role", "certificates"], name="b")
    assert take(capsys, job, people, kind="people").code == 0
    text = job.read_text("utf-8")
    for line in ("width: 3/4 in", "covers: [board, mesh]", "name: D. Amaya", "certificates: [A1]"):
        assert line in text


def test_a_blank_table_filled_in_and_saved_by_a_spreadsheet_program_is_taken(tmp_path: Path, capsys: Any) -> None:
    for file in (EXAMPLES / "clean").glob("*.yaml"):
        (tmp_path / file.name).write_bytes(file.read_bytes())
    job = tmp_path / "project.yaml"
    words = ("--table", "openings", "--out", str(tmp_path / "blank"), "--formats", "xlsx")
    assert run_main(capsys, "ask", str(job), *words).code == 0

    def fill(book: Any) -> None:
        page = book["openings"]
        row = next(row for row in range(3, 99) if not page.cell(row, 1).value)
        for column, value in enumerate(["NEW", "E1", "vent", 0.5, "0.5 ft", "1", "6 in", "no", "n/a"], 1):
            page.cell(row, column).value = value

    book = saved_by_calc(tmp_path, filled((tmp_path / "blank" / "openings.xlsx").read_bytes(), fill))
    ended = take(capsys, job, book)
    assert ended.code == 0, ended
    assert "1 member, 6 values" in ended.out
    assert "  elevations.E1.openings.NEW: kind, x, y, width, height, sill_pan" in ended.out
    assert "taken as 0.5 ft, in the unit that was asked for" in ended.out
