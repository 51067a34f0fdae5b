"""`compare`: what it tells of two states of a project, as text and as data. All of it is behavior of ours."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.commands.support import STOPPED, SUBMITTAL
from tests.output.manifests import forge
from tests.running import Ended, run_main
from tests.support import ROOT, SMALL, merged, written
from tests.test_architecture import HEAVY, loaded_by

OLD = merged(SMALL, {"walls": {"W1": {"insulation": {"thickness": "3 in", "kind": "eps"}}}})
NEW = merged(OLD, {"walls": {"W1": {"insulation": {"thickness": "4 in"}}}})


def compared(capsys: Any, folder: Path, old: Any, new: Any, *more: str) -> Ended:
    files = (written(folder, old, "old.yaml"), written(folder, new, "new.yaml"))
    return run_main(capsys, "compare", *map(str, files), *more)


def data_of(capsys: Any, folder: Path, old: Any, new: Any) -> Any:
    return json.loads(compared(capsys, folder, old, new, "--format", "json").out)


def package(capsys: Any, folder: Path, data: Any, *more: str, name: str = "issued") -> Path:
    """The package of a project, as it was issued."""
    out = folder / name
    file = written(folder, data, f"{name}.yaml")
    done = run_main(capsys, "build", str(file), "--out", str(out), "--formats", "txt", "--draft", *more)
    assert done.code in (0, 1), done.err
    return out


def test_two_that_are_the_same_are_told_so_in_one_line(tmp_path: Path, capsys: Any) -> None:
    done = compared(capsys, tmp_path, OLD, OLD)
    assert (done.code, done.out, done.err) == (0, "Nothing changed.\n", "")


def test_a_revision_that_changes_nothing_says_so_in_one_line(tmp_path: Path, capsys: Any) -> None:
    first = merged(OLD, {"package": {"revision": 1, "date": "2027-03-01"}})
    later = merged(OLD, {"package": {"revision": 2, "date": "2027-04-05"}})
    done = compared(capsys, tmp_path, first, later)
    says = "package.revision 1 -> 2, package.date March 1, 2027 -> April 5, 2027"
    assert (done.code, done.out) == (0, f"Nothing changed but the issue: {says}.\n")


def test_a_field_is_told_in_both_systems_with_who_owes_it(tmp_path: Path, capsys: Any) -> None:
    done = compared(capsys, tmp_path, OLD, NEW)
    # 1 in is 25.4 mm exactly: NIST SP 811, appendix B.8.
    line = "  walls.W1.insulation.thickness, Board thickness: 3 in (76.2 mm) -> 4 in (102 mm) (architect)\n"
    assert done.code == 1
    assert f"Data (1)\n{line}" in done.out
    metric = merged({"package": {"units": "si"}}, {})
    done = compared(capsys, tmp_path, merged(OLD, metric), merged(NEW, metric))
    assert "Board thickness: 76.2 mm (3 in) -> 102 mm (4 in) (architect)\n" in done.out


def test_a_field_that_is_added_or_dropped_is_told_as_not_given(tmp_path: Path, capsys: Any) -> None:
    bare = merged(OLD, {"walls": {"W1": {"insulation": {"thickness": "drop"}}}})
    assert "Board thickness: not given -> 3 in (76.2 mm)" in compared(capsys, tmp_path, bare, OLD).out
    assert "Board thickness: 3 in (76.2 mm) -> not given" in compared(capsys, tmp_path, OLD, bare).out


def test_a_member_that_is_new_or_gone_is_one_line(tmp_path: Path, capsys: Any) -> None:
    more = merged(OLD, {"walls": {"W2": SMALL["walls"]["W1"]}})
    done = compared(capsys, tmp_path, OLD, more)
    assert "Data (1)\n  walls.W2: not given -> 2 values\n" in done.out
    assert "Verdicts (1)\n  W2: not given -> not yet known\n" in done.out
    assert "walls.W2: 2 values -> dropped\n" in compared(capsys, tmp_path, more, OLD).out


def test_rules_raised_and_cleared_are_told_with_clause_subject_and_severity(tmp_path: Path, capsys: Any) -> None:
    done = compared(capsys, tmp_path, SMALL, STOPPED)
    assert "\nRules raised (1)\n  ATT-01a stop, W1: " in done.out
    assert "\nVerdicts (1)\n  W1: not yet known -> no\n" in done.out
    assert "\nRules cleared (1)\n  ATT-01a stop, W1\n" in compared(capsys, tmp_path, STOPPED, SMALL).out


def test_a_result_that_moves_is_told_and_one_that_rounds_to_the_same_is_not(tmp_path: Path, capsys: Any) -> None:
    def with_joint(width: str) -> Any:
        return merged(OLD, {"joints": {"J1": {"kind": "opening_perimeter", "width": width}}})

    found = data_of(capsys, tmp_path, with_joint("3/4 in"), with_joint("1/2 in"))["results"]
    # The sealant is half as deep as the joint is wide: common practice, no source.
    moved = [one for one in found if one["calculation"] == "joint-depth"]
    assert [(one["member"], one["old"]["ip"], one["new"]["ip"]) for one in moved] == [
        ("joints.J1", "0.375 in", "0.25 in")
    ]
    assert data_of(capsys, tmp_path, with_joint("1/2 in"), with_joint("0.500001 in"))["results"] == []


def test_open_items_and_documents_that_are_newly_owed_are_told(tmp_path: Path, capsys: Any) -> None:
    found = data_of(capsys, tmp_path, SMALL, merged(SMALL, SUBMITTAL))
    number = {"path": "package.number", "label": "Number of the package", "owed_by": "applicator"}
    assert number in found["open"]["added"]
    assert found["open"]["closed"] == []
    assert found["documents_required"]["added"] != []
    back = data_of(capsys, tmp_path, merged(SMALL, SUBMITTAL), SMALL)
    assert back["open"]["closed"] == found["open"]["added"]
    assert back["documents_required"]["dropped"] == found["documents_required"]["added"]


def test_documents_whose_text_differs_are_named_with_their_articles(tmp_path: Path, capsys: Any) -> None:
    found = {one["document"]: one for one in data_of(capsys, tmp_path, SMALL, STOPPED)["documents"]}
    assert found["D05"] == {
        "document": "D05",
        "title": "Warnings and limitations",
        "kind": "changed",
        "articles": [
            {"number": "", "title": "", "changed": {"paragraph": 1}, "added": {}, "removed": {}},
            {
                "number": "",
                "title": "Exceptions",
                "changed": {},
                "added": {"part": 1, "paragraph": 1, "table": 1},
                "removed": {},
            },
            # A wall that a fastener rules out asks for no bond of its adhesive any more, nor for its figure.
            {
                "number": "",
                "title": "Verify before the decision on the walls",
                "changed": {"table": 1},
                "added": {},
                "removed": {},
            },
        ],
    }


def test_the_object_has_the_keys_that_the_help_names(tmp_path: Path, capsys: Any) -> None:
    keys = "format old new errors changed issue fields limits verdicts rules results times open documents_required"
    keys += " documents"
    data = data_of(capsys, tmp_path, OLD, NEW)
    assert list(data) == keys.split()
    assert (data["format"], data["changed"], data["errors"]) == (1, True, [])
    assert data["fields"] == [
        {
            "path": "walls.W1.insulation.thickness",
            "label": "Board thickness",
            "owed_by": "architect",
            "old": {"ip": "3 in", "si": "76.2 mm"},
            "new": {"ip": "4 in", "si": "102 mm"},
        }
    ]
    with pytest.raises(SystemExit):
        run_main(capsys, "compare", "--help")
    assert set(keys.split()) <= set(re.findall(r"\w+", capsys.readouterr().out))


def test_a_package_stands_for_the_project_it_was_made_from(tmp_path: Path, capsys: Any) -> None:
    of_files = data_of(capsys, tmp_path, STOPPED, NEW)
    issued = package(capsys, tmp_path, STOPPED)
    found = json.loads(run_main(capsys, "compare", str(issued), str(tmp_path / "new.yaml"), "--format", "json").out)
    assert found | {"old": ""} == of_files | {"old": ""}


def test_of_a_package_of_one_document_only_that_one_is_compared(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD, "--only", "D08")
    data = json.loads(run_main(capsys, "compare", str(issued), str(written(tmp_path, NEW)), "--format", "json").out)
    assert [one["document"] for one in data["documents"]] == ["D08"]


@pytest.mark.parametrize("more", [(), ("--only", "D09", "--only", "D10")])
def test_a_project_that_stands_as_it_was_issued_is_told_so(more: Any, tmp_path: Path, capsys: Any) -> None:
    """Whether the whole was issued as a draft, or some documents that a draft leaves out."""
    issued = package(capsys, tmp_path, SMALL, *more)
    done = run_main(capsys, "compare", str(issued), str(tmp_path / "issued.yaml"))
    assert (done.code, done.out, done.err) == (0, "Nothing changed.\n", "")


def test_a_set_drafted_of_a_project_without_stops_is_compared_as_a_draft(capsys: Any, tmp_path: Path) -> None:
    file = ROOT / "project_examples" / "clean" / "project.yaml"
    run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"), "--formats", "txt", "--draft")
    assert run_main(capsys, "compare", str(tmp_path / "out"), str(file)) == (0, "Nothing changed.\n", "")


def test_each_subject_of_a_clause_has_its_own_message_and_whole(tmp_path: Path, capsys: Any) -> None:
    widths = {"J1": "3 in", "J2": "4 in"}
    wide = merged(OLD, {"joints": {m: {"kind": "opening_perimeter", "width": w} for m, w in widths.items()}})
    rules = data_of(capsys, tmp_path, OLD, wide)["rules"]
    told = {one["subject"]: one["message"] for one in rules if one["code"] == "SLT-03c"}
    assert told == {
        mark: f"The joint is {width} wide; maximum 2 in for one sealant bead." for mark, width in widths.items()
    }
    assert " ...\n" not in compared(capsys, tmp_path, OLD, wide).out


@pytest.mark.parametrize("spoil", ["altered", "deleted"])
def test_an_attachment_that_is_another_file_is_told(spoil: str, tmp_path: Path, capsys: Any) -> None:
    paper = tmp_path / "bond.pdf"
    paper.write_bytes(b"first")
    given = {"A1": {"title": "Bond", "kind": "test_report", "file": "bond.pdf"}}
    issued = package(capsys, tmp_path, merged(OLD, {"attachments": given}), "--only", "D08")
    file = str(tmp_path / "issued.yaml")
    assert run_main(capsys, "compare", str(issued), file).out == "Nothing changed.\n"
    done = run_main(capsys, "check", "--package", str(issued), file)
    says = f"{issued}: 1 file, as written by specgen 0.1.0 from issued.yaml, 1 attachment, unchanged\n"
    assert (done.code, done.out) == (0, says)
    paper.write_bytes(b"second") if spoil == "altered" else paper.unlink()
    done = run_main(capsys, "compare", str(issued), file)
    # The digests of the two by sha256sum.
    now = "SHA-256 16367aacb67a" if spoil == "altered" else "missing"
    line = f"  attachments.A1.file, Content of the file: SHA-256 a7937b64b8ca -> {now} ("
    assert done.code == 1
    assert line in done.out
    done = run_main(capsys, "check", "--package", str(issued), file)
    word = "changed" if spoil == "altered" else "missing"
    assert (done.code, done.out.splitlines()[1]) == (1, f"  attachment {word} since: bond.pdf")


def test_a_project_file_of_another_format_is_refused_in_one_line(tmp_path: Path, capsys: Any) -> None:
    other = merged(OLD, {"format": 2, "wals": {"W1": {"thick": "3 in"}}})
    done = compared(capsys, tmp_path, other, NEW)
    assert (done.code, done.out) == (2, "")
    where = tmp_path / "old.yaml"
    assert done.err == f"specgen: {where}:1:1: format: this format is not known (write format: 1)\n"


def test_two_files_of_one_name_are_told_apart_where_one_is_refused(tmp_path: Path, capsys: Any) -> None:
    for name, data in (("a", OLD), ("b", merged(OLD, {"wals": {}}))):
        (tmp_path / name).mkdir()
        written(tmp_path / name, data)
    done = run_main(capsys, "compare", *(str(tmp_path / name / "project.yaml") for name in "ab"))
    assert done.code == 2
    assert f"{tmp_path}/b/project.yaml:" in done.err
    assert "did you mean walls?" in done.err


def test_a_refusal_is_an_object_too_for_who_reads_data(tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "compare", str(tmp_path / "no.yaml"), str(written(tmp_path, NEW)), "--format", "json")
    data = json.loads(done.out)
    assert done.code == 2
    assert (data["changed"], data["fields"], len(data["errors"])) == (False, [], 1)


def test_the_newer_one_is_a_file(tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD)
    done = run_main(capsys, "compare", str(written(tmp_path, NEW)), str(issued))
    assert (done.code, done.out) == (2, "")
    assert "this is a folder (give the project file: specgen compare OLD NEW)" in done.err


HOSTILE: dict[str, tuple[dict[str, Any], str]] = {
    "another format": ({"format": 2}, "the package is in format 2, and this version reads format 1"),
    "a format in words": ({"format": "1"}, "the package is in another format"),
    "no digests of blocks": ({"documents": ...}, "does not tell what it was issued with"),
    "fields as a list": ({"fields": []}, "fields is no mapping"),
    "a field as a number": ({"fields": {"package.number": 7}}, "fields.package.number is no mapping"),
    "a value in one system": ({"fields": {"a": {"ip": "3 in"}}}, "fields.a.si is no text"),
    "a severity of its own": (
        {"findings": [{"severity": "mild", "message": "", "rule": "", "clause": "", "subjects": []}]},
        "findings[0].severity is no word known there",
    ),
    "a verdict as a list": ({"walls": [{"wall": "W1", "verdict": []}]}, "walls[0].verdict is no text"),
    "articles as text": (
        {"documents": {"D08": {"title": "", "articles": "none"}}},
        "documents.D08.articles is no list",
    ),
    "blocks as numbers": (
        {"documents": {"D08": {"title": "", "articles": [{"number": "", "title": "", "blocks": [1]}]}}},
        "documents.D08.articles[0].blocks.entry is no text",
    ),
    "a letter that nobody sees": ({"project": "a\u202eb"}, "project holds a character that cannot be printed"),
    "a sign of ours": ({"fields": {"a\ue000": "b"}}, "holds a character that cannot be printed"),
    "half of a letter": ({"date": "\ud800"}, "this is no manifest that specgen wrote"),
    "a whole of neither": ({"whole": 1}, "whole is no yes or no"),
}


@pytest.mark.parametrize("case", HOSTILE)
def test_a_manifest_that_is_none_of_ours_is_refused_in_one_line(case: str, tmp_path: Path, capsys: Any) -> None:
    issued = package(capsys, tmp_path, OLD, "--only", "D08")
    changes, says = HOSTILE[case]
    forge(issued, **changes)
    done = run_main(capsys, "compare", str(issued), str(written(tmp_path, NEW)))
    assert (done.code, done.out) == (2, "")
    assert says in done.err
    assert done.err.count("\n") == 1


RAW = {
    "deep": b"[" * 100_000,
    "deep within": b'{"files": {"a": "b"}, "x": ' + b"[" * 900 + b"]" * 900 + b"}",
    "a number of many digits": b'{"files": {"a": "b"}, "format": ' + b"9" * 5_000 + b"}",
    "no text": b"\xff\xfe{}",
    "empty": b"",
    "a list": b"[]",
    "no files": b'{"format": 1, "files": {}}',
}


@pytest.mark.parametrize("case", RAW)
def test_bytes_that_are_no_manifest_are_refused_in_one_line(case: str, tmp_path: Path, capsys: Any) -> None:
    (tmp_path / "issued").mkdir()
    (tmp_path / "issued" / "manifest.json").write_bytes(RAW[case])
    for words in (("compare", "issued", "project.yaml"), ("check", "--package", "issued")):
        full = [str(tmp_path / word) if word in ("issued", "project.yaml") else word for word in words]
        written(tmp_path, NEW)
        done = run_main(capsys, *full)
        assert (done.code, done.out) == (2, "")
        assert done.err.count("\n") == 1
        assert len(done.err) < 500


def test_a_manifest_that_is_too_large_or_a_device_is_not_read(tmp_path: Path, capsys: Any) -> None:
    folder = tmp_path / "issued"
    folder.mkdir()
    with (folder / "manifest.json").open("wb") as file:
        file.truncate(51_000_000)
    done = run_main(capsys, "compare", str(folder), str(written(tmp_path, NEW)))
    assert done.code == 2
    assert "the manifest is larger than 50 MB" in done.err


def test_an_edited_manifest_and_a_folder_without_one_are_refused(tmp_path: Path, capsys: Any) -> None:
    issued, new = package(capsys, tmp_path, OLD, "--only", "D08"), str(written(tmp_path, NEW))
    text = (issued / "manifest.json").read_text("utf-8")
    (issued / "manifest.json").write_text(text.replace("3 in", "4 in"), "utf-8")
    done = run_main(capsys, "compare", str(issued), new)
    assert done.code == 2
    assert "edited by hand since the package was written (give the package as it was issued)" in done.err
    (issued / "manifest.json").unlink()
    done = run_main(capsys, "compare", str(issued), new)
    assert done.code == 2
    assert "the folder holds no package: it has no manifest.json" in done.err


def test_a_change_sheet_is_a_document_of_its_own(tmp_path: Path, capsys: Any) -> None:
    out = tmp_path / "sheet"
    done = compared(capsys, tmp_path, OLD, NEW, "--out", str(out), "--formats", "docx,html,txt")
    assert done.code == 1
    assert done.err == f"specgen: wrote 3 files to {out}\n"
    assert sorted(file.name for file in out.iterdir()) == [
        "D20-changes.docx",
        "D20-changes.html",
        "D20-changes.txt",
        "manifest.json",
    ]
    text = (out / "D20-changes.txt").read_text("utf-8")
    assert "Changes from revision 0 to revision 0." in text
    assert "W1 concrete | Board thickness | 3 in | 4 in | Architect" in text
    assert "double line" not in text
    first = {file.name: file.read_bytes() for file in out.iterdir()}
    compared(capsys, tmp_path, OLD, NEW, "--out", str(out), "--formats", "docx,html,txt")
    assert {file.name: file.read_bytes() for file in out.iterdir()} == first


def test_a_change_sheet_without_a_change_says_so(tmp_path: Path, capsys: Any) -> None:
    done = compared(capsys, tmp_path, OLD, OLD, "--out", str(tmp_path / "sheet"), "--formats", "txt")
    assert done.code == 0
    assert "\nNo change.\n" in (tmp_path / "sheet" / "D20-changes.txt").read_text("utf-8")


def test_an_unknown_format_of_the_sheet_writes_nothing(tmp_path: Path, capsys: Any) -> None:
    done = compared(capsys, tmp_path, OLD, NEW, "--out", str(tmp_path / "sheet"), "--formats", "docs")
    assert done.code == 2
    assert "did you mean docx?" in done.err
    assert not (tmp_path / "sheet").exists()


@pytest.mark.parametrize("name", ["pdf", "csv", "foo"])
def test_a_change_sheet_is_refused_in_a_format_it_has_not(name: str, tmp_path: Path, capsys: Any) -> None:
    done = run_main(capsys, "compare", "none.yaml", "none.yaml", "--out", str(tmp_path / "sheet"), "--formats", name)
    assert done.code == 2
    assert done.err.startswith(f"specgen: a change sheet is not written as '{name}' (")
    assert not (tmp_path / "sheet").exists()


def test_a_comparison_as_text_loads_no_writer_of_documents(tmp_path: Path) -> None:
    file = str(written(tmp_path, OLD))
    loaded = loaded_by("compare", file, file)
    assert {name.split(".")[0] for name in loaded} & HEAVY <= {"jinja2", "markdown"}


def test_what_a_project_writes_stands_on_its_line(tmp_path: Path, capsys: Any) -> None:
    said = merged(OLD, {"project": {"address": "1 Lane\nRules raised (9)"}})
    done = compared(capsys, tmp_path, OLD, said)
    assert "Rules raised (9)" in done.out
    assert "\nRules raised (9)" not in done.out
