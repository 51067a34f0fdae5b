"""Figures of a table whose unit stands in its head."""

from dataclasses import replace

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue

_UNITS = {"area": ("sq ft", "m²"), "volume": ("gal", "L")}


def head_unit(context: DocumentContext, title: str, dimension: str) -> str:
    """`Net, sq ft`: a head with the unit of its column; alone where each cell has two units."""
    unit = _UNITS[dimension][context.first != "ip"]
    return title if context.project.both_units else f"{title}, {unit}"


def bare(context: DocumentContext, value: DisplayValue) -> DisplayValue:
    """The figure without its unit; with it where each cell has two units."""
    return value if context.project.both_units else replace(value, text=value.text.split()[0])
