"""The answer for each wall in short: the verdict, and what decides it."""

from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.owed_sheets import RequiredDocument
from specgen.documents.required_documents import list_measured, list_pending
from specgen.documents.views._document_stages import decides
from specgen.documents.views._rules import list_undecided, name_rules
from specgen.documents.views._walls import SAID, describe_build_up
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.judging.owners import looks_for_document
from specgen.judging.verdict import OF_A_WALL
from specgen.model.finding import Severity, Verdict
from specgen.model.value_text import count


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each wall."""
    lines = tuple(
        ([mark, ": ", describe_build_up(context, mark)], SAID[judged.verdict], " ".join(_reasons(context, mark)))
        for mark, judged in context.judgment.walls.items()
    )
    return TableView(("Wall", "Suitable for finish", "Decided by"), lines, (26, 16, 58))


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
    documents = len(name_documents(context, mark))
    told = [count(documents, "document")] if documents else []
    told += ["values"] if judged.fields else []
    if told:
        yield f"Pending, listed in D19: {', and '.join(told)}."
    rules = len(list_open_rules(context, mark))
    if rules:
        yield f"{count(rules, 'rule')} not evaluated, listed in D02."
    measures = name_rules(f.rule for f in found if f in list_measured(context))
    if measures:
        yield f"Measures required, see D05: {'; '.join(measures)}."


def list_open_rules(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The rules on a wall that are not evaluated: those that lack a value, and those that wait for a document alone."""
    waiting = (rule for rule in list_waiting_rules(context) if rule[:3] in OF_A_WALL)
    return (*list_undecided(context, mark), *(rule for rule in waiting if _is_on(context, rule, mark)))


def _is_on(context: DocumentContext, rule: str, mark: str) -> bool:
    """Whether a document that a rule waits for is about a wall."""
    return any(entry.code.startswith(rule) and concerns(context, entry, mark) for entry in list_pending(context))


def name_documents(context: DocumentContext, mark: str) -> list[str]:
    """The names of the documents that a wall waits for."""
    return [entry.name for entry in list_deciding(context, mark)]


def list_deciding(context: DocumentContext, mark: str) -> list[RequiredDocument]:
    """The documents that a wall waits for, those too that a design draft does not have to list yet."""
    deciding = context.judgment.walls[mark].deciding
    return [
        entry
        for entry in list_pending(context)
        if entry.code in deciding or (decides(context, entry) and concerns(context, entry, mark))
    ]


def concerns(context: DocumentContext, entry: RequiredDocument, mark: str) -> bool:
    """Whether a document is about a wall: the wall itself, one of its colors, or the project."""
    return not {mark, "project", *list_colors(context, mark)}.isdisjoint(entry.subjects)


def list_colors(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The colors of a wall: those of its elevations, the only one where an elevation names none."""
    return context.remember(_group_colors).get(mark, ())


def _group_colors(context: DocumentContext) -> dict[str, tuple[str, ...]]:
    """The colors of each wall, an entry for each of its elevations."""
    project = context.project
    found: dict[str, tuple[str, ...]] = {}
    for elevation in project.members.get(("elevations",), ()):
        path = ("elevations", elevation)
        wall, color = str(project.get((*path, "wall")) or ""), project.get((*path, "color"))
        found[wall] = found.get(wall, ()) + ((str(color),) if color else project.members.get(("colors",), ()))
    return found
