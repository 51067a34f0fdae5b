"""Compares a value with a limit; rules, records and weather share the outcome."""

from enum import Enum
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from specgen.quantities.quantity import Quantity

if TYPE_CHECKING:
    from _typeshed import SupportsAllComparisons as Ordered


class Sense(Enum):
    """Which side of a limit is right."""

    AT_LEAST = "at least"
    AT_MOST = "at most"
    EXACTLY = "exactly"
    RANGE = "range"


class Outcome(Enum):
    """What a comparison found."""

    WITHIN = "within"
    OUTSIDE = "outside"
    MISSING = "missing"


# Two figures that differ by less than the rounding of a unit conversion are equal. For a small
# limit the slack shrinks to a sixteenth of it: 1/64 in would be half of a 1/32 in coat.
_SLACK = {"length": Quantity.of(Fraction(1, 64), "in").amount, "pressure": Quantity.of(1, "psi").amount}
_DEGREE = Quantity.of(1, "F apart").amount


def equal(value: object, limit: object) -> bool:
    """Whether two values are equal within conversion rounding; TypeError for a quantity and a non-quantity."""
    if value == limit or not isinstance(value, Quantity):
        return value == limit
    if not isinstance(limit, Quantity):
        raise TypeError(f"cannot compare {value.dimension} with {limit!r}")
    return abs((value - limit).amount) < find_slack(limit)


def find_slack(limit: Quantity) -> Fraction:
    """How far a value may lie from the limit, in base units, and still count as on it."""
    if limit.dimension in ("temperature", "temperature_difference"):
        return _DEGREE
    return min(_SLACK.get(limit.dimension, Fraction(0)), abs(limit.amount) / 16)


def less(value: "Ordered", limit: "Ordered") -> bool:
    """Whether `value` lies below `limit`; a limit itself is within."""
    return bool(value < limit) and not equal(value, limit)


def more(value: "Ordered", limit: "Ordered") -> bool:
    """Whether `value` lies above `limit`; a limit itself is within."""
    return bool(value > limit) and not equal(value, limit)


def compare(value: "Ordered | None", sense: Sense, limit: Any) -> Outcome:
    """The outcome of `value` against `limit`; None is a missing value, a range is a pair."""
    if value is None:
        return Outcome.MISSING
    return Outcome.OUTSIDE if _is_outside(value, sense, limit) else Outcome.WITHIN


def _is_outside(value: "Ordered", sense: Sense, limit: Any) -> bool:
    if sense is Sense.EXACTLY:
        return not equal(value, limit)
    least: Ordered
    most: Ordered
    least, most = limit if sense is Sense.RANGE else (limit, limit)
    return (sense is not Sense.AT_MOST and less(value, least)) or (sense is not Sense.AT_LEAST and more(value, most))
