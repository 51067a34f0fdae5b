"""Blanks for the settings accepted on the mockup and kept for the work."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_SETTINGS = (
    ("Crew", "Overlap of passes, %"),
    ("Gun, spare gun", "Stroke speed, {length}/s"),
    ("Fluid nozzle, air nozzle", "Cup number"),
    ("Atomizing pressure, {pressure}", "Primer cup time, s; material temperature, {temperature}"),
    ("Fluid pressure, {pressure}", "Gloss cup time, s; material temperature, {temperature}"),
    ("Stream length, ± tolerance, {length}", "Water in each pail of primer, {volume}"),
    ("Pattern", "Water in each pail of gloss, {volume}"),
    ("Distance from gun to wall, {length}", "Batches of primer and gloss"),
)
_UNITS = {
    "ip": {"length": "in", "pressure": "psi", "temperature": "°F", "volume": "fl oz"},
    "si": {"length": "mm", "pressure": "kPa", "temperature": "°C", "volume": "mL"},
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two settings in a row, each with its unit and a blank."""
    units = _UNITS[context.first]
    pairs = [[name.format_map(units) for name in pair] for pair in _SETTINGS]
    lines = tuple(tuple(cell for name in pair for cell in (name, Blank(f"Accepted: {name}"))) for pair in pairs)
    return TableView(("Setting", "Accepted", "Setting", "Accepted"), lines, (22, 26, 28, 24))
