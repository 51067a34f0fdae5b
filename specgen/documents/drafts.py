"""What a draft prints: its answer first, then the documents of which enough is known."""

from collections.abc import Iterable
from typing import NamedTuple, Self

from specgen.documents.numbering import list_values
from specgen.model.block import Document, Value
from specgen.model.project import Project

# Printed in a draft alone; it opens the draft.
ANSWER = "D00"
OPEN_ITEMS = "D19"
# These tell of the other documents, and so are composed when those are known.
TELLS_OF_OTHERS = (ANSWER, "D01", "D03", "D05", "D19")
# These tell what is known and what is not, and so are printed however little is known.
ALWAYS = (ANSWER, "D02", "D05", "D19")
# These are written whatever stops stand against the package, as they list the stops or are filled in on site; by
# themselves, and unmarked.
WRITTEN_WITH_STOPS = ("D12", "D19")
# These are printed where a project has any of what they tell.
_REFERRED = {"D01": "comments", "D03": "deviations", "D18": "attachments"}
# Any other document of a draft, and any form of those in parts, is printed where at least this part of its values is
# known, in whole percent.
LEAST_KNOWN = 90
IN_PARTS = ("D12",)


class Known(NamedTuple):
    """A document, and how many of its values are in brackets."""

    id: str
    title: str
    brackets: int
    values: int
    used_for: str = ""  # what a reader does by it
    missing: tuple[tuple[str, str], ...] = ()  # the brackets, each once: path asked for, and words

    @classmethod
    def of_values(cls, name: str, title: str, values: Iterable[Value], used_for: str = "") -> Self:
        """A document, or a part of one, by its values."""
        every = tuple(values)
        missing = tuple((value.asks, value.text.strip("[]")) for value in every if value.open)
        return cls(name, title, len(missing), len(every), used_for, tuple(dict.fromkeys(missing)))

    @property
    def known(self) -> int:
        """The part of its values that is known, in whole percent."""
        if not self.values:
            return 100
        return round(100 * (self.values - self.brackets) / self.values)


class Remainder(NamedTuple):
    """What a document that tells of the others knows of them: how much is known in each, and all that they cite."""

    known: tuple[Known, ...] = ()
    left_out: tuple[Known, ...] = ()
    asked: tuple[tuple[str, str], ...] = ()  # dotted path of a field that a bracket waits for, and its document
    cited: tuple[tuple[str, Value], ...] = ()  # each value with a source, and the document that prints it
    held: tuple[tuple[str, str], ...] = ()  # id and title of each document of the whole package
    forms_left_out: tuple[Known, ...] = ()  # the forms of the documents in parts that a draft leaves out

    @property
    def to_check(self) -> tuple[str, ...]:
        """The texts that stand behind figures nobody has verified, each once, in alphabetical order."""
        behind = (value.source.behind for _, value in self.cited if value.source)
        return tuple(sorted({source.text_to_check for source in behind if source} - {""}))


def count_known(documents: Iterable[Document]) -> tuple[Known, ...]:
    """How much is known in each document."""
    return tuple(Known.of_values(d.id, d.title, list_values(d.blocks), d.used_for) for d in documents)


def find_left_out(known: Iterable[Known], project: Project) -> tuple[Known, ...]:
    """The documents of which a draft knows too little to print them; others refer to those of what a project gives."""
    referred = tuple(name for name, of in _REFERRED.items() if project.members.get((of,)))
    kept = (*ALWAYS, *referred)
    return tuple(entry for entry in known if entry.id not in kept and entry.known < LEAST_KNOWN)


def list_asked(documents: Iterable[Document]) -> tuple[tuple[str, str], ...]:
    """The dotted paths of the fields that brackets wait for, each once for each document that has one."""
    asked = ((v.asks, d.id) for d in documents for v in list_values(d.blocks) if v.open and v.asks)
    return tuple(dict.fromkeys(asked))


def list_cited(documents: Iterable[Document]) -> tuple[tuple[str, Value], ...]:
    """Each value with a source, and the document that prints it."""
    return tuple((d.id, value) for d in documents for value in list_values(d.blocks) if value.source is not None)
