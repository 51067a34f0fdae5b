"""The files of a package as its review page lists them: in which formats each document is there, and for what."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import TableView
from specgen.documents.drafts import LEAST_KNOWN, Known, count_known
from specgen.model.block import Document, Link, Text

_FORMS = {"html": "Web page", "docx": "Word", "pdf": "Fillable PDF", "txt": "Text", "xlsx": "Workbook", "csv": "CSV"}
# What a file of no single document holds, and what a reader does by it.
_OF_ALL = {
    "pdf": ("Whole package", "Send or print the package as one file"),
    "xlsx": ("Registers and lists", "Track items, attachments, open items, panels, and joints in a workbook"),
    "json": ("List of files", "Check that no file was changed after it was written"),
}


@dataclass(frozen=True)
class PackageFiles:
    """The documents of a package, and the names of all its files but the one that lists them."""

    made: ComposedSet
    names: tuple[str, ...]

    def link_ids(self, ids: Iterable[str]) -> list[Text | Link]:
        """`D05, D08`: each document that is there leads to its web page."""
        pages = {document.id: _name_page(document) for document in self.made.documents}
        return _join(Link(name, pages[name]) if name in pages else Text(name) for name in ids)

    def link_block(self, document: Document, block: int, words: str) -> Link:
        """Words that lead to a block of a document by its place."""
        return Link(words, _name_page(document), block)

    def list_rows(self, drafted: bool) -> TableView:
        """One row for each document, those left out of a draft, and the files that hold more than one document."""
        of_all = [name for name in self.names if not any(_holds(name, one) for one in self.made.documents)]
        lines = [*self._list_documents(), *self._list_left_out(), *map(_list_of_all, of_all)]
        if drafted:
            return TableView(("Document", "Title", "Use", "Values open", "Files"), tuple(lines), (9, 27, 30, 12, 22))
        issued = tuple((*line[:3], line[4]) for line in lines)
        return TableView(("Document", "Title", "Use", "Files"), issued, (10, 30, 34, 26))

    def _list_documents(self) -> Iterator[tuple[Any, ...]]:
        for document, known in zip(self.made.documents, count_known(self.made.documents), strict=True):
            files = _join(Link(_name_form(name, document), name) for name in self.names if _holds(name, document))
            title = Link(document.title, _name_page(document))
            yield document.id, title, document.used_for, _tell_open(known), files

    def _list_left_out(self) -> Iterator[tuple[Any, ...]]:
        for known in self.made.context.rest.left_out:
            told = f"not included, under {LEAST_KNOWN}% of values known"
            yield known.id, known.title, known.used_for, _tell_open(known), told


def _join(parts: Iterable[Text | Link]) -> list[Text | Link]:
    return [one for part in parts for one in (Text(", "), part)][1:]


def _tell_open(known: Known) -> str:
    return f"{known.brackets} of {known.values}" if known.values else ""


def _list_of_all(name: str) -> tuple[Any, ...]:
    what, use = _OF_ALL.get(name.rpartition(".")[2], (name, ""))
    return "All", what, use, "", Link(name, name)


def _name_page(document: Document) -> str:
    return f"{document.file_name}.html"


def _holds(name: str, document: Document) -> bool:
    """Whether a file is one of a document: it begins with its id."""
    return name.startswith(f"{document.id}-")


def _name_form(name: str, document: Document) -> str:
    """`Word`; `CSV, panel list` where the file holds a part of the document."""
    stem, _, ending = name.rpartition(".")
    more = (
        "" if ending == "pdf" or stem == document.file_name else stem.removeprefix(f"{document.id}-").replace("-", " ")
    )
    return ", ".join(filter(None, (_FORMS.get(ending, ending.upper()), more)))
