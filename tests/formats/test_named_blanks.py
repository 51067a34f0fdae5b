"""Blanks and boxes that bear the name of what a record calls them."""

import io
import re
from pathlib import Path
from typing import Any

import docx
from docx.oxml.ns import qn
from lxml import html as parser

from specgen.documents.catalogue import templates_folder
from specgen.formats import html
from specgen.formats.docx import word_file
from specgen.model.block import Blank, CheckBox, Document
from tests.documents.support import written

WORDS = (
    "{{ blank('Air', 'text', 'log.air.c3') }} {{ check_box('South face', 'log.elevation.a1', 'E1') }} "
    "{{ blank('Remarks') }} {{ check_box('Accepted') }} {{ blank('Long', 'text', long) }}"
)
LONG = "log." + "x" * 90


def made_of(folder: Path) -> Document:
    return written(folder, WORDS.replace("long", f"'{LONG}'"))


def test_names_are_the_tags_of_controls_in_a_word_file(tmp_path: Path) -> None:
    paper = templates_folder() / "letterhead.docx"
    body: Any = docx.Document(io.BytesIO(word_file.write_docx(made_of(tmp_path), paper))).element.body
    tags = [control.find(f"{qn('w:sdtPr')}/{qn('w:tag')}") for control in body.iter(qn("w:sdt"))]
    # Word opens no file with a tag of more than 64 signs: [MS-OI29500], from memory.
    assert [None if tag is None else tag.get(qn("w:val")) for tag in tags] == [
        "log.air.c3",
        "log.elevation.a1.E1",
        None,
        None,
        "log." + "x" * 60,
    ]


def test_names_stand_beside_blanks_of_a_page(tmp_path: Path) -> None:
    page = parser.fromstring(html.write_html(made_of(tmp_path), templates_folder()).decode())
    names = [node.get("data-field") for node in page.xpath("//*[contains(@class,'blank') or @class='box']")]
    assert names == ["log.air.c3", "log.elevation.a1.E1", None, None, LONG]


def test_a_blank_without_a_field_has_no_name() -> None:
    assert (Blank("Remarks").name, CheckBox("Accepted").name, CheckBox("yes", "", "yes").name) == ("", "", "")
    assert re.fullmatch(r"log\.stirred\.a1\.yes", CheckBox("stirred", "log.stirred.a1", "yes").name)
