"""Holds what answers have given against the values of the project as they stand now.

The list is kept by `specgen take`: a value that was changed, moved or emptied since is never at fault for it.
"""

from typing import Any

from specgen.model.field import Field, Path, dotted_path
from specgen.model.project import Answered, Project
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.list_text import split_list

ANSWERS = "answers"
_IS = " = "
_ALL = "*"  # each member of a collection


def write_entry(path: Path, text: str) -> str:
    """The entry of a value that was answered: `mockup.width = 5 ft`."""
    return f"{dotted_path(path)}{_IS}{text}"


def match_answers(project: Project) -> dict[Path, Answered]:
    """The values that answers have given, by path; of two answers the one whose value stands, else the last."""
    entries = _list_entries(project)
    given = {dotted_path(path): path for path in project.values} if entries else {}
    matched: dict[Path, Answered] = {}
    for (name, text), mark in entries.items():
        for path in _list_paths(given, name):
            field = project.schema.field_at(path)
            if field is None:
                continue
            found = Answered(mark, text, _is_value(field, text, project.values[path]))
            if found.stands or path not in matched or not matched[path].stands:
                matched[path] = found
    return matched


def _list_entries(project: Project) -> dict[tuple[str, str], str]:
    """Each name and text that was answered, in their order, with the mark of the last answer that says so."""
    entries: dict[tuple[str, str], str] = {}
    for mark in project.members.get((ANSWERS,), ()):
        for entry in project.values.get((ANSWERS, mark, "fields"), ()):
            name, _, text = entry.partition(_IS)
            entries.pop((name.strip(), text.strip()), None)
            entries[name.strip(), text.strip()] = mark
    return entries


def _list_paths(given: dict[str, Path], name: str) -> list[Path]:
    """The path of a name; of one with stars, as `joints.*.width`, those of all members that give it."""
    if _ALL not in name.split("."):
        return [given[name]] if name in given else []
    parts = name.split(".")
    return [
        path
        for path in given.values()
        if len(path) == len(parts) and all(part in (_ALL, mark) for part, mark in zip(parts, path, strict=True))
    ]


def _is_value(field: Field, text: str, value: Any) -> bool:
    """Whether a text means this value."""
    try:
        if field.kind == "list":
            return bool(tuple(convert(field, entry) for entry in split_list(text)) == value)
        return bool(convert(field, text) == value)
    except (InvalidValue, TypeError):
        return False
