"""The note at the head of every document of a draft."""

import dataclasses
from collections.abc import Iterator

from specgen.documents.numbering import list_values
from specgen.documents.required_documents import list_required, looks_for_document
from specgen.judging.verdict import list_unjudged
from specgen.model.block import Block, Document, Note, Strong, Text
from specgen.model.finding import Judgment, Severity
from specgen.model.value_text import count


def count_brackets(document: Document) -> int:
    """The number of values still to be given in a document."""
    return sum(value.open for value in list_values(document.blocks))


def mark_draft(document: Document, judgment: Judgment, total: int) -> Document:
    """The document marked as a draft; `total` is the number of values in brackets in the whole draft."""
    here = count_brackets(document)
    sentences = [*_count_stops(document, judgment), _count_unjudged(document, judgment), _tell_brackets(here, total)]
    note: Block = Note((Strong((Text("Draft."),)), Text("".join(f" {said}" for said in sentences if said))))
    return dataclasses.replace(document, blocks=(note, *document.blocks), draft=True)


def _count_stops(document: Document, judgment: Judgment) -> Iterator[str]:
    """The stops, then the documents still required, as D05 lists them."""
    where = "listed below" if document.id == "D05" else "see D05"
    stops = sum(not looks_for_document(finding) for finding in judgment.of(Severity.STOP))
    required = len(list_required(judgment))
    so_far = " so far" if judgment.not_judged else ""
    yield f"{count(stops, 'stop')}, {where}." if stops else f"No stops{so_far}."
    if required:
        yield f"{count(required, 'document')} still required, {where}."


def _count_unjudged(document: Document, judgment: Judgment) -> str:
    where = "listed below" if document.id == "D02" else "see D02"
    rules = {clause.rule for clause in judgment.not_judged}
    on_walls = {rule for mark in judgment.walls for rule in list_unjudged(judgment, mark)}
    part = "on walls" if len(on_walls) == len(rules) else f"{len(on_walls)} of them on walls"
    listed = f", {part}, {where}" if on_walls else ""
    return f"{count(len(rules), 'rule')} not evaluated{listed}." if rules else ""


def _tell_brackets(here: int, total: int) -> str:
    if not total:
        return ""
    of_them = "" if here == total else f", {here or 'none'} of them in this document"
    if total == 1 and not here:
        of_them = ", not in this document"
    return f"{count(total, 'value')} in brackets{of_them}."
