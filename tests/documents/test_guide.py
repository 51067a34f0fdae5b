"""The guide for a firm's own words, and the example firm: what they say is tried."""

import re
import shutil
from pathlib import Path
from typing import Any

import docx
import pytest

from specgen import building
from specgen.documents.catalogue import templates_folder
from tests.running import run_main
from tests.support import EXAMPLES, SMALL, written

GUIDE = (templates_folder() / "GUIDE.md").read_text("utf-8")
ROWS = re.findall(r"(?m)^\| (`.+`) \| [^|]+ \|$", GUIDE)
FIRM = EXAMPLES / "own-face"


def built(folder: Path, words: str, only: str = "D05") -> str:
    (folder / "our-words" / "documents").mkdir(parents=True)
    (folder / "our-words" / "documents" / f"{only}.md.j2").write_text(words, "utf-8")
    building.build(written(folder, SMALL), folder / "out", ("txt",), (only,), templates=folder / "our-words")
    return next((folder / "out").glob("*.txt")).read_text("utf-8")


def test_a_copy_of_a_template_writes_the_same_document(tmp_path: Path) -> None:
    project = written(tmp_path, SMALL)
    (tmp_path / "words" / "documents").mkdir(parents=True)
    shutil.copy(templates_folder() / "documents" / "D05.md.j2", tmp_path / "words" / "documents")
    building.build(project, tmp_path / "one", ("txt",), ("D05",))
    building.build(project, tmp_path / "other", ("txt",), ("D05",), templates=tmp_path / "words")
    made = [{file.name: file.read_bytes() for file in (tmp_path / name).glob("*.txt")} for name in ("one", "other")]
    assert made[0] == made[1]


def test_the_guide_shows_marks() -> None:
    assert len(ROWS) > 8


@pytest.mark.parametrize("row", ROWS)
def test_every_mark_of_the_guide_works(row: str, tmp_path: Path) -> None:
    head = re.search(r"    ---\n(?:    .+\n)+?    ---\n", GUIDE)
    assert head is not None
    words = "\n\n".join(mark.replace("...", "words") for mark in re.findall(r"`([^`]+)`", row))
    assert "D05 WARNINGS AND LIMITATIONS" in built(tmp_path, re.sub("(?m)^    ", "", head[0]) + words + "\n")


def test_the_mistake_of_the_guide_is_told_as_it_stands(tmp_path: Path, capsys: Any) -> None:
    line = re.search(r"(?m)^    (specgen: our-words.+)$", GUIDE)
    assert line is not None
    (tmp_path / "our-words" / "documents").mkdir(parents=True)
    words = "---\nid: D05\ntitle: Warnings\norder: 50\n---\n\n\n\n{{ projekt.name }}\n"
    (tmp_path / "our-words" / "documents" / "D05.md.j2").write_text(words, "utf-8")
    file, own = written(tmp_path, SMALL), tmp_path / "our-words"
    done = run_main(capsys, "build", str(file), "--out", str(tmp_path / "out"), "--templates", str(own))
    assert done.code == 2
    assert done.err.strip() == line[1]


def test_the_example_firm_has_its_own_words_and_paper(tmp_path: Path) -> None:
    out = tmp_path / "out"
    building.build(FIRM / "project.yaml", out, letterhead=FIRM / "letterhead.docx", templates=FIRM / "words")
    own = docx.Document(str(out / "D05-what-to-know-before-we-spray.docx"))
    ours = docx.Document(str(out / "D02-compatibility-and-compliance.docx"))
    for made in (own, ours):
        assert round(made.sections[0].page_width.mm) == 210
        assert "Thimble and Sons" in "".join(p.text for p in made.sections[0].header.paragraphs)
    assert any("what we know of the walls of Hopper Mill Studios" in p.text for p in own.paragraphs)
