"""Blanks for the settings accepted on the mockup and kept for the work."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_SETTINGS = (
    ("Crew", "Overlap of passes"),
    ("Gun", "Stroke speed"),
    ("Fluid nozzle, air nozzle", "Cup number"),
    ("Atomizing pressure", "Primer cup time, material temperature"),
    ("Fluid pressure", "Gloss cup time, material temperature"),
    ("Stream length, ± tolerance", "Water in each pail of primer"),
    ("Pattern", "Water in each pail of gloss"),
    ("Distance from gun to wall", "Batches of primer and gloss"),
)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two settings in a row, each with a blank."""
    lines = tuple(tuple(cell for name in pair for cell in (name, Blank(f"Accepted: {name}"))) for pair in _SETTINGS)
    return TableView(("Setting", "Accepted", "Setting", "Accepted"), lines, (22, 28, 22, 28))
