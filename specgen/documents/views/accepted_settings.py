"""Blanks for the settings accepted on the mockup and kept for the work."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_SETTINGS = (
    ("Crew", "Stream length, ± tolerance, {length}", "Primer cup time, s; material temperature, {temperature}"),
    ("Gun", "Pattern", "Gloss cup time, s; material temperature, {temperature}"),
    ("Spare gun", "Distance from gun to wall, {length}", "Water in each pail of primer, {volume}"),
    ("Fluid nozzle, air nozzle", "Overlap of passes, %", "Water in each pail of gloss, {volume}"),
    ("Atomizing pressure, {pressure}", "Stroke speed, {length}/s", "Batches of primer"),
    ("Fluid pressure, {pressure}", "Cup number", "Batches of gloss"),
    ("Access", "Gap, access to finished face, {length}", "Shade"),
)
_UNITS = {
    "ip": {"length": "in", "pressure": "psi", "temperature": "°F", "volume": "fl oz"},
    "si": {"length": "mm", "pressure": "kPa", "temperature": "°C", "volume": "mL"},
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Three settings in a row, each with its unit and a blank."""
    units = _UNITS[context.first]
    named = [[name.format_map(units) for name in row] for row in _SETTINGS]
    lines = tuple(tuple(cell for name in row for cell in (name, Blank(f"Accepted: {name}"))) for row in named)
    return TableView(("Setting", "Accepted") * 3, lines, (16, 17, 16, 17, 18, 16))
