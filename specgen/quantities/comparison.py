"""A value against a limit: one outcome, used by rules, records and weather alike."""

from enum import Enum
from fractions import Fraction
from typing import Any

from specgen.quantities.quantity import Quantity


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


def equal(value: Any, limit: Any) -> bool:
    """Whether two values are the same within the rounding of a conversion."""
    if not isinstance(value, Quantity):
        return bool(value == limit)
    return bool(value == limit or abs((value - limit).amount) < slack(limit))


def slack(limit: Quantity) -> Fraction:
    """How far a value may lie from the limit, in base units, and still count as on it."""
    if limit.dimension in ("temperature", "temperature_difference"):
        return _DEGREE
    return min(_SLACK.get(limit.dimension, Fraction(0)), abs(limit.amount) / 16)


def less(value: Any, limit: Any) -> bool:
    """Whether `value` lies below `limit`; a limit itself is within."""
    return bool(value < limit) and not equal(value, limit)


def more(value: Any, limit: Any) -> bool:
    """Whether `value` lies above `limit`; a limit itself is within."""
    return bool(value > limit) and not equal(value, limit)


def compare(value: Any, sense: Sense, limit: Any) -> Outcome:
    """The outcome of `value` against `limit`; None is a missing value, a range is a pair."""
    if value is None:
        return Outcome.MISSING
    outside = {
        Sense.AT_LEAST: lambda: less(value, limit),
        Sense.AT_MOST: lambda: more(value, limit),
        Sense.EXACTLY: lambda: not equal(value, limit),
        Sense.RANGE: lambda: less(value, limit[0]) or more(value, limit[1]),
    }[sense]()
    return Outcome.OUTSIDE if outside else Outcome.WITHIN
