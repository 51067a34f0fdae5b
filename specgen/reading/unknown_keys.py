"""A name that is not known where it stands: the name that is meant, or the place in which it belongs."""

import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Node, Path, Schema, dotted_path
from specgen.model.suggest import find_slip
from specgen.reading.positions import Text
from specgen.reading.schema import project_schema
from specgen.standards.rows import read_rows

_WORDS = FilePath(__file__).parent / "key_words.yaml"
_MOST_KNOWN, _MOST_PLACES = 24, 3


def explain_unknown(text: Text, path: Path, known: tuple[str, ...]) -> tuple[str, str]:
    """Message and hint for a name at `path` that is none of those known beside it."""
    schema = project_schema()
    name, message = path[-1], f"{path[-1]!r} is not known here"
    near = find_slip(name, known)
    if near:
        return message, f"did you mean {near}?"
    glued = re.fullmatch(r"(\w+)(:| +)(.+)", name)
    if glued and glued[1] in known:
        fault = "there is no space after the colon of" if glued[2] == ":" else "there is no colon after the name in"
        return f"{fault} {name!r}", f"write {glued[1]}: {glued[3].strip()}"
    hints = (
        _too_shallow(text, path, schema),
        _called(path, near=True),
        _too_deep(text, path, schema),
        _inside(path, schema),
        _called(path, near=False),
        _elsewhere(name, schema),
    )
    return message, next(filter(None, hints), _list_known(known, path))


def _too_shallow(text: Text, path: Path, schema: Schema) -> str:
    """That a name belongs below one that stands before it, at the same level."""
    beside = list(_data_at(text, path[:-1]))
    for before in reversed(beside[: beside.index(path[-1])]) if path[-1] in beside else ():
        node = _node_at(schema, (*path[:-1], before))
        if node is not None and path[-1] in node.children:
            return f"it belongs below {before}: indent it further than that"
    return ""


def _too_deep(text: Text, path: Path, schema: Schema) -> str:
    """That a name belongs further out, beside what it stands in."""
    for depth in range(len(path) - 2, -1, -1):
        node = _node_at(schema, path[:depth])
        if node is not None and path[-1] in node.children:
            place = text.places.get(path[: depth + 1])
            as_far = f", with {place.column - 1} spaces as line {place.line}" if place else ""
            return f"it belongs beside {path[depth]}: indent it less{as_far}"
    return ""


def _inside(path: Path, schema: Schema) -> str:
    """That a name stands in one of the sections beside it."""
    node = _node_at(schema, path[:-1])
    inside = [name for name, child in node.children.items() if path[-1] in child.children] if node else []
    return f"it belongs below {' or '.join(inside)}" if 0 < len(inside) <= _MOST_PLACES else ""


def _called(path: Path, *, near: bool) -> str:
    """The names for what people call so: those that stand here where `near`, else any."""
    asked = re.sub("[ -]", "_", path[-1].lower())
    meant = read_key_words().get(asked, ())
    here = [one for one in meant if _is_at(one[:-1], path[:-1])]
    if near:
        return f"write {' and '.join(one[-1] for one in here)}" if here else ""
    return f"write {' or '.join(map(dotted_path, meant[:_MOST_PLACES]))}" if meant else ""


def _elsewhere(name: str, schema: Schema) -> str:
    places = [dotted_path(path) for path in schema.fields if path[-1] == name]
    return f"it belongs at {' or '.join(places)}" if 0 < len(places) <= _MOST_PLACES else ""


def _list_known(known: tuple[str, ...], path: Path) -> str:
    if len(known) <= _MOST_KNOWN:
        return f"known: {', '.join(known)}" if known else ""
    below = f" {path[0]}" if len(path) > 1 else ""
    return f"known: {', '.join(known[:12])} ...; `specgen fields{below}` lists all"


@lru_cache(maxsize=1)
def read_key_words() -> dict[str, tuple[Path, ...]]:
    """What people call sections and fields, each with the paths it may stand for, stars for marks."""
    return {word: tuple(tuple(str(one).split(".")) for one in paths) for word, paths in read_rows(_WORDS).items()}


def _is_at(pattern: Path, path: Path) -> bool:
    return len(pattern) == len(path) and all(star in (name, "*") for star, name in zip(pattern, path, strict=True))


def _node_at(schema: Schema, path: Path) -> Node | None:
    try:
        return schema.node(path)
    except KeyError:
        return None


def _data_at(text: Text, path: Path) -> Iterator[str]:
    """The names that stand at a path, in the order of the file."""
    data: Any = text.data
    for name in path:
        data = data[int(name)] if isinstance(data, list) else data.get(name) if isinstance(data, dict) else None
    return iter(data) if isinstance(data, dict) else iter(())
