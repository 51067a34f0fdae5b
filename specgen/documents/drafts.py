"""What a draft prints: its answer first, then the documents of which enough is known."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.documents.numbering import list_values
from specgen.model.block import Document
from specgen.model.source import Kind

# Printed in a draft alone; it opens the draft.
ANSWER = "D00"
# These tell what is known and what is not, and so are printed however little that is.
ALWAYS = (ANSWER, "D02", "D05")
# Any other document of a draft is printed where at least this part of its values is known, in percent.
LEAST_KNOWN = 85


class LeftOut(NamedTuple):
    """A document that a draft leaves out, and how many of its values are in brackets."""

    id: str
    title: str
    brackets: int
    values: int

    @property
    def known(self) -> int:
        """The part of its values that is known, in whole percent, rounded down."""
        return 100 * (self.values - self.brackets) // self.values


class Remainder(NamedTuple):
    """What the answer of a draft says of the other documents: those left out, the texts cited from memory."""

    left_out: tuple[LeftOut, ...] = ()
    unverified: tuple[str, ...] = ()


def find_left_out(documents: Iterable[Document]) -> tuple[LeftOut, ...]:
    """The documents of which a draft knows too little to print them."""
    return tuple(_find_unknown(documents))


def _find_unknown(documents: Iterable[Document]) -> Iterator[LeftOut]:
    for document in documents:
        values = list_values(document.blocks)
        brackets = sum(value.open for value in values)
        if document.id not in ALWAYS and 100 * (len(values) - brackets) < LEAST_KNOWN * len(values):
            yield LeftOut(document.id, document.title, brackets, len(values))


def list_unverified(documents: Iterable[Document]) -> tuple[str, ...]:
    """The texts that the documents cite from memory, each once, in alphabetical order."""
    sources = (value.source for document in documents for value in list_values(document.blocks) if value.source)
    return tuple(sorted({s.reference for s in sources if s.kind is Kind.MEMORY and s.reference}))
