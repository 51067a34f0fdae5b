"""What is given of a record before it is read: files that a project names, and entries of the project file itself."""

from pathlib import Path
from typing import NamedTuple

from specgen.model.record import COLLECTIONS
from specgen.reading.file_content import NONE_UNWRITTEN, FileContent, Unwritten
from specgen.reading.given_file import FileUse, read_given_file

USE = FileUse("the record", "name a YAML, CSV, XLSX, or PDF file", 50_000_000, "split it")


class RecordGiven(NamedTuple):
    """A record file as it was read, once, and its name in messages."""

    path: Path
    shown: str
    content: bytes


def read_given(path: Path, shown: str, unwritten: Unwritten = NONE_UNWRITTEN) -> RecordGiven:
    """A record file, read once: what is written into it meanwhile is not seen; raises Refused."""
    content = unwritten.get(path.resolve()) if unwritten else None
    return RecordGiven(path, shown, read_given_file(path, USE, shown) if content is None else content)


def take_entries(source: FileContent) -> FileContent:
    """The entries of a project file, taken out of what else it gives."""
    values = {path: value for path, value in source.values.items() if path[0] in COLLECTIONS}
    members = {path: marks for path, marks in source.members.items() if path[0] in COLLECTIONS}
    for path in values:
        del source.values[path]
    for path in members:
        del source.members[path]
    return FileContent(source.text, values, members, source.rules)
