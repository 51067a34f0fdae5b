"""What one file of a project holds: its text, typed values, and members."""

import dataclasses
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Path, Schema
from specgen.reading.leaves import read_values
from specgen.reading.positions import Text, read_text
from specgen.reading.rules import Rules
from specgen.reading.structure import build_structure


@dataclass
class FileContent:
    """The content of one file: its text, typed values, members, rules, and the side files it names.

    Collections of which no member has a value yet, as in a starter, are not among the members.
    """

    text: Text
    values: dict[Path, Any]
    members: dict[Path, tuple[str, ...]]
    rules: Rules
    unfilled: dict[Path, tuple[str, ...]] = dataclasses.field(default_factory=dict)
    named: set[FilePath] = dataclasses.field(default_factory=set)


def read_content(path: FilePath, shown: str, schema: Schema, rules: Rules) -> FileContent:
    """The content of the file at `path`, named `shown` in messages; its faults are noted on its text.

    Raises Refused where it is no YAML mapping.
    """
    text = read_text(path, shown)
    structure = build_structure(text, schema.root)
    values = read_values(text, structure.records, rules)
    if values.get(("format",), 1) != 1:
        text.problem(("format",), "this format is not known", "write format: 1")
    return FileContent(text, values, structure.members, rules, structure.unfilled)
