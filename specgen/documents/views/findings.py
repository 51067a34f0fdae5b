"""Exceptions as rows."""

from collections.abc import Iterable
from typing import Any

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views.workings import join_cells
from specgen.model.finding import Finding
from specgen.model.source import Kind, Source


def table(context: DocumentContext, findings: Iterable[Finding], called: str) -> TableView:
    """One row per finding: rule, place, what was found, the measure, and what it rests on."""
    lines = tuple((f.code, _place(f), _message(f), f.remedy, _basis(context, f)) for f in findings)
    return TableView(("Rule", "Where", called, "Measure", "Basis"), lines, (9, 10, 34, 29, 18))


def _place(finding: Finding) -> str:
    return "Project" if finding.subjects == ("project",) else ", ".join(finding.subjects)


def _basis(context: DocumentContext, finding: Finding) -> list[Any]:
    """What the clause rests on: the controlling texts, and the mark of what is not verified."""
    return join_cells([_cite(context, finding, source)] for source in finding.basis.sources)


def _cite(context: DocumentContext, finding: Finding, source: Source) -> Any:
    cited = context.cite(source)
    if cited.kind is not Kind.UNVERIFIED:
        return cited.legend
    text = source.text_to_check
    return DisplayValue(text, text, source, about=f"Basis of {finding.code}") if text else "Trade practice"


def _message(finding: Finding) -> str:
    return f"{finding.message} Lifted by deviation {finding.lifted_by}." if finding.lifted_by else finding.message
