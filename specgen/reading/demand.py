"""A value that the contract requires of a field: converted by the type of the field, and compared with a value."""

from typing import Any

from specgen.model.field import Field
from specgen.model.project import View
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.reading.rules import convert_checked

_SENSES = {"=": Sense.EXACTLY, "<=": Sense.AT_MOST, ">=": Sense.AT_LEAST}
_ORDERED = {"integer", "number", "percent", "quantity", "date", "time", "list"}


def has_order(field: Field) -> bool:
    """Whether the values of a field have an order; lists do, as one may hold more than another."""
    return field.kind in _ORDERED


def convert_demand(field: Field, relation: str, text: str) -> Any:
    """The required value, a tuple for `in` and for a field that holds a list; raises InvalidValue."""
    several = relation == "in" or field.kind == "list"
    parts = text.strip("{}[] ").split(",") if several else [text]
    values = tuple(convert_checked(field, part.strip()) for part in parts)
    return values if several else values[0]


def meets(value: Any, relation: str, wanted: Any) -> bool:
    """Whether a value meets a requirement; a list must hold at most, at least or exactly the required entries."""
    if isinstance(value, tuple):
        has, asked = {_plain(entry) for entry in value}, {_plain(entry) for entry in wanted}
        return {"=": has == asked, ">=": has >= asked}.get(relation, has <= asked)
    if relation == "in":
        return any(meets(value, "=", option) for option in wanted)
    return compare(_plain(value), _SENSES[relation], _plain(wanted)) is Outcome.WITHIN


def _plain(value: Any) -> Any:
    """A value for comparison: a member by its mark, a text without case and outer spaces."""
    value = value.mark if isinstance(value, View) else value
    return value.strip().casefold() if isinstance(value, str) else value
