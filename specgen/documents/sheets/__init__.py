"""The sheets of a package for spreadsheets: one file for each, which stands where its document is in the set."""

import importlib
import pkgutil
from functools import lru_cache
from typing import Protocol, cast

from specgen.documents.context import DocumentContext
from specgen.model.sheet import Sheet


class SheetMaker(Protocol):
    """What a file holds: DOCUMENT is the one whose rows it lists, ORDER its place among the sheets."""

    DOCUMENT: str
    ORDER: int

    def make_sheet(self, context: DocumentContext) -> Sheet | None:
        """The sheet; None where what it lists is not known."""


def make_sheets(context: DocumentContext, documents: frozenset[str]) -> tuple[tuple[str, Sheet], ...]:
    """The sheets that go with the documents of these ids, each with the id of its own."""
    made = (
        (maker.DOCUMENT, context.remember(maker.make_sheet)) for maker in _load_makers() if maker.DOCUMENT in documents
    )
    return tuple((document, sheet) for document, sheet in made if sheet is not None)


@lru_cache(maxsize=1)
def _load_makers() -> tuple[SheetMaker, ...]:
    names = (module.name for module in pkgutil.iter_modules(__path__))
    makers = [cast(SheetMaker, importlib.import_module(f"{__name__}.{name}")) for name in names]
    return tuple(sorted(makers, key=lambda maker: maker.ORDER))
