"""`ask`: what it writes, what it says, and what it never writes over."""

from pathlib import Path
from typing import Any

import openpyxl
import pytest

from specgen.asking import files
from tests.documents.support import standing
from tests.running import Ended, run_main, words_of_build
from tests.support import EXAMPLES, SMALL, written

CLEAN = EXAMPLES / "clean" / "project.yaml"
# What the architect is asked, where a contractor is named.
BY_WAY_OF = "general-contractor.xlsx"


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The complete example with two values of two parties taken out."""
    for file in CLEAN.parent.glob("*.yaml"):
        (tmp_path / file.name).write_text(file.read_text("utf-8"), "utf-8")
    text = (tmp_path / "project.yaml").read_text("utf-8")
    for line in ("  local_fasteners_required: no\n", "  destructive_area_apart: yes\n"):
        assert line in text, line
        text = text.replace(line, "")
    return written(tmp_path, text)


def ask(capsys: Any, project: Path, *more: str) -> Ended:
    return run_main(capsys, "ask", str(project), "--out", str(project.parent / "asked"), *more)


def names_in(folder: Path) -> list[str]:
    return sorted(file.name for file in folder.iterdir())


def test_each_party_gets_a_document_and_a_workbook(project: Path, capsys: Any) -> None:
    done = ask(capsys, project)
    assert (done.code, done.out) == (0, "")
    assert done.err.splitlines() == [
        "specgen: Architect: 1 question, by March 1, 2027",
        "specgen: Applicator: 1 question, by March 1, 2027",
        f"specgen: wrote 4 files to {project.parent / 'asked'}",
        f"specgen: next, when it comes back: specgen take {project} {project.parent / 'asked' / BY_WAY_OF}",
    ]
    assert names_in(project.parent / "asked") == [
        "applicator.docx",
        "applicator.xlsx",
        "architect.docx",
        BY_WAY_OF,
        "manifest.json",
    ]


def test_one_party_one_format_one_stage(project: Path, capsys: Any) -> None:
    done = ask(capsys, project, "--party", "Architect", "--formats", "docx", "--for", "verdict")
    assert done.code == 0
    assert "specgen take" not in done.err
    assert names_in(project.parent / "asked") == ["architect.docx", "manifest.json"]


def test_what_is_left_to_later_stages_is_counted(tmp_path: Path, capsys: Any) -> None:
    done = ask(capsys, written(tmp_path, SMALL))
    assert "questions; --for mockup asks the next of them\n" in done.err
    assert "--for" not in ask(capsys, written(tmp_path, SMALL), "--for", "closeout").err


def test_the_same_project_gives_the_same_bytes(project: Path, capsys: Any) -> None:
    ask(capsys, project)
    before = standing(project.parent / "asked")
    assert ask(capsys, project).code == 0
    assert {name: told[2] for name, told in standing(project.parent / "asked").items()} == {
        name: told[2] for name, told in before.items()
    }


def test_a_project_that_lacks_nothing_writes_nothing(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "asked"
    done = run_main(capsys, "ask", str(CLEAN), "--out", str(out))
    assert done == (0, "", "specgen: nothing is asked up to the stage work; nothing was written\n")
    assert not out.exists()


def test_a_party_that_owes_nothing_is_told(project: Path, capsys: Any) -> None:
    done = ask(capsys, project, "--party", "sealant_source")
    assert done.err == (
        "specgen: nothing is asked of the sealant manufacturer up to the stage work; nothing was written\n"
    )
    assert not (project.parent / "asked").exists()


def test_a_sheet_that_was_filled_in_is_never_written_over(project: Path, capsys: Any) -> None:
    ask(capsys, project)
    file = project.parent / "asked" / BY_WAY_OF
    book = openpyxl.load_workbook(file)
    book["Questions"]["H4"] = "no"
    book.save(file)
    before = standing(project.parent / "asked")
    for more in ((), ("--party", "applicator"), ("--table", "openings")):
        done = ask(capsys, project, *more)
        assert done.code == 2
        assert "edited by hand since it was written: general-contractor.xlsx (move it to keep it" in done.err
        assert standing(project.parent / "asked") == before


def test_a_sheet_that_came_back_beside_the_others_stays(project: Path, capsys: Any) -> None:
    ask(capsys, project)
    (project.parent / "asked" / "architect (2).xlsx").write_bytes(b"from a letter")
    before = standing(project.parent / "asked")
    done = ask(capsys, project)
    assert (done.code, standing(project.parent / "asked")) == (2, before)
    assert "files that specgen did not write: architect (2).xlsx" in done.err


def test_sheets_are_never_written_in_place_of_a_package(project: Path, capsys: Any) -> None:
    run_main(capsys, *words_of_build(project, project.parent / "asked"), "--draft")
    before = standing(project.parent / "asked")
    done = ask(capsys, project)
    assert (done.code, standing(project.parent / "asked")) == (2, before)
    assert done.err.endswith("asked: the folder holds a package (give a folder of its own)\n")


def test_one_party_or_table_is_added_to_what_was_asked(project: Path, capsys: Any) -> None:
    ask(capsys, project, "--party", "applicator")
    ask(capsys, project, "--party", "architect", "--formats", "xlsx")
    before = (project.parent / "asked" / "applicator.xlsx").read_bytes()
    done = ask(capsys, project, "--table", "joints")
    assert "wrote 1 file" in done.err and "removed" not in done.err
    names = ["applicator.docx", "applicator.xlsx", "architect.xlsx", "joints.xlsx", "manifest.json"]
    assert names_in(project.parent / "asked") == names
    assert (project.parent / "asked" / "applicator.xlsx").read_bytes() == before
    assert run_main(capsys, "check", "--package", str(project.parent / "asked")).code == 0


def test_sheets_that_are_asked_no_more_are_told(project: Path, capsys: Any) -> None:
    ask(capsys, project)
    written(project.parent, CLEAN.read_text("utf-8").replace("  local_fasteners_required: no\n", ""))
    done = ask(capsys, project)
    assert "2 files of the earlier package (applicator.docx, applicator.xlsx)" in done.err


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (("--party", "archtect"), "there is no party 'archtect' (did you mean architect?)"),
        (("--formats", "pdf"), "there is no format 'pdf' here (known: docx, xlsx)"),
        (("--formats", "xlsx,csv"), "there is no format 'csv' here (known: docx, xlsx)"),
        (("--table", "wals"), "there is no table 'wals' (did you mean walls?)"),
        (("--table", "joints", "--formats", "docx"), "there is no format 'docx' here (known: xlsx, csv)"),
        (
            ("--table", "joints", "--party", "owner"),
            "a table is asked of no party and for no stage (leave out --party and --for)",
        ),
    ],
)
def test_what_there_is_not_is_refused_in_one_line(project: Path, capsys: Any, more: Any, told: str) -> None:
    assert ask(capsys, project, *more) == (2, "", f"specgen: {told}\n")
    assert not (project.parent / "asked").exists()


def test_a_table_is_written_by_itself(project: Path, capsys: Any) -> None:
    done = ask(capsys, project, "--table", "openings", "--formats", "xlsx,csv")
    assert done.err.splitlines() == [
        f"specgen: wrote 2 files to {project.parent / 'asked'}",
        f"specgen: next: specgen take {project} {project.parent / 'asked' / 'openings.xlsx'}",
    ]
    assert names_in(project.parent / "asked") == ["manifest.json", "openings.csv", "openings.xlsx"]
    assert "replaced" not in ask(capsys, project, "--table", "walls.layers").err
    assert "replaced 1 earlier file" in ask(capsys, project, "--table", "walls.layers").err


def test_without_the_library_documents_alone_are_written_and_that_is_said(
    project: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    for module in ("specgen.asking.files", "specgen.commands.ask"):
        monkeypatch.setattr(f"{module}.can_write_workbooks", lambda: False)
    assert files.can_write_workbooks() is False
    done = ask(capsys, project)
    assert names_in(project.parent / "asked") == ["applicator.docx", "architect.docx", "manifest.json"]
    assert "no workbooks are written: install specgen with its extra sheets" in done.err
