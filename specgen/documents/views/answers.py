"""The answer for each wall in short: the verdict, and what decides it."""

from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_required, looks_for_document
from specgen.documents.views._fields import name_fields, say_fields
from specgen.documents.views._walls import SAID, describe_build_up
from specgen.judging.verdict import list_unjudged
from specgen.model.finding import Severity, Verdict
from specgen.model.value_text import count

MOST_NAMED = 3


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each wall."""
    lines = tuple(
        ([mark, ": ", describe_build_up(context, mark)], SAID[judged.verdict], " ".join(_reasons(context, mark)))
        for mark, judged in context.judgment.walls.items()
    )
    return TableView(("Wall", "Suitable for finish", "Decided by"), lines, (26, 16, 58))


def _reasons(context: DocumentContext, mark: str) -> Iterator[str]:
    """The stops first, then documents, values, and measures; the first few of each, and the number of the others."""
    judgment = context.judgment
    judged = judgment.walls[mark]
    found = [f for f in judgment.findings if f.code in judged.deciding and mark in f.walls]
    if judged.verdict is Verdict.YES:
        yield "No exceptions."
    stops = [f"{f.message} ({f.code})" for f in found if f.severity is Severity.STOP and not looks_for_document(f)]
    if stops:
        more = len(stops) - MOST_NAMED
        yield " ".join(stops[:MOST_NAMED]) + (f" {count(more, 'more stop')}." if more > 0 else "")
    codes = {f.code for f in found}
    documents = [entry.name for entry in list_required(judgment) if entry.code in codes]
    if documents:
        yield f"Documents pending: {_list_first(documents)}."
    values = say_fields(_leave_out(mark, name_fields(context, judged.fields)))
    if values:
        yield f"Values pending: {_list_first(values)}."
    unjudged = list_unjudged(judgment, mark)
    if unjudged:
        deciding = f"; {len(judged.undecided)} can decide the answer" if judged.undecided else ""
        yield f"{count(len(unjudged), 'rule')} not evaluated{deciding}."
    if judged.measures:
        yield f"{count(judged.measures, 'measure')} required; see D05."


def _leave_out(mark: str, names: dict[str, list[str]]) -> dict[str, list[str]]:
    """The names without the mark of the wall in whose row they stand."""
    return {label: [] if marks == [mark] else marks for label, marks in names.items()}


def _list_first(names: list[str]) -> str:
    more = len(names) - MOST_NAMED
    return "; ".join(names[:MOST_NAMED]) + (f"; and {more} more" if more > 0 else "")
