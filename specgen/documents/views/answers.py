"""The answer for each wall in short: the verdict, and what decides it."""

from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_measured
from specgen.documents.views._asked import list_asked
from specgen.documents.views._document_stages import list_deciding
from specgen.documents.views._following import tell_split
from specgen.documents.views._rules import name_rules
from specgen.documents.views._stages import DECISION
from specgen.documents.views._walls import SAID, describe_build_up
from specgen.judging.owners import looks_for_document
from specgen.model.finding import Severity, Verdict
from specgen.model.value_text import count

# Who is asked is named before.
_FIRST = ("parties",)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each wall."""
    lines = tuple(
        ([mark, ": ", describe_build_up(context, mark)], SAID[judged.verdict], " ".join(_reasons(context, mark)))
        for mark, judged in context.judgment.walls.items()
    )
    return TableView(("Wall", "Suitable for finish", "Reasons, and what is pending"), lines, (26, 12, 62))


def _reasons(context: DocumentContext, mark: str) -> Iterator[str]:
    """The exceptions first, then documents, values, and measures."""
    judgment = context.judgment
    judged = judgment.walls[mark]
    found = [f for f in judgment.findings if f.code in judged.deciding and mark in f.walls]
    if judged.verdict is Verdict.YES:
        yield "No exceptions."
    stops = [f"{f.message} ({f.code})" for f in found if f.severity is Severity.STOP and not looks_for_document(f)]
    if stops:
        yield " ".join(stops)
    documents = sum(entry.number for entry in list_deciding(context, mark))
    told = ["values"] if judged.fields and _asks_values(context, mark) else []
    told += [count(documents, "document")] if documents else []
    if told:
        yield f"Pending, listed in D19 before the decision: {', and '.join(told)}."
    rules = tell_split(context, mark)
    if rules:
        yield f"{rules}, listed in D02."
    measures = name_rules(f.rule for f in found if f in list_measured(context))
    if measures:
        yield f"Measures required, see D05: {'; '.join(measures)}."


def _asks_values(context: DocumentContext, mark: str) -> bool:
    """Whether values are asked for before the decision on a wall: its own, and those that are of no other wall."""
    early = (one.path.split(".") for one in list_asked(context) if one.order <= DECISION[0])
    return any(path[0] not in _FIRST and (path[0] != "walls" or path[1] == mark) for path in early)
