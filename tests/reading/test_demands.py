"""A demand of the contract is read by the field it names; what does not fit is told at its line."""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from tests.support import written

HEAD = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
"""
# The keys of the demand stand in lines of their own, from the eighth line of the file on.
CONTRACT = "contract:\n  demands:\n    - "
FIELD, RELATION, VALUE, MARKS = 8, 9, 10, 11


def file_of(folder: Path, field: str, relation: str = "", value: str = "", marks: str = "") -> Path:
    """A file with one demand, each of its keys in a line of its own."""
    keys = {"field": field, "relation": relation, "value": value, "for": marks}
    lines = [f"{key}: {text or 'tbd'}" for key, text in keys.items() if text or key != "for"]
    return written(folder, HEAD + CONTRACT + "\n      ".join(lines) + "\n")


def problems(folder: Path, field: str, relation: str = "", value: str = "", marks: str = "") -> list[Problem]:
    with pytest.raises(Refused) as raised:
        pipeline.check(file_of(folder, field, relation, value, marks))
    return list(raised.value.problems)


@pytest.mark.parametrize(
    ("field", "nearest"),
    [
        ("walls.*.base_coat.dry_thicknes", "walls.*.base_coat.dry_thickness"),
        ("walls.base_coat.dry_thickness", "walls.*.base_coat.dry_thickness"),
        ("gloss.units", "gloss_target.units"),
        ("gloss.dry_hour", "gloss.dry_hours"),
        ("Gloss.Dry_Hours", "gloss.dry_hours"),
    ],
)
def test_an_unknown_field_is_told_with_its_line_and_the_nearest_path(field: str, nearest: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, field, '">="', "24")
    assert problem.message == f"{field!r} is no field of this file"
    assert problem.hint == f"did you mean {nearest}?"
    assert (problem.path, problem.file, problem.line) == ("contract.demands.0.field", "project.yaml", FIELD)


@pytest.mark.parametrize("field", ["walls", "walls.*", "walls.W1", "gloss", "walls.*.base_coat"])
def test_a_section_is_no_field(field: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, field, '"="', "5")
    assert problem.message == f"{field!r} is no field of this file"


# Field, relation, a value that fits, one that does not, and what is said of it.
VALUES = [
    ("walls.*.base_coat.dry_thickness", ">=", "3/32 in", "3/32", "has no unit"),
    ("walls.*.base_coat.dry_thickness", ">=", "2.4 mm", "40 psi", "not a unit of length"),
    ("walls.*.attachment.cure_hours", ">=", "36", "36 h", "not a number"),
    ("gloss.coats", "=", "2", "two", "written in words"),
    ("gloss.pattern", "=", "Cross-Hatch", "cross-hach", "not a choice"),
    ("walls.*.insulation.kind", "in", '"xps, eps"', '"xps, foam"', "may be eps"),
    ("mockup.includes", ">=", '"[full_panel, opening]"', '"full_panel, oppening"', "not a choice"),
    ("primer.tinted", "=", "yes", "maybe", "neither yes nor no"),
    ("schedule.work_start", ">=", "2027-03-01", "1 March", "not a date"),
    ("site.altitude", "<=", "5200 ft", "90000 ft", "outside the range of this field"),
]


@pytest.mark.parametrize(("field", "relation", "good", "bad", "said"), VALUES, ids=[v[3] for v in VALUES])
def test_a_value_fits_the_type_of_its_field(
    field: str, relation: str, good: str, bad: str, said: str, tmp_path: Path
) -> None:
    assert pipeline.check(file_of(tmp_path, field, f'"{relation}"', good)).judgment
    (problem,) = problems(tmp_path, field, f'"{relation}"', bad)
    assert said in problem.message
    assert problem.hint
    assert (problem.path, problem.line) == ("contract.demands.0.value", VALUE)


@pytest.mark.parametrize("relation", ["<=", ">="])
@pytest.mark.parametrize(
    ("field", "value"),
    [("walls.*.insulation.kind", "eps"), ("primer.tinted", "yes"), ("parties.applicator.name", "Northbank")],
)
def test_what_has_no_order_is_neither_more_nor_less(field: str, value: str, relation: str, tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, field, f'"{relation}"', value)
    assert problem.message.endswith("cannot be more or less")
    assert problem.hint == "write = or in"
    assert (problem.path, problem.line) == ("contract.demands.0.relation", RELATION)
    assert pipeline.check(file_of(tmp_path, field, '"="', value)).judgment


def test_a_mark_that_no_member_has_is_told_where_it_stands(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, "walls.*.attachment.cure_hours", '">="', "36", "[W1, W11]")
    assert "no member with this field has the mark 'W11'" in problem.message
    assert problem.hint == "did you mean W1?"
    assert (problem.path, problem.line) == ("contract.demands.0.for", MARKS)
    (problem,) = problems(tmp_path, "walls.W11.attachment.cure_hours", '">="', "36")
    assert "nothing here has the mark 'W11'" in problem.message
    assert (problem.path, problem.line) == ("contract.demands.0.field", FIELD)


def test_marks_of_what_is_not_given_yet_are_left_alone(tmp_path: Path) -> None:
    assert pipeline.check(file_of(tmp_path, "elevations.*.height", '"<="', "40 ft", "[E1]")).judgment
    assert pipeline.check(file_of(tmp_path, "elevations.E1.height", '"<="', "40 ft")).judgment


def test_a_demand_still_open_is_told_nothing_of(tmp_path: Path) -> None:
    assert pipeline.check(file_of(tmp_path, "gloss.coats")).judgment
    assert pipeline.check(file_of(tmp_path, "gloss.coats", '">="')).judgment
    assert pipeline.check(file_of(tmp_path, "gloss.coats", "tbd", "two coats")).judgment


def test_the_opening_of_one_elevation_is_none_of_another(tmp_path: Path) -> None:
    file = file_of(tmp_path, "elevations.E2.openings.O1.width", '"<="', "4 ft")
    elevations = "elevations:\n  E1: {openings: {O1: {width: 3 ft}}}\n  E2: {openings: {O2: {width: 3 ft}}}\n"
    file.write_text(file.read_text("utf-8") + elevations, "utf-8")
    with pytest.raises(Refused) as raised:
        pipeline.check(file)
    (problem,) = raised.value.problems
    assert "nothing here has the mark 'O1'" in problem.message
    assert problem.hint == "known: O2"
