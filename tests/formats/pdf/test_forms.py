"""The fillable forms: a field for each blank and box, named as the records, that two libraries fill and read."""

from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest
from pikepdf.form import DefaultAppearanceStreamGenerator, Form

from specgen import building, pipeline
from specgen.documents import document
from specgen.documents.catalogue import templates, templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import DocumentContext
from specgen.formats.pdf.forms import write_forms
from specgen.model.block import Blank, CheckBox, Document, Table
from tests.formats.pdf.binding import read
from tests.support import EXAMPLES


@cache
def composed(id_: str) -> tuple[Document, ComposedSet]:
    case = pipeline.check(EXAMPLES / "clean" / "project.yaml")
    context = case.context
    facts = DocumentContext(context.project, context.standards, case.judgment, context.resolve)
    [template] = [template for template in templates(templates_folder()) if template.id == id_]
    made = document.compose_document(template, facts, False)
    return made, ComposedSet(documents=(made,), context=facts, templates=templates_folder())


@cache
def form(id_: str) -> bytes:
    [(_, content)] = write_forms(composed(id_)[1])
    return content


def fields(content: bytes) -> dict[str, Any]:
    """The fields of a form that hold something, by their full names."""
    found = read(content).get_fields() or {}
    return {name: field for name, field in found.items() if "/FT" in field}


def asked_in_tables(made: Document) -> list[Blank | CheckBox]:
    """The blanks and boxes in the tables of a document."""
    cells = [cell for table in made.blocks if isinstance(table, Table) for row in table.rows for cell in row]
    return [part for cell in cells for part in cell if isinstance(part, (Blank, CheckBox))]


@pytest.mark.parametrize("id_", ["D10", "D12"])
def test_each_blank_and_box_is_a_field_with_its_label(id_: str) -> None:
    asked = asked_in_tables(composed(id_)[0])
    found = fields(form(id_))
    assert len(asked) > 50
    assert len(found) >= len(asked)
    for part in asked:
        if part.name:
            assert found[part.name]["/TU"].startswith(part.label), part.name
            assert found[part.name]["/FT"] == ("/Btn" if isinstance(part, CheckBox) else "/Tx")


@pytest.mark.parametrize(
    ("id_", "name", "label"),
    [
        ("D12", "log.date.a", "Date, as 2027-03-01"),
        ("D12", "log.step.a.primer", "primer"),
        ("D10", "result.reading.wrb_thickness.1", "Reading 1, WRB thickness"),
    ],
)
def test_a_field_says_to_those_who_do_not_see_it_what_is_asked(id_: str, name: str, label: str) -> None:
    assert fields(form(id_))[name]["/TU"] == label


def test_a_form_is_one_document_and_acts_in_no_way() -> None:
    reader = read(form("D12"))
    words = " ".join(reader.pages[0].extract_text().split())
    assert "Site record" in words
    assert f"Page 1 of {len(reader.pages)}" in words
    links = [
        note for page in reader.pages for note in page.get("/Annots", []) if note.get_object()["/Subtype"] == "/Link"
    ]
    assert links == []
    assert b"/JavaScript" not in form("D12")
    assert "/NeedAppearances" not in reader.trailer["/Root"]["/AcroForm"]


def test_each_field_has_the_look_of_its_states_in_our_font() -> None:
    reader = read(form("D12"))
    font = reader.trailer["/Root"]["/AcroForm"]["/DR"]["/Font"]["/Sheet"]
    assert font["/FontDescriptor"]["/FontFile2"].get_data()[:4] == b"\0\1\0\0"
    # The letter A of our font is as wide as its own table of advances says.
    from fontTools.ttLib import TTFont

    ours = TTFont(BytesIO(font["/FontDescriptor"]["/FontFile2"].get_data()))
    wide = ours["hmtx"][ours.getBestCmap()[ord("A")]][0] / ours["head"].unitsPerEm * 1000
    assert font["/Widths"][ord("A") - font["/FirstChar"]] == pytest.approx(wide, abs=1)
    for page in reader.pages:
        for note in map(pypdf.generic.IndirectObject.get_object, page.get("/Annots", [])):
            looks = note["/AP"]["/N"]
            assert (set(looks) == {"/Yes", "/Off"}) if note["/FT"] == "/Btn" else looks["/Subtype"] == "/Form"


def test_the_structure_names_fields_as_such() -> None:
    reader = read(form("D12"))
    waiting, kinds = [reader.trailer["/Root"]["/StructTreeRoot"]], []
    while waiting:
        part = waiting.pop()
        below = part.get("/K", [])
        for kid in below if isinstance(below, list) else [below]:
            kid = kid.get_object() if hasattr(kid, "get_object") else kid
            if isinstance(kid, dict) and "/Obj" in kid:
                kinds.append(part["/S"])
            elif isinstance(kid, dict):
                waiting.append(kid)
    assert set(kinds) == {"/Form"}
    assert len(kinds) == len(fields(form("D12")))


FILLED = {"log.area.a": "South face, panels 1 to 12", "log.date.a": "2027-07-12"}


def test_a_form_filled_by_one_library_is_read_by_the_other() -> None:
    writer = pypdf.PdfWriter(clone_from=BytesIO(form("D12")))
    writer.update_page_form_field_values(None, {**FILLED, "log.step.a.primer": "/Yes"}, auto_regenerate=False)
    written = BytesIO()
    writer.write(written)
    with pikepdf.open(BytesIO(written.getvalue())) as found:
        filled = Form(found)
        assert {name: str(filled[name].value) for name in FILLED} == FILLED
        assert filled["log.step.a.primer"].checked
        assert not filled["log.step.a.gloss"].checked


def test_a_form_filled_by_the_other_library_is_read_by_the_first() -> None:
    with pikepdf.open(BytesIO(form("D12"))) as found:
        filled = Form(found, DefaultAppearanceStreamGenerator)
        for name, words in FILLED.items():
            filled[name].value = words
        filled["log.step.a.primer"].checked = True
        written = BytesIO()
        found.save(written)
    said = read(written.getvalue()).get_fields()
    assert said is not None
    assert {name: said[name]["/V"] for name in FILLED} == FILLED
    assert (said["log.step.a.primer"]["/V"], said["log.step.a.gloss"]["/V"]) == ("/Yes", "/Off")


def test_the_forms_stand_beside_the_set(tmp_path: Path) -> None:
    built = building.build(EXAMPLES / "clean" / "project.yaml", tmp_path / "out", ("pdf",), only=("D10", "D12"))
    assert sorted(built.files) == [
        "D10-mockup-acceptance-form.pdf",
        "D12-site-record-form.pdf",
        "submittal-07-24-00-002-r0.pdf",
    ]


def test_the_same_form_is_the_same_bytes() -> None:
    [(_, again)] = write_forms(composed("D10")[1])
    assert again == form("D10")
