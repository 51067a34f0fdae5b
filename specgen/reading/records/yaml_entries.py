"""Entries that stand in YAML, of a record file or of the project file itself, out of its values by path."""

from typing import Any

from specgen.model.field import Path
from specgen.model.problem import Problem
from specgen.model.record import COLLECTIONS, EntryPlace
from specgen.reading.dangling import tell_dangling
from specgen.reading.file_content import FileContent
from specgen.reading.ranges import range_problems
from specgen.reading.records.columns import ACCEPTED
from specgen.reading.records.gathering import Gathering
from specgen.reading.side_files import ATTACHMENTS, RECORD, check_home

_NAME = ("project", "name")  # which a project alone has


def add_record_file(gathering: Gathering, source: FileContent) -> None:
    """Add the entries of a record file, the settings that it accepts, and its faults."""
    source.values.pop(("format",), None)
    if _NAME in source.values:
        at = source.text.places[_NAME]
        gathering.fault("this is a project, not a record of one", "name its records behind it", EntryPlace(at.file))
        return
    check_home(source, RECORD, gathering.project.schema)
    gathering.faults += source.text.problems
    papers = (ATTACHMENTS,)
    if papers in source.members:
        at = source.text.places[papers]
        message, hint = "papers of a record file are part of no document", "list them in the project file"
        gathering.remark(message, hint, EntryPlace(at.file, at.line, at.column))
    add_entries(gathering, source)
    for path, value in source.values.items():
        if path[0] == ACCEPTED and _check_mark(gathering, source, path, value):
            at = source.text.places[path]
            gathering.accept(path, value, EntryPlace(at.file, at.line, at.column))


def add_entries(gathering: Gathering, source: FileContent) -> None:
    """Add the entries that stand in a file; a mark that finds nothing is told at its place."""
    found: dict[Path, dict[str, Any]] = {}
    for name in COLLECTIONS:
        if (name,) in source.members:
            gathering.entries.setdefault(name, [])
            found |= {(name, mark): {} for mark in source.members[(name,)]}
    for path, value in source.values.items():
        if path[:2] in found and _check_mark(gathering, source, path, value):
            found[path[:2]][path[2]] = value
    gathering.faults += range_problems(source.values, source.text.places, gathering.project.schema)
    for path, values in found.items():
        at = source.text.places[path]
        if values:
            place = EntryPlace(at.file, at.line, at.column)
            gathering.add_ordered(path[0], values, place, gathering.codes_of(values))


def _check_mark(gathering: Gathering, source: FileContent, path: Path, value: Any) -> bool:
    """Whether a value is no mark, or that of a member; one that finds nothing is noted."""
    project = gathering.project
    field = project.schema.field_at(path)
    known = project.members.get((field.to,), ()) if field is not None and field.to else ()
    if field is None or not field.to or value in known:
        return True
    at = source.text.places[path]
    told = tell_dangling(project.schema, field, value, known)
    gathering.faults.append(Problem(*told, at.path, at.file, at.line, at.column))
    return False
