"""A cell of a record to the typed value of its field, each text of a column worked out once."""

import datetime
import re
from typing import Any, NamedTuple

from specgen.model.field import Field
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS
from specgen.quantities.number import is_number
from specgen.reading.answer_text import read_answer
from specgen.reading.clock_text import read_day_share
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.dangling import tell_dangling
from specgen.reading.grid import Cell
from specgen.reading.rules import Rules

_TICKS = {"x", "\u2713", "\u2714", "\u2611", "\u2612", "true"}
_NONE = {"none", "[]"}
_DECIMAL_COMMA = re.compile(r"([+-]?\d+),(\d+)(?![\d,])(.*)")
_UNBOUNDED = ("text", "reference", "yes_no", "time")  # kinds that the rules of a section do not bound
_THOUSAND = 3  # digits behind a comma that may part thousands
_COUNTED = ("quantity", "number", "integer", "percent")
# Days that a spreadsheet counts from 1899-12-30: from 1982 to 2118 (from memory).
_DAY_ZERO, _SERIALS = datetime.date(1899, 12, 30), range(30_000, 80_000)


class Read(NamedTuple):
    """A value that was read, and the number by which it is told from other values of its field."""

    value: Any
    code: int


class NoUnit(InvalidValue):
    """A bare number stands where neither it nor its column tells the unit."""


class CellReader:
    """Reads the cells of all record files of a project: values, units, marks, and choices are checked."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self._rules = Rules()
        self._codes: dict[tuple[str, Any], int] = {}

    def find_field(self, collection: str, name: str) -> Field:
        """The field of a collection, or of the settings accepted, by its last name."""
        return self.project.schema.fields[collection, name]

    def code_of(self, name: str, value: Any) -> int:
        """The number of a value, the same for equal values of fields of this name."""
        return self._codes.setdefault((name, value), len(self._codes))

    def read(self, field: Field, cell: Cell, unit: str = "", comma: bool = False) -> Read | None:
        """The value of a cell, None where it holds none; raises InvalidValue.

        `unit` is that of a bare number; `comma` stands for a comma as decimal sign.
        """
        prepared = _prepare(cell, field, comma)
        answer = read_answer(prepared, field, self.project, unit)
        if answer is None:
            return None
        values = [self._convert(field, entry) for entry in answer.entries]
        value = tuple(values) if answer.listed else values[0]
        return Read(value, self.code_of(field.path[-1], value))

    def _convert(self, field: Field, text: str) -> Any:
        kind = field.of or field.kind
        if kind == "quantity" and is_number(text):
            raise NoUnit(f"{text!r} has no unit", f"write it behind the number, such as {field.example}")
        section, name = field.path
        node = self.project.schema.node((section, "*") if section in COLLECTIONS else (section,))
        value = convert(field, text) if kind in _UNBOUNDED else self._rules.of(node).value((name,), text)
        if field.to:
            known = self.project.members.get((field.to,), ())
            if value not in known:
                raise InvalidValue(*tell_dangling(self.project.schema, field, value, known))
        return value


def _prepare(cell: Cell, field: Field, comma: bool) -> Cell:
    """A cell with what only records hold made plain: ticks, shares of a day, decimal commas, days that are counted."""
    value, kind = cell.value, field.of or field.kind
    if isinstance(value, str):
        return cell._replace(value=_prepare_text(value.strip(), field, comma))
    if kind == "time":
        return cell._replace(value=_find_time(value))
    if kind == "date" and isinstance(value, (int, float)) and not isinstance(value, bool) and int(value) in _SERIALS:
        return cell._replace(value=_DAY_ZERO + datetime.timedelta(days=int(value)))
    if kind == "date" and isinstance(value, datetime.datetime) and value.time() != datetime.time():
        raise InvalidValue(f"the cell holds a day and a time, {value:%Y-%m-%d %H:%M}", "put each in its own column")
    return cell


def _prepare_text(text: str, field: Field, comma: bool) -> str:
    kind = field.of or field.kind
    if kind == "yes_no" and text.casefold() in _TICKS:
        return "yes"
    if comma and kind in _COUNTED:
        return _read_comma(text)
    if kind == "date" and text.isdecimal() and int(text) in _SERIALS:
        meant = _DAY_ZERO + datetime.timedelta(days=int(text))
        raise InvalidValue(f"{text!r} is a day as a spreadsheet counts it", f"write {meant.isoformat()} if so")
    if field.kind == "list" and text.casefold() in _NONE:
        return "[]"
    return text


def _read_comma(text: str) -> str:
    """A number with a decimal point in place of its comma; raises InvalidValue where the comma may part thousands."""
    found = _DECIMAL_COMMA.fullmatch(text)
    if not found:
        return text
    if len(found[2]) == _THOUSAND and found[1].lstrip("+-0"):
        wanted = f"{found[1]}.{found[2]}{found[3]} or {found[1]}{found[2]}{found[3]}"
        raise InvalidValue(f"the comma of {text!r} can be read in two ways", f"write {wanted}")
    return f"{found[1]}.{found[2]}{found[3]}"


def _find_time(value: Any) -> Any:
    """The time of day that a workbook holds as a time, a span, or a share of a day; any other value as it is."""
    if isinstance(value, datetime.timedelta) and datetime.timedelta() <= value < datetime.timedelta(days=1):
        return (datetime.datetime.min + value).time()
    if isinstance(value, datetime.datetime) and value.date() <= _DAY_ZERO + datetime.timedelta(days=2):
        return value.time()
    if isinstance(value, float):
        return read_day_share(value) or value
    return datetime.time() if value == 0 and value.__class__ is int else value
