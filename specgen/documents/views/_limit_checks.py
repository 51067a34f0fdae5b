"""The clauses that compare the project with the result of a calculation, and their outcome in words."""

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.model.finding import LimitCheck
from specgen.model.value_text import words
from specgen.quantities.comparison import Outcome
from specgen.resolving.provider import Provider

_SAID = {Outcome.WITHIN: "met", Outcome.OUTSIDE: "not met"}


def limit_checks(context: DocumentContext, provider: Provider) -> dict[Path, list[LimitCheck]]:
    """The limit checks of each member: clauses that compare the project with the result, and their outcome."""
    checks: dict[Path, list[LimitCheck]] = defaultdict(list)
    for check in context.judgment.limit_checks:
        if check.name == provider.name and not _is_idle(context, check):
            checks[check.member].append(check)
    return checks


def _is_idle(context: DocumentContext, check: LimitCheck) -> bool:
    """Whether a check passed only because it has nothing to compare: the member lacks a value it does not need."""
    absent = context.project.get_or_members(check.path) is None if "*" not in check.path else False
    return absent and check.outcome is Outcome.WITHIN


def outcome(context: DocumentContext, check: LimitCheck) -> str:
    """The outcome of a check in words: met, not met, by deviation D1."""
    lifted = [f.lifted_by for f in context.judgment.findings if f.code == check.code and f.lifted_by]
    if check.outcome is Outcome.OUTSIDE and lifted:
        return f"by deviation {lifted[0]}"
    return _SAID.get(check.outcome, "not judged yet")


def describe_check(context: DocumentContext, check: LimitCheck) -> list[Any]:
    """`Width of the joint: 5/8 in (15.9 mm), met (SLT-02a)`."""
    field, answer = context.project.schema.field_at(check.path), outcome(context, check)
    if field is None or "*" in check.path:
        return [f"{field.label if field else _label(context, check.path)}: {answer} ({check.code})"]
    return [f"{field.label}: ", context.display(check.path), f", {answer} ({check.code})"]


def _label(context: DocumentContext, path: Path) -> str:
    """The label of a collection, or its name in words."""
    collection = context.project.schema.node(path).collection if "*" not in path else None
    return collection.label if collection is not None else words(path[-1])


def join_cells(parts: Iterable[list[Any]]) -> list[Any]:
    """The content of several cells in one, separated by semicolons."""
    cells: list[Any] = []
    for part in parts:
        cells += [*(["; "] if cells else []), *part]
    return cells
