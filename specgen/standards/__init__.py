"""The trade's data as YAML rows, the only place where a limit, a step, a criterion or a tool is written."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Schema
from specgen.model.source import Source
from specgen.model.standard import Limit, Standards
from specgen.standards.rows import RowError, Wrong, read_rows
from specgen.standards.shapes import Known
from specgen.standards.step_order import order_steps
from specgen.standards.tables import TABLES

FOLDER = FilePath(__file__).parent


@lru_cache(maxsize=1)
def load_standards() -> Standards:
    """All rows; raises RowError with file, line and row of a malformed one."""
    return make_standards(FOLDER, load_files(FOLDER))


@lru_cache(maxsize=1)
def load_files(folder: FilePath) -> dict[str, dict[str, Any]]:
    """The rows of each file as they are written; kept, for what they say of fields is checked when these are known."""
    return {name: read_rows(folder / f"{name}.yaml") for name in TABLES}


def make_standards(folder: FilePath, files: Mapping[str, Mapping[str, Any]]) -> Standards:
    """The typed rows of what the files of a folder hold; raises RowError."""
    known = Known(files, {})
    for name in TABLES:
        known.made[name] = _make_rows(folder / f"{name}.yaml", known)
    made = known.made
    try:
        steps = order_steps(made["steps"])
    except Wrong as wrong:
        raise RowError(folder / "steps.yaml", wrong) from None
    return Standards(
        sources=made["sources"],
        limits=made["limits"],
        steps=steps,
        criteria=made["criteria"],
        tools=made["tools"],
        forms=made["forms"],
        references=made["references"],
        editions=made["code_editions"],
    )


def load_limits() -> dict[str, Limit]:
    """The limits alone, for a sum that rests on one; raises RowError with file, line and row of a malformed one."""
    return _limits_in(FOLDER)


def find_source(name: str) -> Source:
    """A source by the name of its row; KeyError for an unknown one."""
    return _sources_in(FOLDER)[name]


# Kept by folder: the rows of another one are read anew.
@lru_cache(maxsize=1)
def _limits_in(folder: FilePath) -> dict[str, Limit]:
    file, sources = folder / "limits.yaml", _sources_in(folder)
    return _make_rows(file, Known({"limits": read_rows(file), "sources": sources}, {"sources": sources}))


@lru_cache(maxsize=1)
def _sources_in(folder: FilePath) -> dict[str, Source]:
    file = folder / "sources.yaml"
    return _make_rows(file, Known({"sources": read_rows(file)}, {}))


def _make_rows(file: FilePath, known: Known) -> dict[str, Any]:
    table, made = TABLES[file.stem], {}
    for name, row in known.rows[file.stem].items():
        try:
            made[name] = table.make(name, table.shape.convert(row, known))
        except Wrong as wrong:
            raise RowError(file, wrong.inside(name)) from None
    return made


def check_against(schema: Schema, folder: FilePath, files: Mapping[str, Mapping[str, Any]]) -> None:
    """Raise RowError where a row speaks of a field or choice that there is not, or in a unit that its field has not.

    This room stands below that of the schema, so this is asked for by the one that loads the schema.
    """
    for file, table in TABLES.items():
        for name, row in files[file].items():
            try:
                table.shape.cross(row, schema)
                table.cross(name, row, schema)
            except Wrong as wrong:
                raise RowError(folder / f"{file}.yaml", wrong.inside(name)) from None
