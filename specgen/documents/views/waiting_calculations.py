"""Calculations that could not be run, with the missing fields; members that lack the same share a row."""

from typing import Any

from specgen.documents.calculations import Waiting, gather_calculations
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import mark, marks
from specgen.model.field import Path, dotted_path


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation and set of absent fields."""
    members: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for calculation in gather_calculations(context):
        for waiting in calculation.waiting:
            reasons = (
                (waiting.why,)
                if waiting.why
                else tuple(_describe_field(context, waiting, path) for path in waiting.paths)
            )
            members.setdefault((calculation.provider.title, reasons), []).append(_whom(waiting))
    table: list[tuple[Any, ...]] = [
        (title, marks(names), DisplayValue(f"[{'; '.join(reasons)}]", open=True))
        for (title, reasons), names in members.items()
    ]
    return TableView(("Calculation", "For", "Pending"), tuple(table), (26, 16, 58))


def _whom(waiting: Waiting) -> str:
    """The member, "the project" for a value computed once, or "all" if the collection is missing."""
    provider = waiting.provider
    return "all" if not waiting.member and (provider.each or provider.sections) else mark(waiting.member)


def _describe_field(context: DocumentContext, waiting: Waiting, path: Path) -> str:
    """Label and path, a star for the member's own mark so that members with the same gaps share a row."""
    node = context.project.schema.node(path)
    entry = node.field or node.collection
    depth = len(waiting.member)
    inside = depth > 1 and path[:depth] == waiting.member
    shown = (*path[: depth - 1], "*", *path[depth:]) if inside else path
    return f"{entry.label} ({dotted_path(shown)})" if entry is not None else dotted_path(shown)
