"""Exceptions as rows."""

from collections.abc import Iterable

from specgen.documents.context import TableView
from specgen.documents.display_values import DisplayValue
from specgen.model.finding import Finding


def table(findings: Iterable[Finding], called: str) -> TableView:
    """One row per finding: rule, place, what was found with its source, and the measure."""
    lines = tuple((f.code, ", ".join(f.subjects), _message(f), f.remedy) for f in findings)
    return TableView(("Rule", "Where", called, "Measure"), lines, (12, 12, 42, 34))


def _message(finding: Finding) -> DisplayValue:
    lifted = f" Lifted by deviation {finding.lifted_by}." if finding.lifted_by else ""
    return DisplayValue(f"{finding.message}{lifted}", finding.message, finding.basis.sources[0])
