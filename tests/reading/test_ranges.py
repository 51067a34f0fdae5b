"""A range that is upside down is told at the line of its upper end, with the line of the other.

Which value never lies below which is a matter of its meaning: a longest time, an end, a daily high. No source.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from specgen.reading.json_schema import json_schema
from specgen.reading.schema import project_schema
from specgen.terminal.field_page import field_page
from tests.support import merged, written

HEAD = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
"""

# A range upside down, the path it is told at, the message; typed by hand.
UPSIDE_DOWN = [
    ("climate: {hot_air: 40 F,\n cold_air: 95 F}", "climate.hot_air", "40 °F is below 95 °F, the design cold air"),
    ("climate: {months: [{month: jan, mean_max: 0 C,\n mean_min: 33 F}]}", "climate.months.0.mean_max", "0 °C is"),
    ("joints: {J1: {install_high: 50 F,\n install_low: 60 F}}", "joints.J1.install_high", "50 °F is below 60 °F"),
    (
        "smoothing: {sand_after_most_minutes: 15,\n sand_after_least_minutes: 30}",
        "smoothing.sand_after_most",
        "15 is",
    ),
    (
        "primer: {cup_most: 25 s,\n cup_least: 35 s}",
        "primer.cup_most",
        "25 s is below 35 s, the minimum primer cup time",
    ),
    (
        "gloss: {cup_most: 25 s,\n cup_least: 35 s}",
        "gloss.cup_most",
        "25 s is below 35 s, the minimum gloss cup time",
    ),
    (
        "primer: {target_dry_film: 1.4 mil,\n dry_film: 1.5 mil}",
        "primer.target_dry_film",
        "1.4 mil is below 1.5 mil, the dry film per coat of primer",
    ),
    (
        "gloss: {most_dry_film: 1.3 mil,\n target_dry_film: 1.4 mil}",
        "gloss.most_dry_film",
        "1.3 mil is below 1.4 mil, the target dry film per coat of gloss",
    ),
    (
        "elevations: {E1: {impact_zones: [{to: 1 m,\n from: 2 m, class: high}]}}",
        "elevations.E1.impact_zones.0.to",
        "1 m is below 2 m, the impact zone lower edge",
    ),
    (
        "elevations: {E1: {shade_hours: [{month: jun, to: 06:00,\n from: 11:00}]}}",
        "elevations.E1.shade_hours.0.to",
        "06:00 is before 11:00, the start of shade",
    ),
    (
        "package: {purpose: work_submittal, date: 2027-03-01,\n checked_on: 2027-03-02}",
        "package.date",
        "2027-03-01 is before 2027-03-02, the date of the checker's signature on the calculations",
    ),
    (
        "package: {purpose: work_submittal, date: 2027-03-01,\n calculated_on: 2027-03-02}",
        "package.date",
        "2027-03-01 is before 2027-03-02, the date of the author's signature on the calculations",
    ),
    (
        "package: {purpose: work_submittal, checked_on: 2027-02-25,\n calculated_on: 2027-02-26}",
        "package.checked_on",
        "2027-02-25 is before 2027-02-26, the date of the author's signature",
    ),
    (
        "contract: {completion_date: 2027-01-01,\n award_date: 2027-02-01}",
        "contract.completion_date",
        "2027-01-01 is",
    ),
    (
        "schedule: {spray_end: 2027-06-01,\n spray_start: 2027-06-14}",
        "schedule.spray_end",
        "the planned spraying start",
    ),
    ("schedule: {spray_end: 2027-06-01,\n work_start: 2027-06-14}", "schedule.spray_end", "the planned start of work"),
    ("schedule: {spray_start: 2027-06-01,\n work_start: 2027-06-14}", "schedule.spray_start", "planned start of work"),
    ("mockup: {kept_to: 2027-04-01,\n planned_on: 2027-04-05}", "mockup.kept_to", "the planned mockup start"),
    ("mockup: {kept_to: 2027-04-01,\n accepted_on: 2027-04-05}", "mockup.kept_to", "the mockup acceptance date"),
    (
        "attachments: {A1: {valid_to: 2026-01-01,\n issued_on: 2027-01-01}}",
        "attachments.A1.valid_to",
        "the attachment issue date",
    ),
    (
        "people: {P1: {years: 2,\n years_on_system: 3}}",
        "people.P1.years",
        "2 is below 3, the years of experience with",
    ),
    (
        "panel_limits: {max_width: 3 ft,\n least_side: 1 m}",
        "panel_limits.max_width",
        "3 ft is below 1 m, the minimum panel side",
    ),
    (
        "panel_limits: {max_height: 3 ft,\n least_side: 1 m}",
        "panel_limits.max_height",
        "3 ft is below 1 m, the minimum panel side",
    ),
    (
        "elevations: {E1: {name: South}}\nwalls:\n  W1: {substrate: {kind: concrete}, "
        "attachment: {method: adhesive_full_bed}, insulation: {thickness: 1/4 in,\n rasp_allowance: 3/8 in}}",
        "walls.W1.insulation.thickness",
        "1/4 in is below 3/8 in, the rasping allowance",
    ),
]
# The same values, or the ends the other way round.
RIGHT = [
    {"climate": {"hot_air": "95 F", "cold_air": "40 F"}},
    {"climate": {"hot_air": "50 F", "cold_air": "10 C"}},
    {"joints": {"J1": {"install_low": "4 C", "install_high": "39.2 F"}}},
    {"schedule": {"work_start": "2027-06-14", "spray_start": "2027-06-14", "spray_end": "2027-06-14"}},
    {"package": {"calculated_on": "2027-03-01", "checked_on": "2027-03-01", "date": "2027-03-01"}},
    {"mockup": {"planned_on": "2027-04-05", "accepted_on": "2027-04-01", "kept_to": "2027-04-05"}},
    {"people": {"P1": {"years": 3, "years_on_system": 3}}},
    {"panel_limits": {"max_width": "0.6096 m", "least_side": "2 ft"}},
]


def _head(text: str) -> str:
    """The head of a file without the section that a row above gives itself."""
    head = HEAD if "\nwalls:" not in text else HEAD.partition("walls:")[0]
    return head.replace("package: {purpose: design_draft}\n", "") if text.startswith("package:") else head


def refused(folder: Path, text: str) -> tuple[Problem, ...]:
    head = _head(text)
    with pytest.raises(Refused) as raised:
        pipeline.read(written(folder, head + text + "\n"))
    return raised.value.problems


@pytest.mark.parametrize(("text", "path", "said"), UPSIDE_DOWN, ids=[f"{row[1]} {row[2][-20:]}" for row in UPSIDE_DOWN])
def test_a_range_upside_down_is_told_at_its_upper_end(text: str, path: str, said: str, tmp_path: Path) -> None:
    (problem,) = refused(tmp_path, text)
    here, there = _lines(text)
    assert problem.path.startswith(path)
    assert (problem.file, problem.line) == ("project.yaml", here)
    assert said in problem.message
    assert f"stands in line {there}: correct one of the two" in problem.hint


def _lines(text: str) -> tuple[int, int]:
    """The line of the upper end, and that of the other, which each row above writes at its end."""
    head = _head(text)
    last = (head + text).count("\n") + 1
    return last - 1, last


def test_every_ordered_field_has_its_fault_above() -> None:
    ordered = {made.path[-1] for made in project_schema().fields.values() if made.not_below}
    assert ordered == {row[1].rpartition(".")[2] for row in UPSIDE_DOWN} - {"sand_after_most"} | {
        "sand_after_most_minutes",
        "gust",
    }


@pytest.mark.parametrize("change", RIGHT, ids=str)
def test_equal_ends_and_ends_in_order_are_read(change: Any, tmp_path: Path) -> None:
    base = {
        "format": 1,
        "package": {"purpose": "design_draft"},
        "project": {"name": "Trial"},
        "walls": {"W1": {"substrate": {"kind": "concrete"}, "attachment": {"method": "adhesive_full_bed"}}},
    }
    assert pipeline.read(written(tmp_path, merged(base, change)))


def test_two_files_that_do_not_fit_are_told_at_the_line_of_the_upper_end(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\nprimer:\n  cup_least: 27 s\n  cup_most: 33 s\n", "coat.yaml")
    (problem,) = refused(tmp_path, "coating_system: coat.yaml\nprimer: {cup_most: 26 s}")
    assert (problem.file, problem.path, problem.line) == ("project.yaml", "primer.cup_most", 7)
    assert problem.hint == "cup_least stands in coat.yaml, line 3: correct one of the two"


def test_a_side_file_is_told_of_though_the_project_gives_both_itself(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\nprimer: {cup_least: 33 s, cup_most: 27 s}\n", "coat.yaml")
    (problem,) = refused(tmp_path, "coating_system: coat.yaml\nprimer: {cup_least: 27 s, cup_most: 33 s}")
    assert (problem.file, problem.line) == ("coat.yaml", 2)


def test_a_record_is_told_in_its_file(tmp_path: Path) -> None:
    written(tmp_path, "format: 1\nlog:\n  - {date: 2027-06-15, wind: 9 mph,\n     gust: 3 m/s}\n", "week.yaml")
    (problem,) = refused(tmp_path, "records: [week.yaml]")
    assert (problem.file, problem.path, problem.line) == ("week.yaml", "log.0.gust", 4)
    assert problem.message == "3 m/s is below 9 mph, the wind"


def test_the_manual_and_the_schema_for_editors_tell_the_order() -> None:
    schema = project_schema()
    field = schema.fields["joints", "*", "install_high"]
    assert "  order     not below install_low\n" in field_page(field)
    joint = json_schema(schema)["properties"]["joints"]["anyOf"][0]["additionalProperties"]["anyOf"][0]
    assert "; not below install_low; for example" in joint["properties"]["install_high"]["description"]
    assert "not below" not in joint["properties"]["install_low"]["description"]
