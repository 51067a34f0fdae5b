"""`build`: what it writes, refuses and leaves alone."""

import hashlib
import io
import json
import re
import zipfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import docx
import pytest

from specgen import pipeline
from specgen.model.finding import Severity
from specgen.terminal.report_data import count_standing
from tests.commands.support import STOPPED, SUBMITTAL, checked
from tests.running import run_main
from tests.support import ROOT, SMALL, case_of, merged, written


@pytest.mark.parametrize(
    ("more", "hint"),
    [
        (("--formats", "docs"), "did you mean docx?"),
        (("--only", "D8"), "did you mean D08?"),
        (("--formats", "docx,pdff"), "no format 'pdff'"),
    ],
)
def test_a_mistyped_choice_of_build_gets_its_near_miss_and_writes_nothing(
    more: Any, hint: str, tmp_path: Path, capsys: Any
) -> None:
    done = run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), *more)
    assert done.code == 2
    assert hint in done.err
    assert not (tmp_path / "out").exists()


def test_build_refuses_while_stops_stand_and_leaves_nothing_behind(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, STOPPED)
    done = run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"))
    assert done.code == 2
    assert "nothing was written: 1 stop" in done.err
    assert [p.name for p in tmp_path.iterdir()] == ["project.yaml"]


def test_a_package_stands_untouched_where_its_project_is_now_stopped(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    assert run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(out)).code == 0
    before = {f.name: f.read_bytes() for f in out.iterdir()}
    assert run_main(capsys, "build", str(written(tmp_path, STOPPED)), "--out", str(out)).code == 2
    assert {f.name: f.read_bytes() for f in out.iterdir()} == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out", "project.yaml"]


def test_a_second_build_takes_the_place_of_the_whole_package(tmp_path: Path, capsys: Any) -> None:
    file, out = str(written(tmp_path, SMALL)), tmp_path / "out"
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt,html").code == 0
    assert len(list(out.iterdir())) > 3
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt", "--only", "D05").code == 0
    assert sorted(p.name for p in out.iterdir()) == ["D05-warnings-and-limitations.txt", "manifest.json"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out", "project.yaml"]


def test_the_manifest_lists_every_file_with_its_digest(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(out), "--formats", "txt")
    manifest = json.loads((out / "manifest.json").read_text("utf-8"))
    digests = {f.name: hashlib.sha256(f.read_bytes()).hexdigest() for f in out.iterdir() if f.suffix == ".txt"}
    assert manifest["files"] == digests
    assert (manifest["project"], manifest["purpose"], manifest["draft"]) == ("Trial", "design_draft", True)


def test_a_draft_is_written_in_spite_of_stops_and_says_so(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "out"
    done = run_main(
        capsys, "build", str(written(tmp_path, STOPPED)), "--out", str(out), "--draft", "--formats", "docx,html,txt"
    )
    assert done.code == 1
    for file in out.glob("*.html"):
        assert "<strong>Draft.</strong>" in file.read_text("utf-8")
    for file in out.glob("*.docx"):
        head = docx.Document(str(file)).sections[0].header._element.xpath("string(.)")
        assert "DRAFT, NOT FOR SUBMISSION" in head
    for file in out.glob("*.txt"):
        where = "listed below" if file.name.startswith("D05") else "see D05"
        asked = "No review requested. Answers to D19 and the figures in D05 requested."
        head = asked if file.name.startswith(("D00", "D19")) else "For information; not submitted for review."
        if file.name.startswith("D02"):
            head = "For the decision on the walls; not submitted for review."
        if file.name.startswith("D05"):
            head = "Answers to the figures to verify requested."
        assert f"\n! Draft. {head} 1 exception that stops the work, {where}." in file.read_text("utf-8")


def test_an_owed_point_stops_a_submittal_and_not_a_draft(tmp_path: Path, capsys: Any) -> None:
    submittal = merged(SMALL, {"package": {"purpose": "mockup_submittal"}})
    assert run_main(capsys, "check", str(written(tmp_path, submittal))).code == 1
    assert run_main(capsys, "build", str(tmp_path / "project.yaml"), "--out", str(tmp_path / "out")).code == 2
    assert run_main(capsys, "check", str(written(tmp_path, SMALL))).code == 0


@pytest.mark.parametrize(
    ("data", "stops"),
    [
        (STOPPED, ["1 exception that stops the work"]),
        (merged(STOPPED, SUBMITTAL), ["1 exception that stops the work"]),
        # That none stops it so far is no comfort while rules are not evaluated, and is said on neither.
        (merged(SMALL, SUBMITTAL), []),
        (SMALL, []),
    ],
)
def test_a_draft_counts_on_the_terminal_what_its_answer_and_its_open_items_count(
    data: Any, stops: list[str], tmp_path: Path, capsys: Any
) -> None:
    file, out = str(written(tmp_path, data)), tmp_path / "out"
    done = run_main(capsys, "build", file, "--out", str(out), "--draft", "--formats", "txt")
    *told, marked = done.err.splitlines()[-1].removeprefix("specgen: ").split("; ")
    *standing, documents, rules, owed = told
    assert marked == "every page is marked as a draft" and standing == stops
    listed = next(out.glob("D19*.txt")).read_text("utf-8")
    (values,) = re.findall(r"Values asked for: (\d+)\.", listed)
    assert owed == f"{values} values asked for in D19"
    for name in ("D00", "D19"):
        page = next(out.glob(f"{name}*.txt")).read_text("utf-8")
        (banner,) = (line for line in page.splitlines() if line.startswith("! "))
        assert ("exception that stops" in banner) == bool(stops) and all(one in banner for one in stops)
        assert f" {documents}, " in banner and f" {rules}, see D02." in banner


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (STOPPED, "1 stop"),
        (merged(STOPPED, SUBMITTAL), "1 stop, {wanting} for want of a document, and {open} open items"),
        (merged(SMALL, SUBMITTAL), "{wanting} for want of a document and {open} open items"),
        (SMALL, ""),
    ],
)
def test_a_build_refuses_what_check_counts_against_the_package(
    data: Any, told: str, tmp_path: Path, capsys: Any
) -> None:
    counts = checked(capsys, tmp_path, data)["counts"]
    wanting = counts["stop"] - (data["walls"]["W1"]["attachment"]["method"] == "mechanical")
    standing = told.format(wanting=f"{wanting} stop{'s' * (wanting > 1)}", open=counts["open"])
    file, out = str(tmp_path / "project.yaml"), str(tmp_path / "out")
    refused = run_main(capsys, "build", file, "--out", out)
    assert refused.code == (2 if told else 0)
    assert (f"nothing was written: {standing} against this package" in refused.err) == bool(told)
    head = " ".join(run_main(capsys, "check", file).out.partition("\nTrial")[0].split())
    none = "; no exception that stops the work" if told.startswith("{wanting}") else ""
    assert head == (f"Package: stopped by {standing}{none}" if told else "Package: ready to build as a draft")


@pytest.mark.parametrize(
    ("stops", "items", "told"),
    [(0, 2, "2 open items"), (0, 1, "1 open item"), (1, 1, "1 stop and 1 open item")],
)
def test_what_stands_is_counted_in_words(stops: int, items: int, told: str, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}} | SUBMITTAL).judgment
    found = judgment.of(Severity.STOP)[:stops]
    assert count_standing(replace(judgment, findings=found, open_items=judgment.open_items[:items])) == told


@pytest.mark.no_cover
def test_two_builds_give_the_same_bytes_and_the_second_takes_the_place_of_the_first(
    tmp_path: Path, capsys: Any
) -> None:
    clean = str(ROOT / "project_examples" / "clean" / "project.yaml")
    made = []
    for out in ("one", "two", "two"):
        assert run_main(capsys, "build", clean, "--out", str(tmp_path / out)).code == 0
        made.append({f.name: f.read_bytes() for f in (tmp_path / out).iterdir()})
    assert made[0] == made[1] == made[2]
    assert json.loads(made[0]["manifest.json"])["stops"] == []


def test_a_folder_of_the_user_and_an_edited_file_are_left_alone(tmp_path: Path, capsys: Any) -> None:
    file, out = str(written(tmp_path, SMALL)), tmp_path / "out"
    out.mkdir()
    (out / "mine.txt").write_text("mine")
    assert run_main(capsys, "build", file, "--out", str(out)).code == 2
    (out / "mine.txt").unlink()
    assert run_main(capsys, "build", file, "--out", str(out), "--only", "D05").code == 0
    page = next(out.glob("*.html"))
    page.write_text("edited")
    done = run_main(capsys, "build", file, "--out", str(out))
    assert done.code == 2
    assert f"edited by hand since it was written: {page.name}" in done.err
    assert page.read_text() == "edited"


def test_only_writes_that_document(tmp_path: Path, capsys: Any) -> None:
    run_main(
        capsys,
        "build",
        str(written(tmp_path, SMALL)),
        "--out",
        str(tmp_path / "out"),
        "--only",
        "d10",
        "--formats",
        "txt",
    )
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == ["D10-mockup-acceptance-form.txt", "manifest.json"]


def test_a_word_file_of_a_build_is_a_whole_zip(tmp_path: Path, capsys: Any) -> None:
    run_main(capsys, "build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), "--only", "D05")
    assert zipfile.ZipFile(io.BytesIO(next((tmp_path / "out").glob("*.docx")).read_bytes())).testzip() is None


def test_the_open_items_are_written_while_stops_stand_and_list_them(tmp_path: Path, capsys: Any) -> None:
    wall = {"walls": {"W1": {"attachment": {"method": "mechanical"}}}}
    change = merged(wall, {"package": {"purpose": "mockup_submittal"}})
    file, out = str(written(tmp_path, merged(SMALL, change))), tmp_path / "out"
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt").code == 2
    assert (
        run_main(capsys, "build", file, "--out", str(out), "--formats", "txt", "--only", "D19", "--only", "D02").code
        == 2
    )
    assert not out.exists()
    assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt", "--only", "d19").code == 1
    (page,) = (made.read_text("utf-8") for made in out.glob("*.txt"))
    stops = page.split("\nSTOPS\n")[1].split("\n\n")[0]
    assert "ATT-01a (W1)" in stops and "Draft" not in page


def test_a_format_named_twice_is_written_once(tmp_path: Path, capsys: Any) -> None:
    words = ("build", str(written(tmp_path, SMALL)), "--only", "D08", "--out", str(tmp_path / "out"))
    done = run_main(capsys, *words, "--formats", "txt,html,txt")
    assert (done.code, done.err.splitlines()[0]) == (0, f"specgen: wrote 3 files to {tmp_path / 'out'}")
    assert len(list((tmp_path / "out").glob("D08*"))) == 2


def test_a_package_without_a_file_is_refused(tmp_path: Path, capsys: Any) -> None:
    words = ("build", str(written(tmp_path, SMALL)), "--only", "D08", "--out", str(tmp_path / "out"))
    done = run_main(capsys, *words, "--formats", "csv")
    says = "nothing was written: no document asked for is written as csv (name another format, or another document)"
    assert (done.code, done.err) == (2, f"specgen: {says}\n")
    assert not (tmp_path / "out").exists()


def test_files_of_an_earlier_package_that_go_are_counted(tmp_path: Path, capsys: Any) -> None:
    words = ("build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), "--formats", "txt")
    assert "removed" not in run_main(capsys, *words, "--only", "D08", "--only", "D09", "--only", "D10").err
    done = run_main(capsys, *words, "--only", "D08")
    names = "D09-mockup-plan.txt, D10-mockup-acceptance-form.txt"
    told = f"specgen: removed from {tmp_path / 'out'}: 2 files of the earlier package ({names})\n"
    assert told in done.err
    assert "removed" not in run_main(capsys, *words, "--only", "D08").err


def test_documents_are_named_with_commas_or_one_by_one(tmp_path: Path, capsys: Any) -> None:
    file, out = str(written(tmp_path, SMALL)), tmp_path / "out"
    for words in (("--only", "D08,d10"), ("--only", "D08", "--only", "D10"), ("--only", "D10, D08,D10")):
        assert run_main(capsys, "build", file, "--out", str(out), "--formats", "txt", *words).code == 0
        assert sorted(one.name[:3] for one in out.glob("*.txt")) == ["D08", "D10"]
    done = run_main(capsys, "build", file, "--out", str(out), "--only", "D08,D1")
    assert (done.code, "there is no document 'D1' (did you mean D01?)" in done.err) == (2, True)


def test_a_package_in_place_of_another_says_what_it_replaced(tmp_path: Path, capsys: Any) -> None:
    words = ("build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "out"), "--only", "D08")
    assert "replaced" not in run_main(capsys, *words, "--only", "D10", "--formats", "txt,html").err
    done = run_main(capsys, *words, "--formats", "txt")
    # Two documents in two formats and the page that leads to them are one package of two documents.
    assert "specgen: replaced a package of 2 documents\n" in done.err
    assert f"specgen: wrote 1 file to {tmp_path / 'out'}\n" in done.err
    assert "specgen: replaced a package of 1 document\n" in run_main(capsys, *words, "--formats", "txt").err
    assert run_main(capsys, *words, "--formats", "txt", "--quiet").err == ""


@pytest.mark.parametrize(
    ("out", "told"),
    [
        ("work", "the folder holds files that specgen did not write: notes.txt"),
        ("work/notes.txt", "a file stands where the package should go"),
        ("work/notes.txt/out", "a file stands where a folder should be"),
        ("/", "the folder is a drive of its own"),
    ],
)
def test_a_folder_that_cannot_serve_is_told_before_the_work(
    out: str, told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    file = str(written(tmp_path, SMALL))
    (tmp_path / "work").mkdir()
    (tmp_path / "work" / "notes.txt").write_text("mine", "utf-8")

    def refuse_work(*given: Any) -> None:
        raise AssertionError("the project was read all the same")

    monkeypatch.setattr(pipeline, "read_project", refuse_work)
    for verb in ("build", "layout"):
        done = run_main(capsys, verb, file, "--out", str(tmp_path / out))
        assert (done.code, done.out) == (2, "")
        assert told in done.err
    assert (tmp_path / "work" / "notes.txt").read_text("utf-8") == "mine"
