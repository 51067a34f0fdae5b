"""The files beside a project file: what each may hold, and that nothing is given twice."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import Any

from specgen.model.field import Path, Schema
from specgen.reading.file_content import FileContent

ATTACHMENTS = "attachments"
RECORD = "record"
# The word for each that tells its documents apart from those of the project file.
SIDE_FILES = {"firm": "firm", "coating_system": "coating"}
# What may stand there besides the fields that are at home there.
BESIDE = {"firm": (ATTACHMENTS, "crews"), "coating_system": (ATTACHMENTS,), RECORD: (ATTACHMENTS,)}


def find_home(sections: Iterable[str], schema: Schema) -> str:
    """The kind of side file that these sections make up, firm, coating_system or record; empty for a project file."""
    given = {name for name in sections if name in schema.root.children} - {"format", ATTACHMENTS}
    for home, beside in BESIDE.items():
        own = {path[0] for path, field in schema.fields.items() if field.home == home}
        if given & own and given <= own | set(beside):
            return home
    return ""


def home_of(path: Path, schema: Schema) -> str:
    """The kind of file in which a field is at home; of a section, the one of its first field."""
    field = schema.field_at(path)
    if field is not None:
        return field.home
    return next(f.home for p, f in schema.fields.items() if p[0] == path[0])


def check_home(side: FileContent, home: str, schema: Schema) -> None:
    """Note what stands in a side file and belongs elsewhere."""
    for path in [*side.values, *side.members]:
        owner = home_of(path, schema)
        if owner != home and path[0] not in BESIDE[home]:
            side.text.problem(path, f"this belongs in the {owner.replace('_', ' ')} file, not here", "move it there")


def check_given_once(side: FileContent, home: str, schema: Schema, main: FileContent) -> None:
    """Note a firm section given in two files; figures of the coating manufacturer may differ from the plan's."""
    if home != "firm":
        return
    mixed = find_mixed(home, schema)
    # A section whose values all stand empty gives nothing.
    given = {path[:depth] for path in (*main.values, *main.members) for depth in (1, len(path))}
    for path in [*side.values, *side.members]:
        section = path if path[0] in mixed else path[:1]
        if path[0] != ATTACHMENTS and section in given:
            first = main.text.places[section]
            side.text.problem(
                section, f"this stands also in {first.file}, line {first.line}", "keep it in one file only"
            )
            return


def find_mixed(home: str, schema: Schema) -> set[str]:
    """The sections with fields of other homes, of which a side file may give its own fields beside another file."""
    return {path[0] for path, field in schema.fields.items() if field.home != home} - set(BESIDE[home])


def keep_attachments_apart(main: FileContent, sides: Mapping[str, FileContent], schema: Schema) -> None:
    """Mark the papers of side files whose mark another file has too: A30 of the firm file becomes `firm A30`."""
    files = (main, *sides.values())
    given = Counter(mark.casefold() for content in files for mark in content.members.get((ATTACHMENTS,), ()))
    for home, side in sides.items():
        own = side.members.get((ATTACHMENTS,), ())
        _mark_attachments(side, SIDE_FILES[home], {mark for mark in own if given[mark.casefold()] > 1}, schema)
        _check_apart(side, main)


def _check_apart(side: FileContent, main: FileContent) -> None:
    """Note a paper of a side file that the project file has given its mark."""
    taken = {mark.casefold(): mark for mark in main.members.get((ATTACHMENTS,), ())}
    for mark in side.members.get((ATTACHMENTS,), ()):
        if mark.casefold() in taken:
            other = main.text.places[ATTACHMENTS, taken[mark.casefold()]]
            message = f"{mark!r} is also a mark in {other.file}, line {other.line}"
            side.text.problem((ATTACHMENTS, mark), message, "give that one another mark")


def _mark_attachments(side: FileContent, word: str, shared: set[str], schema: Schema) -> None:
    """Put a word before these marks of a side file's attachments, and before what refers to them."""

    def marked(mark: str) -> str:
        return f"{word} {mark}" if mark in shared else mark

    def rename(path: Path) -> Path:
        return (ATTACHMENTS, marked(path[1]), *path[2:]) if path[0] == ATTACHMENTS and len(path) > 1 else path

    def link(path: Path, value: Any) -> Any:
        field = schema.field_at(path)
        if field is None or field.to != ATTACHMENTS:
            return value
        return tuple(map(marked, value)) if isinstance(value, tuple) else marked(value)

    for path, value in list(side.values.items()):
        del side.values[path]
        side.values[rename(path)] = link(path, value)
    for path in list(side.text.places):
        if path[:1] == (ATTACHMENTS,):
            side.text.places[rename(path)] = side.text.places[path]
    if (ATTACHMENTS,) in side.members:
        side.members[(ATTACHMENTS,)] = tuple(map(marked, side.members[(ATTACHMENTS,)]))
