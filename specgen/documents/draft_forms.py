"""The forms of a document that a draft prints only in part: how much of each is known, and which are left out."""

from collections.abc import Iterable, Iterator, Set

from specgen.documents.drafts import LEAST_KNOWN, Known
from specgen.documents.numbering import list_values
from specgen.documents.plain_text import plain_text
from specgen.documents.records.form_sections import find_blanks
from specgen.model.block import Block, Break, Document, Part


def find_forms_left_out(documents: Iterable[Document]) -> tuple[Known, ...]:
    """The forms of documents of which a draft knows too little to print them."""
    forms = (form for document in documents for form in _count_forms(document))
    return tuple(form for form in forms if form.known < LEAST_KNOWN)


def _count_forms(document: Document) -> Iterator[Known]:
    """How much is known of each form of a document: of each of its parts with blanks."""
    for title, blocks in _split(document.blocks):
        if any(True for _ in find_blanks(blocks)):
            name, _, told = title.partition(" ")
            yield Known.of_values(name, told, list_values(blocks))


def drop_forms(blocks: Iterable[Block], names: Set[str]) -> tuple[Block, ...]:
    """The blocks without the forms of these names, and without the breaks before them and before the first one kept."""
    kept = [part for title, part in _split(blocks) if title.partition(" ")[0] not in names]
    left = [block for part in kept for block in part]
    first = next((block for block in left if isinstance(block, Break)), None) if names else None
    return tuple(block for block in left if block is not first)


def _split(blocks: Iterable[Block]) -> Iterator[tuple[str, tuple[Block, ...]]]:
    """Each part with its title; a break of the page belongs to the part below it."""
    title, part, breaks = "", list[Block](), list[Block]()
    for block in blocks:
        if isinstance(block, Break):
            breaks.append(block)
            continue
        if isinstance(block, Part):
            yield title, tuple(part)
            title, part = plain_text(block.title), []
        part += [*breaks, block]
        breaks = []
    yield title, (*part, *breaks)
