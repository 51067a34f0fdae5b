"""A side file that `check` is given: looked through by itself, as its project may not be there yet."""

import os
from dataclasses import replace
from pathlib import Path as FilePath
from typing import Any

from specgen.commands import DONE, Outcome
from specgen.judging.open_items import open_items
from specgen.model.field import Path
from specgen.model.finding import OpenItem
from specgen.reading.project import defaults
from specgen.reading.project_files import list_naming
from specgen.reading.schema import project_schema
from specgen.reading.side_file import SideFile, SideFileGiven, look_through
from specgen.reading.side_files import BESIDE, home_of
from specgen.terminal.report import report_to_data
from specgen.terminal.side_report import format_side_file


def answer_side_file(given: SideFileGiven, as_data: bool) -> Outcome:
    """What a side file gives and leaves open; raises Refused with its faults."""
    side = look_through(given, project_schema())
    items = _list_open(side)
    if as_data:
        return Outcome(DONE, data=_make_data(items))
    folder, name = os.path.split(given.file)
    named_by = [str(FilePath(folder) / file) for file in list_naming(FilePath(folder), name)]
    return Outcome(DONE, format_side_file(side, items, named_by))


def _list_open(side: SideFile) -> list[OpenItem]:
    """What is owed and not given, of the fields at home there and of the members that the file itself gives."""
    schema = side.given.schema
    project = replace(side.given, defaults=defaults(schema, "ip"))
    listed = open_items(project, (), lambda _: None)
    paths = [(item, tuple(item.path.split("."))) for item in listed]
    return [item for item, path in paths if home_of(path, schema) == side.home or _is_beside(side, path)]


def _is_beside(side: SideFile, path: Path) -> bool:
    """Whether a field is one of a member that the file gives though it is at home elsewhere, such as a document."""
    return len(path) > 1 and path[0] in BESIDE[side.home] and path[1] in side.given.members.get(path[:1], ())


def _make_data(items: list[OpenItem]) -> dict[str, Any]:
    data = report_to_data(None, None)
    data["counts"] |= {"open": len(items)}
    data["open"] = [
        {"path": item.path, "ring": item.ring, "owed_by": item.owed_by, "holds_up": list(item.holds_up)}
        for item in items
    ]
    return data
