"""The story of a comparison: take the states of two project files, or of a package and a file, and tell them apart."""

import os
from dataclasses import dataclass, replace
from pathlib import Path

from specgen.documents import document
from specgen.documents.catalogue import read_change_sheet, templates, templates_folder
from specgen.documents.changes_finding import find_changes
from specgen.documents.composed_set import ComposedSet
from specgen.documents.context import DocumentContext
from specgen.documents.held import leave_later
from specgen.documents.set_composing import choose_templates, compose_set
from specgen.judging.open_items import owed_rings
from specgen.model.changes import Changes
from specgen.model.problem import Problem, Refused
from specgen.model.state import State
from specgen.output.disk import write_package
from specgen.output.issued import read_issued
from specgen.output.manifest import FORMAT, index_files
from specgen.output.writers import check_formats, write_set
from specgen.pipeline import JudgedProject, check_from_here
from specgen.reading.attached_file import list_attached


@dataclass(frozen=True)
class Comparison:
    """What differs, and the context of the newer state, from which a change sheet is composed."""

    changes: Changes
    context: DocumentContext
    draft: bool  # whether the newer state cannot be submitted


def compare_files(old: Path, new: Path) -> Comparison:
    """What differs in the project file `new` from the file or package `old`; raises Refused where one is unreadable."""
    if _is_folder(new):
        raise Refused(Problem("this is a folder", "give the project file: specgen compare OLD NEW", file=str(new)))
    issued = read_issued(old) if _is_folder(old) else None
    before = issued or _take_state(_check(old), _name_home(old), None)[0]
    case = _check(new)
    after, context = _take_state(case, _name_home(new), issued)
    changes = find_changes(before, after, case.project.schema)
    return Comparison(changes, replace(context, changes=changes), _is_draft(case))


def write_change_sheet(comparison: Comparison, out: Path, formats: tuple[str, ...]) -> tuple[str, ...]:
    """Write the change sheet to a folder, whole or not at all; returns the names of its files. Raises Refused."""
    check_formats(formats)
    folder, context = templates_folder(), comparison.context
    sheet = document.compose_document(read_change_sheet(folder), context, comparison.draft)
    made = ComposedSet(documents=(sheet,), context=context, templates=folder)
    files = index_files(write_set(made, formats, index=False).files)
    about = {"format": FORMAT, "project": sheet.project, "was": comparison.changes.was, "now": comparison.changes.now}
    write_package(out, files, about)
    return tuple(files)


def _is_folder(path: Path) -> bool:
    return os.path.isdir(path)  # noqa: PTH112 (no error for a name too long)


def _check(file: Path) -> JudgedProject:
    """The project of a file, judged; raises Refused with its files named from here, as both may have one name."""
    try:
        return check_from_here(file)
    except Refused as refused:
        others = [problem for problem in refused.problems if problem.path == "format"]
        raise Refused(*(others[:1] or refused.problems)) from None


def _name_home(file: Path) -> Path:
    """The folder in which the attachments of a project file lie."""
    return file.resolve().parent


def _is_draft(case: JudgedProject) -> bool:
    return case.judgment.stopped or case.project.value(("package", "purpose")) == "design_draft"


def _take_state(case: JudgedProject, home: Path, issued_as: State | None) -> tuple[State, DocumentContext]:
    """The state of a project with the documents that a package of it has, and their context.

    Held against a package, it is printed as that was: as a draft, or some documents alone.
    """
    attached = list_attached(case.project, home)
    draft = _is_draft(case) or (issued_as is not None and issued_as.draft)
    context = DocumentContext(
        case.project,
        case.context.standards,
        case.judgment,
        case.context.resolve,
        attached=attached,
        recorded=case.records,
        draft=draft,
    )
    stages = None if draft else owed_rings(str(case.project.value(("package", "purpose"))))
    every = leave_later(templates(), context, () if issued_as is None else tuple(issued_as.documents))
    issued = chosen = choose_templates(every, (), stages)
    if issued_as is not None and not issued_as.whole:
        chosen = tuple(template for template in every if template.id in issued_as.documents)
    composed = compose_set(chosen, issued, every, context)
    return composed.state, context
