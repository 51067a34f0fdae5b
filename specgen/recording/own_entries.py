"""Entries that stand in a project's own files among its other values, made entries of its record."""

import dataclasses
from collections.abc import Mapping
from typing import Any

from specgen.model.field import Path
from specgen.model.project import InputFile, Project
from specgen.model.record import COLLECTIONS, Entry, EntryPlace, RecordFile, Records


def take_entries(project: Project) -> Project:
    """The project with what its values hold of the record collections moved to its records, before those it has.

    Nothing is done where it holds none.
    """
    marks = {name: project.members[(name,)] for name in COLLECTIONS if project.members.get((name,))}
    if not marks:
        return project
    rows = _gather_rows(project.values)
    own = {
        name: tuple(_make_entry(project, name, number, mark, rows) for number, mark in enumerate(listed))
        for name, listed in marks.items()
    }
    kept = {path: value for path, value in project.values.items() if path[0] not in marks}
    members = {path: listed for path, listed in project.members.items() if path[0] not in marks}
    return dataclasses.replace(project, values=kept, members=members, records=_join(project, own))


def _gather_rows(values: Mapping[Path, Any]) -> dict[Path, dict[str, Any]]:
    """The values of each entry by its path."""
    rows: dict[Path, dict[str, Any]] = {}
    for path, value in values.items():
        if path[0] in COLLECTIONS and len(path) == 3:  # collection, mark, name
            rows.setdefault(path[:2], {})[path[2]] = value
    return rows


def _make_entry(project: Project, name: str, number: int, mark: str, rows: Mapping[Path, dict[str, Any]]) -> Entry:
    place = project.place((name, mark))
    return Entry(name, number, rows.get((name, mark), {}), EntryPlace(place.file, place.line, place.column))


def _join(project: Project, own: Mapping[str, tuple[Entry, ...]]) -> Records:
    """The entries of the project's own files before those that its records hold already, numbered on."""
    joined = dict(project.records.entries)
    for name, first in own.items():
        later = (dataclasses.replace(one, number=one.number + len(first)) for one in project.records.of(name))
        joined[name] = (*first, *later)
    files = (*_list_files(project.inputs, own), *project.records.files)
    return Records(joined, files)


def _list_files(inputs: tuple[InputFile, ...], own: Mapping[str, tuple[Entry, ...]]) -> list[RecordFile]:
    """The files that entries stand in, with how many each holds."""
    held: dict[str, int] = {}
    for entry in (entry for entries in own.values() for entry in entries):
        held[entry.place.file] = held.get(entry.place.file, 0) + 1
    return [RecordFile(one.name, one.digest, held[one.name]) for one in inputs if one.name in held]
