"""A row of the limits: its figure, and whether that fits the field it bounds."""

from fractions import Fraction
from typing import Any

from specgen.model.field import Field, Schema
from specgen.model.standard import Limit
from specgen.quantities.parse import QuantityError, parse_any_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.standards.references import check_choice, find_field
from specgen.standards.rows import Wrong

_NUMBERS = ("integer", "number", "percent")


def make_limit(name: str, row: dict[str, Any]) -> Limit:
    """The limit of a row of typed values; raises Wrong where its figure cannot be read."""
    if "bounds" in row and "maker_figure" in row:
        raise Wrong("this follows from maker_figure", "give one of the two", ("bounds",))
    bounds = row.get("maker_figure", row.get("bounds"))
    return Limit(name=name, **row | {"value": _parse_figure(row["value"], row.get("unit")), "bounds": bounds})


def _parse_figure(text: str, unit: str | None) -> Quantity | Fraction | int | str:
    """A quantity, a bare number where the row gives its unit apart, or a word; raises Wrong."""
    if unit is None:
        try:
            return parse_any_quantity(text)
        except QuantityError as error:
            hint = error.hint or "write a number with its unit, or its unit apart: `unit: h`"
            raise Wrong(error.message, hint, ("value",)) from None
    if not unit and not text[0].isdigit():
        return text
    try:
        number = Fraction(text)
    except (ValueError, ZeroDivisionError):
        raise Wrong(f"{text!r} is no number", "its unit stands apart: write a bare number", ("value",)) from None
    return int(number) if number.denominator == 1 else number


def check_limit_field(name: str, row: dict[str, str], schema: Schema) -> None:
    """Raise Wrong where a limit does not fit the field it bounds, or no maker can set that field."""
    key = "maker_figure" if "maker_figure" in row else "bounds"
    if key not in row:
        return
    field = find_field(tuple(row[key].split(".")), schema)
    if key == "maker_figure" and field.home != "coating_system":
        message = (
            f"{row[key]} stands in the {field.home.replace('_', ' ')} file, where no maker of the coating gives it"
        )
        raise Wrong(message, f"write bounds: {row[key]}", (key,))
    _check_figure(row, field)


def _check_figure(row: dict[str, str], field: Field) -> None:
    figure = _parse_figure(row["value"], row.get("unit"))
    if field.kind == "quantity":
        dimension = find_dimension(field.dimension, field.unit_ip)
        if not isinstance(figure, Quantity) or figure.dimension != dimension:
            message = f"{row['value']!r} is no {dimension.replace('_', ' ')}, as its field asks for"
            raise Wrong(message, f"write it as {field.example}, without `unit`", ("value",))
    elif field.kind in _NUMBERS:
        unit = "%" if field.kind == "percent" else field.unit_ip
        if row.get("unit") != unit or isinstance(figure, str):
            key = "unit" if "unit" in row and row["unit"] != unit else "value"
            hint = f'write a bare number, and unit: "{unit}"'
            raise Wrong(f"its field is a number in {unit or 'no unit'}", hint, (key,))
    else:
        try:
            check_choice(row["value"], field)
        except Wrong as wrong:
            raise wrong.inside("value") from None
