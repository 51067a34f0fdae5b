"""Forms to fill in on a screen: a document by itself, a field in each of its blanks and boxes.

A field is named as the reader of records names what is written into it; one of no record by its place on the form.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from io import BytesIO
from typing import Any, Literal

import pikepdf

from specgen.documents.composed_set import ComposedSet
from specgen.formats.pdf.compiling import compile_pages
from specgen.formats.pdf.face import read_face
from specgen.formats.pdf.form_fields import FieldWriter
from specgen.formats.pdf.set_data import describe_set
from specgen.model.block import Document

FORMS = ("D10", "D11", "D12", "D21")
_LINK = "field:"  # what the address of a link begins with that stands where a field is to be
Kind = Literal["text", "date", "tick"]


@dataclass(frozen=True, slots=True)
class Spot:
    """A blank or a box on a form: what is asked for, the name of its field, and what goes into it."""

    label: str
    name: str
    kind: Kind


def write_forms(made: ComposedSet) -> Iterator[tuple[str, bytes]]:
    """The forms among the documents of a set, each with the name of its file."""
    for document in made.documents:
        form = _write_form(made, document) if document.id in FORMS else b""
        if form:
            yield f"{document.file_name.removesuffix('-form')}-form.pdf", form


def _write_form(made: ComposedSet, document: Document) -> bytes:
    """The form; empty where the document has nothing to fill in."""
    face = read_face(made.letterhead or made.templates / "letterhead.docx")
    data = describe_set(replace(made, documents=(document,)), (), face)
    data |= {"form": True, "title": f"{document.id} {document.title}: {made.context.project.get(('project', 'name'))}"}
    spots = number_spots(data["documents"])
    if not spots:
        return b""
    return _add_fields(compile_pages(data, face.pictures).pdf, spots, made)


def number_spots(data: Any) -> list[Spot]:
    """Number the blanks and boxes in the data of a document, in the order of the page, and list them."""
    spots: list[Spot] = []
    for piece in _find_spots(data):
        piece["spot"] = len(spots)
        kind: Kind = "tick" if "tick" in piece else piece["blank"]
        spots.append(Spot(piece["label"], piece["name"] or f"form.{len(spots) + 1}", kind))
    return spots


def _find_spots(data: Any) -> Iterator[dict[str, Any]]:
    if isinstance(data, list):
        for part in data:
            yield from _find_spots(part)
    elif isinstance(data, dict):
        if "blank" in data or "tick" in data:
            yield data
        else:
            yield from _find_spots(list(data.values()))


def _add_fields(pdf: bytes, spots: list[Spot], made: ComposedSet) -> bytes:
    """The PDF with a field in the place of each link that bears the number of a spot."""
    with pikepdf.open(BytesIO(pdf)) as form:
        writer = FieldWriter(form, made.templates)
        for page in form.pages:
            page.obj["/Tabs"] = pikepdf.Name.S
            for link in list(page.obj.get("/Annots", pikepdf.Array())):
                address = str(link.A.get("/URI", "")) if "/A" in link else ""
                if address.startswith(_LINK):
                    spot = spots[int(address.removeprefix(_LINK))]
                    writer.make_field(link, page.obj, spot.name, spot.label, spot.kind)
        writer.finish()
        written = BytesIO()
        form.save(written, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
        return written.getvalue()
