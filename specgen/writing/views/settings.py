"""The settings of the accepted mockup that the work keeps: where to begin, and blanks for what was accepted."""

from ...vocabulary.block import Blank
from ..compose import Composer
from ..desk import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each setting; fluid pressure has no figure to begin with."""
    sight = desk.sight
    begin = {
        "Crew and gun": "",
        "Fluid nozzle and air nozzle": "",
        "Atomizing pressure": sight.shown(("spray", "atomizing_pressure")),
        "Fluid pressure": "raised from zero until the stream is right",
        "Stream length, and how far it may differ": sight.shown(("spray", "stream_length")),
        "Pattern": sight.shown(("spray", "pattern")),
        "Distance from gun to wall": [sight.shown(("spray", "distance")), " at least"],
        "Cup number": sight.shown(("gloss", "cup")),
        "Cup time of primer": [sight.shown(("primer", "cup_least")), " to ", sight.shown(("primer", "cup_most"))],
        "Cup time of gloss": [sight.shown(("gloss", "cup_least")), " to ", sight.shown(("gloss", "cup_most"))],
        "Water in primer": [sight.shown(("primer", "max_water")), " at most"],
        "Water in gloss": [sight.shown(("gloss", "max_water")), " at most"],
    }
    made = tuple((name, start, Blank(f"Accepted: {name}")) for name, start in begin.items())
    return TableView(("Setting", "To begin with", "Accepted"), made, (36, 32, 32))
