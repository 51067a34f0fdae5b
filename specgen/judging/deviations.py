"""Applies approved deviations to the findings, and to the nonconformances of a site record."""

from typing import NamedTuple

from specgen.judging.rule import Rule
from specgen.model.finding import Finding, Severity
from specgen.model.project import Project


class Lifted(NamedTuple):
    """The weight of a clause after any deviation: what lifted it, or why a deviation that is listed does not."""

    severity: Severity
    by: str | None = None  # the mark of the deviation
    why_not: str = ""  # a sentence


def lift(project: Project, findings: list[Finding], rules: tuple[Rule, ...]) -> list[Finding]:
    """The findings, with stops that an approved deviation lifts as cautions; a stop it cannot lift says why."""
    lifts = {clause.code: clause.lift for rule in rules for clause in rule.clauses}
    return [_lift(project, finding, lifts[finding.code]) for finding in findings]


def weigh(project: Project, code: str, severity: Severity, lift: str) -> Lifted:
    """The weight of a clause after any deviation; `lift` is what lifts it: `deviation`, or `never`."""
    marks = _find_deviations(project, code) if severity is Severity.STOP else []
    if not marks:
        return Lifted(severity)
    if lift == "never":
        return Lifted(severity, why_not=_explain(marks, "but no deviation lifts this rule"))
    approved = [mark for mark in marks if project.is_given(("deviations", mark, "approved_on"))]
    if not approved:
        return Lifted(severity, why_not=_explain(marks, "but is not approved"))
    return Lifted(Severity.CAUTION, approved[0])


def _lift(project: Project, finding: Finding, lift: str) -> Finding:
    lifted = weigh(project, finding.code, finding.severity, lift)
    if not lifted.why_not:
        return finding._replace(severity=lifted.severity, lifted_by=lifted.by)
    listed = f" {lifted.why_not}"
    told = tuple(one._replace(message=one.message + listed) for one in finding.told)
    return finding._replace(message=finding.message + listed, told=told)


def _explain(marks: list[str], why: str) -> str:
    return f"Deviation {', '.join(marks)} is listed against it, {why}."


def _find_deviations(project: Project, code: str) -> list[str]:
    """The marks of the deviations that answer a clause or its rule."""
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if {code, code[:-1]} & set(project.get(("deviations", mark, "answers")) or ())
    ]
