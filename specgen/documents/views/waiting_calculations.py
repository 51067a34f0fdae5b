"""What could not be computed, and the fields it waits for; members that wait for the same are told together."""

from typing import Any

from specgen.documents.calculations import Waiting, computed
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.workings import mark, marks
from specgen.model.field import Path, dotted


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation and set of absent fields."""
    made: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for one in computed(context):
        for waiting in one.waiting:
            told = (waiting.why,) if waiting.why else tuple(_named(context, waiting, path) for path in waiting.paths)
            made.setdefault((one.provider.title, told), []).append(_whom(waiting))
    table: list[tuple[Any, ...]] = [(title, marks(named), "; ".join(told)) for (title, told), named in made.items()]
    return TableView(("Calculation", "For", "Waits for"), tuple(table), (26, 16, 58))


def _whom(waiting: Waiting) -> str:
    """The member; the project for what is computed once; all where the collection itself is missing."""
    provider = waiting.provider
    return "all" if not waiting.member and (provider.each or provider.sections) else mark(waiting.member)


def _named(context: DocumentContext, waiting: Waiting, path: Path) -> str:
    """Label and path; the mark of the member itself is left out, so that members with the same gaps share a row."""
    node = context.project.schema.node(path)
    named = node.field or node.collection
    depth = len(waiting.member)
    inside = depth > 1 and path[:depth] == waiting.member
    shown = (*path[: depth - 1], "*", *path[depth:]) if inside else path
    return f"{named.label} ({dotted(shown)})" if named is not None else dotted(shown)
