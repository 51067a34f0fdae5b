"""Applies approved deviations to the findings."""

from specgen.judging.rule import Rule
from specgen.model.finding import Finding, Severity
from specgen.model.project import Project


def lift(project: Project, findings: list[Finding], rules: tuple[Rule, ...]) -> list[Finding]:
    """The findings, with stops that an approved deviation lifts as cautions; a stop it cannot lift says why."""
    lifts = {clause.code: clause.lift for rule in rules for clause in rule.clauses}
    return [_lift(project, finding, lifts[finding.code]) for finding in findings]


def _lift(project: Project, finding: Finding, lift: str) -> Finding:
    marks = _find_deviations(project, finding) if finding.severity is Severity.STOP else []
    if not marks:
        return finding
    if lift == "never":
        return _explain(finding, marks, "but no deviation lifts this rule")
    approved = [mark for mark in marks if project.is_given(("deviations", mark, "approved_on"))]
    if not approved:
        return _explain(finding, marks, "but is not approved")
    return finding._replace(severity=Severity.CAUTION, lifted_by=approved[0])


def _explain(finding: Finding, marks: list[str], why: str) -> Finding:
    listed = f" Deviation {', '.join(marks)} is listed against it, {why}."
    told = tuple(one._replace(message=one.message + listed) for one in finding.told)
    return finding._replace(message=finding.message + listed, told=told)


def _find_deviations(project: Project, finding: Finding) -> list[str]:
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if {finding.rule, finding.code} & set(project.get(("deviations", mark, "answers")) or ())
    ]
