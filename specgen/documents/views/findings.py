"""Exceptions as rows."""

from collections.abc import Iterable
from typing import Any

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import name_place
from specgen.documents.measures import Measure, list_measures, name_rules
from specgen.documents.parties import tell_party
from specgen.documents.views._cells import join_cells
from specgen.model.finding import Finding
from specgen.model.source import Kind, Source

# Of more members than these the marks alone are told.
MOST_NAMED = 3


def table(context: DocumentContext, findings: Iterable[Finding], called: str) -> TableView:
    """One row per measure: rules, place, what was found, the measure, who takes it and when, and what it rests on."""
    lines = tuple(
        (
            name_rules(one.codes),
            _place(context, one),
            one.message,
            one.remedy,
            f"{tell_party(context, one.by)}, before {one.before}",
            _basis(context, one),
        )
        for one in list_measures(context.project, findings)
    )
    return TableView(("Item", "Where", called, "Measure", "By, before", "Basis"), lines, (10, 11, 23, 25, 16, 15))


def _place(context: DocumentContext, measure: Measure) -> str:
    if measure.subjects == ("project",):
        return "Project"
    if not measure.collection or len(measure.subjects) > MOST_NAMED:
        return ", ".join(measure.subjects)
    return "; ".join(name_place(context, measure.collection, mark) for mark in measure.subjects)


def _basis(context: DocumentContext, measure: Measure) -> list[Any]:
    """What the clauses rest on: the controlling texts, and the mark of what is not verified."""
    cited = {text: text for text in (_cite(context, code, source) for code, source in measure.sources)}
    return join_cells([text] for text in cited)


def _cite(context: DocumentContext, code: str, source: Source) -> Any:
    cited = context.cite(source)
    if cited.kind is not Kind.UNVERIFIED:
        return cited.legend
    text = source.text_to_check
    return DisplayValue(text, text, source, about=f"Basis of {code}") if text else "Trade practice"
