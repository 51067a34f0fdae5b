"""A copy of our own data with one slip in it, and what its load says."""

import shutil
from pathlib import Path

import pytest

from specgen import standards
from specgen.model.field import Schema
from specgen.reading import schema
from specgen.standards import load_files, make_standards
from specgen.standards.rows import RowError

# Stands in a slip before the word whose line is to be told; it is taken out before the file is written.
MARK = "§"


def copied(folder: Path) -> tuple[Path, Path]:
    """The folders of a copy of the standards and of the schema."""
    rows, entries = folder / "standards", folder / "schema"
    rows.mkdir()
    for file in standards.FOLDER.glob("*.yaml"):
        shutil.copy(file, rows)
    shutil.copytree(schema.FOLDER, entries)
    return rows, entries


def loaded(rows: Path, entries: Path) -> Schema:
    """What a start of the program loads, from a copy; it is read anew each time."""
    standards._read_once.cache_clear()
    return schema.checked_schema(entries, rows, make_standards(rows, load_files(rows)))


def told_of(folder: Path, file: str, before: str, after: str) -> tuple[str, int]:
    """What a load says once `before` in a file has become `after`, and the line of the mark in it."""
    rows, entries = copied(folder)
    path = next(place / file for place in (rows, entries) if (place / file).exists())
    text = path.read_text("utf-8")
    assert text.count(before) == 1, f"{before!r} stands {text.count(before)} times in {file}"
    text = text.replace(before, after)
    line = text[: text.index(MARK)].count("\n") + 1
    path.write_text(text.replace(MARK, ""), "utf-8")
    with pytest.raises(RowError) as caught:
        loaded(rows, entries)
    assert isinstance(caught.value, ValueError)
    return str(caught.value), line
