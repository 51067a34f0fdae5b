"""The lines of a field in a project file, retyped from the words of its entry in the schema."""

import pytest
import yaml

from specgen.model.field import Field
from specgen.reading.schema import project_schema
from specgen.terminal.field_lines import WIDTH, example_text, format_field_lines


def lines(path: str, indent: int = 0, units: str = "ip") -> list[str]:
    field = project_schema().fields[tuple(path.split("."))]
    return format_field_lines(field, field.path[-1], indent, units)


def test_the_comment_stands_above_an_empty_key() -> None:
    assert lines("walls.*.insulation.thickness", 6) == [
        "      # Board thickness: what is left under an aesthetic joint; held against the fire report",
        "      #   (architect)",
        "      # such as 2 in",
        "      thickness:",
    ]


def test_a_length_of_metric_work_is_shown_in_metric_units() -> None:
    assert lines("walls.*.insulation.thickness", units="si")[-2:] == ["# such as 51 mm", "thickness:"]


def test_a_question_is_asked_as_one_and_the_form_of_its_answer_follows() -> None:
    assert lines("elevations.*.prominent") == [
        "# Is the elevation prominent? Asks for tighter flatness; never assumed (architect)",
        "# yes or no",
        "prominent:",
    ]


def test_a_unit_stands_with_the_example_alone() -> None:
    assert lines("elevations.*.grade_clearance", units="si") == [
        "# Clearance of the EIFS above grade: termination above grade keeps the edge dry (architect)",
        "# such as 203 mm",
        "grade_clearance:",
    ]


def test_choices_are_all_named_and_lists_show_their_brackets() -> None:
    assert lines("walls.*.framing.kind")[1:] == ["# one of cold_formed_steel, wood, none", "kind:"]
    assert lines("elevations.*.layout.align_to")[-2] == (
        "# any of jambs, heads, sills, corners, center; such as [jambs, heads]"
    )


def test_a_field_that_is_asked_of_some_members_alone_says_of_which() -> None:
    assert lines("walls.*.substrate.base")[-3] == "# only if substrate.kind = existing_coated"


@pytest.mark.parametrize(
    ("path", "units", "said"),
    [
        ("walls.*.attachment.cure_hours", "ip", "# left empty: 24 hours"),
        ("smoothing.total_thickness", "ip", "# left empty: 1/32 in"),
        ("smoothing.total_thickness", "si", "# left empty: 0.8 mm"),
        ("spray.overlap", "si", "# left empty: 50%"),
        ("elevations.*.wall", "ip", "# left empty: the only wall"),
    ],
)
def test_what_holds_without_a_value_is_told(path: str, units: str, said: str) -> None:
    assert lines(path, units=units)[-2] == said


def test_a_number_is_shown_with_what_it_counts_and_a_mark_is_that_of_the_starter() -> None:
    assert lines("walls.*.wrb.dry_hours")[-2] == "# such as 24, in hours"
    assert lines("elevations.*.wall")[-3] == "# such as W1"


@pytest.mark.parametrize("example", ["a: b", "# 3", "[one]", "5'-6\" wide", "it's: so", "plain", "ends:", "- 3", ">="])
def test_an_example_can_be_typed_as_it_is_shown(example: str) -> None:
    shown = example_text(Field(path=("a",), label="A", kind="text", example=example), "ip")
    assert yaml.load(f"a: {shown}", yaml.BaseLoader) == {"a": example}


@pytest.mark.parametrize("units", ["ip", "si"])
def test_no_line_is_wider_than_the_page_and_each_but_the_last_is_a_comment(units: str) -> None:
    for field in project_schema().fields.values():
        *comment, key = format_field_lines(field, field.path[-1], 8, units)
        assert comment
        assert all(line.startswith("        # ") and len(line) <= WIDTH for line in comment)
        assert key == f"        {field.path[-1]}:"
