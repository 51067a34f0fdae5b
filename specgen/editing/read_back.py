"""Reads an edited file back: nothing that stood there may have changed, and what was added must be there."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from specgen.editing.edit import Addition
from specgen.editing.planning import value_at
from specgen.editing.values import find_entry, read_typed
from specgen.model.field import Path, Schema, dotted_path
from specgen.model.problem import Problem, Refused
from specgen.reading.positions import Text, parse_text
from specgen.reading.unknown import TBD


def read_clean(source: bytes, shown: str) -> Text:
    """The content of a file; raises Refused for every fault that makes its text ambiguous."""
    text = parse_text(source, shown)
    if text.problems:
        raise Refused(*text.problems)
    return text


def read_edited(source: bytes, shown: str) -> Text:
    """The content of a file after an edit; raises Refused where that has made it no YAML, which no file may become."""
    try:
        return read_clean(source, shown)
    except Refused:
        raise _refuse(shown, (), None) from None


def check_edited(before: Text, after: Text, taken: Mapping[Path, Addition], schema: Schema) -> tuple[str, ...]:
    """What else an edit has changed, in words; raises Refused where a value is not as it was or as it was to be."""
    for path, addition in taken.items():
        field = find_entry(schema, path)
        assert field is not None
        if value_at(after.data, path) != read_typed(field, addition.text):
            raise _refuse(after.file, path, addition)
    old, new = dict(_leaves(before.data, ())), dict(_leaves(after.data, ()))
    lost = [path for path, value in old.items() if value is not TBD and not _is_kept(path, value, new, taken)]
    if lost:
        raise _refuse(after.file, lost[0], None)
    changed = {
        path: value
        for path, value in new.items()
        if old.get(path, TBD) is TBD and (value is not TBD or path not in old)
    }
    return tuple(_tell_repeated(after, changed, taken))


def _tell_repeated(after: Text, changed: Mapping[Path, Any], taken: Mapping[Path, Addition]) -> Iterator[str]:
    """What has become of other values, which repeat those that were added; raises Refused for what repeats none."""
    written = {(after.places[path].line, after.places[path].column): path for path in taken}
    for path in (path for path in changed if path not in taken):
        place = after.places[path]
        same = (one for one in taken if value_at(after.data, one) == changed[path])
        source = written.get((place.line, place.column)) or next(same, None)
        if source is None:
            raise _refuse(after.file, path, None)
        if changed[path] is not TBD:
            yield f"{dotted_path(path)} has the value too, as it repeats {dotted_path(source)}"


def _is_kept(path: Path, value: Any, new: Mapping[Path, Any], taken: Mapping[Path, Addition]) -> bool:
    """Whether a value is as it was; the line end behind a text in lines is no part of it."""
    if path in taken:
        return True
    if path in new:
        return bool(new[path] == value) or str(new[path]).rstrip("\n") == str(value).rstrip("\n")
    return not value and any(added[: len(path)] == path for added in taken)


def _leaves(data: Any, path: Path) -> Iterator[tuple[Path, Any]]:
    """The values below a path; a list of texts is one."""
    pairs: Iterable[tuple[Any, Any]] = ()
    if isinstance(data, dict):
        pairs = data.items()
    elif isinstance(data, list) and any(isinstance(entry, (dict, list)) for entry in data):
        pairs = enumerate(data)
    if not pairs:
        yield path, data
    for name, value in pairs:
        yield from _leaves(value, (*path, str(name)))


def _refuse(file: str, path: Path, addition: Addition | None) -> Refused:
    hint = f"write {path[-1]}: {addition.text} there by hand" if addition else "write the new values there by hand"
    return Refused(Problem("nothing was changed: a value cannot be put here safely", hint, dotted_path(path), file))
