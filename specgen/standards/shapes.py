"""What a row may hold, as a table of its keys: whether each must be given, and what kind of value it takes.

A kind checks and converts in one go, so that a row is built from what its table made of it. Cerberus, which holds
such tables for what a project says, would take 40 ms for the shapes of the schema alone; this takes 3, at every start.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any, NamedTuple

from specgen.model.field import Schema
from specgen.model.suggest import suggest
from specgen.standards.references import check_choice, check_condition, check_path, field_of
from specgen.standards.rows import Wrong

_LIMIT_ASKED = re.compile(r"""\blimit\(\s*['"]([^'"]*)['"]\s*\)""")


class Known(NamedTuple):
    """What rows may refer to by name: the rows of each file as they are written, and those made so far."""

    rows: Mapping[str, Mapping[str, Any]]
    made: dict[str, dict[str, Any]]


class Kind(NamedTuple):
    """A kind of value: in words, how it is converted, and what of it can only be checked against the schema.

    Both functions raise Wrong.
    """

    what: str
    convert: Callable[[Any, Known], Any]
    cross: Callable[[Any, Schema], None] | None = None


class Shape:
    """The keys of a row with the kind of each: those that must be given, and those that may."""

    def __init__(self, needed: Mapping[str, Kind], optional: Mapping[str, Kind] | None = None) -> None:
        self.needed, self.keys = needed, {**needed, **(optional or {})}
        self._converts = {key: kind.convert for key, kind in self.keys.items()}
        self._crosses = {key: kind.cross for key, kind in self.keys.items() if kind.cross is not None}

    def convert(self, row: Any, known: Known) -> dict[str, Any]:
        """The typed values of a row by key; raises Wrong."""
        if row.__class__ is not dict:
            raise Wrong(f"{_noun(row)} stands here", f"write the keys of a row: {', '.join(self.keys)}")
        typed, converts = {}, self._converts
        for key, value in row.items():
            if key not in converts:
                raise Wrong("there is no such key here", suggest(key, converts), (key,))
            try:
                typed[key] = converts[key](value, known)
            except Wrong as wrong:
                raise wrong.inside(key) from None
        for key in self.needed:
            if key not in typed:
                raise Wrong(f"the key {key} is missing", f"write {self.needed[key].what}")
        return typed

    def cross(self, row: Mapping[str, Any], schema: Schema) -> None:
        """Check what a row says of fields; raises Wrong."""
        for key, check in self._crosses.items():
            if key in row:
                try:
                    check(row[key], schema)
                except Wrong as wrong:
                    raise wrong.inside(key) from None


def _noun(value: Any) -> str:
    return "a list" if isinstance(value, list) else "a mapping" if isinstance(value, dict) else "a text"


def _any_text(value: Any, known: Known) -> Any:
    if value.__class__ is not str:
        raise Wrong(f"{_noun(value)} stands here", "write a text")
    return value


def _text(value: Any, known: Known) -> Any:
    if value.__class__ is not str or not value:
        raise Wrong(f"{_noun(value) if value else 'nothing'} stands here", "write a text")
    return value


def _template(value: Any, known: Known) -> str:
    text: str = _any_text(value, known)
    for name in _LIMIT_ASKED.findall(text) if "limit(" in text else ():
        _look_up(name, known.rows["limits"], "limits")
    return text


def _look_up(name: str, rows: Iterable[str], file: str) -> None:
    if name not in rows:
        raise Wrong(f"{name!r} is no row of {file}.yaml", suggest(name, rows))


ANY_TEXT = Kind("a text, or nothing", _any_text)
TEXT = Kind("a text", _text)
TEMPLATE = Kind("a text", _template)
CONDITION = Kind("a condition, such as `gloss.coats > 1`", _any_text, check_condition)
PATH = Kind("the path of a field", lambda value, known: tuple(_text(value, known).split(".")), check_path)


def one_of(words: Iterable[str] | Mapping[str, Any], what: str = "") -> Kind:
    """One of some words; of a mapping, what it makes of the word."""
    meant = words if isinstance(words, Mapping) else {word: word for word in words}

    def convert(value: Any, known: Known) -> Any:
        if value.__class__ is not str:
            raise Wrong(f"{_noun(value)} stands here", f"write {told}")
        if value not in meant:
            raise Wrong(f"{value!r} is not known", suggest(value, meant))
        return meant[value]

    told = what or f"one of {', '.join(meant)}"
    return Kind(told, convert)


YES_NO = one_of({"yes": True, "no": False})


def name_in(file: str) -> Kind:
    """The name of a row of a file."""

    def convert(value: Any, known: Known) -> str:
        _look_up(_any_text(value, known), known.rows[file], file)
        return str(value)

    return Kind(f"the name of a row of {file}.yaml", convert)


def row_in(file: str) -> Kind:
    """A row of a file that stands before, by its name."""
    name = name_in(file)
    return Kind(name.what, lambda value, known: known.made[file][name.convert(value, known)])


def list_of(kind: Kind) -> Kind:
    """A list, empty or not, in which nothing stands twice."""

    def convert(value: Any, known: Known) -> tuple[Any, ...]:
        if value.__class__ is not list:
            raise Wrong(f"{_noun(value)} stands here", "write a list, in brackets")
        typed: list[Any] = []
        for place, entry in enumerate(value):
            try:
                typed.append(kind.convert(entry, known))
            except Wrong as wrong:
                raise wrong.inside(place) from None
            if entry in value[:place]:
                raise Wrong(f"{entry!r} stands twice in the list", "keep one of them", (place,))
        return tuple(typed)

    def cross(value: Any, schema: Schema) -> None:
        for place, entry in enumerate(value):
            try:
                kind.cross(entry, schema)  # type: ignore[misc]
            except Wrong as wrong:
                raise wrong.inside(place) from None

    return Kind(f"a list, each entry {kind.what}", convert, cross if kind.cross else None)


def choice_of(path: str) -> Kind:
    """One of the choices of a field."""
    made = tuple(path.split("."))
    return Kind(f"a choice of {path}", _any_text, lambda value, schema: check_choice(value, field_of(made, schema)))


def text_or(key: str, text: Kind, shape: Shape, make: Callable[..., Any]) -> Kind:
    """A mapping of more keys, or a text alone, which is then what stands under `key`."""

    def convert(value: Any, known: Known) -> Any:
        if value.__class__ is str:
            return make(**{key: text.convert(value, known)})
        return make(**shape.convert(value, known))

    def cross(value: Any, schema: Schema) -> None:
        if value.__class__ is dict:
            shape.cross(value, schema)

    return Kind(f"{text.what}, or a mapping of {', '.join(shape.keys)}", convert, cross)
