"""A value that a contract demands of a field: read by the type of the field, and held against a value."""

from typing import Any

from specgen.model.field import Field
from specgen.model.project import View
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.reading.rules import convert_checked

_SENSES = {"=": Sense.EXACTLY, "<=": Sense.AT_MOST, ">=": Sense.AT_LEAST}
_ORDERED = {"integer", "number", "percent", "quantity", "date", "time", "list"}


def has_order(made: Field) -> bool:
    """Whether the values of a field can be more or less than one another; a list may hold more or less."""
    return made.kind in _ORDERED


def demanded(made: Field, relation: str, text: str) -> Any:
    """The value demanded, a tuple for `in` and for a field that holds a list; raises InvalidValue."""
    several = relation == "in" or made.kind == "list"
    parts = text.strip("{}[] ").split(",") if several else [text]
    values = tuple(convert_checked(made, part.strip()) for part in parts)
    return values if several else values[0]


def meets(value: Any, relation: str, wanted: Any) -> bool:
    """Whether a value meets a demand; a list holds at most, at least or exactly what is demanded."""
    if isinstance(value, tuple):
        has, asked = {_plain(entry) for entry in value}, {_plain(entry) for entry in wanted}
        return {"=": has == asked, ">=": has >= asked}.get(relation, has <= asked)
    if relation == "in":
        return any(meets(value, "=", one) for one in wanted)
    return compare(_plain(value), _SENSES[relation], _plain(wanted)) is Outcome.WITHIN


def _plain(value: Any) -> Any:
    """A member by its mark, a text whatever its case and outer spaces."""
    value = value.mark if isinstance(value, View) else value
    return value.strip().casefold() if isinstance(value, str) else value
