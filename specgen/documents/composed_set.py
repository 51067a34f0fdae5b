"""The documents of a package with what they were composed from: what all its files are made from."""

from dataclasses import dataclass
from pathlib import Path

from specgen.documents.context import DocumentContext
from specgen.model.block import Document


@dataclass(frozen=True, kw_only=True)
class ComposedSet:
    """The documents of a package in their order, and where their looks and attachments lie."""

    documents: tuple[Document, ...]
    context: DocumentContext
    templates: Path  # the folder of our templates
    own: Path | None = None  # that of the firm's, where it has some
    letterhead: Path | None = None  # the firm's, where it gives one
    home: Path | None = None  # the folder of the project file
    title: str = ""  # what the set is called, where it is no submittal
