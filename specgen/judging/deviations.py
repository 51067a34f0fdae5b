"""What an approved deviation lifts, and what it cannot."""

import dataclasses

from ..vocabulary.finding import Finding, Severity
from ..vocabulary.project import Project
from .rule import Rule


def lifted(project: Project, findings: list[Finding], rules: tuple[Rule, ...]) -> tuple[list[Finding], tuple[str, ...]]:
    """The findings with stops lifted to cautions, and what was refused, each in a sentence."""
    lifts = {clause.code: clause.lift for rule in rules for clause in rule.clauses}
    made, refused = [], []
    for finding in findings:
        marks = _answering(project, finding) if finding.severity is Severity.STOP else []
        if marks and lifts[finding.code] == "never":
            refused.append(
                f"Deviation {', '.join(marks)} answers {finding.code}, which no deviation lifts: the stop stands."
            )
        elif marks and not (approved := [m for m in marks if project.given(("deviations", m, "approved_on"))]):
            refused.append(f"Deviation {', '.join(marks)} answers {finding.code} but is not approved: the stop stands.")
        elif marks:
            finding = dataclasses.replace(finding, severity=Severity.CAUTION, lifted_by=approved[0])
        made.append(finding)
    return made, tuple(refused)


def _answering(project: Project, finding: Finding) -> list[str]:
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if {finding.rule, finding.code} & set(project.get(("deviations", mark, "answers")) or ())
    ]
