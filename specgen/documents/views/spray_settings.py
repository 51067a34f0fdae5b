"""The settings of the gun, each with its limit or first value beside the blank."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.form_units import UNITS
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.model.block import Blank

# What a setting may differ by from the accepted one; that of the stream is a field of the project.
_BANDS = {"atomizing_pressure": "spray.atomizing_band", "fluid_pressure": "spray.fluid_band"}
_PATTERNS = (("oval", "oval"), ("round", "round"), ("fan_flat", "flat fan"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two settings in a line: its name with the unit, its limit, and a blank for the reading."""
    unit = UNITS[context.first]
    distance = [context.display(("spray", "distance")), " to ", context.limit("spray.distance_most")]
    pattern = context.display(("spray", "pattern"))
    lines = (
        (
            f"Atomizing pressure, {unit['pressure']}",
            _accepted(context, "atomizing_pressure"),
            make_blank("Atomizing pressure", "log.atomizing_pressure", "a"),
            f"Fluid pressure, {unit['pressure']}",
            _accepted(context, "fluid_pressure"),
            make_blank("Fluid pressure", "log.fluid_pressure", "a"),
        ),
        (
            f"Stream length, {unit['length']}",
            _accepted(context, "stream_length"),
            make_blank("Stream length", "log.stream_length", "a"),
            f"Gun to wall, {unit['length']}",
            distance,
            make_blank("Distance from gun to wall", "log.distance", "a"),
        ),
        (
            "Pattern",
            [pattern if not pattern.open else context.limit("spray.pattern")],
            make_boxes(_PATTERNS, "log.pattern", "a"),
            f"Wet film, {unit['film']}",
            _wet_films(context),
            "by panel, below",
        ),
    )
    return TableView(
        ("Setting", "Limit", "Reading") * 2, (_supply(context, unit["pressure"]), *lines), (14, 20, 15, 12, 25, 14)
    )


def _supply(context: DocumentContext, unit: str) -> tuple[Any, ...]:
    """The nozzles, and the pressures of the supply while the gun sprays, each with its least."""
    return (
        "Fluid nozzle; air nozzle",
        [*_of_guns(context, "fluid_nozzle"), "; ", *_of_guns(context, "air_nozzle")],
        [
            make_blank("Fluid nozzle", "form.fluid_nozzle", "a"),
            "; ",
            make_blank("Air nozzle", "form.air_nozzle", "a"),
        ],
        f"Compressor; gun inlet, {unit}",
        ["minimum ", context.limit("compressor.pressure"), "; ", *_of_guns(context, "inlet_pressure", "minimum ")],
        [
            make_blank("Compressor pressure", "form.compressor_pressure", "a"),
            "; ",
            make_blank("Pressure at the gun inlet", "form.inlet_pressure", "a"),
        ],
    )


def _of_guns(context: DocumentContext, name: str, lead: str = "") -> list[Any]:
    """The figure of each gun; a blank for the accepted one where the project names none."""
    guns = list_marks(context, "guns")
    cell: list[Any] = []
    for gun in guns:
        value = context.display(("guns", gun, name))
        if not value.open:
            cell += ["; " if cell else "", f"{gun}: " if len(guns) > 1 else "", lead, value]
    return cell or ["accepted ", Blank(f"Accepted {name.replace('_', ' ')}", field=f"form.accepted_{name}.a")]


def _accepted(context: DocumentContext, name: str) -> list[Any]:
    """What was accepted on the mockup, with its tolerance; before that a blank for it, and the first setting."""
    accepted = context.display(("accepted", name))
    if not accepted.open:
        row = _BANDS.get(name)
        tolerance = context.limit(row) if row else context.display(("accepted", "stream_tolerance"))
        return ["accepted ", accepted, *([" ± ", tolerance] if tolerance else [])]
    blank = Blank(f"Accepted {name.replace('_', ' ')}", field=f"form.accepted_{name}.a")
    first = context.display(("spray", name)) if name != "fluid_pressure" else None
    return ["accepted ", blank, *(["; first ", first] if first and not first.open else [])]


def _wet_films(context: DocumentContext) -> list[Any]:
    """The wet film that each coat aims at."""
    films: list[tuple[str, DisplayValue]] = [
        (coat, film) for coat in ("primer", "gloss") if not (film := context.computed("wet-film", (coat,))).open
    ]
    cell: list[Any] = []
    for coat, film in films:
        water = context.display((coat, "max_water"))
        cell += ["; " if cell else "", f"{coat} ", film, *([" at ", water, " water"] if not water.open else [])]
    return (
        [*cell, *([", less with less"] if " water" in cell else [])]
        if cell
        else [Blank("Target wet film", field="form.target_wet_film.a")]
    )
