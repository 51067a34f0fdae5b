"""Documents made for the tests of the writers."""

import tempfile
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.documents import document
from specgen.documents.catalogue import Template, templates
from specgen.documents.context import DocumentContext
from specgen.formats import text
from specgen.model.block import Document
from specgen.model.problem import Refused
from specgen.output import disk
from tests.support import EXAMPLES, case_of

# Text that every format must show as it stands; the last letters run to the left.
AWKWARD = "Tom & Jerry's <b>*Wall*</b> | #1 `x` _y_ [a](b) ~~z~~ 1. & 😀 שלום"

# Two packages, of which the second takes the place of the first.
ONE = {"a.txt": b"one", "b.txt": b"also"}
TWO = {"a.txt": b"two", "c.txt": b"new"}


def context_of(folder: Path, change: Any = None) -> DocumentContext:
    """The context of the small project with a change laid over it."""
    return _make_context(folder, change) if change else _small_context()


@cache
def _small_context() -> DocumentContext:
    with tempfile.TemporaryDirectory() as name:
        return _make_context(Path(name), None)


def _make_context(folder: Path, change: Any) -> DocumentContext:
    case = case_of(folder, change)
    return DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)


def written(folder: Path, words: str, change: Any = None, *, numbering: str = "plain", draft: bool = False) -> Document:
    """The document of a template given as text."""
    template = Template(
        id="D99",
        title="Trial",
        order=1,
        numbering=numbering,
        landscape=False,
        words=words,
        file="D99.md.j2",
        first_line=6,
    )
    return document.compose_document(template, context_of(folder, change), draft)


@lru_cache
def document_of(example: str, name: str, draft: bool = False) -> Document:
    """A document of an example."""
    return document.compose_document(next(t for t in templates() if t.id == name), context_of_example(example), draft)


@lru_cache
def context_of_example(example: str) -> DocumentContext:
    """The context of an example."""
    case = pipeline.check(EXAMPLES / example / "project.yaml")
    return DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)


def standing(folder: Path) -> dict[str, tuple[str, int, bytes]]:
    """All that stands in a folder, by name: what it is, its rights and its content."""
    made = {}
    for entry in sorted(folder.rglob("*")):
        kind = "link" if entry.is_symlink() else "folder" if entry.is_dir() else "file"
        content = entry.read_bytes() if kind == "file" else str(entry.readlink()).encode() if kind == "link" else b""
        made[str(entry.relative_to(folder))] = (kind, entry.lstat().st_mode, content)
    return made


def refused(folder: Path, match: str) -> None:
    """A build into `folder` is refused, and all that stands around it is as it was."""
    before = standing(folder.parent)
    with pytest.raises(Refused, match=match) as told:
        disk.write_package(folder, TWO, {"format": 1})
    assert len(told.value.problems) == 1
    assert told.value.problems[0].hint
    assert standing(folder.parent) == before


def lines_of(name: str, context: DocumentContext) -> list[str]:
    """The lines of a document as plain text, those of its tables with a bar between cells."""
    template = next(t for t in templates() if t.id == name)
    return text.write_text(document.compose_document(template, context, draft=False)).splitlines()


def rows_of(name: str, context: DocumentContext) -> list[list[str]]:
    """The rows of all tables of a document, each as its cells."""
    return [line.split(" | ") for line in lines_of(name, context) if " | " in line]
