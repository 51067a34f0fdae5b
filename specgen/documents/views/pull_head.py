"""The head of the pull tests and moisture readings: one wall on a day."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.old_surfaces import list_pulled
from specgen.documents.views._record_blanks import MOST_BOXES, make_blank, make_boxes
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    walls = list_pulled(context)
    boxes = make_boxes([(mark, mark) for mark in walls], "form.wall", "f")
    line = (
        make_blank("Date", "form.date", "f", kind="date"),
        boxes if len(walls) <= MOST_BOXES else make_blank("Wall", "form.wall", "f"),
        CheckBox("received before any work on the wall", "form.reports_released.f", "yes"),
        make_blank("Testing agency", "form.agency", "f"),
        make_blank("Signed", "form.signed_by", "f"),
        make_blank("Sheet number", "form.sheet", "f"),
    )
    header = ("Date", "Wall", "Lead and asbestos reports", "Testing agency", "Signed by the agency", "Sheet No.")
    return TableView(header, (line,), (12, 15, 27, 20, 18, 8))
