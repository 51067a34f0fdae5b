"""What is witnessed first in place, for want of it on the mockup: a line for each item, three abreast."""

from itertools import chain, zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._not_shown import list_not_shown
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.documents.views.point_releases import list_witnesses, name_role

_JUDGED = (("yes", "pass"), ("no", "fail"))
_ABREAST = 3
_NAMED, _DATED, _ROOM = 8, 5, 10  # the shares of the width for an item, its date, and its witnesses


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Each item with its date, its result, and a place for each witness; empty where the mockup shows all."""
    roles = list_witnesses(context)
    lines = [
        _line(f"{noun[:1].upper()}{noun[1:]} {mark}", mark, roles)
        for noun, marks in list_not_shown(context).items()
        for mark in marks
    ]
    header = ("Item", "Date", "Result", *map(name_role, roles))
    high = -(-len(lines) // _ABREAST)
    columns = (lines[place * high : (place + 1) * high] for place in range(_ABREAST))
    abreast = zip_longest(*columns, fillvalue=("",) * len(header))
    widths = (_NAMED, _DATED, 10, *(_ROOM // len(roles),) * len(roles)) * _ABREAST
    return TableView(header * _ABREAST, tuple(tuple(chain(*row)) for row in abreast), widths)


def _line(item: str, mark: str, roles: tuple[str, ...]) -> tuple[Any, ...]:
    """The blanks of one item."""
    return (
        item,
        make_blank(f"{item}, date", "form.witnessed_on", mark, kind="date"),
        make_boxes(_JUDGED, "form.witnessed_result", mark),
        *(make_blank(f"{item}, {role}", "form.witnessed_by", mark, role) for role in roles),
    )
