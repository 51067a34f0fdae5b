"""Compares a value with a limit; rules, records and weather share the outcome."""

import re
from enum import Enum
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS

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


# Beyond this two figures in different units are never one: half of what a rule or a gauge is read to. Of the other
# dimensions no conversion is taken for exact.
_MOST_SLACK = {
    "length": Quantity.of(Fraction(1, 64), "in").amount,
    "pressure": Quantity.of("0.05", "psi").amount,
    "temperature": Quantity.of("0.1", "F apart").amount,
    "temperature_difference": Quantity.of("0.1", "F apart").amount,
}
_WIND = ("psf", Quantity.of("0.05", "psf").amount)
# For a small limit the slack shrinks to a sixteenth of it: 1/64 in would be half of a 1/32 in coat.
_SHARE = Fraction(1, 16)
# What is left over where floating-point results are compared.
_NOISE = Fraction(1, 10**9)
_TYPED = re.compile(r"[-+]?[\d,]*\d(?:\.(\d+))?\s*[^\d\s./-]\D*[23]?")


def equal(value: object, limit: object) -> bool:
    """Whether two values are one within conversion rounding; TypeError for a quantity and a non-quantity."""
    if value == limit or not isinstance(value, Quantity):
        return value == limit
    if not isinstance(limit, Quantity):
        raise TypeError(f"cannot compare {value.dimension} with {limit!r}")
    apart = abs((value - limit).amount)
    return apart <= abs(limit.amount) * _NOISE or apart <= find_slack(value, limit)


def find_slack(value: Quantity, limit: Quantity) -> Fraction:
    """How far a value may lie from the limit, in base units, and still count as on it.

    It is what rounding makes of a conversion: half a unit of the last digit typed. Two figures in one unit have none.
    """
    if value.unit == limit.unit:
        return Fraction(0)
    most = _WIND[1] if _WIND[0] in (value.unit, limit.unit) else _MOST_SLACK.get(limit.dimension, Fraction(0))
    if limit.dimension != "temperature":
        most = min(most, abs(limit.amount) * _SHARE)
    return min(most, max(_half_digit(value), _half_digit(limit)))


def _half_digit(quantity: Quantity) -> Fraction:
    """Half a unit of the last digit of a figure as typed, in base units; none for a fraction or a result."""
    typed = _TYPED.fullmatch(quantity.text)
    if not typed:
        return Fraction(0)
    return UNITS[quantity.unit].factor / (2 * Fraction(10) ** len(typed[1] or ""))


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
