"""The settings of the gun, each with its limit or first value beside the blank."""

from collections.abc import Iterator
from itertools import chain
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import bracket, make_blank, make_boxes
from specgen.model.block import Blank

_ABREAST = 3
# What a setting may differ by from the accepted one; that of the stream is a field of the project.
_BANDS = {"atomizing_pressure": "spray.atomizing_band", "fluid_pressure": "spray.fluid_band"}
_PATTERNS = (("oval", "oval"), ("round", "round"), ("fan_flat", "flat fan"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Three settings in a line: its name with the unit, its limit, and a blank for the reading."""
    settings = list(_list_settings(context))
    settings += [("", "", "")] * (-len(settings) % _ABREAST)
    lines = tuple(
        tuple(chain.from_iterable(settings[place : place + _ABREAST])) for place in range(0, len(settings), _ABREAST)
    )
    return TableView(("Setting", "Limit", "Reading") * _ABREAST, lines, (12, 12, 8, 12, 12, 8, 11, 12, 13))


def _list_settings(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The nozzles and the pattern, the pressures from the compressor to the gun, then stream and distance."""
    unit = UNITS[context.first]
    pressure, length = unit["pressure"], unit["length"]
    yield "Fluid nozzle", _of_guns(context, "fluid_nozzle"), make_blank("Fluid nozzle", "form.fluid_nozzle", "a")
    yield "Air nozzle", _of_guns(context, "air_nozzle"), make_blank("Air nozzle", "form.air_nozzle", "a")
    pattern = context.display(("spray", "pattern"))
    shape = [pattern if not pattern.open else context.limit("spray.pattern")]
    yield "Pattern", shape, make_boxes(_PATTERNS, "log.pattern", "a")
    yield (
        f"Compressor, {pressure}",
        ["minimum ", context.limit("compressor.pressure")],
        make_blank("Compressor pressure", "form.compressor_pressure", "a"),
    )
    yield (
        f"Gun inlet, {pressure}",
        _of_guns(context, "inlet_pressure", "minimum "),
        make_blank("Pressure at the gun inlet", "form.inlet_pressure", "a"),
    )
    yield _setting(context, "Atomizing pressure", "atomizing_pressure", pressure)
    yield _setting(context, "Fluid pressure", "fluid_pressure", pressure)
    yield _setting(context, "Stream length", "stream_length", length)
    yield (
        f"Gun to wall, {length}",
        [context.display(("spray", "distance")), " to ", context.limit("spray.distance_most")],
        make_blank("Distance from gun to wall", "log.distance", "a"),
    )
    overlap = context.display(("spray", "overlap"))
    yield "Overlap, %", [bracket(overlap, "overlap")], make_blank("Overlap of passes", "form.overlap", "a")
    yield f"Stroke speed, {length}/s", _tell_strokes(context), make_blank("Stroke speed", "form.stroke_speed", "a")


def _tell_strokes(context: DocumentContext) -> list[Any]:
    """A blank for the speed of the mockup, and those between which its strokes were timed."""
    least, most = (context.limit(f"spray.stroke_{end}") for end in ("least", "most"))
    return [
        "accepted ",
        Blank("Accepted stroke speed", field="form.accepted_stroke_speed.a"),
        "; ",
        least,
        " to ",
        most,
    ]


def _setting(context: DocumentContext, label: str, name: str, unit: str) -> tuple[Any, ...]:
    """A setting that the mockup decides."""
    return f"{label}, {unit}", _accepted(context, name), make_blank(label, f"log.{name}", "a")


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
