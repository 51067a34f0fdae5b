"""Fired clauses as rows."""

from collections.abc import Iterable

from specgen.documents.context import TableView
from specgen.model.finding import Finding


def table(findings: Iterable[Finding]) -> TableView:
    """One row per finding: clause, subjects, finding, measure, basis."""
    lines = tuple((f.code, ", ".join(f.subjects), _message(f), f.remedy, str(f.basis)) for f in findings)
    return TableView(("Clause", "Where", "Finding", "Measure", "Basis"), lines, (11, 11, 32, 27, 19))


def _message(finding: Finding) -> str:
    return f"{finding.message} Lifted by deviation {finding.lifted_by}." if finding.lifted_by else finding.message
