"""Every blank of a form that is filled in by hand has a name of its own, by which a record is read back."""

import dataclasses
import re
from collections.abc import Iterator
from typing import Any

import pytest

from specgen.model.block import Blank, CheckBox, Document
from specgen.reading.schema import project_schema
from tests.documents.support import document_of

EXAMPLES = ("clean", "metric", "first-look", "stops", "old-wall")


def blanks_of(document: Document) -> list[Blank | CheckBox]:
    """All that is filled in, in the order of the pages."""
    return list(find(document.blocks))


def find(part: Any) -> Iterator[Blank | CheckBox]:
    if isinstance(part, (Blank, CheckBox)):
        yield part
    elif isinstance(part, tuple):
        for one in part:
            yield from find(one)
    elif dataclasses.is_dataclass(part):
        for field in dataclasses.fields(part):
            yield from find(getattr(part, field.name))


@pytest.mark.parametrize("example", EXAMPLES)
@pytest.mark.parametrize("form", ["D10", "D12"])
def test_each_blank_of_a_form_has_a_name_of_its_own_that_fits_a_tag(example: str, form: str) -> None:
    names = [blank.name for blank in blanks_of(document_of(example, form))]
    assert len(names) > 200
    assert len(set(names)) == len(names)
    # Word takes 64 signs as a tag: from memory.
    assert all(0 < len(name) <= 64 for name in names)


@pytest.mark.parametrize("form", ["D10", "D11", "D12"])
def test_a_name_is_a_field_of_the_records_and_its_row_or_begins_with_form(form: str) -> None:
    fields = {".".join(path) for path in project_schema().fields}
    for blank in blanks_of(document_of("clean", form)):
        section, name, *_ = blank.name.split(".")
        assert section == "form" or f"{section}.{name}" in fields, blank.name


def test_a_box_gives_a_choice_that_its_field_takes() -> None:
    fields = project_schema().fields
    boxes = [
        one for form in ("D10", "D12") for one in blanks_of(document_of("clean", form)) if isinstance(one, CheckBox)
    ]
    judged = 0
    for box in boxes:
        section, name, *_ = box.name.split(".")
        field = fields.get((section, name))
        if field is not None and field.kind == "yes_no":
            assert box.value in ("yes", "no"), box.name
            judged += 1
        if field is not None and field.kind == "choice":
            assert box.value in field.values, box.name
            judged += 1
    assert judged > 60


# What the record of each form holds: names of fields retyped from the file of the records.
LOOKED_FOR = {
    "a": "date elevation area step crew panels masked_panels tank_clean tank_lined stirred strained lid_tight"
    " regulators_at_zero atomizing_pressure fluid_pressure stream_length pattern distance equipment_cleaned",
    "a1": "started_at ended_at wet_film",
    "a2": "started_at ended_at wet_film",
    "b1": "pail batch cup material_temperature cup_time_before_water water_added water cup_time strained",
    "c5": "started_at area air surface humidity wind gust sun_on_wall rain forecast_low forecast_rain",
}


@pytest.mark.parametrize("row", LOOKED_FOR)
def test_the_site_record_has_a_blank_for_each_field_of_its_rows(row: str) -> None:
    names = [blank.name for blank in blanks_of(document_of("clean", "D12"))]
    found = {name.split(".")[1] for name in names if re.match(rf"log\.\w+\.{row}(\.|$)", name)}
    assert found == set(LOOKED_FOR[row].split())


def test_the_acceptance_form_names_readings_by_criterion_and_settings_by_field() -> None:
    names = {blank.name for blank in blanks_of(document_of("clean", "D10"))}
    assert {"result.reading.gloss.6", "result.passed.gloss.yes", "result.signed_by.gloss"} <= names
    assert {f"result.reading.color_reading-{letter}.1" for letter in "abc"} <= names
    settings = "crew gun fluid_nozzle air_nozzle atomizing_pressure fluid_pressure stream_length stream_tolerance"
    for setting in f"{settings} distance cup cup_time water".split():
        assert f"accepted.{setting}" in names
