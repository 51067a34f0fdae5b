"""Reads what is attached to a project, each file once and within bounds; a problem tells what cannot be bound in."""

from dataclasses import dataclass, field
from pathlib import Path

from pikepdf import Pdf

from specgen.documents.attachments import list_attachments
from specgen.documents.context import DocumentContext
from specgen.formats.pdf.opening import OpenedPaper, open_paper
from specgen.model.finding import Place
from specgen.model.problem import Problem, Refused
from specgen.reading.attached_file import ATTACHMENT, find_attached_file, refuse_attachment
from specgen.reading.given_file import read_given_file

MOST_BYTES_OF_ALL, MOST_PAGES = 500_000_000, 30_000


@dataclass(frozen=True, kw_only=True)
class Paper:
    """An attachment as it is bound in: its PDF, or the problem for which it has none."""

    mark: str
    name: str  # of its file, as the project gives it
    document: Pdf | None = None
    left_out: tuple[str, ...] = ()  # what acts in it and is taken out, in words
    problem: Problem | None = None

    @property
    def pages(self) -> int:
        """How many of its pages are bound in."""
        return 0 if self.document is None else len(self.document.pages)


@dataclass
class _Shelf:
    """The files read so far, each once, with what is left of the bounds of all."""

    home: Path
    templates: Path
    bytes_left: int
    pages_left: int
    read: dict[Path, OpenedPaper | Refused] = field(default_factory=dict)

    def take(self, place: Place, name: str) -> OpenedPaper:
        """The file named at a place, opened; raises Refused."""
        path = find_attached_file(self.home, place, name)
        if path not in self.read:
            try:
                self.read[path] = self._open(path, name)
            except Refused as refused:
                self.read[path] = refused
        found = self.read[path]
        if isinstance(found, Refused):
            raise refuse_attachment(place, found.problems[0].message, found.problems[0].hint)
        self._count(len(found.document.pages), place)
        return found

    def _open(self, path: Path, name: str) -> OpenedPaper:
        content = read_given_file(path, ATTACHMENT, name)
        if len(content) > self.bytes_left:
            raise Refused(Problem(f"{name!r} and those before it are larger than 500 MB", "submit it separately"))
        self.bytes_left -= len(content)
        return open_paper(content, name, self.templates)

    def _count(self, pages: int, place: Place) -> None:
        if pages > self.pages_left:
            message = f"it has {pages:,} pages, and all attachments bound in at most {MOST_PAGES:,}"
            raise refuse_attachment(place, message, "submit it separately")
        self.pages_left -= pages


def read_papers(context: DocumentContext, home: Path | None, templates: Path) -> tuple[Paper, ...]:
    """The attachments of a project that name a file, in the order of D18; none without a folder of the project."""
    paths = [("attachments", mark, "file") for mark in list_attachments(context)]
    named = [path for path in paths if path in context.project.values]
    if home is None or not named:
        return ()
    shelf = _Shelf(home, templates, MOST_BYTES_OF_ALL, MOST_PAGES)
    return tuple(_read(shelf, path[1], context.project.values[path], context.project.place(path)) for path in named)


def _read(shelf: _Shelf, mark: str, name: str, place: Place) -> Paper:
    try:
        opened = shelf.take(place, name)
        return Paper(mark=mark, name=name, document=opened.document, left_out=opened.left_out)
    except Refused as refused:
        return Paper(mark=mark, name=name, problem=refused.problems[0])
