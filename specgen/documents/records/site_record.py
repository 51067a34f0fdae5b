"""Form D12 filled: a document for each elevation, with its sheets day by day as they were recorded.

A sheet of a face is looked for years later by its face: so the sheets are filed by elevation, each in the order of its
days, and what tells no elevation by itself.
"""

from collections.abc import Iterator
from dataclasses import replace

from specgen.documents.catalogue import Template
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.documents.marks import list_marks, name_member
from specgen.documents.records.dew import find_source
from specgen.documents.records.filling import OUTSIDE, fill_blocks
from specgen.documents.records.form_sections import split_forms
from specgen.documents.records.other_entries import list_inspections, list_rest
from specgen.documents.records.placing import Forms
from specgen.documents.records.sheets_of_record import (
    FilledSheet,
    Remainder,
    SheetWriter,
    group_by_face,
    mark_entries,
)
from specgen.model.block import Block, Document, Item
from specgen.model.record import Entry
from specgen.model.record_judgment import RecordJudgment

_COLLECTIONS = ("log", "release")
# Numbered items of one sheet have lists of their own.
_LISTS = 1000


def compose_site_record(form: Template, context: DocumentContext, judgment: RecordJudgment) -> tuple[Document, ...]:
    """The filled sheets of each elevation as a document; none where nothing was recorded."""
    blank = compose_document(form, context, draft=False)
    sections = split_forms(blank)
    forms = tuple(
        Forms(name, {s.letter: s for s in sections if any(field.startswith(f"{name}.") for field in s.fields)})
        for name in _COLLECTIONS
    )
    marks = mark_entries(judgment.nonconformances)
    writer = SheetWriter(context, forms, marks)
    for name in _COLLECTIONS:
        writer.add_all(context.project.records.of(name))
    faces = list_marks(context, "elevations")
    sheets = group_by_face(writer.list_sheets(), faces)
    rest, inspections = _group(writer.rest, faces), _group_inspections(context, faces)
    made = []
    for face in dict.fromkeys((*sheets, *rest, *inspections)):
        blocks = (
            *_list_blocks(sheets.get(face, [])),
            *list_inspections(context, inspections.get(face, []), marks),
            *list_rest(context, rest.get(face, []), marks),
        )
        made.append(_make_document(blank, context, face, len(sheets.get(face, ())), blocks))
    return tuple(made)


def _list_blocks(sheets: list[FilledSheet]) -> Iterator[Block]:
    """The sheets behind each other; how a form is filled in stands on the first of its sheets."""
    told = set[str]()
    for number, sheet in enumerate(sheets):
        for block in fill_blocks(sheet.section, sheet.entered, sheet.title, number * _LISTS, sheet.goes_on):
            if not isinstance(block, Item) or sheet.section.letter not in told:
                yield block
        told.add(sheet.section.letter)


def _make_document(
    blank: Document, context: DocumentContext, face: str, sheets: int, blocks: tuple[Block, ...]
) -> Document:
    """The document of an elevation, in the look of the form."""
    name = name_member(context, "elevations", face) if face else "none told"
    ident = f"{blank.id}-{_file_part(face) or 'site'}"
    left, right = blank.running
    return replace(
        blank,
        id=ident,
        facts=(*blank.facts, ("Elevation", name), ("Sheets", str(sheets))),
        blocks=blocks,
        legend=(
            *blank.legend,
            (OUTSIDE, "Outside its limit; number of the nonconformance in D21"),
            ("Dew point", f"Computed from air and humidity: {context.cite(find_source()).legend}"),
        ),
        running=(left, right.replace(blank.id, ident, 1)),
        digests=(),
        used_for=f"Read what was recorded on {name if face else 'no elevation'}",
    )


def _file_part(face: str) -> str:
    """A mark as part of the name of a file."""
    return face.replace("/", "-").lstrip(".")


def _group(rest: list[Remainder], faces: tuple[str, ...]) -> dict[str, list[Remainder]]:
    grouped: dict[str, list[Remainder]] = {face: [] for face in (*faces, "")}
    for one in rest:
        grouped.setdefault(str(one.entry.get("elevation") or ""), []).append(one)
    return {face: found for face, found in grouped.items() if found}


def _group_inspections(context: DocumentContext, faces: tuple[str, ...]) -> dict[str, list[Entry]]:
    grouped: dict[str, list[Entry]] = {face: [] for face in (*faces, "")}
    for entry in context.project.records.of("inspection"):
        grouped.setdefault(str(entry.get("elevation") or ""), []).append(entry)
    return {face: found for face, found in grouped.items() if found}
