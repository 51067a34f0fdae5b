"""The list of sealant joints of the layout: the sealant schedule with what each serves, moves with and leaves open."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.empty_cells import NONE
from specgen.documents.views import joints

# Where water leaves the wall, the sealant stops; said where the project does not tell the parts left open.
_USUALLY_OPEN = {"opening_perimeter": "head weeps and front of sill pan", "floor_line": "weeps over its flashing"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each joint and each sealed penetration, as in the schedule of the procedure."""
    schedule = joints.rows(context, composer)
    header = (*schedule.header[:2], "Left open", "Moving length", *schedule.header[2:])
    lines = tuple(_tell(context, *row) for row in schedule.rows)
    return TableView(header, lines, (5, 28, 14, 7, 6, 6, 11, 9, 6, 8))


def _tell(context: DocumentContext, mark: str, place: list[Any], *rest: Any) -> tuple[Any, ...]:
    """The row of a joint, with what of it stays open, and the length of wall that moves into it."""
    at = ("joints", mark)
    sizes = ["" if cell == NONE else cell for cell in rest]
    if at not in context.given_sections:
        return mark, place, "", "", *sizes
    # A joint around openings, and one at an end, names what it serves as its place.
    serves = (*at, "serves")
    told_already = context.project.get((*at, "runs")) == "around_opening" or joints.find_end(context, at)
    floor = "floor " if context.project.get((*at, "kind")) == "floor_line" else ""
    given = context.project.is_given(serves) and not told_already
    told = [f", serves {floor}", context.display(serves)] if given else []
    left_open = (*at, "left_open")
    usual = _USUALLY_OPEN.get(str(context.project.get((*at, "kind"))), "")
    opened = context.display(left_open) if context.project.is_given(left_open) else usual
    return mark, [*place, *told], opened, context.display((*at, "panel_length")), *sizes
