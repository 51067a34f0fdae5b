"""The first page of a Word document, as a general library that reads Word files finds it."""

import io
from dataclasses import replace
from typing import Any

import docx
import pytest

from specgen.documents.catalogue import templates_folder
from specgen.formats.docx.word_file import write_docx
from specgen.model.block import Box, ReviewBoxes, Text
from tests.documents.support import document_of

STATED = (Box("Applicator", ((Text("Reviewed"),),)), Box("Contractor", ((Text("Approved"),),)), Box("Revisions"))


@pytest.fixture(scope="module")
def page() -> Any:
    """A document with three boxes on the left, and one for the stamp."""
    boxes = ReviewBoxes(STATED, Box("Stamp of the architect", ((Text("Action"),),)))
    document = replace(document_of("clean", "D01"), blocks=(boxes,))
    return docx.Document(io.BytesIO(write_docx(document, templates_folder() / "letterhead.docx")))


def test_the_stamp_stands_once_over_the_height_of_all_boxes(page: Any) -> None:
    (table,) = (one for one in page.tables if "Stamp of the architect" in one.cell(0, 1).text)
    assert [row.cells[0].text.splitlines()[0] for row in table.rows] == ["Applicator", "Contractor", "Revisions"]
    # ECMA-376-1, 17.4.84: a cell that continues a merge is part of the one that begins it above.
    first, *below = (row.cells[1]._tc for row in table.rows)
    assert len(below) == 2 and all(cell is first for cell in below)
    assert table.cell(2, 1).text.splitlines() == ["Stamp of the architect", "Action"]
