"""What is given of a record before it is read: files that a project names, and entries of the project file itself."""

from pathlib import Path
from typing import NamedTuple

from specgen.model.record import COLLECTIONS
from specgen.reading.file_content import FileContent


class RecordGiven(NamedTuple):
    """A record file, and its name in messages."""

    path: Path
    shown: str


def take_entries(source: FileContent) -> FileContent:
    """The entries of a project file, taken out of what else it gives."""
    values = {path: value for path, value in source.values.items() if path[0] in COLLECTIONS}
    members = {path: marks for path, marks in source.members.items() if path[0] in COLLECTIONS}
    for path in values:
        del source.values[path]
    for path in members:
        del source.members[path]
    return FileContent(source.text, values, members, source.rules)
