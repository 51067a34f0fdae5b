"""What is witnessed first in place, for want of it on the mockup: a line for each item, two abreast."""

from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._not_shown import list_not_shown
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.documents.views.point_releases import list_witnesses, name_role

_JUDGED = (("yes", "pass"), ("no", "fail"))
_ROOM = 18  # the share of the width for the witnesses of one half


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Each item with its date, its result, and a place for each witness; empty where the mockup shows all."""
    roles = list_witnesses(context)
    lines = [
        _line(f"{noun[:1].upper()}{noun[1:]} {mark}", mark, roles)
        for noun, marks in list_not_shown(context).items()
        for mark in marks
    ]
    half = (len(lines) + 1) // 2
    header = ("Item", "Date", "Result", *map(name_role, roles)) * 2
    pairs = zip_longest(lines[:half], lines[half:], fillvalue=("",) * (len(header) // 2))
    widths = (13, 8, 50 - 13 - 8 - _ROOM, *(_ROOM // len(roles),) * len(roles)) * 2
    return TableView(header, tuple((*left, *right) for left, right in pairs), widths)


def _line(item: str, mark: str, roles: tuple[str, ...]) -> tuple[Any, ...]:
    """The blanks of one item."""
    return (
        item,
        make_blank(f"{item}, date", "form.witnessed_on", mark, kind="date"),
        make_boxes(_JUDGED, "form.witnessed_result", mark),
        *(make_blank(f"{item}, {role}", "form.witnessed_by", mark, role) for role in roles),
    )
