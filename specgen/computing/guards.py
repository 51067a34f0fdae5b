"""Refusals that calculations share."""

from typing import Any

from specgen.model.problem import refuse
from specgen.quantities.format import decimal, printed
from specgen.quantities.quantity import Quantity


def refuse_negative(**quantities: Quantity | None) -> None:
    """Raises Refused where a length, strain or the like is below zero."""
    for name, quantity in quantities.items():
        if quantity is not None and quantity.amount < 0:
            raise refuse(f"{name} is {printed(quantity, quantity.unit)}", "it is 0 or more")


def refuse_none_of(**quantities: Quantity | None) -> None:
    """Raises Refused where a quantity that is divided by is zero or less."""
    for name, quantity in quantities.items():
        if quantity is not None and quantity.amount <= 0:
            raise refuse(f"{name} is {printed(quantity, quantity.unit)}", "it is more than 0")


def refuse_outside(name: str, value: Any, least: float, most: float) -> None:
    """Raises Refused where a bare number leaves the range of a method."""
    if not least <= value <= most:
        raise refuse(f"{name} is {float(value):g}", f"it lies from {least:g} to {most:g}")


def refuse_beyond(name: str, quantity: Quantity, least: Quantity, most: Quantity) -> None:
    """Raises Refused where a quantity leaves the range of a method; the range is told in the unit it was written in."""
    if not least <= quantity <= most:
        unit = quantity.unit
        raise refuse(
            f"{name} is {printed(quantity, unit)}", f"it lies from {printed(least, unit)} to {printed(most, unit)}"
        )


def refuse_share(**percents: Any) -> None:
    """Raises Refused where a share, in percent, that is divided by is no share: zero, above 100, or 0.65 for 65."""
    for name, percent in percents.items():
        if not 0 < percent <= 100:
            raise refuse(f"{name} is {decimal(percent, 6)} %", "it is more than 0 % and at most 100 %")
        if percent < 1:
            raise refuse(f"{name} is {decimal(percent, 6)} %", "write percent: 65 for 65 %")


def refuse_negative_percent(**percents: Any) -> None:
    """Raises Refused where an addition, in percent, is below zero."""
    for name, percent in percents.items():
        if percent < 0:
            raise refuse(f"{name} is {decimal(percent, 6)} %", "it is 0 % or more")
