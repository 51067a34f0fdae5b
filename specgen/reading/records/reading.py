"""Reads record files into the entries of a project: each file once, by what it is, its faults told together."""

import dataclasses
import gc
from collections.abc import Iterable
from pathlib import Path as FilePath

from specgen.model.digest import digest
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused
from specgen.model.project import InputFile, Project
from specgen.model.record import EntryPlace
from specgen.reading.csv_reading import open_csv, tell_code
from specgen.reading.file_content import FileContent, read_content
from specgen.reading.records.cell_reading import CellReader
from specgen.reading.records.form_file import read_form
from specgen.reading.records.form_rows import FormReader
from specgen.reading.records.gathering import Gathering
from specgen.reading.records.given import USE, RecordGiven, read_given
from specgen.reading.records.steps import tell_steps
from specgen.reading.records.table_reading import TableReader
from specgen.reading.records.yaml_entries import add_entries, add_record_file
from specgen.reading.rules import Rules
from specgen.reading.workbook_reading import read_sheets

_NO_HEAD = ("no row has the titles of a record", "`specgen record --blank weather` writes a file to begin with")


def add_records(project: Project, paths: Iterable[FilePath]) -> Project:
    """The project with the entries of these files behind its own; raises Refused with every fault of every file."""
    added = survey_records(project, [read_given(path, str(path)) for path in paths])
    if added.records.faults:
        raise Refused(*added.records.faults)
    return added


def survey_records(project: Project, files: Iterable[RecordGiven], own: FileContent | None = None) -> Project:
    """The project with the entries of these files behind its own, as far as they can be read; faults in its records.

    `own` are entries of the project file itself. A cell that cannot be read leaves its field without a value.
    """
    collecting = gc.isenabled()
    gc.disable()  # what is read stays: looking through it for what is left over takes longer than reading it
    try:
        return _survey(project, files, own)
    finally:
        if collecting:
            gc.enable()


def _survey(project: Project, files: Iterable[RecordGiven], own: FileContent | None) -> Project:
    gathering = Gathering(project, CellReader(project))
    if own is not None:
        add_entries(gathering, own)
    inputs = []
    for given in files:
        before, read = gathering.count_entries(), digest(given.content)
        try:
            _read_file(gathering, given)
        except Refused as refused:
            gathering.faults += [dataclasses.replace(one, file=one.file or given.shown) for one in refused.problems]
        gathering.finish_file(given.shown, read, before)
        inputs.append(InputFile("records", given.shown, read))
    gathering.remarks.extend(tell_steps(project, gathering.entries))
    return put_entries(project, gathering, tuple(inputs))


def put_entries(project: Project, gathering: Gathering, inputs: tuple[InputFile, ...] = ()) -> Project:
    """The project with all that was gathered: entries, marks of their collections, settings of the mockup."""
    records = gathering.records()
    members = {(name,): tuple(map(str, range(len(entries)))) for name, entries in records.entries.items()}
    return dataclasses.replace(
        project,
        records=records,
        members=project.members | members,
        values=project.values | {path: value for path, (value, _) in gathering.accepted.items()},
        places=project.places | {path: place for path, (_, place) in gathering.accepted.items()},
        inputs=(*project.inputs, *inputs),
    )


def _read_file(gathering: Gathering, given: RecordGiven) -> None:
    """Add what the bytes of a file hold, by what they are; raises Refused where they are no record."""
    content = given.content
    ending = given.path.suffix.lower()
    if content.startswith(b"%PDF-") or ending == ".pdf":
        if not FormReader(gathering, given.shown).read(read_form(content, given.shown)):
            raise Refused(Problem("this PDF is no form of the record", USE.wanted, file=given.shown))
    elif content.startswith(b"PK") or ending == ".xlsx":
        _read_workbook(gathering, given)
    elif ending == ".csv":
        _read_csv(gathering, given)
    elif ending in (".yaml", ".yml"):
        schema = gathering.project.schema
        source = read_content(given.path, given.shown, schema, Rules(), {given.path.resolve(): content})
        add_record_file(gathering, source)
    else:
        raise Refused(Problem("a record is a YAML, CSV, XLSX, or PDF file", USE.wanted, file=given.shown))


def _read_csv(gathering: Gathering, given: RecordGiven) -> None:
    table = open_csv(given.content, given.shown)
    found = find_forbidden(table.text)
    if found:
        line = table.text.count("\n", 0, found[0]) + 1
        raise Refused(Problem(found[1], found[2], file=given.shown, line=line))
    reader = TableReader(gathering, given.shown, comma=table.sign == ";")
    if not reader.read(enumerate(table.rows, 1)):
        raise Refused(Problem(*_NO_HEAD, file=given.shown))
    for note in tell_code(table.code, given.shown):
        gathering.remark(note.partition(": ")[2], "", EntryPlace(given.shown))
    if not table.text.endswith(("\n", "\r")):
        message = "the last row has no line end: it may be cut short"
        gathering.remark(message, "look at its last cell", EntryPlace(given.shown))


def _read_workbook(gathering: Gathering, given: RecordGiven) -> None:
    found = False
    for name, grid in read_sheets(given.content, given.shown).items():
        rows = grid.list_rows()
        found = TableReader(gathering, given.shown, name).read(rows) or found
    if not found:
        raise Refused(Problem(*_NO_HEAD, file=given.shown))
