"""The papers of the job: mark, kind, title, date, what they cover."""

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each attachment, those of the side files too."""
    sight = desk.sight
    made = tuple(
        (
            mark,
            sight.shown(("attachments", mark, "kind")),
            sight.shown(("attachments", mark, "title")),
            sight.shown(("attachments", mark, "issued_on")),
            sight.shown(("attachments", mark, "covers")),
        )
        for mark in sight.project.members.get(("attachments",), ())
    )
    return TableView(("Paper", "Kind", "Title", "Date", "Covers"), made, (13, 14, 37, 18, 18))
