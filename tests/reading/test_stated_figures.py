"""What an attachment states is a figure in force by its name: any other is told at its line.

45 degrees for masking tape: common practice, no source.
"""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Problem, Refused
from specgen.resolving.find_limit import find_limit
from tests.support import written

TEXT = """\
format: 1
package: {purpose: design_draft}
project: {name: Trial}
walls:
  W1: {substrate: {kind: concrete}, attachment: {method: adhesive_full_bed}}
attachments:
  P1: {kind: data_sheet, title: Tape data sheet, states: [STATED]}
"""


def problem_of(folder: Path, stated: str) -> Problem:
    with pytest.raises(Refused) as raised:
        pipeline.read(written(folder, TEXT.replace("STATED", stated)))
    (problem,) = raised.value.problems
    return problem


def test_a_figure_that_a_paper_states_is_cited_from_it(tmp_path: Path) -> None:
    project = pipeline.read(written(tmp_path, TEXT.replace("STATED", "masking.angle = 45 deg")))
    said = find_limit("masking.angle", project)
    assert said.value.text == "45 deg"
    assert said.source.legend == "Manufacturer's figure: Tape data sheet (P1)"
    # What no paper states is as it was.
    assert find_limit("flashing.projection", project).source.legend.startswith("common practice, no source")


def test_a_drawing_that_states_a_figure_is_cited_as_a_drawing(tmp_path: Path) -> None:
    text = TEXT.replace("data_sheet", "drawing").replace("STATED", "flashing.projection = 3/4 in")
    project = pipeline.read(written(tmp_path, text))
    assert find_limit("flashing.projection", project).source.legend == "Drawing P1: Tape data sheet"


@pytest.mark.parametrize(
    ("stated", "says", "right"),
    [
        (
            "masking.angel = 45 deg",
            "'masking.angel' is no figure that a paper can state",
            "did you mean masking.angle?",
        ),
        ("masking.angle = 60 deg", "'masking.angle = 60 deg' is not the figure in force", "write masking.angle = 45°"),
        ("masking.angle", "'masking.angle' is not the figure in force", "write masking.angle = 45°"),
        ("gloss.dry = 24", "'gloss.dry' is a figure of the coating manufacturer", "write gloss.dry_hours"),
        ("access.fall = 10 ft", "'access.fall' is a figure of the law, which no paper replaces", "leave it out"),
    ],
)
def test_what_no_paper_can_state_is_told_at_its_line(stated: str, says: str, right: str, tmp_path: Path) -> None:
    problem = problem_of(tmp_path, stated)
    assert problem.message == says
    assert problem.hint.startswith(right)
    assert (problem.path, problem.file, problem.line) == ("attachments.P1.states", "project.yaml", 7)


def test_a_figure_in_the_units_of_the_project_is_held_against_that_of_metric_work(tmp_path: Path) -> None:
    # 20 mm is the figure of metric work for 3/4 in: common practice, no source.
    metric = TEXT.replace("purpose: design_draft", "purpose: design_draft, units: si")
    project = pipeline.read(written(tmp_path, metric.replace("STATED", "flashing.projection = 20 mm")))
    assert find_limit("flashing.projection", project).source.legend == "Manufacturer's figure: Tape data sheet (P1)"


def test_a_sheet_in_inches_is_no_source_of_a_rounder_metric_figure(tmp_path: Path) -> None:
    metric = TEXT.replace("purpose: design_draft", "purpose: design_draft, units: si")
    project = pipeline.read(written(tmp_path, metric.replace("STATED", "flashing.projection = 3/4 in")))
    assert not find_limit("flashing.projection", project).source.legend.startswith("Manufacturer's figure")
