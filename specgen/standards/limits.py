"""A row of the limits: its figure, and whether that fits the field it bounds."""

from fractions import Fraction
from typing import Any

from specgen.model.field import Field, Schema
from specgen.model.source import Kind, Source
from specgen.model.standard import Limit
from specgen.quantities.format import format_quantity
from specgen.quantities.number import QuantityError, parse_number
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.standards.references import check_choice, find_field
from specgen.standards.rows import Wrong

# How far the round figure of metric trade may lie from that of its twin: 60 mm for 2-1/2 in is a twentieth.
_TWINS_APART = Fraction(1, 10)
_DEGREE = Quantity.of(1, "C apart").amount
_NUMBERS = ("integer", "number", "percent")


def make_limit(name: str, row: dict[str, Any]) -> Limit:
    """The limit of a row of typed values; raises Wrong where its figure cannot be read."""
    if "bounds" in row and "maker_figure" in row:
        raise Wrong("this follows from maker_figure", "give one of the two", ("bounds",))
    bounds = row.get("maker_figure", row.get("bounds"))
    figures: dict[str, Any] = {
        key: _parse_figure(row[key], row.get("unit"), key) for key in ("value", "value_si") if key in row
    }
    _check_twin(figures)
    source_si = _source_of_twin(row, figures["value"])
    return Limit(name=name, **row | figures | {"bounds": bounds, "source_si": source_si})


def _source_of_twin(row: dict[str, Any], value: Any) -> Source | None:
    """Where the metric figure is written: as the row says, else practice where the text prints the other figure."""
    source: Source = row["source"]
    if "value_si" not in row and "source_si" in row:
        raise Wrong("there is no metric figure that could have this source", "give value_si too", ("source_si",))
    if "value_si" not in row or "source_si" in row or not source.reference:
        return row.get("source_si")
    said = format_quantity(value, value.unit)
    return Source(
        Kind.PRACTICE if source.kind is Kind.PUBLISHED else source.kind,
        f"metric figure for {said} of {source.reference}",
        f"metric figure for {said} of {source.short}" if source.short else "",
        f"{source.controls} (rounded metric value)" if source.controls else "",
        source.elsewhere,
    )


def _check_twin(figures: dict[str, Any]) -> None:
    """Raise Wrong where a metric figure is of another kind than its twin, or too far off to mean the same."""
    value, twin = figures["value"], figures.get("value_si")
    if twin is None:
        return
    if not isinstance(value, Quantity) or not isinstance(twin, Quantity) or value.dimension != twin.dimension:
        raise Wrong("this is not a quantity of the kind of value", "write the same in a metric unit", ("value_si",))
    # A temperature has its zero far below: a tenth of it would allow any other.
    degrees = value.dimension == "temperature"
    if abs(twin.amount - value.amount) > (_DEGREE if degrees else abs(value.amount) * _TWINS_APART):
        much = "1 °C" if degrees else "a tenth"
        raise Wrong(
            f"this is more than {much} off {value.text}", "write the round figure the trade uses", ("value_si",)
        )


def _parse_figure(text: str, unit: str | None, key: str) -> Quantity | Fraction | int | str:
    """A quantity, a bare number where the row gives its unit apart, or a word; raises Wrong."""
    if unit is None:
        try:
            return parse_any_quantity(text)
        except QuantityError as error:
            hint = error.hint or "write a number with its unit, or its unit apart: `unit: h`"
            raise Wrong(error.message, hint, (key,)) from None
    if not unit and not text[0].isdigit():
        return text
    try:
        number = parse_number(text)
    except QuantityError:
        raise Wrong(f"{text!r} is not a number", "its unit stands apart: write a bare number", (key,)) from None
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
    figure = _parse_figure(row["value"], row.get("unit"), "value")
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
