"""The words of questions: labels as questions, members, forms, and examples; all retyped."""

from pathlib import Path
from typing import Any

import pytest

from specgen.asking.question_words import ask_by_label, list_choices, tell_example, tell_form
from specgen.model.value_text import words
from specgen.reading.schema import project_schema
from tests.asking.asked import question_about
from tests.documents.example import changed_clean, changed_small

SCHEMA = project_schema()
ASKED = {
    "gloss.touch_dry_hours": "What is the gloss touch-dry time?",
    "gloss.voc": "What is the gloss VOC content?",
    "primer.volume_solids": "What are the primer volume solids?",
    "primer.coats": "How many coats of primer?",
    "building.stories": "How many stories?",
    "guns.*.count": "How many guns spraying?",
    "project.number": "What is the number of the project?",
    "smoothing.between_hours": "What is the drying time between smoothing coats?",
    "climate.months.*.rain_days": "How many rain days in the month?",
    "mockup.planned_on": "Planned mockup start: which date?",
    "schedule.submit_on": "What is the planned submission date?",
    "elevations.*.facing": "Elevation facing: which way?",
    "elevations.*.wall": "Wall of the elevation: which?",
    "contract.hold_points_released_by": "Who releases the hold points?",
    "access.*.side_brackets_at_spray": "Side brackets in place while spraying: yes or no?",
    "schedule.days_off": "Days off: which?",
    "parties.eifs_source.name": "What is the EIFS manufacturer name?",
    "code.local_fasteners_above": "What is the height above which local code requires fasteners?",
}


@pytest.mark.parametrize("field", ASKED)
def test_a_label_is_asked_as_a_question(field: str) -> None:
    assert ask_by_label(SCHEMA.fields[tuple(field.split("."))]) == ASKED[field]


def test_every_label_without_a_question_of_its_own_makes_one() -> None:
    asked = [ask_by_label(field) for field in SCHEMA.fields.values() if not field.asks]
    assert len(asked) > 300
    assert [one for one in asked if not one.endswith("?") or "  " in one] == []


def test_words_of_the_choices_of_a_field_differ_so_that_each_can_be_read_back() -> None:
    fields = [field for field in SCHEMA.fields.values() if field.values]
    assert len(fields) > 90
    assert [
        field.path for field in fields if len({words(one).lower() for one in field.values}) < len(field.values)
    ] == []


FORMS = {
    "walls.W1.insulation.thickness": ("in", "mm"),
    "climate.hot_air": ("°F", "°C"),
    "gloss.touch_dry_hours": ("hours", "hours"),
    "gloss.volume_solids": ("%", "%"),
    "site.latitude": ("degrees", "degrees"),
    "mockup.facing": ("compass point, or degrees from north", "compass point, or degrees from north"),
    "tank.regulators": ("whole number", "whole number"),
    "code.local_fasteners_required": ("yes or no", "yes or no"),
    "schedule.submit_on": ("date: year-month-day", "date: year-month-day"),
    "schedule.shift_start": ("time of day, 24 h", "time of day, 24 h"),
    "walls.W1.insulation.kind": (
        "one of: EPS, XPS, polyiso, phenolic, mineral wool",
        "one of: EPS, XPS, polyiso, phenolic, mineral wool",
    ),
    "schedule.days_off": ("one or more, comma between", "one or more, comma between"),
}
EXAMPLES = {
    "walls.W1.insulation.thickness": ("2 in", "51 mm"),
    "gloss.volume_solids": ("38%", "38%"),
    "schedule.days_off": ("sat, sun", "sat, sun"),
    "walls.W1.insulation.kind": ("", ""),
    "project.name": ("Harbor Clinic", "Harbor Clinic"),
}


@pytest.mark.parametrize("place", [0, 1], ids=["ip", "si"])
def test_form_and_example_are_in_the_system_of_the_project(tmp_path: Path, place: int) -> None:
    context = changed_small(tmp_path, {"package": {"units": ("ip", "si")[place]}})
    fields = {name: field for name in FORMS | EXAMPLES if (field := SCHEMA.field_at(tuple(name.split("."))))}
    assert set(fields) == set(FORMS | EXAMPLES)
    assert {n: tell_form(context, fields[n]) for n in FORMS} == {n: told[place] for n, told in FORMS.items()}
    assert {n: tell_example(context, fields[n]) for n in EXAMPLES} == {n: told[place] for n, told in EXAMPLES.items()}


def test_a_reference_offers_the_marks_that_there_are_and_says_what_they_stand_for(tmp_path: Path) -> None:
    context = changed_clean(tmp_path, {"joints": {"J1": {"elevation": "tbd"}}})
    field = SCHEMA.fields[("joints", "*", "elevation")]
    assert tell_form(context, field) == "mark: E1 South face, E2 West face, E3 Stack house"
    assert list_choices(context, field) == ("E1", "E2", "E3")


MEMBERS: dict[str, Any] = {
    "elevations.E1.prominent": "Elevation E1 (South face): ",
    "elevations.E1.openings.WD1.kind": "Elevation E1 (South face), opening WD1: ",
    "walls.W1.mesh.layers.0.edge": "Wall W1 (South face and West face), mesh layer 1: ",
}


@pytest.mark.parametrize("field", MEMBERS)
def test_the_member_is_told_in_words(tmp_path: Path, field: str) -> None:
    change: Any = "tbd"
    for name in reversed(field.split(".")):
        change = [{name: change}] if name.isdigit() else {name: change}
    assert question_about(changed_clean(tmp_path, _mend(change)), field).question.startswith(MEMBERS[field])


def _mend(change: Any) -> Any:
    """A list is laid over as a whole: the first mesh layer of the example, without its edge."""
    if "walls" not in change:
        return change
    layer = {"kind": "standard", "weight": "4.5 oz/yd2", "order": 1, "lap": "2-1/2 in", "edge": "tbd"}
    return {"walls": {"W1": {"mesh": {"layers": [layer]}}}}
