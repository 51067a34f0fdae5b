"""The settings of the accepted mockup that the work keeps: where to begin, and blanks for what was accepted."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.model.block import Blank


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each setting; fluid pressure has no figure to begin with."""
    sight = desk.sight
    begin: dict[str, Any] = {
        "Crew": sight.shown(("mockup", "crew")),
        "Gun, fluid nozzle, air nozzle": _guns(desk),
        "Atomizing pressure": sight.shown(("spray", "atomizing_pressure")),
        "Fluid pressure": "raised from zero until the stream is right",
        "Stream length, and how far it may differ": sight.shown(("spray", "stream_length")),
        "Pattern": sight.shown(("spray", "pattern")),
        "Distance from gun to wall": [sight.shown(("spray", "distance")), " at least"],
        "Cup": _cup(desk),
        "Cup time of primer": [sight.shown(("primer", "cup_least")), " to ", sight.shown(("primer", "cup_most"))],
        "Cup time of gloss": [sight.shown(("gloss", "cup_least")), " to ", sight.shown(("gloss", "cup_most"))],
        "Water in primer": [sight.shown(("primer", "max_water")), " at most"],
        "Water in gloss": [sight.shown(("gloss", "max_water")), " at most"],
    }
    made = tuple((name, start, Blank(f"Accepted: {name}")) for name, start in begin.items())
    return TableView(("Setting", "To begin with", "Accepted"), made, (36, 32, 32))


def _guns(desk: Desk) -> list[Any]:
    """Each gun of the firm with its nozzles; nothing where none is told of yet."""
    made: list[Any] = []
    for mark in desk.sight.project.members.get(("guns",), ()):
        fluid, air = (desk.sight.shown(("guns", mark, name)) for name in ("fluid_nozzle", "air_nozzle"))
        made += ["; " if made else "", f"{mark}: ", fluid, ", ", air]
    return made


def _cup(desk: Desk) -> list[Any]:
    """The kind of cup, and the numbered cups of that kind on the list of instruments."""
    project = desk.sight.project
    marks = [
        m
        for m in project.members.get(("instruments",), ())
        if str(project.get(("instruments", m, "kind"))).endswith("_cup")
    ]
    return [desk.sight.shown(("gloss", "cup")), f", {', '.join(marks)}" if marks else ""]
