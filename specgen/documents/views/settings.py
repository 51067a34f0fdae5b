"""Spray settings: starting values, and blanks for the values accepted at the mockup and kept for the work."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each setting; fluid pressure has no starting value."""
    begin: dict[str, Any] = {
        "Crew": context.display(("mockup", "crew")),
        "Gun, fluid nozzle, air nozzle": _guns(context),
        "Atomizing pressure": context.display(("spray", "atomizing_pressure")),
        "Fluid pressure": "raised from zero until the stream is right",
        "Stream length, and how far it may differ": context.display(("spray", "stream_length")),
        "Pattern": context.display(("spray", "pattern")),
        "Distance from gun to wall": [
            "minimum ",
            context.display(("spray", "distance")),
            ", maximum ",
            context.limit("spray.distance_most"),
        ],
        "Overlap of passes": [context.display(("spray", "overlap")), " of the fan"],
        "Speed of the strokes": [context.limit("spray.stroke_least"), " to ", context.limit("spray.stroke_most")],
        "Cup": _cup(context),
        "Cup time of primer": [
            context.display(("primer", "cup_least")),
            " to ",
            context.display(("primer", "cup_most")),
        ],
        "Cup time of gloss": [context.display(("gloss", "cup_least")), " to ", context.display(("gloss", "cup_most"))],
        "Water in primer": [context.display(("primer", "max_water")), " at most"],
        "Water in gloss": [context.display(("gloss", "max_water")), " at most"],
    }
    lines = tuple((name, start, Blank(f"Accepted: {name}")) for name, start in begin.items())
    return TableView(("Setting", "To begin with", "Accepted"), lines, (36, 32, 32))


def _guns(context: DocumentContext) -> list[Any]:
    """Each gun with its nozzles; empty if no gun is given yet."""
    parts: list[Any] = []
    for mark in context.project.members.get(("guns",), ()):
        fluid, air = (context.display(("guns", mark, name)) for name in ("fluid_nozzle", "air_nozzle"))
        parts += ["; " if parts else "", f"{mark}: ", fluid, ", ", air]
    return parts


def _cup(context: DocumentContext) -> list[Any]:
    """The kind of cup, and the marks of the cups on the list of instruments."""
    project = context.project
    marks = [
        m
        for m in project.members.get(("instruments",), ())
        if str(project.get(("instruments", m, "kind"))).endswith("_cup")
    ]
    return [context.display(("gloss", "cup")), f", {', '.join(marks)}" if marks else ""]
