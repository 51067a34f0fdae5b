"""What an input must be: each check raises Refused with the name of the input, its value and what would be right."""

from typing import Any

from specgen.model.problem import refuse
from specgen.quantities.format import format_decimal, format_quantity, format_unit
from specgen.quantities.quantity import Quantity


def require_not_negative(name: str, value: Any) -> None:
    """Raises Refused where a length, strain or the like is below zero."""
    if (value.amount if isinstance(value, Quantity) else value) < 0:
        told = format_quantity(value, value.unit) if isinstance(value, Quantity) else "below 0"
        raise refuse(f"{name} is {told}", "it is 0 or more")


def require_positive(name: str, value: Quantity) -> None:
    """Raises Refused where a quantity that is divided by is zero or less."""
    if value.amount <= 0:
        raise refuse(f"{name} is {format_quantity(value, value.unit)}", "it is more than 0")


def require_in_range(name: str, value: Any, least: Any, most: Any, unit: str = "") -> None:
    """Raises Refused where a value leaves a range; the range is told in the unit it was written in, or in `unit`."""
    if least <= value <= most:
        return
    if isinstance(value, Quantity):
        told = [format_quantity(value, value.unit), *(_tell_end(end, value.unit) for end in (least, most))]
    else:
        told = [f"{format_decimal(figure, 6)}{unit}" for figure in (value, least, most)]
    raise refuse(f"{name} is {told[0]}", f"it lies from {told[1]} to {told[2]}")


def _tell_end(end: Quantity, unit: str) -> str:
    """The end of a range in another unit, in so many digits that a small one is not told as 0."""
    if unit in (end.unit, "in"):
        return format_quantity(end, unit)
    return f"{format_decimal(end.to(unit), 3)} {format_unit(unit)}"


def require_percentage(name: str, value: Any) -> None:
    """Raises Refused where a share, in percent, that is divided by is no share: zero, above 100, or 0.65 for 65."""
    if not 0 < value <= 100:
        raise refuse(f"{name} is {format_decimal(value, 6)} %", "it is more than 0 % and at most 100 %")
    if value < 1:
        raise refuse(f"{name} is {format_decimal(value, 6)} %", "write percent: 65 for 65 %")


def require_no_negative_percent(name: str, value: Any) -> None:
    """Raises Refused where an addition, in percent, is below zero."""
    if value < 0:
        raise refuse(f"{name} is {format_decimal(value, 6)} %", "it is 0 % or more")
