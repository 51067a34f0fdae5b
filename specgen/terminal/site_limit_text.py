"""Limits of weather and readings held against them, in words and in the units of a project."""

from typing import Any

from specgen.model.project import Project
from specgen.model.source import Basis, Kind, Source
from specgen.quantities.format import format_quantity, format_unit
from specgen.quantities.quantity import Quantity
from specgen.terminal.finding_text import tell_basis
from specgen.weather.limits import SiteLimit

NAMES = {
    "air": "air",
    "surface": "wall",
    "humidity": "humidity",
    "margin": "wall above dew point",
    "wind": "wind",
    "gust": "gust",
    "rain": "rain",
    "sun": "direct sun on the wall",
    "frost": "frost on the wall",
}
_UNITS = {
    "temperature": ("F", "C"),
    "temperature_difference": ("F apart", "C apart"),
    "speed": ("mph", "m/s"),
}


def own_unit(value: Quantity, system: str) -> str:
    """The unit that a project prints a reading in."""
    return _UNITS[value.dimension][system == "si"]


def tell_value(value: Any, system: str) -> str:
    """A reading or a limit as it is printed: `50 °F`, `85%`."""
    return format_quantity(value, own_unit(value, system)) if isinstance(value, Quantity) else f"{float(value):g}%"


def tell_limit(limit: SiteLimit, system: str) -> str:
    """A limit without its source: `air minimum 50 °F, also 24 h after`."""
    if limit.sense == "none":
        told = f"no {NAMES[limit.reading]}"
        if limit.reading == "frost":
            return f"{told} in the {limit.hold} h before"
    else:
        told = f"{NAMES[limit.reading]} {tell_bound(limit, system)}"
    return f"{told}, also {limit.hold} h after" if limit.hold else told


def tell_bound(limit: SiteLimit, system: str) -> str:
    """The figure of a limit with its side: `minimum 50 °F`."""
    return f"{'minimum' if limit.sense == 'least' else 'maximum'} {tell_value(limit.value, system)}"


def tell_bound_short(limit: SiteLimit, system: str) -> str:
    """The same for a narrow screen: `min. 50 °F`."""
    return f"{'min.' if limit.sense == 'least' else 'max.'} {tell_value(limit.value, system)}"


def tell_source(project: Project, source: Source) -> str:
    """Where a limit comes from, as a finding on it cites it."""
    if source.kind is Kind.PROJECT:
        return "this project"
    return tell_basis(project, Basis((source,)))


def limit_to_data(project: Project, limit: SiteLimit) -> dict[str, Any]:
    """A limit as data: its figure as a bare number in its unit."""
    value, unit = to_number(limit.value, project.system)
    source = tell_source(project, limit.source)
    row = {"reading": limit.reading, "sense": limit.sense, "limit": value, "unit": unit, "hold_hours": limit.hold}
    return row | {"source": source}


def to_number(value: Any, system: str) -> tuple[float | None, str]:
    """A reading or limit as a bare number and the unit it is in; None and no unit for none."""
    if value is None or isinstance(value, bool):
        return None, ""
    if not isinstance(value, Quantity):
        return float(value), "%"
    unit = own_unit(value, system)
    return round(value.number(unit), 6), format_unit(unit)
