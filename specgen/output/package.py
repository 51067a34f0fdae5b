"""Builds the files of a package: every document in every requested format, and the data of the manifest."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specgen.documents import document
from specgen.documents.catalogue import Template, templates, templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.template_overrides import check_folder
from specgen.formats import text
from specgen.model.block import Document
from specgen.model.finding import Judgment, Severity
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.suggest import suggest
from specgen.output.manifest import index_files
from specgen.resolving.provider import Resolver

Writer = Callable[[Document, Path], bytes]


@dataclass(frozen=True, kw_only=True)
class Package:
    """A package ready to be written."""

    files: dict[str, bytes]  # contents by file name
    about: dict[str, Any]  # the data of the manifest above its list of files
    notes: tuple[str, ...] = ()  # what the user is told about the letterhead


def make_package(
    project: Project,
    standards: Standards,
    judgment: Judgment,
    resolve: Resolver,
    formats: tuple[str, ...],
    only: tuple[str, ...],
    draft: bool,
    letterhead: Path | None = None,
    own: Path | None = None,
) -> Package:
    """Every document of the project, on the given letterhead and with the firm's own templates where it has some.

    Raises Refused for an unknown format, an unknown id, a faulty template or a letterhead that cannot serve.
    """
    writers = {name: _load_writer(name, letterhead, own) for name in formats}
    notes = _describe_omissions(formats, letterhead)
    context = DocumentContext(project, standards, judgment, resolve, own)
    folder = templates_folder()
    if own is not None:
        check_folder(own, folder)
    files: list[tuple[str, bytes]] = []
    for template in _choose(templates(folder, own), only):
        composed = document.compose_document(template, context, draft)
        for ending, writer in writers.items():
            files.append((f"{composed.file_name}.{ending}", writer(composed, folder)))
    about = {
        "format": 1,
        "project": project.get(("project", "name")),
        "purpose": project.get(("package", "purpose")),
        "draft": draft,
        "stops": [f.code for f in judgment.of(Severity.STOP)],
    }
    return Package(files=index_files(files), about=about, notes=notes)


def _describe_omissions(formats: tuple[str, ...], letterhead: Path | None) -> tuple[str, ...]:
    """Notes on what is left out of a letterhead; raises Refused if it is unusable or no Word document is built."""
    if letterhead is None:
        return ()
    if "docx" not in formats:
        raise refuse("a letterhead is given and no Word document is written", "add docx to --formats")
    from specgen.formats.docx.letterhead import read_letterhead

    return read_letterhead(letterhead).notes


def _choose(every: tuple[Template, ...], only: tuple[str, ...]) -> tuple[Template, ...]:
    known = {template.id: template for template in every}
    for name in only:
        if name.upper() not in known:
            raise refuse(f"there is no document {name!r}", suggest(name, list(known)))
    wanted = {name.upper() for name in only}
    return tuple(template for template in every if not only or template.id in wanted)


def _load_writer(name: str, letterhead: Path | None, own: Path | None) -> Writer:
    """The writer of a format, loading only the libraries it needs."""
    if name == "docx":
        from specgen.formats.docx import word_file as docx

        return lambda composed, folder: docx.write_docx(composed, letterhead or folder / "letterhead.docx")
    if name == "html":
        from specgen.formats import html

        return lambda composed, folder: html.write_html(composed, folder, own)
    if name == "txt":
        return lambda composed, folder: text.write_text(composed).encode()
    raise refuse(f"there is no format {name!r}", suggest(name, ["docx", "html", "txt"]))
