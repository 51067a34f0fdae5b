"""The formats of a package: those that write each document by itself, and those that write of the whole set."""

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass
from importlib.util import find_spec

from specgen.documents.book import list_sheets, make_book
from specgen.documents.composed_set import ComposedSet
from specgen.formats import text
from specgen.formats.pdf.libraries import can_write, require_libraries
from specgen.model.block import Document, Figure
from specgen.model.problem import Problem, refuse
from specgen.model.sheet import Sheet
from specgen.model.suggest import suggest
from specgen.output.manifest import MANIFEST
from specgen.terminal.progress import tell_nobody

NamedFile = tuple[str, bytes]  # the name of a file, and its contents
Tell = Callable[[str | Problem], None]  # takes what the user is told beside the files, and what the files lack
SetWriter = Callable[[ComposedSet, Tell], Iterable[NamedFile]]
IndexWriter = Callable[[ComposedSet, tuple[str, ...]], NamedFile]  # takes the names of all other files

WORKBOOK = "registers-and-lists.xlsx"

# What a package is written in where nothing else is asked for, each with whether its extra is installed.
_DEFAULT: dict[str, Callable[[], bool]] = {
    "docx": lambda: True,
    "html": lambda: True,
    "pdf": can_write,
    "xlsx": lambda: find_spec("xlsxwriter") is not None,
    "csv": lambda: True,
}


def default_formats() -> tuple[str, ...]:
    """The formats of a package that names none: those that are always there, and those whose extra is installed."""
    return tuple(name for name, is_installed in _DEFAULT.items() if is_installed())


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


def write_set(
    made: ComposedSet, formats: Iterable[str], index: bool = True, tell_step: Callable[[str], None] = tell_nobody
) -> WrittenSet:
    """The files of a set in every format asked for, with the page that leads to them unless `index` is false.

    `tell_step` takes what is being done. Raises Refused where there is no file to write.
    """
    told: list[str | Problem] = []
    asked = tuple(dict.fromkeys(formats))
    files: list[NamedFile] = []
    for name in asked:
        tell_step(f"writing {name}")
        files += WRITERS[name](made, told.append)
    if not files:
        hint = "name another format, or another document"
        raise refuse(f"nothing was written: no document asked for is written as {', '.join(asked)}", hint)
    names = (*(name for name, _ in files), MANIFEST)
    files += [INDEXES[name](made, names) for name in asked if index and name in INDEXES]
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


def _write_review_page(made: ComposedSet, names: tuple[str, ...]) -> NamedFile:
    """The page that leads to all files of the package."""
    from specgen.documents.review_page import compose_review_page
    from specgen.formats.review_page import write_review_page

    return "index.html", write_review_page(compose_review_page(made, names), made.templates, made.own)


def _write_csv(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats import csv_sheet

    return ((_name_list(document, sheet), csv_sheet.write_csv(sheet)) for document, sheet in list_sheets(made))


def _name_list(document: str, sheet: Sheet) -> str:
    """`D07-panel-list.csv`: a sheet stands beside its document."""
    return f"{document}-{sheet.name.lower().replace(' ', '-')}.csv"


def _write_xlsx(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats import workbook

    book = make_book(made)
    return iter(() if book is None else ((WORKBOOK, workbook.write_workbook(book)),))


def _write_svg(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    """Each drawing in a file of its own, with the bytes that a page is set from."""
    for document in made.documents:
        figures = (block for block in document.blocks if isinstance(block, Figure))
        yield from ((_name_drawing(document, figure), figure.svg.encode()) for figure in figures)


def _name_drawing(document: Document, figure: Figure) -> str:
    """`D07-figure-2-elevations.svg`: by the number under which the document prints it."""
    number, name = (text.lower().replace(" ", "-") for text in (figure.number, figure.name.replace("_", "-")))
    return f"{document.id}-{number}-{name}.svg"


def _write_pdf(made: ComposedSet, tell: Tell) -> Iterator[NamedFile]:
    from specgen.formats.page_fonts import forget_pages
    from specgen.formats.pdf.bind import bind
    from specgen.formats.pdf.forms import write_forms
    from specgen.formats.pdf.pages import name_file

    forget_pages()  # the pictures of other formats
    forms = tuple(write_forms(made))  # first: the pages of the set, once made, fill the memory
    bound = bind(made)
    notes: tuple[str | Problem, ...] = (*bound.told, *bound.problems)
    for note in notes:
        tell(note)
    yield name_file(made), bound.pdf
    yield from forms


# A format loads only the libraries it needs; it has a row here, and none elsewhere.
WRITERS: dict[str, SetWriter] = {
    "docx": _write_docx,
    "html": _write_html,
    "pdf": _write_pdf,
    "txt": _write_text,
    "xlsx": _write_xlsx,
    "csv": _write_csv,
    "svg": _write_svg,
}
# What is written of a package when the names of its other files are known, with the format that asks for it.
INDEXES: dict[str, IndexWriter] = {"html": _write_review_page}
