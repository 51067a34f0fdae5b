"""The PDF where its libraries are installed, and where they are not."""

import importlib.util
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import SMALL, written


@pytest.fixture
def bare(monkeypatch: pytest.MonkeyPatch) -> None:
    """A system without the library that sets the pages."""
    found = importlib.util.find_spec
    monkeypatch.setattr(
        "specgen.formats.pdf.libraries.find_spec", lambda name: None if name == "typst" else found(name)
    )


def build(folder: Path, capsys: Any, *more: str) -> Any:
    file = written(folder, SMALL)
    return run_main(capsys, "build", str(file), "--out", str(folder / "out"), "--only", "D10", "--draft", *more)


def test_a_package_holds_the_pdf_without_being_asked(tmp_path: Path, capsys: Any) -> None:
    assert build(tmp_path, capsys).code == 0
    names = sorted(file.suffix for file in (tmp_path / "out").iterdir())
    assert names == [
        ".docx",
        ".html",
        ".html",
        ".json",
        ".pdf",
        ".pdf",
    ]  # with the summary, the set, and the form to fill in
    assert (tmp_path / "out" / "submittal.pdf").read_bytes().startswith(b"%PDF-1.7")


def test_without_its_libraries_a_package_is_built_without_it(tmp_path: Path, capsys: Any, bare: None) -> None:
    assert build(tmp_path, capsys).code == 0
    assert sorted(file.suffix for file in (tmp_path / "out").iterdir()) == [".docx", ".html", ".html", ".json"]


def test_one_that_is_asked_for_is_refused_with_the_name_of_the_extra(tmp_path: Path, capsys: Any, bare: None) -> None:
    done = build(tmp_path, capsys, "--formats", "docx,pdf")
    assert done.code == 2
    assert done.err.splitlines() == [
        "specgen: the PDF needs libraries that are not installed (install specgen with its extra pdf)"
    ]
    assert not (tmp_path / "out").exists()
