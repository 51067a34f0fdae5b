"""Builds the files of a package: every document in every requested format, and the data of the manifest."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from specgen.documents import document
from specgen.documents.banner import count_brackets, mark_draft
from specgen.documents.catalogue import Template, templates, templates_folder
from specgen.documents.composed_set import ComposedSet
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
from specgen.formats import png
from specgen.judging.open_items import owed_rings
from specgen.model.block import Document, Figure
from specgen.model.finding import Judgment, Severity
from specgen.model.problem import Problem, refuse
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.suggest import suggest
from specgen.model.value_text import count
from specgen.output.manifest import MANIFEST, index_files
from specgen.output.writers import check_formats, write_set
from specgen.resolving.provider import Resolver

_SUBMITTALS_OF_WORK = ("work_submittal", "resubmittal", "closeout")


@dataclass(frozen=True, kw_only=True)
class Package:
    """A package ready to be written."""

    files: dict[str, bytes]  # contents by file name
    about: dict[str, Any]  # the data of the manifest above its list of files
    notes: tuple[str, ...] = ()  # what the user is told about the letterhead
    problems: tuple[Problem, ...] = ()  # why attachments are not bound in


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
    home: Path | None = None,
) -> Package:
    """Every document of the project, on the given letterhead and with the firm's own templates where it has some.

    `home` is the folder of the project file, in which its attachments lie; documents asked for by `only` have none.
    Raises Refused for an unknown format, an unknown id, a faulty template or a letterhead that cannot serve.
    """
    check_formats(formats)
    notes = _describe_omissions(formats, letterhead)
    context = DocumentContext(project, standards, judgment, resolve)
    folder = templates_folder()
    every = _gather_templates(folder, own, formats)
    stages = None if draft else owed_rings(str(project.value(("package", "purpose"))))
    issued = _choose(every, (), stages)
    documents, context = _compose(_choose(every, only, stages) if only else issued, issued, every, context, draft)
    notes += _describe_figures(formats, documents)
    made = ComposedSet(
        documents=tuple(documents),
        context=context,
        templates=folder,
        own=own,
        letterhead=letterhead,
        home=None if only else home,
    )
    written = write_set(made, formats)
    return Package(
        files=index_files(written.files),
        about=_describe(context, draft) | {"not_bound_in": list(map(str, written.problems))},
        problems=written.problems,
        notes=(*notes, *written.told, *_tell_rest(project, context.rest)),
    )


def _gather_templates(folder: Path, own: Path | None, formats: tuple[str, ...]) -> tuple[Template, ...]:
    """Every template there is, those of the firm in place of ours; raises Refused where its folder is faulty."""
    if own is not None:
        check_folder(own, folder)
        if "html" in formats:
            check_page(folder, own)
    return templates(folder, own)


def _describe(context: DocumentContext, draft: bool) -> dict[str, Any]:
    """The data of the manifest above its list of files."""
    return {
        "format": 1,
        "project": context.project.get(("project", "name")),
        "purpose": context.project.get(("package", "purpose")),
        "draft": draft,
        "stops": [f.code for f in context.judgment.of(Severity.STOP)],
        "left_out": [{"document": d.id, "values": d.values, "in_brackets": d.brackets} for d in context.rest.left_out],
        "to_verify": list(dict.fromkeys(map(context.name_text, context.rest.to_check))),
    }


def _compose(
    chosen: tuple[Template, ...],
    issued: tuple[Template, ...],
    every: tuple[Template, ...],
    context: DocumentContext,
    draft: bool,
) -> tuple[list[Document], DocumentContext]:
    """The documents chosen, and the context with what is known of all: those left out, what they cite, what is issued.

    What tells of the others is composed again when they are there.
    """
    last = [template for template in chosen if template.id in TELLS_OF_OTHERS]
    made = {t.id: document.compose_document(t, context, False) for t in (every if last else chosen) if t.id != ANSWER}
    known = count_known(made.values())
    whole = chosen is issued  # what is asked for by name is written, however little of it is known
    left_out = find_left_out(known) if draft and whole else ()
    missing = {entry.id for entry in left_out}
    held = tuple((t.id, t.title) for t in issued if t.id not in missing)
    rest = Remainder(known, left_out, list_asked(made.values()), list_cited(made.values()), held)
    context = replace(context, rest=rest)
    made |= {t.id: document.compose_document(t, context, False) for t in last}
    kept = [made[template.id] for template in chosen if template.id not in missing]
    total = sum(map(count_brackets, kept))
    return ([mark_draft(d, context, total) for d in kept] if draft else kept), context


def _tell_rest(project: Project, rest: Remainder) -> Iterator[str]:
    """What the contractor is told beside the documents: those left out, and the texts to verify before submittal."""
    if rest.left_out:
        ids = ", ".join(entry.id for entry in rest.left_out)
        yield f"left out, under {LEAST_KNOWN}% of their values known: {ids}; --only ID writes one"
    texts = len(rest.to_check)
    if texts and project.get(("package", "purpose")) in _SUBMITTALS_OF_WORK:
        yield f"verify before submittal: {count(texts, 'text')}, listed in D05 and {MANIFEST}"


def _describe_omissions(formats: tuple[str, ...], letterhead: Path | None) -> tuple[str, ...]:
    """Notes on what is left out of a letterhead; raises Refused if it is unusable or nothing built shows it."""
    if letterhead is None:
        return ()
    if not {"docx", "pdf"} & set(formats):
        raise refuse("a letterhead is given and neither Word nor PDF is written", "add docx or pdf to --formats")
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
