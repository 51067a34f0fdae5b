"""Every figure of a project has a range: wider than any job needs, narrower than nonsense. Common practice."""

import datetime
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.model.field import Field, dotted_path
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.entries import shape_of
from specgen.reading.rules import convert_checked
from specgen.reading.schema import project_schema
from specgen.standards.rows import Wrong
from specgen.standards.shapes import Known

FIELDS = list(project_schema().fields.values())
# The fields by their range and units, typed by hand.
HELD = yaml.safe_load((Path(__file__).parent / "field_ranges.yaml").read_text("utf-8"))
# Kinds that have an order; the clock bounds a time of day, and the circle a bearing: both are tried below.
RANGED = ("integer", "number", "percent", "date", "quantity")


def kind_of(field: Field) -> str:
    return field.of or field.kind


def of_dimension(name: str) -> list[Field]:
    return [f for f in FIELDS if kind_of(f) == "quantity" and find_dimension(f.dimension, f.unit_ip) == name]


def named(fields: list[Field]) -> list[Any]:
    return [pytest.param(field, id=dotted_path(field.path)) for field in fields]


def refused(field: Field, text: str) -> InvalidValue:
    with pytest.raises(InvalidValue) as raised:
        convert_checked(field, text)
    return raised.value


@pytest.mark.parametrize("field", named([f for f in FIELDS if kind_of(f) in RANGED]))
def test_a_figure_has_a_least_and_a_most_and_its_example_lies_between(field: Field) -> None:
    least, most = (convert(field, end) for end in (field.least, field.most))
    assert least < most
    for entry in field.example.strip("[]").split(", "):
        assert least <= convert(field, entry) <= most
    if field.default:
        assert least <= convert(field, field.default) <= most


def test_each_range_and_each_unit_is_the_one_that_was_agreed() -> None:
    found = {dotted_path(field.path): range_of(field) for field in FIELDS if field.least or field.most or field.unit_ip}
    assert found == {path: span for span, paths in HELD.items() for path in paths.split()}


def range_of(field: Field) -> str:
    """`0 psi to 120 psi, psi kPa`."""
    units = " ".join(filter(None, (field.unit_ip, field.unit_si)))
    return f"{field.least} to {field.most}" + (f", {units}" if units else "")


def beyond(field: Field, end: str, way: int) -> str:
    """A text that lies just beyond an end of the range of a field."""
    value = convert(field, end)
    if isinstance(value, Quantity):
        return f"{float(value.to(value.unit) + way):.9f} {value.unit}"
    if isinstance(value, datetime.date):
        return str(value + datetime.timedelta(days=way))
    return f"{float(value + way):.9f}"


@pytest.mark.parametrize("field", named([f for f in FIELDS if kind_of(f) in RANGED and not f.values]))
def test_what_lies_beyond_either_end_is_refused_with_both(field: Field) -> None:
    for end, way, side in ((field.least, -1, "below"), (field.most, 1, "above")):
        fault = refused(field, beyond(field, end, way))
        assert f"is {side} {end}" in fault.message
        assert f"{field.least} to {field.most}" in fault.hint


def test_every_kind_that_is_asked_for_is_here() -> None:
    for dimension in ("length", "area", "time", "temperature", "pressure", "volume", "speed", "flow"):
        assert of_dimension(dimension)
    assert {kind_of(f) for f in FIELDS} >= {*RANGED, "time", "bearing"}


# A thousandth of a millimeter: no leaf of a feeler gauge and no mark of a tape is as thin.
@pytest.mark.parametrize("field", named([f for f in of_dimension("length") if f.unit_ip != "um"]))
def test_no_length_is_a_micrometer(field: Field) -> None:
    fault = refused(field, "1 um")
    assert "below" in fault.message or "thinner than anyone would measure" in fault.message
    assert refused(field, "1e-99 m").message
    assert refused(field, "1e99 m").message


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("joints.*.structural_closing", "0 in"),
        ("joints.*.structural_closing", "0.004 in"),
        ("joints.*.structural_closing", "0.1 mm"),
        ("joints.*.tolerance", "1/64 in"),
        ("walls.*.substrate.plane_measured", "0.5 mm"),
        ("elevations.*.openings.*.x", "0 ft"),
        ("elevations.*.openings.*.x", "1 mm"),
        ("elevations.*.impact_zones.*.from", "0 m"),
        ("log.wet_film", "0.5 mil"),
        ("compressor.filter", "0.01 um"),
        ("building.built_year", "1890"),
        ("contract.spec_sections.*.date", "1962-05-01"),
        ("attachments.*.valid_to", "2060-12-31"),
    ],
)
def test_a_figure_of_real_work_is_taken(path: str, text: str) -> None:
    field = next(f for f in FIELDS if dotted_path(f.path) == path)
    assert convert_checked(field, text) is not None


@pytest.mark.parametrize("text", ["0001-01-01", "1949-12-31", "2101-01-01", "9999-12-31"])
@pytest.mark.parametrize("field", named([f for f in FIELDS if kind_of(f) == "date"]))
def test_no_day_is_of_another_age(field: Field, text: str) -> None:
    assert refused(field, text).hint.startswith("1950-01-01 to 2100-12-31")


@pytest.mark.parametrize("text", ["24:00", "-1:00", "99:00", "12:60"])
@pytest.mark.parametrize("field", named([f for f in FIELDS if kind_of(f) == "time"]))
def test_the_clock_bounds_a_time_of_day(field: Field, text: str) -> None:
    assert "is not a time of day" in refused(field, text).message


@pytest.mark.parametrize("text", ["361 deg", "-1 deg", "1e99"])
@pytest.mark.parametrize("field", named([f for f in FIELDS if kind_of(f) == "bearing"]))
def test_the_circle_bounds_a_bearing(field: Field, text: str) -> None:
    assert "outside 0 to 360 degrees" in refused(field, text).message


@pytest.mark.parametrize("kind", ["integer", "number", "percent", "quantity", "bearing"])
@pytest.mark.parametrize("end", ["least", "most"])
def test_an_entry_without_an_end_of_its_range_is_refused(kind: str, end: str) -> None:
    entry = {"label": "x", "kind": kind, "ring": "work", "owed_by": "owner", "why": "x", "example": "1"}
    entry |= {"least": "1", "most": "2"} | (
        {"unit_ip": "ft", "unit_si": "m"} if kind in ("quantity", "bearing") else {}
    )
    known = Known({}, {})
    assert shape_of(entry, known).convert(entry, known)
    del entry[end]
    with pytest.raises(Wrong, match=f"the key {end} is missing"):
        shape_of(entry, known).convert(entry, known)
