"""Spray settings to begin the mockup with."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each setting; fluid pressure has no first value."""
    display, limit = context.display, context.limit
    lines: list[tuple[str, Any]] = [
        ("Gun, fluid nozzle, air nozzle", _guns(context)),
        ("Atomizing pressure", display(("spray", "atomizing_pressure"))),
        *_inlets(context),
        ("Fluid pressure", "raise from zero until the stream is straight"),
        ("Stream length", display(("spray", "stream_length"))),
        ("Pattern", display(("spray", "pattern"))),
        (
            "Distance from gun to wall",
            ["minimum ", display(("spray", "distance")), ", maximum ", limit("spray.distance_most")],
        ),
        ("Overlap of passes", [display(("spray", "overlap")), " of the fan"]),
        ("Stroke speed", [limit("spray.stroke_least"), " to ", limit("spray.stroke_most")]),
        ("Cup", _cup(context)),
        ("Primer cup time", [display(("primer", "cup_least")), " to ", display(("primer", "cup_most"))]),
        ("Gloss cup time", [display(("gloss", "cup_least")), " to ", display(("gloss", "cup_most"))]),
        ("Water in primer", ["maximum ", display(("primer", "max_water")), " by volume"]),
        ("Water in gloss", ["maximum ", display(("gloss", "max_water")), " by volume"]),
    ]
    return TableView(("Setting", "First setting"), tuple(lines), (40, 60))


def _guns(context: DocumentContext) -> list[Any]:
    """Each gun with its nozzles."""
    parts: list[Any] = []
    for mark in context.project.members.get(("guns",), ()):
        fluid, air = (context.display(("guns", mark, name)) for name in ("fluid_nozzle", "air_nozzle"))
        parts += ["; " if parts else "", f"{mark}: ", fluid, ", ", air]
    return parts or [DisplayValue("[Spray gun and nozzles]", open=True, asks="guns")]


def _inlets(context: DocumentContext) -> list[tuple[str, Any]]:
    """The pressure that each gun needs at its inlet, the trigger pulled."""
    guns = context.project.members.get(("guns",), ())
    needed = ((mark, context.display(("guns", mark, "inlet_pressure"))) for mark in guns)
    return [
        (f"Pressure at the inlet of gun {mark}, trigger pulled", ["minimum ", pressure]) for mark, pressure in needed
    ]


def _cup(context: DocumentContext) -> list[Any]:
    """The kind of cup, and the marks of the cups on the list of instruments."""
    project = context.project
    marks = [
        m
        for m in project.members.get(("instruments",), ())
        if str(project.get(("instruments", m, "kind"))).endswith("_cup")
    ]
    cup = context.display(("gloss", "cup"))
    if cup == "other":
        return [f"No. {', '.join(marks)}" if marks else "of the coating's data sheet"]
    return [cup, f", {', '.join(marks)}" if marks else ""]
