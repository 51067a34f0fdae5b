"""The trade's data as YAML rows, the only place where a limit, a step, a criterion or a tool is written."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any, TypeVar

from specgen.model.field import Schema
from specgen.model.source import Source
from specgen.model.standard import Limit, Standards
from specgen.model.suggest import suggest
from specgen.standards.rows import RowError, Wrong, read_rows
from specgen.standards.shapes import Known
from specgen.standards.step_order import order_steps
from specgen.standards.tables import TABLES

FOLDER = FilePath(__file__).parent
Row = TypeVar("Row")


@lru_cache(maxsize=1)
def load_standards() -> Standards:
    """All rows; raises RowError with file, line and row of a malformed one."""
    return make_standards(FOLDER, load_files(FOLDER))


def load_files(folder: FilePath) -> dict[str, dict[str, Any]]:
    """The rows of each file as written."""
    return {name: _read_once(folder / f"{name}.yaml") for name in TABLES}


# A file is read for the calculations, for all rows together, and once more when what it says of fields is checked.
_read_once = lru_cache(maxsize=2 * len(TABLES))(read_rows)


def make_standards(folder: FilePath, files: Mapping[str, Mapping[str, Any]]) -> Standards:
    """The typed rows of what the files of a folder hold; raises RowError."""
    known = Known(files, {})
    for name in TABLES:
        known.typed[name] = _make_rows(folder / f"{name}.yaml", known)
    typed = known.typed
    try:
        steps = order_steps(typed["steps"])
    except Wrong as wrong:
        raise RowError(folder / "steps.yaml", wrong) from None
    return Standards(
        sources=typed["sources"],
        limits=typed["limits"],
        steps=steps,
        field_tests=typed["field_tests"],
        step_checks=typed["step_checks"],
        third_party_checks=typed["third_party_checks"],
        safety_measures=typed["safety_measures"],
        criteria=typed["criteria"],
        tools=typed["tools"],
        forms=typed["forms"],
        references=typed["references"],
        faults=typed["faults"],
        editions=typed["code_editions"],
    )


def load_limits() -> dict[str, Limit]:
    """The limits alone, for a calculation that needs one; raises RowError with file, line and row."""
    return _load_limits_in(FOLDER)


def find_source(name: str) -> Source:
    """A source by the name of its row; raises RowError with the nearest name for an unknown one."""
    return find_row("sources", name, _load_sources_in(FOLDER))


def find_row(table: str, name: str, rows: Mapping[str, Row]) -> Row:
    """A row of a table by its name; raises RowError with the nearest name for an unknown one."""
    if name not in rows:
        raise RowError(FOLDER / f"{table}.yaml", Wrong(f"no row is named {name!r}: {suggest(name, rows)}"))
    return rows[name]


# Kept by folder: the rows of another one are read anew.
@lru_cache(maxsize=1)
def _load_limits_in(folder: FilePath) -> dict[str, Limit]:
    file, sources = folder / "limits.yaml", _load_sources_in(folder)
    return _make_rows(file, Known({"limits": _read_once(file), "sources": sources}, {"sources": sources}))


@lru_cache(maxsize=1)
def _load_sources_in(folder: FilePath) -> dict[str, Source]:
    texts, sources = folder / "texts.yaml", folder / "sources.yaml"
    known = Known({"texts": _read_once(texts), "sources": _read_once(sources)}, {})
    known.typed["texts"] = _make_rows(texts, known)
    return _make_rows(sources, known)


def _make_rows(file: FilePath, known: Known) -> dict[str, Any]:
    table, rows = TABLES[file.stem], {}
    for name, row in known.rows[file.stem].items():
        try:
            rows[name] = table.make(name, table.shape.convert(row, known))
        except Wrong as wrong:
            raise RowError(file, wrong.inside(name)) from None
    return rows


def check_against(schema: Schema, folder: FilePath, files: Mapping[str, Mapping[str, Any]]) -> None:
    """Raise RowError where a row names an unknown field or choice, or a unit its field does not take.

    The schema is loaded above this package, so its loader calls this.
    """
    for file, table in TABLES.items():
        for name, row in files[file].items():
            try:
                table.shape.check_fields(row, schema)
                table.check_fields(name, row, schema)
            except Wrong as wrong:
                raise RowError(folder / f"{file}.yaml", wrong.inside(name)) from None
