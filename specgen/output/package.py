"""Builds the files of a package: every document in every requested format, and the data of the manifest."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from specgen.documents.banner import tell_draft
from specgen.documents.catalogue import Template, read_change_sheet, templates, templates_folder
from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import DocumentContext
from specgen.documents.drafts import LEAST_KNOWN, Remainder
from specgen.documents.held import leave_later
from specgen.documents.set_composing import PackageDocuments, choose_templates, compose_set
from specgen.documents.template_overrides import check_folder, check_page
from specgen.formats import png, text
from specgen.judging.open_items import owed_rings
from specgen.model.block import Document, Figure
from specgen.model.changes import Changes
from specgen.model.finding import Judgment
from specgen.model.problem import Problem, refuse
from specgen.model.project import Project
from specgen.model.record_judgment import RecordJudgment
from specgen.model.standard import Standards
from specgen.model.state import State
from specgen.model.value_text import count
from specgen.output.manifest import MANIFEST, index_files
from specgen.output.package_data import describe_package
from specgen.output.writers import WrittenSet, check_formats, write_set
from specgen.reading.attached_file import list_attached
from specgen.resolving.provider import Resolver
from specgen.terminal.progress import tell_nobody

_SUBMITTALS_OF_WORK = ("work_submittal", "resubmittal", "closeout")


@dataclass(frozen=True, kw_only=True)
class Package:
    """A package ready to be written."""

    files: dict[str, bytes]  # contents by file name
    about: dict[str, Any]  # the data of the manifest above its list of files
    notes: tuple[str, ...] = ()  # what the user is told about the letterhead
    problems: tuple[Problem, ...] = ()  # why attachments are not bound in
    standing: str = ""  # what a draft was written in spite of, as its answer counts it


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
    since: State | None = None,
    tell_step: Callable[[str], None] = tell_nobody,
    recorded: RecordJudgment | None = None,
) -> Package:
    """Every document of the project, on the given letterhead and with the firm's own templates where it has some.

    `home` is the folder of the project file, in which its attachments lie; documents asked for by `only` have none.
    What differs from the issued state `since` is marked; `tell_step` takes what is written; `recorded` is how readings
    end. Raises Refused for an unknown format or id, a faulty template, and a letterhead that cannot serve.
    """
    notes = _describe_omissions(formats, letterhead)
    attached, told = list_attached(project, home), recorded or RecordJudgment()
    context = DocumentContext(project, standards, judgment, resolve, attached=attached, recorded=told, draft=draft)
    folder = templates_folder()
    every = leave_later(_read_templates(folder, own, formats, since), context, only)
    composed = _compose(context, every, only, since)
    settled = replace(context, rest=composed.rest, changes=composed.changes)
    made = _set_up(composed.documents, settled, own, letterhead, None if only else home)
    written = write_set(made, formats, tell_step=tell_step)
    about = describe_package(context, composed, draft, written.problems)
    told_of = (*notes, *_tell_composed(project, composed, formats, written))
    standing = tell_draft(settled) if draft else ""
    return Package(
        files=index_files(written.files), about=about, notes=told_of, problems=written.problems, standing=standing
    )


def _set_up(
    documents: tuple[Document, ...],
    context: DocumentContext,
    own: Path | None,
    letterhead: Path | None,
    home: Path | None,
) -> ComposedSet:
    """The documents with where their looks and attachments lie."""
    return ComposedSet(
        documents=documents, context=context, templates=templates_folder(), own=own, letterhead=letterhead, home=home
    )


def _compose(
    context: DocumentContext, every: tuple[Template, ...], only: tuple[str, ...], since: State | None
) -> PackageDocuments:
    """The documents that are owed, or those asked for; raises Refused for an unknown id."""
    stages = None if context.draft else owed_rings(str(context.project.value(("package", "purpose"))))
    issued = choose_templates(every, (), stages)
    chosen = choose_templates(every, only, stages) if only else issued
    return compose_set(chosen, issued, every, context, since)


def _tell_composed(
    project: Project, composed: PackageDocuments, formats: tuple[str, ...], written: WrittenSet
) -> Iterator[str]:
    """What the contractor is told of the documents: what they name and lack, what is left out, what is marked."""
    yield from _describe_figures(formats, composed.documents)
    yield from written.told
    yield from _tell_unbound(composed.documents, written.problems)
    yield from _tell_rest(project, composed.rest)
    yield from _tell_changes(composed.changes)


def _read_templates(
    folder: Path, own: Path | None, formats: tuple[str, ...], since: State | None
) -> tuple[Template, ...]:
    """The templates that a package may hold, the firm's in place of ours; raises Refused for a faulty one."""
    if own is not None:
        check_folder(own, folder)
        if "html" in formats:
            check_page(folder, own)
    return templates(folder, own) + ((read_change_sheet(folder, own),) if since is not None else ())


def _tell_unbound(documents: tuple[Document, ...], problems: tuple[Problem, ...]) -> Iterator[str]:
    """Which documents of the package name attachments that are not bound in."""
    marks = [problem.path.split(".")[1] for problem in problems]
    if not marks:
        return
    any_mark = re.compile(rf"\b({'|'.join(map(re.escape, marks))})\b")
    names = [document.id for document in documents if any_mark.search(text.write_text(document))]
    if names:
        yield f"not bound in, and named in {', '.join(names)}: {', '.join(marks)}"


def _tell_changes(changes: Changes | None) -> Iterator[str]:
    """What the contractor is told of the marks: that there are none, and that an issued revision is issued again."""
    if changes is not None and changes.was[0] == changes.now[0]:
        yield f"revision {changes.now[0]} was issued already: raise package.revision"
    if changes is not None and not any(one.articles for one in changes.documents):
        yield "no block of the documents differs from those issued: none is marked"


def _tell_rest(project: Project, rest: Remainder) -> Iterator[str]:
    """What the contractor is told beside the documents: those left out, and the texts to verify before submittal."""
    if rest.left_out:
        ids = ", ".join(entry.id for entry in rest.left_out)
        yield f"left out, under {LEAST_KNOWN}% of their values known: {ids}; --only ID writes one"
    texts = len(rest.to_check)
    if texts and project.get(("package", "purpose")) in _SUBMITTALS_OF_WORK:
        yield f"verify before submittal: {count(texts, 'text')}, listed in D05 and {MANIFEST}"


def _describe_omissions(formats: tuple[str, ...], letterhead: Path | None) -> tuple[str, ...]:
    """Notes on what is left out of a letterhead.

    Raises Refused for an unknown format, and for a letterhead that is unusable or that nothing built shows.
    """
    check_formats(formats)
    if letterhead is None:
        return ()
    if not {"docx", "pdf"} & set(formats):
        raise refuse("a letterhead is given and neither Word nor PDF is written", "add docx or pdf to --formats")
    from specgen.formats.docx.letterhead import read_letterhead

    return read_letterhead(letterhead).notes


def _describe_figures(formats: tuple[str, ...], documents: tuple[Document, ...]) -> tuple[str, ...]:
    """What is told where Word documents cannot show their figures."""
    drawn = any(isinstance(block, Figure) for document in documents for block in document.blocks)
    if "docx" not in formats or not drawn or png.can_write():
        return ()
    return ("the Word files say in words what their figures show: install specgen with its extra picture to show them",)
