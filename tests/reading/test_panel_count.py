"""A project has no more panels than are laid out in reasonable time. The bound of 20,000 is ours."""

from pathlib import Path

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from tests.support import SMALL, merged, written

LIMITS = {"panel_limits": {"max_width": "5 ft", "max_height": "5 ft"}}


def face(side: int, layout: dict[str, object]) -> dict[str, object]:
    return {"width": f"{side} ft", "height": f"{side} ft", "layout": layout}


def lines(number: int) -> list[str]:
    return [f"{place} ft" for place in range(1, number + 1)]


# By hand: 142 x 142 = 20,164 panels of 5 ft by 5 ft; 141 x 141 = 19,881.
@pytest.mark.parametrize(
    "layout",
    [{"mode": "request"}, {"mode": "given", "vertical_lines": lines(141), "horizontal_lines": lines(141)}],
    ids=["proposed", "given"],
)
def test_more_panels_than_can_be_laid_out_are_refused_at_the_layout(layout: dict[str, object], tmp_path: Path) -> None:
    with pytest.raises(Refused) as told:
        pipeline.read(written(tmp_path, merged(SMALL, LIMITS | {"elevations": {"E1": face(710, layout)}})))
    (problem,) = told.value.problems
    assert problem.message == "with E1 there are about 20,164 panels in all, more than 20,000"
    assert problem.hint == "correct a size, a panel limit, or the lines, or split the project"
    assert problem.path == "elevations.E1.layout"


def test_panels_are_counted_over_all_elevations(tmp_path: Path) -> None:
    half = face(500, {"mode": "request"})  # 100 x 100
    two = {"E1": half, "E2": half}
    assert pipeline.read(written(tmp_path, merged(SMALL, LIMITS | {"elevations": two})))
    third = two | {"E3": face(5, {"mode": "request"})}
    with pytest.raises(Refused, match="with E3 there are about 20,001 panels"):
        pipeline.read(written(tmp_path, merged(SMALL, LIMITS | {"elevations": third})))


def test_a_wished_panel_that_is_smaller_counts(tmp_path: Path) -> None:
    wish = face(300, {"mode": "request", "target_width": "1 ft", "target_height": "2 ft"})  # 300 x 150
    with pytest.raises(Refused, match="about 45,000 panels"):
        pipeline.read(written(tmp_path, merged(SMALL, LIMITS | {"elevations": {"E1": wish}})))
