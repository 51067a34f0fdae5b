"""Calculations that could not be run, with the missing fields; members that lack the same share a row."""

from typing import Any

from specgen.documents.calculations import Waiting, gather_calculations
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import mark, marks
from specgen.documents.views._wind_pending import list_waiting, tell_title
from specgen.model.field import Path, dotted_path

# What a calculation waits for that no field holds: the air of a pool hall is not that of normal occupancy.
_BESIDES = {"wall-layers": ("Indoor design temperature and relative humidity",)}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation and set of absent fields."""
    members: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for calculation in gather_calculations(context):
        title = tell_title(calculation)
        for waiting in list_waiting(context, calculation):
            fields = (waiting.why,) if waiting.why else _describe_fields(context, waiting)
            reasons = (*fields, *_BESIDES.get(calculation.provider.name, ()))
            members.setdefault((title, reasons), []).append(_whom(waiting))
    table: list[tuple[Any, ...]] = [
        (title, marks(names), DisplayValue(f"[{'; '.join(reasons)}]", open=True))
        for (title, reasons), names in members.items()
    ]
    return TableView(("Calculation", "For", "Pending"), tuple(table), (26, 16, 58))


def _whom(waiting: Waiting) -> str:
    """The member, "the project" for a value computed once, or "all" if the collection is missing."""
    provider = waiting.provider
    return "All" if not waiting.member and (provider.each or provider.sections) else mark(waiting.member)


def _describe_fields(context: DocumentContext, waiting: Waiting) -> tuple[str, ...]:
    """Each label once, with the marks of the members that lack it where they are not the one of the row."""
    found: dict[str, list[str]] = {}
    for path in waiting.paths:
        label, of = _describe_field(context, waiting, path)
        found.setdefault(label, []).extend([of] if of else [])
    return tuple(", ".join((label, *marked)) for label, marked in found.items())


def _describe_field(context: DocumentContext, waiting: Waiting, path: Path) -> tuple[str, str]:
    """The label, and the mark of a member that is not the one of the row: `Openings` and `E1`."""
    node = context.project.schema.node(path)
    entry = node.field or node.collection
    if entry is None:
        return dotted_path(path), ""
    inside = bool(waiting.member) and path[: len(waiting.member)] == waiting.member
    other = len(path) > 2 and not inside and context.project.schema.node(path[:1]).collection is not None
    return entry.label, path[1] if other and path[1] != "*" else ""
