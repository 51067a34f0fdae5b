"""The files that the site record was read from."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

_DIGITS = 16


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each file: its name, how many entries it has, and the digest of its bytes."""
    lines = tuple((file.name, str(file.entries), file.digest[:_DIGITS]) for file in context.project.records.files)
    return TableView(("File", "Entries", "Digest (SHA-256), first digits"), lines, (54, 14, 32))
