"""The files of a site record: its documents in every format asked for."""

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from specgen.documents.catalogue import templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import DocumentContext
from specgen.documents.records.composing import compose_records
from specgen.formats.pdf.libraries import can_write
from specgen.model.block import Document
from specgen.model.problem import refuse
from specgen.model.record_judgment import RecordJudgment
from specgen.model.suggest import suggest
from specgen.output.manifest import index_files
from specgen.terminal.progress import Tell, tell_nobody

FORMATS = ("docx", "html", "pdf", "txt")
TITLE = "Site record"
_BOUND = "site-record.pdf"


def default_record_formats() -> tuple[str, ...]:
    """The formats of a record that names none: those that are always there, and those whose extra is installed."""
    return ("docx", "html", *(("pdf",) if can_write() else ()))


def check_record_formats(formats: Iterable[str]) -> None:
    """Raise Refused for a format that a record is not written in."""
    for name in formats:
        if name not in FORMATS:
            raise refuse(f"there is no format {name!r} here", suggest(name, FORMATS))


def make_record_files(
    context: DocumentContext,
    judgment: RecordJudgment,
    formats: tuple[str, ...],
    letterhead: Path | None = None,
    own: Path | None = None,
    tell_step: Tell = tell_nobody,
) -> dict[str, bytes]:
    """The files by name: each document by itself, the PDF of all of them together.

    Raises Refused for an unknown format, and for a template or a letterhead that cannot serve.
    """
    check_record_formats(formats)
    tell_step("filling the forms")
    documents = compose_records(context, judgment, own)
    made = ComposedSet(
        documents=documents, context=context, templates=templates_folder(), own=own, letterhead=letterhead, title=TITLE
    )
    files: list[tuple[str, bytes]] = []
    for name in dict.fromkeys(formats):
        tell_step(f"writing {name}")
        if name == "pdf":
            files += _write_pdf(made)
        else:
            write = _choose_writer(name, made)
            files += [(f"{document.file_name}.{name}", write(document)) for document in documents]
    return index_files(tuple(files))


def _choose_writer(name: str, made: ComposedSet) -> Callable[[Document], bytes]:
    """The writer of a format that writes each document by itself; its libraries are loaded here."""
    if name == "docx":
        from specgen.formats.docx.word_file import write_docx

        letterhead = made.letterhead or made.templates / "letterhead.docx"
        return lambda document: write_docx(document, letterhead)
    if name == "html":
        from specgen.formats.html import write_html

        return lambda document: write_html(document, made.templates, made.own)
    from specgen.formats.text import write_text

    return lambda document: write_text(document).encode()


def _write_pdf(made: ComposedSet) -> Iterator[tuple[str, bytes]]:
    """All documents in one file, and by itself what somebody still fills in."""
    from specgen.formats.pdf.forms import write_forms
    from specgen.formats.pdf.pages import write_pages
    from specgen.formats.pdf.saving import pack_pdf

    yield _BOUND, pack_pdf(write_pages(made).pdf)
    yield from write_forms(made)
