"""`build --since`: what differs from an issued package is marked in every form. All of it is behavior of ours."""

import errno
import json
import os
import re
import zipfile
from pathlib import Path
from typing import Any

import pypdf
import pytest

from tests.commands.test_compare import package
from tests.formats.docx.validator import findings
from tests.output.manifests import manifest_of
from tests.output.test_disk import failing
from tests.running import Ended, run_main
from tests.support import SMALL, merged, written

OLD = merged(SMALL, {"package": {"revision": 0, "date": "2027-03-01"}})
NEW = merged(
    SMALL,
    {
        "package": {"revision": 1, "date": "2027-04-05"},
        "walls": {"W1": {"attachment": {"method": "mechanical"}}, "W2": SMALL["walls"]["W1"]},
    },
)
D02 = "D02-compatibility-and-compliance"


def built(capsys: Any, folder: Path, since: Path, data: Any = NEW, *more: str) -> Ended:
    file = written(folder, data, "new.yaml")
    words = ("--out", str(folder / "new"), "--since", str(since), "--draft", "--formats", "docx,html,txt", *more)
    return run_main(capsys, "build", str(file), *words)


def test_changed_blocks_are_marked_in_every_form_and_no_other(tmp_path: Path, capsys: Any) -> None:
    done = built(capsys, tmp_path, package(capsys, tmp_path, OLD))
    assert done.code == 1
    new = tmp_path / "new"
    text = (new / f"{D02}.txt").read_text("utf-8")
    marked = [line for line in text.splitlines() if line.startswith("|| ")]
    assert any(line.startswith("|| W2 ") for line in marked)
    assert "Double line: Changed since revision 0" in text
    page = (new / f"{D02}.html").read_text("utf-8")
    with zipfile.ZipFile(new / f"{D02}.docx") as file:
        word = file.read("word/document.xml").decode()
    said = page.count('<span class="unseen">Changed. </span>')
    assert said > 0
    assert page.count('class="changed') == said
    assert '<w:left w:val="double" w:sz="12"' in word
    # The stop is new, and the limits of the finish are what they were.
    headings = re.findall(r"<h2[^>]*>.*?</h2>", (new / "D05-warnings-and-limitations.html").read_text("utf-8"))
    shown = {re.sub("<.*?>", "", heading): "changed" in heading for heading in headings}
    assert (shown["Changed. Exceptions"], shown["Limits of the finish"]) == (True, False)


def test_the_marked_word_files_are_valid(tmp_path: Path, capsys: Any) -> None:
    built(capsys, tmp_path, package(capsys, tmp_path, OLD))
    files = sorted((tmp_path / "new").glob("*.docx"))
    assert len(files) > 3
    assert {file.name: told for file in files if (told := findings(file))} == {}


def test_a_set_that_is_compared_holds_its_change_sheet_and_no_other_set_does(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD)
    assert not list(issued.glob("D20*"))
    built(capsys, tmp_path, issued)
    text = (tmp_path / "new" / "D20-changes.txt").read_text("utf-8")
    assert "Changes from revision 0 of March 1, 2027 to revision 1 of April 5, 2027." in text
    assert "In the documents listed, a double line at the left marks what changed." in text
    assert "ATT-01a | W1 | Not found | Stop | " in text
    # The sheet tells of the others, and so is not compared itself.
    assert "D20" not in manifest_of(tmp_path / "new")["documents"]


def test_nothing_is_marked_where_nothing_differs_and_that_is_told(tmp_path: Path, capsys: Any) -> None:
    done = built(capsys, tmp_path, package(capsys, tmp_path, OLD), OLD)
    assert "revision 0 was issued already: raise package.revision" in done.err
    assert "no block of the documents differs from those issued: none is marked" in done.err
    assert not any("|| " in file.read_text("utf-8") for file in (tmp_path / "new").glob("*.txt"))


def test_the_package_that_was_issued_is_never_overwritten(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD, "--only", "D02")
    before = {file.name: file.read_bytes() for file in issued.iterdir()}
    file = written(tmp_path, NEW)
    same = f"{issued}/../issued"
    done = run_main(capsys, "build", str(file), "--out", same, "--since", str(issued), "--draft", "--formats", "txt")
    says = "the package would take the place of the one that was issued (give another folder for --out)"
    assert (done.code, done.err) == (2, f"specgen: {same}: {says}\n")
    assert {file.name: file.read_bytes() for file in issued.iterdir()} == before


def test_the_change_sheet_by_itself_tells_of_the_whole_package(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD)
    built(capsys, tmp_path, issued, NEW, "--formats", "txt")
    whole = (tmp_path / "new" / "D20-changes.txt").read_text("utf-8")
    done = built(capsys, tmp_path, issued, NEW, "--only", "D20", "--formats", "txt")
    assert "none is marked" not in done.err
    assert sorted(file.name for file in (tmp_path / "new").iterdir()) == ["D20-changes.txt", "manifest.json"]
    assert (tmp_path / "new" / "D20-changes.txt").read_text("utf-8").split("DOCUMENTS")[1] == whole.split("DOCUMENTS")[
        1
    ]
    manifest = manifest_of(tmp_path / "new")
    assert (manifest["whole"], manifest["documents"]) == (False, {})


def test_the_change_sheet_is_written_in_every_format_and_named_by_the_transmittal(tmp_path: Path, capsys: Any) -> None:
    built(capsys, tmp_path, package(capsys, tmp_path, OLD), NEW, "--formats", "docx,html,txt,pdf")
    names = {file.name for file in (tmp_path / "new").iterdir()}
    assert {"D20-changes.docx", "D20-changes.html", "D20-changes.txt"} <= names
    [whole] = (tmp_path / "new").glob("submittal*.pdf")
    assert "Changes from revision 0 of March 1, 2027" in " ".join(
        " ".join(page.extract_text() for page in pypdf.PdfReader(whole).pages).split()
    )


def test_a_package_of_another_project_and_one_that_was_edited_are_told(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, merged(OLD, {"project": {"name": "Other"}}), "--only", "D02")
    (issued / f"{D02}.txt").write_text("mine")
    done = built(capsys, tmp_path, issued, NEW, "--only", "D02", "--formats", "txt")
    assert f"specgen: {issued} is the package of Other, and this project is {NEW['project']['name']}\n" in done.err
    told = f"specgen: {issued} is not as it was written: specgen check --package {issued} lists what differs\n"
    assert told in done.err
    done = built(capsys, tmp_path, package(capsys, tmp_path, OLD, "--only", "D02", name="own"), NEW, "--only", "D02")
    assert "is the package of" not in done.err
    assert "not as it was written" not in done.err


def test_the_change_sheet_is_refused_where_nothing_is_compared(tmp_path: Path, capsys: Any) -> None:
    words = ("build", str(written(tmp_path, NEW)), "--out", str(tmp_path / "new"), "--only", "d20", "--draft")
    done = run_main(capsys, *words)
    says = "specgen: D20 tells what changed since a package that was issued (add --since PACKAGE)\n"
    assert (done.code, done.err) == (2, says)


def test_one_document_alone_is_compared_with_itself(tmp_path: Path, capsys: Any) -> None:
    done = built(capsys, tmp_path, package(capsys, tmp_path, OLD), NEW, "--only", "D02", "--formats", "txt")
    assert done.code == 1
    assert sorted(file.name for file in (tmp_path / "new").iterdir()) == [f"{D02}.txt", "manifest.json"]
    assert "|| " in (tmp_path / "new" / f"{D02}.txt").read_text("utf-8")


def test_the_same_input_gives_the_same_bytes(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD)
    made = []
    for _ in range(2):
        built(capsys, tmp_path, issued)
        made.append({file.name: file.read_bytes() for file in (tmp_path / "new").iterdir()})
    assert made[0] == made[1]


def test_a_finding_cleared_of_one_subject_tells_of_that_alone(tmp_path: Path, capsys: Any) -> None:
    walls = {
        mark: merged(SMALL["walls"]["W1"], {"insulation": {"thickness": inches}})
        for mark, inches in (("W1", "1/2 in"), ("W2", "3/8 in"))
    }
    mended = walls | {"W1": merged(walls["W1"], {"insulation": {"thickness": "2 in"}})}
    joint = {"aesthetic_joint": {"depth": "1/4 in"}}
    issued = package(capsys, tmp_path, merged(OLD, joint | {"walls": walls}))
    built(capsys, tmp_path, issued, merged(OLD, joint | {"package": {"revision": 1}, "walls": mended}))
    text = (tmp_path / "new" / "D20-changes.txt").read_text("utf-8")
    (cleared,) = (line for line in text.splitlines() if "INS-04b | W1 | " in line)
    assert "Cleared" in cleared and "1/2 in" in cleared and "3/8 in" not in cleared


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda out: (out / "manifest.json").unlink(), "the folder holds no package"),
        (lambda out: (out / "manifest.json").write_text("{}"), "this is no manifest that specgen wrote"),
        (
            lambda out: (out / "manifest.json").write_text(json.dumps(manifest_of(out))),
            "edited by hand since the package was written",
        ),
    ],
)
def test_what_is_no_package_is_refused_and_nothing_is_written(
    spoil: Any, says: str, tmp_path: Path, capsys: Any
) -> None:
    issued = package(capsys, tmp_path, OLD, "--only", "D02")
    spoil(issued)
    done = built(capsys, tmp_path, issued)
    assert done.code == 2
    assert says in done.err
    assert done.err.count("\n") == 1
    assert not (tmp_path / "new").exists()


def test_a_full_disk_leaves_the_issued_package(tmp_path: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    issued = package(capsys, tmp_path, OLD)
    before = {file.name: file.read_bytes() for file in issued.iterdir()}
    monkeypatch.setattr(os, "fsync", failing(errno.ENOSPC, 2))
    file = written(tmp_path, NEW)
    done = run_main(capsys, "build", str(file), "--out", str(issued), "--draft", "--formats", "txt")
    assert done.code == 2
    assert "No space left" in done.err
    assert {file.name: file.read_bytes() for file in issued.iterdir()} == before


def test_the_manifest_tells_what_the_package_was_made_from(tmp_path: Path, capsys: Any) -> None:
    manifest = manifest_of(package(capsys, tmp_path, NEW))
    keys = (
        "format specgen project purpose draft input stops left_out to_verify not_bound_in findings told_apart "
        "revision date whole walls fields limits results times open owed documents files manifest"
    )
    assert list(manifest) == keys.split()
    assert [(one["use"], one["file"]) for one in manifest["input"]] == [("project", "issued.yaml")]
    assert re.fullmatch("[0-9a-f]{64}", manifest["input"][0]["sha256"])
    assert manifest["fields"]["walls.W1.attachment.method"] == "mechanical"
    assert [(one["rule"], one["clause"], one["severity"]) for one in manifest["findings"]][:1] == [
        ("ATT-01", "a", "stop")
    ]
    told = json.loads(run_main(capsys, "check", str(tmp_path / "issued.yaml"), "--format", "json").out)
    # Beside these a check tells the place of each subject, for editors.
    assert all(one.pop("places") for one in told["findings"])
    assert manifest["findings"] == told["findings"]
    assert all(set(limit) == {"ip", "si", "source"} for limit in manifest["limits"].values())
