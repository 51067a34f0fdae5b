"""The list of sealant joints of the layout: the sealant schedule with what each serves, moves with and leaves open."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views import joints


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each joint and each sealed penetration, as in the schedule of the procedure."""
    schedule = joints.rows(context, composer)
    kept = (*schedule.header[:2], "Serves", "Left open", "Moving length", *schedule.header[2:])
    lines = tuple((*row[:2], *_tell(context, row[0]), *row[2:]) for row in schedule.rows)
    return TableView(kept, lines, (5, 19, 10, 11, 7, 7, 9, 10, 8, 6, 8))


def _tell(context: DocumentContext, mark: str) -> tuple[Any, Any, Any]:
    """What a joint serves, what of it stays open, and the length of wall that moves into it."""
    at = ("joints", mark)
    if at not in context.given_sections:
        return "", "", ""
    shown = [context.display((*at, name)) for name in ("serves", "left_open", "panel_length")]
    given = [context.project.is_given((*at, name)) for name in ("serves", "left_open")]
    return *(value if is_given else "" for value, is_given in zip(shown, given, strict=False)), shown[2]  # type: ignore[return-value]
