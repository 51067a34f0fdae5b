"""What a row may hold, as a table of its keys: whether each must be given, and what kind of value it takes.

A kind checks and converts in one go, so that a row is built from what its table made of it. Cerberus, which holds
such tables for what a project says, would take 40 ms for the shapes of the schema alone; this takes 3, at every start.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any, NamedTuple

from specgen.model.field import Schema
from specgen.model.figure_text import figures_asked
from specgen.model.suggest import suggest
from specgen.standards.references import check_choice, check_collection, check_condition, check_path, find_field
from specgen.standards.rows import Data, Wrong

_LIMIT_ASKED = re.compile(r"""\b(?:limit|figure)\(\s*['"]([^'"]*)['"]\s*\)""")


class Known(NamedTuple):
    """What rows may refer to by name: the rows of each file as written, and those already typed."""

    rows: Mapping[str, Mapping[str, Any]]
    typed: dict[str, dict[str, Any]]


class Kind(NamedTuple):
    """A kind of value: its description, its conversion, and its check against the schema.

    Both functions raise Wrong.
    """

    what: str
    convert: Callable[[Data, Known], Any]
    check_fields: Callable[[Any, Schema], None] | None = None


class Shape:
    """The keys of a row with the kind of each: those that must be given, and those that may."""

    def __init__(self, needed: Mapping[str, Kind], optional: Mapping[str, Kind] | None = None) -> None:
        self.needed, self.keys = needed, {**needed, **(optional or {})}
        self._converts = {key: kind.convert for key, kind in self.keys.items()}
        self._field_checks = {
            key: kind.check_fields for key, kind in self.keys.items() if kind.check_fields is not None
        }

    def convert(self, row: Data, known: Known) -> dict[str, Any]:
        """The typed values of a row by key; raises Wrong."""
        if not isinstance(row, dict):
            raise Wrong(f"{_name_data(row)} stands here", f"write the keys of a row: {', '.join(self.keys)}")
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

    def check_fields(self, row: Mapping[str, Data], schema: Schema) -> None:
        """Check what a row says of fields; raises Wrong."""
        for key, check in self._field_checks.items():
            if key in row:
                try:
                    check(row[key], schema)
                except Wrong as wrong:
                    raise wrong.inside(key) from None


def _name_data(value: Data) -> str:
    return "a list" if isinstance(value, list) else "a mapping" if isinstance(value, dict) else "a text"


def _require_any_text(value: Data, known: Known) -> str:
    if not isinstance(value, str):
        raise Wrong(f"{_name_data(value)} stands here", "write a text")
    return value


def _require_text(value: Data, known: Known) -> str:
    if not isinstance(value, str) or not value:
        raise Wrong(f"{_name_data(value) if value else 'nothing'} stands here", "write a text")
    return value


def _check_template(value: Data, known: Known) -> str:
    text = _require_any_text(value, known)
    for name in _LIMIT_ASKED.findall(text) if "limit(" in text or "figure(" in text else ():
        _look_up(name, known.rows["limits"], "limits")
    return text


def _check_figures(value: Data, known: Known) -> str:
    text = _require_text(value, known)
    for name in figures_asked(text):
        _look_up(name, known.rows["limits"], "limits")
    return text


def _look_up(name: str, rows: Iterable[str], file: str) -> None:
    if name not in rows:
        raise Wrong(f"{name!r} is no row of {file}.yaml", suggest(name, rows))


ANY_TEXT = Kind("a text, or nothing", _require_any_text)
TEXT = Kind("a text", _require_text)
WITH_FIGURES = Kind("a text", _check_figures)
TEMPLATE = Kind("a text", _check_template)
CONDITION = Kind("a condition, such as `gloss.coats > 1`", _require_any_text, check_condition)
COLLECTION = Kind("a collection with marks, such as elevations", _require_text, check_collection)
PATH = Kind("the path of a field", lambda value, known: tuple(_require_text(value, known).split(".")), check_path)


def one_of(words: Iterable[str] | Mapping[str, Any], what: str = "") -> Kind:
    """One of some words; for a mapping, the value it gives for the word."""
    meant = words if isinstance(words, Mapping) else {word: word for word in words}

    def convert(value: Data, known: Known) -> Any:
        if not isinstance(value, str):
            raise Wrong(f"{_name_data(value)} stands here", f"write {wanted}")
        if value not in meant:
            raise Wrong(f"{value!r} is not known", suggest(value, meant))
        return meant[value]

    wanted = what or f"one of {', '.join(meant)}"
    return Kind(wanted, convert)


YES_NO = one_of({"yes": True, "no": False})


def name_in(file: str) -> Kind:
    """The name of a row of a file."""

    def convert(value: Data, known: Known) -> str:
        name = _require_any_text(value, known)
        _look_up(name, known.rows[file], file)
        return name

    return Kind(f"the name of a row of {file}.yaml", convert)


def row_in(file: str) -> Kind:
    """A row of a file read earlier, by its name."""
    name = name_in(file)
    return Kind(name.what, lambda value, known: known.typed[file][name.convert(value, known)])


def list_of(kind: Kind) -> Kind:
    """A list, possibly empty, without duplicates."""

    def convert(value: Data, known: Known) -> tuple[Any, ...]:
        if not isinstance(value, list):
            raise Wrong(f"{_name_data(value)} stands here", "write a list, in brackets")
        typed: list[Any] = []
        for place, entry in enumerate(value):
            try:
                typed.append(kind.convert(entry, known))
            except Wrong as wrong:
                raise wrong.inside(place) from None
            if entry in value[:place]:
                raise Wrong(f"{entry!r} stands twice in the list", "keep one of them", (place,))
        return tuple(typed)

    return Kind(
        f"a list, each entry {kind.what}", convert, _check_each(kind.check_fields) if kind.check_fields else None
    )


def _check_each(check: Callable[[Any, Schema], None]) -> Callable[[list[Data], Schema], None]:
    def check_entries(entries: list[Data], schema: Schema) -> None:
        for place, entry in enumerate(entries):
            try:
                check(entry, schema)
            except Wrong as wrong:
                raise wrong.inside(place) from None

    return check_entries


def choice_of(path: str) -> Kind:
    """One of the choices of a field."""
    field_path = tuple(path.split("."))
    return Kind(
        f"a choice of {path}",
        _require_any_text,
        lambda value, schema: check_choice(value, find_field(field_path, schema)),
    )


def text_or(key: str, text: Kind, shape: Shape, make: Callable[..., Any]) -> Kind:
    """A mapping, or a text alone, which then is the value of `key`."""

    def convert(value: Data, known: Known) -> Any:
        if isinstance(value, str):
            return make(**{key: text.convert(value, known)})
        return make(**shape.convert(value, known))

    def check_fields(value: Data, schema: Schema) -> None:
        if isinstance(value, dict):
            shape.check_fields(value, schema)

    return Kind(f"{text.what}, or a mapping of {', '.join(shape.keys)}", convert, check_fields)
