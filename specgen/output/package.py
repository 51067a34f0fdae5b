"""The files of a package: every document in every format asked for, and what the manifest says of them."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specgen.documents import document
from specgen.documents.catalogue import Template, templates, templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.template_overrides import checked
from specgen.formats import text
from specgen.model.block import Document
from specgen.model.finding import Judgment, Severity
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.suggest import near_hint
from specgen.output.manifest import named
from specgen.resolving.provider import Resolver

Writer = Callable[[Document, Path], bytes]


@dataclass(frozen=True)
class Package:
    """The files by name, the head of their manifest, and what the user is told of the letterhead."""

    files: dict[str, bytes]
    about: dict[str, Any]
    notes: tuple[str, ...] = ()


def made(
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
    """Every document of the project, on the letterhead and in the words of a firm's own folder where they are given.

    Raises Refused for an unknown format, an unknown id, a faulty template or a letterhead that cannot serve.
    """
    writers = {name: _writer(name, letterhead, own) for name in formats}
    notes = _told(formats, letterhead)
    context = DocumentContext(project, standards, judgment, resolve)
    folder = templates_folder()
    if own is not None:
        checked(own, folder)
    files: list[tuple[str, bytes]] = []
    for template in _chosen(templates(folder, own), only):
        written = document.made(template, context, draft)
        for ending, writer in writers.items():
            files.append((f"{written.file_name}.{ending}", writer(written, folder)))
    about = {
        "format": 1,
        "project": project.get(("project", "name")),
        "purpose": project.get(("package", "purpose")),
        "draft": draft,
        "stops": [f.code for f in judgment.of(Severity.STOP)],
    }
    return Package(named(files), about, notes)


def _told(formats: tuple[str, ...], letterhead: Path | None) -> tuple[str, ...]:
    """What is left out of a letterhead; raises Refused where it cannot serve, or serves nothing."""
    if letterhead is None:
        return ()
    if "docx" not in formats:
        raise refuse("a letterhead is given and no Word document is written", "add docx to --formats")
    from specgen.formats.docx.letterhead import read_letterhead

    return read_letterhead(letterhead).notes


def _chosen(every: tuple[Template, ...], only: tuple[str, ...]) -> tuple[Template, ...]:
    known = {template.id: template for template in every}
    for name in only:
        if name.upper() not in known:
            raise refuse(f"there is no document {name!r}", near_hint(name, list(known)))
    wanted = {name.upper() for name in only}
    return tuple(template for template in every if not only or template.id in wanted)


def _writer(name: str, letterhead: Path | None, own: Path | None) -> Writer:
    """The writer of a format; only its libraries are loaded."""
    if name == "docx":
        from specgen.formats.docx import word_file as docx

        return lambda made_document, folder: docx.write_docx(made_document, letterhead or folder / "letterhead.docx")
    if name == "html":
        from specgen.formats import html

        return lambda made_document, folder: html.write_html(made_document, folder, own)
    if name == "txt":
        return lambda made_document, folder: text.write_text(made_document).encode()
    raise refuse(f"there is no format {name!r}", near_hint(name, ["docx", "html", "txt"]))
