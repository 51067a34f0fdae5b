"""The order and the figures of the work, held by rows of our own: steps, lines of the acceptance form, tools, faults.

A step that moves, a line that is read less often, a figure that comes from another row: each is noticed.
"""

import re
from pathlib import Path

import pytest
import yaml

from specgen.model.finding import Severity
from specgen.model.standard import Sentence
from specgen.standards import load_standards

ROWS = load_standards()
HELD = yaml.safe_load((Path(__file__).parent / "work_rows.yaml").read_text("utf-8"))
ASKED = re.compile(r"(?:limit|figure)\('([^']*)'\)|computed\('([^']*)'|\{\{ ([a-z_.]+)(?: \| listed)? \}\}")


# Names that the acceptance form gives its lines.
OF_THE_FORM = (
    *("governing", "long_edge", "edge_line", "edge_note", "tape_method", "least_clearance"),
    *("least_base_coat", "least_wrb", "drained", "has_starter", "joint_sizes", "own_limit", "each_reading", "of_mean"),
)


def asked(*texts: str) -> list[str]:
    """The figures that templates print, in their order: limits, calculations, fields."""
    return ["".join(found) for text in texts for found in ASKED.findall(text)]


def words_of(*sentences: Sentence) -> list[str]:
    """The texts of sentences: what each says, and what it says where a value is not given."""
    return [text for sentence in sentences for text in (sentence.text, sentence.otherwise)]


def test_steps_lines_and_tools_stand_in_their_order() -> None:
    assert list(ROWS.steps) == list(HELD["steps"])
    assert list(ROWS.field_tests) == list(HELD["field_tests"])
    assert list(ROWS.step_checks) == list(HELD["step_checks"])
    assert list(ROWS.third_party_checks) == list(HELD["third_party_checks"])
    assert list(ROWS.safety_measures) == list(HELD["safety_measures"])
    assert list(ROWS.criteria) == list(HELD["criteria"])
    assert list(ROWS.tools) == list(HELD["tools"])


@pytest.mark.parametrize("name", HELD["steps"])
def test_a_step_has_its_point_its_records_and_its_figures(name: str) -> None:
    step, held = ROWS.steps[name], HELD["steps"][name]
    assert (step.article, step.point, list(step.records)) == (held["article"], held["point"], held["records"].split())
    assert asked(*words_of(*step.waits)) == held["wait"].split()
    assert asked(*words_of(*step.sentences, *step.cautions)) == held["figures"].split()
    each = [sentence.each for sentence in (*step.waits, *step.sentences, *step.cautions) if sentence.each != "walls"]
    assert each == held["each"].split()


@pytest.mark.parametrize("name", HELD["field_tests"])
def test_a_test_in_place_is_made_as_often_by_whom_and_by_its_figures(name: str) -> None:
    test, held = ROWS.field_tests[name], HELD["field_tests"][name]
    assert (test.by, test.step, test.form) == (held["by"], held["step"], held["form"])
    assert asked(test.standard, test.frequency, *words_of(test.limit)) == held["figures"].split()


@pytest.mark.parametrize("name", HELD["step_checks"])
def test_a_check_of_the_plan_stands_at_its_step_with_its_figures(name: str) -> None:
    check, held = ROWS.step_checks[name], HELD["step_checks"][name]
    assert (check.step, check.by, check.form) == (held["step"], held["by"], held.get("form", ""))
    assert asked(check.standard, check.frequency, *words_of(check.limit)) == held["figures"].split()


@pytest.mark.parametrize("name", HELD["third_party_checks"])
def test_a_line_of_the_third_party_list_has_its_figures(name: str) -> None:
    assert asked(*words_of(ROWS.third_party_checks[name].check)) == HELD["third_party_checks"][name].split()


@pytest.mark.parametrize("name", HELD["safety_measures"])
def test_a_safety_measure_has_its_clauses_its_person_and_its_figures(name: str) -> None:
    measure, held = ROWS.safety_measures[name], HELD["safety_measures"][name]
    assert measure.clause == tuple(ROWS.sources[source] for source in held["clause"].split())
    assert measure.by == held["by"]
    assert asked(*words_of(*measure.measure)) == held["figures"].split()


def test_each_step_of_the_work_has_a_check_in_the_plan() -> None:
    checked = {row.step for rows in (ROWS.field_tests, ROWS.step_checks) for row in rows.values()}
    assert set(ROWS.steps) == checked


def test_no_figure_of_the_work_is_typed_where_a_row_or_a_field_has_it() -> None:
    # Numbers of standards and of regulations are names.
    name = re.compile(r"ASTM [A-Z]\d+|\d+ CFR [\d.]+|(?:Form|Document) D\d+")
    for step in ROWS.steps.values():
        for text in words_of(*step.waits, *step.sentences, *step.cautions):
            assert not re.search(r"\d", name.sub("", re.sub(r"\{[{%].*?[%}]\}", "", text))), (step.name, text)


@pytest.mark.parametrize("name", HELD["criteria"])
def test_a_line_of_the_acceptance_form_is_read_as_often_and_by_its_figures(name: str) -> None:
    line, held = ROWS.criteria[name], HELD["criteria"][name]
    boxes = line.boxes or " ".join(".".join(path) for path in line.box_each)
    assert ", ".join(filter(None, (line.readings, boxes, ".".join(line.for_each)))) == held["read"]
    assert line.for_record is held.get("for_record", False)
    assert line.mean is held.get("mean", False)
    printed = asked(line.method, line.governing, line.limit)
    assert [figure for figure in printed if figure not in OF_THE_FORM] == held["figures"].split()
    compared = [".".join(path) for path in (*line.least, *line.most, *line.within)]
    assert compared == held.get("compared", "").split()
    assert line.basis == tuple(ROWS.sources[key] for key in held["basis"].split())


@pytest.mark.parametrize("name", HELD["tools"])
def test_a_tool_is_checked_for_before_its_step_and_named_with_its_figures(name: str) -> None:
    tool, held = ROWS.tools[name], HELD["tools"][name]
    assert (tool.step, asked(tool.what)) == (held["step"], held["figures"].split())


# What keeps glue off a wall stops it; what is washed, brushed or repointed is a caution. Common practice, no source.
STOPPING = {"loose_coating", "unsound", "frost_damage", "damp"}


def test_a_fault_that_no_glue_holds_on_stops_and_the_others_are_cautions() -> None:
    assert {name for name, fault in ROWS.faults.items() if fault.severity is Severity.STOP} == STOPPING
    others = {fault.severity for name, fault in ROWS.faults.items() if name not in STOPPING}
    assert others == {Severity.CAUTION}


def test_the_references_stand_in_their_order_with_the_rows_of_their_titles() -> None:
    assert list(ROWS.references) == list(HELD["references"])
    for name, source in HELD["references"].items():
        assert ROWS.references[name].source is ROWS.sources[source], name
    assert list(ROWS.forms) == HELD["forms"]


@pytest.mark.parametrize("edition", HELD["editions"])
def test_an_edition_of_the_code_has_its_wind_standard_and_its_rows_on_drainage(edition: str) -> None:
    row, held = ROWS.editions[edition], HELD["editions"][edition]
    assert (row["wind_standard"], row["drainage_source"]) == (held["wind"], ROWS.sources[held["drainage"]])
    assert list(ROWS.editions) == list(HELD["editions"])
