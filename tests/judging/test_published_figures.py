"""Clauses on the two sides of the figure of the text they rest on: the text stands beside each in its file."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.support import project_of, told_by

CASES = yaml.load((Path(__file__).parent / "published_figures.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)


@pytest.mark.parametrize("case", CASES, ids=[f"{case['clause']} {case['text'][:40]}" for case in CASES])
def test_a_clause_turns_at_the_figure_of_its_text(case: dict[str, Any], tmp_path: Path) -> None:
    right = told_by(project_of(tmp_path, case["right"]), case["clause"])
    assert (right.fires, right.waits) == (False, False), case["text"]
    assert told_by(project_of(tmp_path, case["wrong"]), case["clause"]).fires, case["text"]


def test_every_case_tells_its_text() -> None:
    assert all(len(case["text"].split()) > 4 for case in CASES)
    assert {case["clause"][:3] for case in CASES} == {"ACC", "COD", "ATT", "SLT", "SUB"}
