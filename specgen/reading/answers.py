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


def write_entry(path: Path, text: str) -> str:
    """The entry of a value that was answered: `mockup.width = 5 ft`."""
    return f"{dotted_path(path)}{_IS}{text}"


def match_answers(project: Project) -> dict[Path, Answered]:
    """The values that answers have given, by path; of two answers the one whose value stands, else the last."""
    given: dict[str, Path] = {}
    matched: dict[Path, Answered] = {}
    for mark in project.members.get((ANSWERS,), ()):
        given = given or {dotted_path(path): path for path in project.values}
        for entry in project.values.get((ANSWERS, mark, "fields"), ()):
            name, _, text = entry.partition(_IS)
            path = given.get(name.strip())
            field = project.schema.field_at(path) if path is not None else None
            if path is None or field is None:
                continue
            found = Answered(mark, text.strip(), _is_value(field, text.strip(), project.values[path]))
            if found.stands or path not in matched or not matched[path].stands:
                matched[path] = found
    return matched


def _is_value(field: Field, text: str, value: Any) -> bool:
    """Whether a text means this value."""
    try:
        if field.kind == "list":
            return bool(tuple(convert(field, entry) for entry in split_list(text)) == value)
        return bool(convert(field, text) == value)
    except (InvalidValue, TypeError):
        return False
