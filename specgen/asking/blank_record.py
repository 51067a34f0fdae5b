"""Empty records of the site: for each kind the fields that its form has, with units and the choices of the project."""

from typing import NamedTuple

from specgen.model.field import Field, Schema
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS
from specgen.model.value_text import raw_text

_PLACE = ("date", "elevation", "area", "step")
_SET_UP = ("tank_clean", "tank_lined", "stirred", "strained", "lid_tight", "regulators_at_zero")
_SETTINGS = ("atomizing_pressure", "fluid_pressure", "stream_length", "pattern", "distance")
# Of each kind the collections that it holds, and of these the fields, by their last names.
KINDS: dict[str, dict[str, tuple[str, ...]]] = {
    "weather": {
        "log": (
            *_PLACE,
            *("started_at", "air", "surface", "humidity", "wind", "gust"),
            *("sun_on_wall", "rain", "forecast_low", "forecast_rain"),
        )
    },
    "spray": {
        "log": (
            *_PLACE,
            *("coat", "crew", "started_at", "ended_at", "panels", "wet_film", "masked_panels"),
            *_SET_UP,
            *_SETTINGS,
            "equipment_cleaned",
        )
    },
    "pails": {
        "log": (
            *_PLACE,
            *("coat", "pail", "batch", "boxed_batches", "cup", "material_temperature"),
            *("cup_time_before_water", "water_added", "water", "cup_time", "stirred", "strained"),
        )
    },
    "release": {
        "release": (
            *("date", "time", "elevation", "area", "step", "hours_dry"),
            *("moisture_reading", "even_look", "wall_dry", "defects", "by"),
        )
    },
    "inspection": {"inspection": ("done_on", "elevation", "step", "outcome", "by")},
    "disposition": {
        "disposition": (
            *("clause", "date", "time", "elevation", "area", "step", "file", "row"),
            *("decision", "by", "decided_on", "note"),
        )
    },
    "mockup": {"result": ("criterion", "part", "reading", "passed", "signed_by", "signed_on"), "accepted": ()},
}
_YES_NO = ("yes", "no")


class BlankColumn(NamedTuple):
    """A field of an empty record: its title with the unit, what it asks for, its choices, and an example."""

    name: str
    title: str
    asks: str
    choices: tuple[str, ...]
    example: str
    listed: bool


class BlankTable(NamedTuple):
    """The columns of one collection of an empty record; the settings of the mockup are no list of entries."""

    collection: str
    noun: str
    columns: tuple[BlankColumn, ...]

    @property
    def has_entries(self) -> bool:
        """Whether it is filled in line by line."""
        return self.collection in COLLECTIONS


def list_blank_tables(kind: str, schema: Schema, project: Project | None) -> tuple[BlankTable, ...]:
    """The tables of an empty record of a kind; without a project in inches and without marks."""
    return tuple(_make_table(schema, project, section, names) for section, names in KINDS[kind].items())


def _make_table(schema: Schema, project: Project | None, section: str, names: tuple[str, ...]) -> BlankTable:
    every = names or tuple(path[-1] for path in schema.fields if path[0] == section)
    noun = schema.collections[section, "*"].one if section in COLLECTIONS else "settings of the accepted mockup"
    return BlankTable(section, noun, tuple(_make_column(schema.fields[section, name], project) for name in every))


def _make_column(field: Field, project: Project | None) -> BlankColumn:
    name, system = field.path[-1], project.system if project is not None else "ip"
    unit = {"quantity": field.unit_si if system == "si" else field.unit_ip, "percent": "%"}.get(field.kind, "")
    marks = project.members.get((field.to,), ()) if project is not None and field.to else ()
    if field.to == "instruments" and project is not None:
        marks = tuple(mark for mark in marks if str(project.get(("instruments", mark, "kind"))).endswith("_cup"))
    choices = _YES_NO if field.kind == "yes_no" else (*field.values, *marks)
    title = f"{name} ({unit})" if unit else name
    return BlankColumn(
        name, title, f"{field.label}: {field.why}", choices, raw_text(field.example), field.kind == "list"
    )
