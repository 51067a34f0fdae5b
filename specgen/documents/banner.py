"""The note at the head of every document of a draft."""

import dataclasses

from specgen.documents.numbering import list_values
from specgen.model.block import Block, Document, Note, Strong, Text
from specgen.model.finding import Judgment, Severity
from specgen.model.value_text import count


def count_brackets(document: Document) -> int:
    """The number of values still to be given in a document."""
    return sum(value.open for value in list_values(document.blocks))


def mark_draft(document: Document, judgment: Judgment, total: int) -> Document:
    """The document marked as a draft; `total` is the number of values in brackets in the whole draft."""
    here = count_brackets(document)
    sentences = [_count_stops(document, judgment), _count_unjudged(judgment), _tell_brackets(here, total)]
    note: Block = Note((Strong((Text("Draft."),)), Text("".join(f" {said}" for said in sentences if said))))
    return dataclasses.replace(document, blocks=(note, *document.blocks), draft=True)


def _count_stops(document: Document, judgment: Judgment) -> str:
    stops = len(judgment.of(Severity.STOP))
    if not stops:
        return "No stops."
    return f"{count(stops, 'stop')}, {'listed below' if document.id == 'D05' else 'see D05'}."


def _count_unjudged(judgment: Judgment) -> str:
    unjudged = len(judgment.not_judged)
    return f"{count(unjudged, 'clause')} cannot be judged." if unjudged else ""


def _tell_brackets(here: int, total: int) -> str:
    if not total:
        return ""
    of_them = "" if here == total else f", {here or 'none'} of them in this document"
    return f"{count(total, 'value')} in brackets{of_them}."
