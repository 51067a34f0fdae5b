"""What a draft prints: its answer first, then the documents of which enough is known."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.documents.numbering import list_values
from specgen.model.block import Document, Value

# Printed in a draft alone; it opens the draft.
ANSWER = "D00"
# These tell of the other documents, and so are composed when those are known.
TELLS_OF_OTHERS = (ANSWER, "D05")
# These tell what is known and what is not, and so are printed however little that is.
ALWAYS = (ANSWER, "D02", "D05")
# Any other document of a draft is printed where at least this part of its values is known, in percent.
LEAST_KNOWN = 90


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
    """What a document that tells of the others knows of them: those left out of a draft, and all that they cite."""

    left_out: tuple[LeftOut, ...] = ()
    cited: tuple[tuple[str, Value], ...] = ()  # each value with a source, and the document that prints it

    @property
    def to_check(self) -> tuple[str, ...]:
        """The texts that stand behind figures nobody has verified, each once, in alphabetical order."""
        behind = (value.source.behind for _, value in self.cited if value.source)
        return tuple(sorted({source.text_to_check for source in behind if source} - {""}))


def find_left_out(documents: Iterable[Document]) -> tuple[LeftOut, ...]:
    """The documents of which a draft knows too little to print them."""
    return tuple(_find_unknown(documents))


def _find_unknown(documents: Iterable[Document]) -> Iterator[LeftOut]:
    for document in documents:
        values = list_values(document.blocks)
        brackets = sum(value.open for value in values)
        if document.id not in ALWAYS and 100 * (len(values) - brackets) < LEAST_KNOWN * len(values):
            yield LeftOut(document.id, document.title, brackets, len(values))


def list_cited(documents: Iterable[Document]) -> tuple[tuple[str, Value], ...]:
    """Each value with a source, and the document that prints it."""
    return tuple((d.id, value) for d in documents for value in list_values(d.blocks) if value.source is not None)
