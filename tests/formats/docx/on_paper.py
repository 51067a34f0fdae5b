"""A form written on a letterhead with changes: the parts of its Word file, and what was told of the letterhead."""

import io
import zipfile
from pathlib import Path
from typing import Any

from lxml import etree

from specgen.formats.docx import word_file as writer
from specgen.formats.docx.letterhead import read_letterhead
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made


def parts(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        return {name: zipped.read(name) for name in zipped.namelist()}


def build(folder: Path, changes: dict[str, Any]) -> dict[str, bytes]:
    """The parts of a form on the firm's paper with these changes."""
    return parts(writer.write_docx(document_of("clean", "D10"), made.kept(folder, made.firm(changes))))


def running(made_parts: dict[str, bytes], word: str = "header") -> Any:
    return etree.fromstring(made_parts[f"word/{word}-default.xml"])


def notes(folder: Path, changes: dict[str, Any]) -> tuple[str, ...]:
    return read_letterhead(made.kept(folder, made.firm(changes))).notes
