"""What differs from the set issued before: each document and article, and how many blocks of it."""

from collections.abc import Iterator

from specgen.documents.changes_words import changes_of
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.changes import DocumentChange
from specgen.terminal.changes_words import name_article, tell_article


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each article that differs, and for each document that is new or gone; none without a set before."""
    lines = tuple(line for change in changes_of(context).documents for line in _tell(change))
    return TableView(("Document", "Article", "Changes"), lines, (34, 34, 32))


def _tell(change: DocumentChange) -> Iterator[tuple[str, str, str]]:
    name = f"{change.id} {change.title}"
    if change.kind != "changed":
        yield name, "All", "New document" if change.kind == "added" else "No longer included"
    for number, article in enumerate(change.articles):
        told = tell_article(article)
        # A row whose first cell is empty belongs to the one above it.
        yield "" if number else name, name_article(article), told[:1].upper() + told[1:]
