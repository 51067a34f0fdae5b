"""The formats of a package: those that write each document by itself, and those that write of the whole set."""

from collections.abc import Callable, Iterable, Iterator

from specgen.documents.composed_set import ComposedSet
from specgen.formats import text
from specgen.model.block import Document
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.output.manifest import MANIFEST

NamedFile = tuple[str, bytes]  # the name of a file, and its contents
Tell = Callable[[str], None]  # takes what the user is told beside the files
SetWriter = Callable[[ComposedSet, Tell], Iterable[NamedFile]]
IndexWriter = Callable[[ComposedSet, tuple[str, ...]], NamedFile]  # takes the names of all other files


def check_formats(formats: Iterable[str]) -> None:
    """Raise Refused for a format that there is not."""
    for name in formats:
        if name not in WRITERS:
            raise refuse(f"there is no format {name!r}", suggest(name, list(WRITERS)))


def write_set(made: ComposedSet, formats: Iterable[str]) -> tuple[list[NamedFile], tuple[str, ...]]:
    """The files of a set in every format asked for, and what the user is told beside them."""
    told: list[str] = []
    asked = tuple(formats)
    files = [file for name in asked for file in WRITERS[name](made, told.append)]
    names = (*(name for name, _ in files), MANIFEST)
    files += [INDEXES[name](made, names) for name in asked if name in INDEXES]
    return files, tuple(told)


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


def _write_review_page(made: ComposedSet, names: tuple[str, ...]) -> NamedFile:
    """The page that leads to all files of the package."""
    from specgen.documents.review_page import compose_review_page
    from specgen.formats.review_page import write_review_page

    return "index.html", write_review_page(compose_review_page(made, names), made.templates, made.own)


# A format loads only the libraries it needs; it has a row here, and none elsewhere.
WRITERS: dict[str, SetWriter] = {"docx": _write_docx, "html": _write_html, "txt": _write_text}
# What is written of a package when the names of its other files are known, with the format that asks for it.
INDEXES: dict[str, IndexWriter] = {"html": _write_review_page}
