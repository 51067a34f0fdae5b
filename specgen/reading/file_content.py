"""What one file of a project holds: its text, typed values, and members."""

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Path, Schema
from specgen.reading.leaves import read_values
from specgen.reading.positions import Text, parse_text, read_text
from specgen.reading.rules import Rules
from specgen.reading.structure import build_structure

# Contents of files that are not written yet, by resolved path.
Unwritten = Mapping[FilePath, bytes]
NONE_UNWRITTEN: Unwritten = {}


@dataclass
class FileContent:
    """The content of one file: its text, typed values, members, rules, and the side files it names.

    Members that have no value yet, as in a starter, are apart; a collection that has no others is not given.
    """

    text: Text
    values: dict[Path, Any]
    members: dict[Path, tuple[str, ...]]
    rules: Rules
    unfilled: dict[Path, tuple[str, ...]] = dataclasses.field(default_factory=dict)
    named: set[FilePath] = dataclasses.field(default_factory=set)
    unwritten: Unwritten = dataclasses.field(default_factory=dict)


def read_content(
    path: FilePath, shown: str, schema: Schema, rules: Rules, unwritten: Unwritten = NONE_UNWRITTEN
) -> FileContent:
    """The content of the file at `path`, named `shown` in messages; its faults are noted on its text.

    What is not written yet is read in place of what stands in the file. Raises Refused where it is no YAML mapping.
    """
    source = unwritten.get(path.resolve()) if unwritten else None
    text = read_text(path, shown) if source is None else parse_text(source, shown)
    structure = build_structure(text, schema.root)
    values = read_values(text, structure.records, rules)
    if values.get(("format",), 1) != 1:
        text.problem(("format",), "this format is not known", "write format: 1")
    return FileContent(text, values, structure.members, rules, structure.unfilled, unwritten=unwritten)
