"""Known-answer projects for every clause: one that fires it, one that does not, one that leaves it unjudged.

The cases stand in `cases/*.yaml`, one file a rule, named as the rule is. Where a case rests on a published figure its
source stands beside it; the others restate the clause and are common practice, no source.
"""

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.judging.registry import load_rules
from tests.support import case_of, project_of, told_by

CASES = {
    file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.CSafeLoader)
    for file in sorted((Path(__file__).parent / "cases").rglob("*.yaml"))
}
CLAUSES = {clause.code: clause for rule in load_rules() for clause in rule.clauses if not clause.of_open_items}
BY_CODE = {code: case for cases in CASES.values() for code, case in cases.items()}


def test_every_clause_has_its_cases() -> None:
    assert set(BY_CODE) == set(CLAUSES)


def each(outcome: str) -> list[Any]:
    return [
        pytest.param(code, case, id=f"{code}-{number}")
        for code, cases in BY_CODE.items()
        for number, case in enumerate(cases.get(outcome, []))
    ]


@pytest.mark.parametrize(("code", "case"), each("fires"))
def test_the_clause_fires(code: str, case: dict[str, Any], tmp_path: Path) -> None:
    fired = {f.code: f for f in case_of(tmp_path, case["project"]).judgment.findings}
    assert code in fired, sorted(fired)
    finding = fired[code]
    assert finding.severity == CLAUSES[code].severity
    assert finding.place.path == case["at"]
    if "found" in case:
        assert finding.found == case["found"]
    if "wanted" in case:
        assert finding.wanted == case["wanted"]
    assert "{" not in finding.message and "None" not in finding.message


@pytest.mark.parametrize(("code", "case"), each("passes"))
@pytest.mark.no_cover
def test_the_clause_does_not_fire(code: str, case: dict[str, Any], tmp_path: Path) -> None:
    told = told_by(project_of(tmp_path, case), code)
    assert (told.fires, told.waits) == (False, False)


@pytest.mark.parametrize(("code", "case"), each("unjudged"))
@pytest.mark.no_cover
def test_the_clause_is_left_unjudged(code: str, case: dict[str, Any], tmp_path: Path) -> None:
    told = told_by(project_of(tmp_path, case), code)
    assert (told.fires, told.waits) == (False, True)


@pytest.mark.parametrize("rule", load_rules(), ids=lambda rule: rule.code)
def test_a_rule_says_what_its_three_outcomes_are(rule: Any) -> None:
    for clause in rule.clauses:
        if not clause.of_open_items:
            case = BY_CODE[clause.code]
            assert case.get("fires") and case.get("passes")
            assert case.get("unjudged") or case.get("always_judged"), clause.code
