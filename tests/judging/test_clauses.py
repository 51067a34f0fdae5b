"""Known-answer projects for every clause: some that fire it, some that do not, some that leave it unjudged.

What a finding does stands in the cases too: its severity, what lifts it, what it makes of a wall, its remedy, steps,
documents and sources, stated as the trade wants them. Where a case rests on a published figure its source stands beside
it; the others restate the clause and are common practice, no source.
"""

from collections.abc import Callable
from typing import Any

import pytest

from specgen.judging.engine import clause_basis
from specgen.judging.registry import load_rules
from specgen.model.finding import Finding, Judgment, Severity
from specgen.model.project import Project
from specgen.model.source import Basis
from specgen.standards import load_standards
from specgen.terminal.report import format_report
from specgen.terminal.rule_page import format_rule
from specgen.terminal.screen import Screen
from tests.judging.clause_cases import CLAUSES, FILES, JUDGED, RULES, STATED, each, holds, rests_on, told_in
from tests.support import context_of, judged_alone, project_of, told_by, with_deviation

Read = Callable[[Any], Project]

# So wide that no line wraps.
WIDE = Screen(10_000)
# What a wall is told where one clause alone is judged: unlifted, and lifted by a deviation.
VERDICTS = {"refused": "no", "waits": "not_yet_known", "measures": "with_measures", "": "yes"}
LIFTED = {"refused": "with_measures", "waits": "with_measures", "": "yes"}
# How a manual page tells what lifts a stop.
PAGE = {"never": ", no deviation lifts it", "deviation": ", lifted by an approved deviation", "none": ""}


@pytest.fixture(scope="module")
def read(tmp_path_factory: pytest.TempPathFactory) -> Read:
    """Reads a change laid over the small project; the same change is read once."""
    folder, known = tmp_path_factory.mktemp("clauses"), dict[str, Project]()

    def project(change: Any) -> Project:
        text = repr(change)
        if text not in known:
            known[text] = project_of(folder, change)
        return known[text]

    return project


def names(basis: Basis) -> list[str]:
    """The sources of a finding, each as the reader sees it."""
    return [str(Basis((source,))) for source in basis.sources]


def test_every_clause_has_its_cases() -> None:
    assert len(STATED) == sum(map(len, FILES.values()))
    assert set(RULES) == {rule.code for rule in load_rules()}
    assert set(CLAUSES) == {clause.code for rule in load_rules() for clause in rule.clauses}
    assert {code for code in CLAUSES if code not in JUDGED} == {"SUB-09a", "SUB-09b"}
    for code, stated in JUDGED.items():
        assert stated["passes"] and (stated.get("unjudged") or stated.get("always_judged")), code


@pytest.mark.parametrize(("code", "case"), each("fires"))
def test_the_clause_fires(code: str, case: dict[str, Any], read: Read) -> None:
    finding = told_by(read(case["project"]), code).finding
    assert finding is not None
    stated = told_in(code, case)
    assert (finding.code, finding.severity, finding.place.path) == (code, stated.severity, case["at"])
    assert (finding.found, finding.wanted) == (case.get("found", ""), case.get("wanted", ""))
    assert (finding.steps, finding.step, finding.documents) == (stated.steps, stated.step, stated.documents)
    assert holds(finding.remedy, stated.remedy), finding.remedy
    assert holds(finding.message, case.get("message", "")), finding.message
    assert rests_on(names(finding.basis), stated.basis), finding.basis
    assert "{" not in finding.message and "None" not in finding.message


@pytest.mark.parametrize(("code", "case"), each("passes"))
@pytest.mark.no_cover
def test_the_clause_does_not_fire(code: str, case: dict[str, Any], read: Read) -> None:
    told = told_by(read(case), code)
    assert (told.fires, told.waits) == (False, False)


@pytest.mark.parametrize(("code", "case"), each("unjudged"))
@pytest.mark.no_cover
def test_the_clause_is_left_unjudged(code: str, case: dict[str, Any], read: Read) -> None:
    told = told_by(read(case), code)
    assert (told.fires, told.waits) == (False, True)


def judged(read: Read, code: str, answers: str, approved_on: str = "tbd") -> tuple[Judgment, Finding, str]:
    """The first firing case of a clause, with a deviation: the judgment, its one finding, and what `check` says."""
    project = read(with_deviation(JUDGED[code]["fires"][0]["project"], answers, approved_on))
    judgment = judged_alone(project, code)
    (finding,) = judgment.findings
    return judgment, finding, format_report(project, judgment, screen=WIDE)


def verdicts(judgment: Judgment, finding: Finding) -> set[str]:
    """What the walls of a finding are told."""
    return {str(judgment.walls[mark].verdict) for mark in finding.walls}


def with_lift(lift: str) -> list[str]:
    """The clauses that a deviation lifts, that none lifts, or that are no stops."""
    return [code for code in JUDGED if told_in(code).lift == lift]


@pytest.mark.parametrize("code", with_lift("deviation"))
def test_an_approved_deviation_turns_the_stop_into_a_caution(code: str, read: Read) -> None:
    judgment, finding, report = judged(read, code, code, "2027-02-24")
    assert (finding.severity, finding.lifted_by) == ("caution", "DV9")
    assert not judgment.of(Severity.STOP)
    assert verdicts(judgment, finding) == {LIFTED[told_in(code).wall]}
    assert f"\nCAUTION {code}  " in report
    assert "\n     lifted by deviation DV9\n" in report


@pytest.mark.parametrize("code", with_lift("deviation"))
def test_a_deviation_that_nobody_approved_lifts_nothing(code: str, read: Read) -> None:
    judgment, finding, report = judged(read, code, code[:-1])
    assert (finding.severity, finding.lifted_by) == ("stop", None)
    assert verdicts(judgment, finding) == {VERDICTS[told_in(code).wall]}
    assert f"\nSTOP {code}  " in report
    assert " Deviation DV9 is listed against it, but is not approved.\n" in report


@pytest.mark.parametrize("answered", ["rule", "clause"])
@pytest.mark.parametrize("code", with_lift("never"))
def test_a_stop_that_nothing_lifts_stands_though_its_deviation_is_approved(
    code: str, answered: str, read: Read
) -> None:
    judgment, finding, report = judged(read, code, code if answered == "clause" else code[:-1], "2027-02-24")
    assert (finding.severity, finding.lifted_by) == ("stop", None)
    assert verdicts(judgment, finding) == {VERDICTS[told_in(code).wall]}
    assert f"\nSTOP {code}  " in report
    assert " Deviation DV9 is listed against it, but no deviation lifts this rule.\n" in report


@pytest.mark.parametrize("code", with_lift("none"))
def test_a_deviation_leaves_what_is_no_stop_as_it_is(code: str, read: Read) -> None:
    judgment, finding, report = judged(read, code, code, "2027-02-24")
    assert (finding.severity, finding.lifted_by) == (told_in(code).severity, None)
    assert verdicts(judgment, finding) == {VERDICTS[told_in(code).wall]}
    assert f"\n{told_in(code).severity.upper()} {code}  " in report
    assert "DV9" not in report


@pytest.mark.parametrize("rule", load_rules(), ids=lambda rule: rule.code)
def test_the_manual_page_tells_the_same(rule: Any, read: Read) -> None:
    bases = [clause_basis(clause, load_standards()) for clause in rule.clauses]
    page = context_of(read({})).fill(format_rule(rule, bases))
    for clause, basis in zip(rule.clauses, bases, strict=True):
        stated = told_in(clause.code)
        assert f"\n  {clause.code}  {stated.severity}{PAGE[stated.lift]}\n" in page
        assert rests_on(names(basis), stated.page), clause.code
    assert holds(page.partition("\nmeasure: ")[2], RULES[rule.code]["remedy"])


@pytest.mark.parametrize("code", [code for code in CLAUSES if code not in JUDGED])
def test_a_clause_of_the_open_items_bears_on_its_steps_and_documents(code: str) -> None:
    rule = next(rule for rule in load_rules() if rule.code == code[:-1])
    stated = told_in(code)
    assert (rule.steps, rule.documents) == (stated.steps, stated.documents)


def test_no_deviation_lifts_the_stop_of_open_items(read: Read) -> None:
    change = {"package": {"purpose": "mockup_submittal"}}
    for answers in ("SUB-09", "SUB-09b"):
        judgment = judged_alone(read(with_deviation(change, answers, "2027-02-24")), "SUB-09b")
        assert judgment.stopped and not judgment.findings
