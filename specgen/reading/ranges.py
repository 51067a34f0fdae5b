"""Checks on reading that no range is upside down: which value never lies below which stands in the schema."""

from collections.abc import Iterator, Mapping
from typing import Any

from specgen.model.field import Field, Path, Schema, dotted_path
from specgen.model.finding import Place
from specgen.model.problem import Problem
from specgen.model.value_text import raw_text
from specgen.quantities.format import format_decimal, format_quantity, format_unit
from specgen.quantities.quantity import Quantity


def range_problems(values: Mapping[Path, Any], places: Mapping[Path, Place], schema: Schema) -> Iterator[Problem]:
    """The values that lie below the one beside them that the schema orders them above; equal values pass."""
    names = {field.path[-1] for field in schema.fields.values() if field.not_below}
    for path, value in values.items():
        field = schema.field_at(path) if path[-1] in names else None
        for name in field.not_below if field is not None else ():
            beside = (*path[:-1], name)
            if field is not None and beside in values and value < values[beside]:
                message = _tell_range(field, value, schema.fields[(*field.path[:-1], name)], values[beside])
                here, there = places[path], places[beside]
                line = f"line {there.line}" if there.file == here.file else f"{there.file}, line {there.line}"
                hint = f"{name} stands in {line}: correct one of the two"
                yield Problem(message, hint, dotted_path(path), here.file, here.line, here.column)


def _tell_range(field: Field, value: Any, other: Field, least: Any) -> str:
    told = tell_apart(value, least) if isinstance(value, Quantity) else (raw_text(value), raw_text(least))
    side = "before" if field.kind in ("date", "time") else "below"
    return f"{told[0]} is {side} {told[1]}, the {other.label[0].lower()}{other.label[1:]}"


def tell_apart(value: Quantity, other: Quantity) -> tuple[str, str]:
    """Two quantities in words, each in its own unit; with more digits where rounding would print both alike."""
    told, of = format_quantity(value, value.unit), format_quantity(other, other.unit)
    if told == of:
        told = f"{format_decimal(value.to(other.unit), 9)} {format_unit(other.unit)}"
    return told, of
