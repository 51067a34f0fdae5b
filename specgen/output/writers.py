"""The formats of a package: those that write each document by itself, and those that write of the whole set."""

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass

from specgen.documents.composed_set import ComposedSet
from specgen.formats import text
from specgen.formats.pdf.libraries import can_write, require_libraries
from specgen.model.block import Document
from specgen.model.problem import Problem, refuse
from specgen.model.suggest import suggest

NamedFile = tuple[str, bytes]  # the name of a file, and its contents
Tell = Callable[[str | Problem], None]  # takes what the user is told beside the files, and what the files lack
SetWriter = Callable[[ComposedSet, Tell], Iterable[NamedFile]]


@dataclass(frozen=True)
class WrittenSet:
    """The files of a set, what the user is told beside them, and the problems for which they lack something."""

    files: tuple[NamedFile, ...]
    told: tuple[str, ...]
    problems: tuple[Problem, ...]


def check_formats(formats: Collection[str]) -> None:
    """Raise Refused for a format that there is not, or whose libraries are not installed."""
    for name in formats:
        if name not in WRITERS:
            raise refuse(f"there is no format {name!r}", suggest(name, list(WRITERS)))
    if "pdf" in formats:
        require_libraries()


def list_usual_formats() -> tuple[str, ...]:
    """The formats of a package for which none is asked: with the PDF where its libraries are installed."""
    return ("docx", "html", "pdf") if can_write() else ("docx", "html")


def write_set(made: ComposedSet, formats: Iterable[str]) -> WrittenSet:
    """The files of a set in every format asked for."""
    told: list[str | Problem] = []
    files = [file for name in formats for file in WRITERS[name](made, told.append)]
    return WrittenSet(
        files=tuple(files),
        told=tuple(note for note in told if isinstance(note, str)),
        problems=tuple(note for note in told if isinstance(note, Problem)),
    )


def _write_each(made: ComposedSet, ending: str, write: Callable[[Document], bytes]) -> Iterator[NamedFile]:
    """A file for each document."""
    yield from ((f"{document.file_name}.{ending}", write(document)) for document in made.documents)


def _write_docx(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats.docx import word_file

    letterhead = made.letterhead or made.templates / "letterhead.docx"
    return _write_each(made, "docx", lambda document: word_file.write_docx(document, letterhead))


def _write_html(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats import html

    return _write_each(made, "html", lambda document: html.write_html(document, made.templates, made.own))


def _write_text(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    return _write_each(made, "txt", lambda document: text.write_text(document).encode())


def _write_pdf(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats.pdf.bind import bind
    from specgen.formats.pdf.forms import write_forms
    from specgen.formats.pdf.pages import name_file

    bound = bind(made)
    notes: tuple[str | Problem, ...] = (*bound.told, *bound.problems)
    for note in notes:
        tell(note)
    yield name_file(made), bound.pdf
    yield from write_forms(made)


# A format loads only the libraries it needs; it has a row here, and none elsewhere.
WRITERS: dict[str, SetWriter] = {"docx": _write_docx, "html": _write_html, "pdf": _write_pdf, "txt": _write_text}
