"""Builds the files of a package: every document in every requested format, and the data of the manifest."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from specgen.documents import document
from specgen.documents.banner import count_brackets, mark_draft
from specgen.documents.catalogue import Template, templates, templates_folder
from specgen.documents.context import DocumentContext
from specgen.documents.drafts import (
    ANSWER,
    LEAST_KNOWN,
    TELLS_OF_OTHERS,
    Remainder,
    count_known,
    find_left_out,
    list_asked,
    list_cited,
)
from specgen.documents.template_overrides import check_folder, check_page
from specgen.formats import png, text
from specgen.judging.open_items import owed_rings
from specgen.model.block import Document, Figure
from specgen.model.finding import Judgment, Severity
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.suggest import suggest
from specgen.model.value_text import count
from specgen.output.manifest import MANIFEST, index_files
from specgen.resolving.provider import Resolver

Writer = Callable[[Document, Path], bytes]
_SUBMITTALS_OF_WORK = ("work_submittal", "resubmittal", "closeout")


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
    context = DocumentContext(project, standards, judgment, resolve)
    folder = templates_folder()
    if own is not None:
        check_folder(own, folder)
        if "html" in formats:
            check_page(folder, own)
    every = templates(folder, own)
    stages = None if draft else owed_rings(str(project.value(("package", "purpose"))))
    issued = _choose(every, (), stages)
    documents, rest = _compose(_choose(every, only, stages) if only else issued, issued, every, context, draft)
    notes += _describe_figures(formats, documents)
    files = [(f"{d.file_name}.{ending}", write(d, folder)) for d in documents for ending, write in writers.items()]
    about = {
        "format": 1,
        "project": project.get(("project", "name")),
        "purpose": project.get(("package", "purpose")),
        "draft": draft,
        "stops": [f.code for f in judgment.of(Severity.STOP)],
        "left_out": [{"document": d.id, "values": d.values, "in_brackets": d.brackets} for d in rest.left_out],
        "to_verify": list(dict.fromkeys(map(context.name_text, rest.to_check))),
    }
    return Package(files=index_files(files), about=about, notes=(*notes, *_tell_rest(project, rest)))


def _compose(
    chosen: tuple[Template, ...],
    issued: tuple[Template, ...],
    every: tuple[Template, ...],
    context: DocumentContext,
    draft: bool,
) -> tuple[list[Document], Remainder]:
    """The documents chosen, and what is known of all: those left out of a draft, what they cite, what is issued.

    What tells of the others is composed again when they are there.
    """
    last = [template for template in chosen if template.id in TELLS_OF_OTHERS]
    made = {t.id: document.compose_document(t, context, False) for t in (every if last else chosen) if t.id != ANSWER}
    known = count_known(made.values())
    whole = chosen is issued  # what is asked for by name is written, however little of it is known
    left_out = find_left_out(known, context.project) if draft and whole else ()
    missing = {entry.id for entry in left_out}
    held = tuple((t.id, t.title) for t in issued if t.id not in missing)
    rest = Remainder(known, left_out, list_asked(made.values()), list_cited(made.values()), held)
    made |= {t.id: document.compose_document(t, replace(context, rest=rest), False) for t in last}
    kept = [made[template.id] for template in chosen if template.id not in missing]
    total = sum(map(count_brackets, kept))
    return ([mark_draft(d, context, total) for d in kept] if draft else kept), rest


def _tell_rest(project: Project, rest: Remainder) -> Iterator[str]:
    """What the contractor is told beside the documents: those left out, and the texts to verify before submittal."""
    if rest.left_out:
        ids = ", ".join(entry.id for entry in rest.left_out)
        yield f"left out, under {LEAST_KNOWN}% of their values known: {ids}; --only ID writes one"
    texts = len(rest.to_check)
    if texts and project.get(("package", "purpose")) in _SUBMITTALS_OF_WORK:
        yield f"verify before submittal: {count(texts, 'text')}, listed in D05 and {MANIFEST}"


def _describe_omissions(formats: tuple[str, ...], letterhead: Path | None) -> tuple[str, ...]:
    """Notes on what is left out of a letterhead; raises Refused if it is unusable or no Word document is built."""
    if letterhead is None:
        return ()
    if "docx" not in formats:
        raise refuse("a letterhead is given and no Word document is written", "add docx to --formats")
    from specgen.formats.docx.letterhead import read_letterhead

    return read_letterhead(letterhead).notes


def _describe_figures(formats: tuple[str, ...], documents: list[Document]) -> tuple[str, ...]:
    """What is told where Word documents cannot show their figures."""
    drawn = any(isinstance(block, Figure) for document in documents for block in document.blocks)
    if "docx" not in formats or not drawn or png.can_write():
        return ()
    return ("the Word files say in words what their figures show: install specgen with its extra picture to show them",)


def _choose(every: tuple[Template, ...], only: tuple[str, ...], stages: tuple[str, ...] | None) -> tuple[Template, ...]:
    """The templates asked for, else those of the stages that are owed; the answer of a draft is part of no other.

    A draft, which owes no stage, has them all.
    """
    known = {template.id: template for template in every}
    for name in only:
        if name.upper() not in known:
            raise refuse(
                f"there is no document {name!r}", suggest(re.sub(r"(?<=^D)(?=\d$)", "0", name.upper()), list(known))
            )
    wanted = {name.upper() for name in only}
    if ANSWER in wanted and stages is not None:
        raise refuse(f"{ANSWER} is part of a draft alone", "add --draft")
    owed = [t for t in every if stages is None or (t.id != ANSWER and t.stage in stages)]
    return tuple(t for t in every if t.id in wanted) if only else tuple(owed)


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
