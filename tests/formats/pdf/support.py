"""Sets made for the tests of the PDF, and the words of a page as a reader sees them."""

import re
import unicodedata
from functools import lru_cache
from pathlib import Path
from typing import Any

from lxml import html as parser

from specgen.documents.catalogue import templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.formats.pdf.divider import Divider
from specgen.formats.pdf.pages import SetPages, write_pages
from specgen.model.block import Document
from tests.documents.support import context_of, context_of_example, document_of
from tests.formats.pdf.tags import Tag, TaggedPdf

# What is not read: soft hyphens, and marks that let a line break or keep words apart.
_UNREAD = re.compile("[\\s\u00ad\u200b\u2060\u2066-\u2069]+")


def set_of(example: str, *names: str, draft: bool = False, letterhead: Path | None = None) -> ComposedSet:
    """Documents of an example as a set."""
    documents = tuple(document_of(example, name, draft) for name in names)
    return ComposedSet(
        documents=documents,
        context=context_of_example(example),
        templates=templates_folder(),
        letterhead=letterhead,
    )


def small_set(folder: Path, *documents: Document, change: Any = None, letterhead: Path | None = None) -> ComposedSet:
    """Documents of the small project as a set."""
    context = context_of(folder, change)
    return ComposedSet(documents=documents, context=context, templates=templates_folder(), letterhead=letterhead)


@lru_cache
def pages_of(example: str, *names: str, draft: bool = False, dividers: tuple[Divider, ...] = ()) -> SetPages:
    return write_pages(set_of(example, *names, draft=draft), dividers)


@lru_cache
def tagged(example: str, *names: str, draft: bool = False) -> TaggedPdf:
    return TaggedPdf(pages_of(example, *names, draft=draft).pdf)


def plain(text: str) -> str:
    """The letters of a text, each in its usual form, as capitals and spaces are a matter of look."""
    return unicodedata.normalize("NFKC", _UNREAD.sub("", text)).casefold()


def words_of_only_document(pdf: TaggedPdf) -> str:
    """The words of the single document of a set, behind its cover and contents."""
    (whole,) = pdf.tree.parts
    titles = [place for place, tag in enumerate(whole.parts) if isinstance(tag, Tag) and tag.kind == "H1"]
    assert whole.parts[titles[0]].text() == "Contents"
    return plain("".join(tag.text(alternates=True) for tag in whole.parts[titles[0] + 2 :]))


def words_of_page(page: bytes) -> str:
    """The words of an HTML page, formulas by their plain text, without drawings and what only screen readers have."""
    root = parser.fromstring(page.decode())
    for unseen in root.xpath("//head | //svg | //caption[@class='unseen'] | //a[@class='skip']"):
        unseen.drop_tree()
    for formula in root.xpath("//math"):
        text = formula.get("alttext")
        for child in list(formula):
            formula.remove(child)
        formula.text = text
    return plain(root.text_content())
