"""The formats of a package: those that write each document by itself, and those that write of the whole set."""

from collections.abc import Callable, Iterable, Iterator
from importlib.util import find_spec

from specgen.documents.book import list_sheets, make_book
from specgen.documents.composed_set import ComposedSet
from specgen.formats import text
from specgen.model.block import Document, Figure
from specgen.model.problem import refuse
from specgen.model.sheet import Sheet
from specgen.model.suggest import suggest

NamedFile = tuple[str, bytes]  # the name of a file, and its contents
Tell = Callable[[str], None]  # takes what the user is told beside the files
SetWriter = Callable[[ComposedSet, Tell], Iterable[NamedFile]]

WORKBOOK = "registers-and-lists.xlsx"

# What a package is written in where nothing else is asked for, each with the libraries of its extra.
_DEFAULT: dict[str, tuple[str, ...]] = {
    "docx": (),
    "html": (),
    "pdf": ("typst", "pikepdf"),
    "xlsx": ("xlsxwriter",),
    "csv": (),
}


def default_formats() -> tuple[str, ...]:
    """The formats of a package that names none: those that are always there, and those whose extra is installed."""
    return tuple(name for name, needs in _DEFAULT.items() if name in WRITERS and all(map(find_spec, needs)))


def check_formats(formats: Iterable[str]) -> None:
    """Raise Refused for a format that there is not."""
    for name in formats:
        if name not in WRITERS:
            raise refuse(f"there is no format {name!r}", suggest(name, list(WRITERS)))


def write_set(made: ComposedSet, formats: Iterable[str]) -> tuple[list[NamedFile], tuple[str, ...]]:
    """The files of a set in every format asked for, and what the user is told beside them."""
    told: list[str] = []
    files = [file for name in formats for file in WRITERS[name](made, told.append)]
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


# A format loads only the libraries it needs; it has a row here, and none elsewhere.
WRITERS: dict[str, SetWriter] = {
    "docx": _write_docx,
    "html": _write_html,
    "txt": _write_text,
    "xlsx": _write_xlsx,
    "csv": _write_csv,
    "svg": _write_svg,
}
