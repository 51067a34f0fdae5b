"""What `status --panel` prints: the history of one panel."""

from collections.abc import Iterator, Sequence

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.status import PanelHistory, PanelPass, tell_moment, tell_time
from specgen.model.value_text import raw_text, words
from specgen.recording.panel_log import WEATHER
from specgen.recording.site_entries import moment_of
from specgen.terminal.screen import Line
from specgen.terminal.status_words import name_place, tell_remark

_PAIL = ("pail", "batch", "cup", "cup_time_before_water", "cup_time", "material_temperature", "water_added", "water")
_SETTINGS = ("atomizing_pressure", "fluid_pressure", "stream_length", "distance", "pattern")
# The words for fields that stand side by side, where the label of the field is longer than needed.
_SAID = {
    "crew": "crew",
    "area": "area",
    "batch": "batch",
    "wet_film": "wet film",
    "pail": "pail",
    "air": "air",
    "surface": "wall surface",
    "cup_time_before_water": "cup before water",
    "cup_time": "cup after water",
    "material_temperature": "material",
    "water_added": "water added",
    "water": "water by volume",
    "humidity": "humidity",
    "cup": "cup",
    "atomizing_pressure": "atomizing pressure",
    "fluid_pressure": "fluid pressure",
    "stream_length": "stream length",
    "distance": "distance",
    "pattern": "fan",
    "outcome": "outcome",
    "hours_dry": "dry for",
    "moisture_reading": "moisture reading",
    "wall_dry": "wall dry",
    "even_look": "even look",
    "defects": "faults",
}


def list_panel_lines(project: Project, history: PanelHistory) -> Iterator[Line]:
    """The lines of the history of a panel, its passes in the order of time."""
    until = f", until {tell_time(history.at)}" if history.at else ""
    yield Line(f"Panel {history.panel} of {history.elevation}{until}", style="bold")
    if not history.in_layout:
        yield Line("The layout of the elevation has no panel of this mark.", style="caution")
    if not history.passes:
        yield Line("No entry names this panel.")
    for one in history.passes:
        yield from _tell_pass(project, one)
    yield from _list_group("Masked from the overspray of a neighbor", [_tell_masked(one) for one in history.masked])
    yield from _list_group("Released and inspected", [_tell_signed(project, one) for one in history.signed])
    yield from _list_group("Nonconformances", [tell_remark(one) for one in history.against])


def _list_group(title: str, told: Sequence[str]) -> Iterator[Line]:
    if told:
        yield from (Line(), Line(title, style="bold"))
        yield from (Line(f"  {text}", 4) for text in told)


def _tell_pass(project: Project, one: PanelPass) -> Iterator[Line]:
    entry = one.entry
    coat = f", coat {entry.get('coat')}" if entry.get("coat") else ""
    again = ", recoat" if one.again else ""
    ended = f" to {one.ended:%H:%M}" if one.ended and one.began.timed else ""
    yield Line()
    yield Line(f"{one.step.title}{coat}{again}: {tell_moment(one.began)}{ended}", 2, "", "bold")
    about = _tell_fields(project, entry, ("crew", "area", "batch", "wet_film", *_SETTINGS))
    yield Line(f"  {', '.join([*about, name_place(entry)])}", 4)
    for pail in one.pails or ([entry] if any(entry.get(name) is not None for name in _PAIL[2:]) else []):
        yield Line(f"  {', '.join(_tell_fields(project, pail, _PAIL))}", 4)
    for reading in one.readings:
        moment = moment_of(reading)
        at = f"{moment.at:%H:%M} " if moment and moment.timed else ""
        yield Line(f"  {at}{', '.join(_tell_fields(project, reading, WEATHER))}", 4)
    if not one.readings:
        yield Line("  no weather reading of that day on this face", 4)


def _tell_fields(project: Project, entry: Entry, names: Sequence[str]) -> list[str]:
    """The fields of an entry that are given, each by its word and its value."""
    fields = project.schema.fields
    told = []
    for name in names:
        value = entry.get(name)
        if value is not None:
            field = fields[entry.collection, name]
            said = _SAID.get(name) or field.label[:1].lower() + field.label[1:]
            unit = (
                "%"
                if field.kind == "percent"
                else f" {field.unit_ip}"
                if field.kind == "number" and field.unit_ip
                else ""
            )
            told.append(f"{said} {raw_text(value, field, project.system) or 'none'}{unit}")
    return told


def _tell_masked(entry: Entry) -> str:
    moment = moment_of(entry)
    return f"{tell_moment(moment)} ({name_place(entry)})" if moment else name_place(entry)


def _tell_signed(project: Project, entry: Entry) -> str:
    moment = moment_of(entry)
    when = tell_moment(moment) if moment else ""
    names = ("outcome", "area", "hours_dry", "moisture_reading", "wall_dry", "even_look", "defects")
    about = _tell_fields(project, entry, names)
    by = f" by {entry.get('by')}" if entry.get("by") else ", no signature"
    kind = "release" if entry.collection == "release" else "inspection"
    step = words(str(entry.get("step")))
    told = step if step.startswith("release") else f"{kind} of {step}"
    if told == step and kind == "inspection":
        told = f"inspection of the release of {step.removeprefix('release ')}"
    return f"{when} {told}{by}: {', '.join([*about, name_place(entry)])}"
