"""Blanks for the settings accepted on the mockup and kept for the work."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

# Each setting with the fields that records keep it in; what they have no field for begins with `form`.
_SETTINGS = (
    (
        ("Crew", "accepted.crew"),
        ("Stream length, ± tolerance, {length}", "accepted.stream_length", " ± ", "accepted.stream_tolerance"),
        ("Primer: cup time, s; {temperature}", "form.primer_cup", "; ", "form.primer_temperature"),
    ),
    (
        ("Gun", "accepted.gun"),
        ("Pattern", "form.pattern"),
        ("Gloss: cup time, s; {temperature}", "accepted.cup_time", "; ", "form.gloss_temperature"),
    ),
    (
        ("Spare gun", "form.spare_gun"),
        ("Distance from gun to wall, {length}", "accepted.distance"),
        ("Primer: water in each pail, {volume}; %", "form.primer_water", "; ", "form.primer_water_percent"),
    ),
    (
        ("Fluid nozzle, air nozzle", "accepted.fluid_nozzle", ", ", "accepted.air_nozzle"),
        ("Overlap of passes, %", "form.overlap"),
        ("Gloss: water in each pail, {volume}; %", "form.gloss_water", "; ", "accepted.water"),
    ),
    (
        ("Atomizing pressure; at gun inlet, {pressure}", "accepted.atomizing_pressure", "; ", "form.inlet_pressure"),
        ("Stroke speed, {length}/s", "form.stroke_speed"),
        ("Batches of primer", "form.primer_batches"),
    ),
    (
        ("Fluid pressure, {pressure}", "accepted.fluid_pressure"),
        ("Cup number", "accepted.cup"),
        ("Batches of gloss", "form.gloss_batches"),
    ),
    (
        ("Access", "form.access"),
        ("Gap, access to finished face, {length}", "form.face_gap"),
        ("Shade", "form.shade"),
    ),
)
_UNITS = {
    "ip": {"length": "in", "pressure": "psi", "temperature": "°F", "volume": "fl oz"},
    "si": {"length": "mm", "pressure": "kPa", "temperature": "°C", "volume": "mL"},
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Three settings in a row, each with its unit and a blank for each of its figures."""
    units = _UNITS[context.first]
    lines = tuple(tuple(cell for name, *parts in row for cell in _set(name, parts, units)) for row in _SETTINGS)
    return TableView(("Setting", "Accepted") * 3, lines, (16, 17, 16, 17, 18, 16))


def _set(name: str, parts: list[str], units: dict[str, str]) -> tuple[str, list[Any]]:
    """A setting, and its blanks with what stands between them."""
    told = name.format_map(units)
    labels = [f"Accepted: {told}", f"Accepted: {told}, second figure"]
    blanks = [Blank(label, field=field) for label, field in zip(labels, parts[::2], strict=False)]
    return told, [blanks[0], *([parts[1], blanks[1]] if len(blanks) > 1 else [])]
