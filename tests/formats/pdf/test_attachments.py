"""Files of attachments that cannot be bound in: one line each, and a set that is whole all the same."""

import json
import os
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest

from specgen.formats.pdf import attachments
from tests.formats.pdf.binding import bind_behind, papers_of, read, texts
from tests.formats.pdf.made_papers import flip_stream, make_paper, misplace_resources
from tests.running import run_main
from tests.support import SMALL, merged, written

WHOLE = make_paper(3, "Report")
OWNER = pikepdf.Encryption(owner="secret", user="")
READER = pikepdf.Encryption(owner="secret", user="secret")
PACKED = make_paper(10, "Report " * 200, compress_streams=True)

# What stands in the file, and what is said of it.
UNFIT = [
    (b"", "'a.pdf' is empty (export it again)"),
    (b"A letter.", "'a.pdf' is not a PDF, JPEG, or PNG file (export it as PDF)"),
    (make_paper(encryption=READER), "'a.pdf' is encrypted (ask whoever issued it for a copy that is not)"),
    (make_paper(encryption=OWNER), "'a.pdf' is encrypted (ask whoever issued it for a copy that is not)"),
    (PACKED[: len(PACKED) // 2], "'a.pdf' is damaged or cut short"),
    (flip_stream(PACKED), "'a.pdf' is damaged or cut short"),
    (WHOLE.replace(b"startxref", b"startxxxx"), "'a.pdf' is damaged or cut short"),
    (b"%PDF-1.7\nnothing", "'a.pdf' is damaged or cut short"),
    (make_paper(0), "'a.pdf' has no pages"),
    (make_paper(box=(0, 0, 0, 792)), "'a.pdf' is damaged or cut short"),
    (b"\x89PNG\r\n\x1a\n" + bytes(40), "'a.pdf' is a damaged picture"),
    (b"\xff\xd8\xff\xe0\x00\x04", "'a.pdf' is a damaged picture"),
]


@pytest.mark.parametrize(("content", "said"), UNFIT)
def test_an_unfit_file_is_told_in_one_line(tmp_path: Path, content: bytes, said: str) -> None:
    (tmp_path / "a.pdf").write_bytes(content)
    assert problem_of(tmp_path, "a.pdf").startswith(said)


def problem_of(folder: Path, name: str) -> str:
    """What is said of the one attachment of a project, without its place."""
    [paper] = papers_of(folder, A1=name)
    assert paper.document is None
    assert paper.problem is not None
    place, said = str(paper.problem).split(": attachments.A1.file: ")
    assert place.startswith("project.yaml:")
    assert "\n" not in said
    return said


def test_a_missing_file_and_a_folder_are_told(tmp_path: Path) -> None:
    missing = "'a.pdf' is not in the project folder (put the file there, or submit it separately)"
    assert problem_of(tmp_path, "a.pdf") == missing
    (tmp_path / "a.pdf").mkdir()
    assert problem_of(tmp_path, "a.pdf") == (
        "the attachment cannot be read: it is a folder (name a PDF, JPEG, or PNG file)"
    )


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes here")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "a.pdf")
    assert problem_of(tmp_path, "a.pdf").startswith("the attachment cannot be read: it is a pipe")


def test_a_huge_file_is_not_read(tmp_path: Path) -> None:
    with (tmp_path / "a.pdf").open("wb") as file:
        file.truncate(200_000_001)
    assert problem_of(tmp_path, "a.pdf") == (
        "the attachment is larger than 200 MB (split it, or make its pictures smaller)"
    )


def test_all_together_are_bounded(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("a", "b"):
        (tmp_path / f"{name}.pdf").write_bytes(make_paper(3, name))
    monkeypatch.setattr(attachments, "MOST_PAGES", 5)
    first, second = papers_of(tmp_path, A1="a.pdf", A2="b.pdf")
    assert (first.pages, second.pages) == (3, 0)
    assert "it has 3 pages, and all attachments bound in at most 5" in str(second.problem)


def link_out(folder: Path) -> str:
    (folder.parent / "outside.pdf").write_bytes(WHOLE)
    (folder / "a.pdf").symlink_to(folder.parent / "outside.pdf")
    return "a.pdf"


def link_folder_out(folder: Path) -> str:
    (folder.parent / "elsewhere").mkdir()
    (folder.parent / "elsewhere" / "a.pdf").write_bytes(WHOLE)
    (folder / "papers").symlink_to(folder.parent / "elsewhere")
    return "papers/a.pdf"


def link_in_circle(folder: Path) -> str:
    (folder / "a.pdf").symlink_to(folder / "b.pdf")
    (folder / "b.pdf").symlink_to(folder / "a.pdf")
    return "a.pdf"


LINKS = [(link_out, "leads out of"), (link_folder_out, "leads out of"), (link_in_circle, "cannot be followed")]


@pytest.mark.parametrize(("make", "said"), LINKS)
def test_a_link_out_of_the_project_is_not_followed(tmp_path: Path, make: Callable[[Path], str], said: str) -> None:
    folder = tmp_path / "project"
    folder.mkdir()
    assert said in problem_of(folder, make(folder))


@pytest.mark.parametrize("name", ["../a.pdf", "/etc/hosts", "papers/../../a.pdf"])
def test_a_path_out_of_the_project_is_refused_by_the_reader(tmp_path: Path, capsys: Any, name: str) -> None:
    file = written(tmp_path, merged(SMALL, {"attachments": {"A1": {"kind": "letter", "file": name}}}))
    ended = run_main(capsys, "check", str(file))
    assert ended.code == 2
    assert f"{name!r} leaves the project folder" in ended.err


def test_a_file_beside_the_file_that_names_it_is_found(tmp_path: Path) -> None:
    (tmp_path / "firm" / "papers").mkdir(parents=True)
    (tmp_path / "firm" / "papers" / "a.pdf").write_bytes(make_paper(1, "Beside"))
    written(tmp_path / "firm", {"format": 1, "attachments": {"F1": {"file": "papers/a.pdf"}}}, "firm.yaml")
    from specgen.documents.catalogue import templates_folder
    from specgen.formats.pdf.attachments import read_papers
    from tests.formats.pdf.binding import documents_of
    from tests.support import project_of

    project = project_of(tmp_path, {"firm": "firm/firm.yaml"})
    [paper] = read_papers(documents_of(project), tmp_path, templates_folder())
    assert texts(read(bind_behind([paper])))[2].startswith("Beside 1")


def test_a_file_that_changes_behind_its_reading_is_bound_in_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").write_bytes(make_paper(2, "Before"))
    papers = list(papers_of(tmp_path, A1="a.pdf"))
    (tmp_path / "a.pdf").write_bytes(b"after")
    assert [text.split("\n")[0] for text in texts(read(bind_behind(papers)))] == [
        "Ours 1",
        "Ours 2",
        "Before 1",
        "Before 2",
    ]


def test_a_file_named_twice_is_read_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "a.pdf").write_bytes(WHOLE)
    asked: list[str] = []
    real = attachments.read_given_file

    def count_reading(path: Path, use: Any, shown: str) -> bytes:
        asked.append(path.name)
        return real(path, use, shown)

    monkeypatch.setattr(attachments, "read_given_file", count_reading)
    papers = papers_of(tmp_path, A1="a.pdf", A2="a.pdf")
    assert [paper.pages for paper in papers] == [3, 3]
    assert asked == ["a.pdf"]


ATTACHED = {
    "package": {"purpose": "mockup_submittal", "date": "2027-03-01"},
    "contract": {
        "items": {"I1": {"section": "07 24 00", "paragraph": "1.5.A", "title": "Reports", "attachments": ["A1"]}}
    },
    "attachments": {
        "A1": {"kind": "test_report", "title": "Bond of sealant", "standard": "ASTM C794", "issued_on": "2026-05-06",
               "covers": ["sealant"], "file": "bond.pdf"},
        "A2": {"kind": "letter", "title": "Local fasteners", "file": "lost.pdf"},
    },
}  # fmt: skip


def build(folder: Path, capsys: Any, *more: str, paper: bytes = make_paper(2, "Peel strength")) -> Any:
    (folder / "bond.pdf").write_bytes(paper)
    file = written(folder, merged(SMALL, ATTACHED))
    return run_main(capsys, "build", str(file), "--draft", "--formats", "pdf", "--out", str(folder / "out"), *more)


def test_a_set_with_a_lost_attachment_is_whole_and_says_so(tmp_path: Path, capsys: Any) -> None:
    ended = build(tmp_path, capsys)
    assert ended.code == 1
    said = "attachments.A2.file: 'lost.pdf' is not in the project folder"
    [line] = [line for line in ended.err.splitlines() if said in line]
    assert "project.yaml:" in line
    assert re.search(r"(?m)^specgen: not bound in, and named in (D\d\d, )*D\d\d: A2$", ended.err)
    [listed] = json.loads((tmp_path / "out" / "manifest.json").read_text())["not_bound_in"]
    assert said in listed
    [file] = (tmp_path / "out").glob("submittal*.pdf")
    pages = [" ".join(text.split()) for text in texts(pypdf.PdfReader(file))]
    first, second, lost = len(pages) - 4, len(pages) - 2, len(pages) - 1
    assert "Bond of sealant" in pages[first]
    assert "Test report, ASTM C794, May 6, 2026" in pages[first]
    assert "Covers: sealant" in pages[first]
    assert "Answers register item I1, Section 07 24 00, paragraph 1.5.A: Reports" in pages[first]
    assert f"Attachment A1, page 2 of 2 · Page {second + 1} of {len(pages)}" in pages[second]
    assert "Not bound in: 'lost.pdf' is not in the project folder." in pages[lost]
    assert "separately" not in pages[lost]
    assert f"Page {len(pages)} of {len(pages)}" in pages[lost]


def test_a_paper_that_opens_and_is_not_built_as_it_should_be_is_damaged(tmp_path: Path, capsys: Any) -> None:
    ended = build(tmp_path, capsys, paper=make_paper(2, change=misplace_resources))
    assert ended.code == 1
    assert "attachments.A1.file: 'bond.pdf' is damaged or cut short" in ended.err
    [file] = (tmp_path / "out").glob("submittal*.pdf")
    assert "Not bound in: 'bond.pdf' is damaged or cut short." in " ".join(texts(pypdf.PdfReader(file))[-2].split())


def test_documents_asked_for_by_themselves_have_no_attachments(tmp_path: Path, capsys: Any) -> None:
    ended = build(tmp_path, capsys, "--only", "D05")
    assert "lost.pdf" not in ended.err
    [file] = (tmp_path / "out").glob("*.pdf")
    assert "Peel strength" not in " ".join(texts(pypdf.PdfReader(file)))


def test_a_disk_that_is_full_leaves_nothing(tmp_path: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    def fill(*_: Any) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", fill)
    ended = build(tmp_path, capsys)
    assert ended.code == 2
    assert sorted(path.name for path in tmp_path.iterdir()) == ["bond.pdf", "project.yaml"]
