"""The story of a package: check the project, refuse while anything stands against it, compose, write."""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from specgen.documents.context import DocumentContext
from specgen.documents.drafts import WRITTEN_WITH_STOPS
from specgen.documents.records.closeout import CLOSEOUT, OpenLine, list_open, tell_open
from specgen.model.finding import Judgment
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.state import State
from specgen.model.value_text import count
from specgen.output import package
from specgen.output.disk import refuse_unfit_folder, write_package
from specgen.output.issued import read_issued
from specgen.output.manifest import list_changes
from specgen.output.removal import tell_removed
from specgen.pipeline import JudgedProject, check_from_here
from specgen.terminal.next_command import quote
from specgen.terminal.progress import Tell, tell_nobody
from specgen.terminal.report_data import count_standing


@dataclass(frozen=True)
class BuiltPackage:
    """The names of the files written, whether their pages are marked as a draft, the judgment, what is told besides.

    `problems` say why attachments are not bound in. `standing` counts what a draft was written in spite of.
    """

    files: tuple[str, ...]
    draft: bool
    judgment: Judgment
    notes: tuple[str, ...] = ()
    standing: str = ""
    problems: tuple[Problem, ...] = ()


def _tell_doubts(since: Path, issued: State, name: str) -> Iterator[str]:
    """What speaks against a package as the one that this project was issued with."""
    if issued.project != name:
        yield f"{since} is the package of {issued.project}, and this project is {name}"
    if any(list_changes(since)):
        yield f"{since} is not as it was written: specgen check --package {since} lists what differs"


def _lists_stops(only: tuple[str, ...]) -> bool:
    """Whether nothing is asked for but documents that list the stops."""
    return bool(only) and {name.upper() for name in only} <= set(WRITTEN_WITH_STOPS)


def is_closing(case: JudgedProject) -> bool:
    """Whether the package of a project is its closeout."""
    return bool(case.project.value(("package", "purpose")) == "closeout")


def list_left(case: JudgedProject) -> tuple[OpenLine, ...]:
    """What keeps the closeout of a project from being written."""
    facts = (case.project, case.context.standards, case.judgment, case.context.resolve)
    return list_open(DocumentContext(*facts, recorded=case.records))


def _refuse_unready(case: JudgedProject, file: Path, only: tuple[str, ...]) -> None:
    """Raise Refused where stops stand, and where a closeout is asked for while items are open: a draft lists both."""
    if case.judgment.stopped and not _lists_stops(only):
        hint = f"specgen check {quote(str(file))} lists them; --draft writes it all the same"
        raise refuse(f"nothing was written: {count_standing(case.judgment)} against this package", hint)
    if not (not only and is_closing(case)) and CLOSEOUT not in {name.upper() for name in only}:
        return
    left = list_left(case)
    if left:
        hint = f"specgen build {quote(str(file))} --only {CLOSEOUT} --draft --out DIR lists them"
        raise refuse(f"nothing was written: at closeout, {tell_open(left)}", hint)


def _read_issued(since: Path, out: Path) -> State:
    """The package that was issued; raises Refused where the new one would take its place."""
    if os.path.realpath(since) == os.path.realpath(out):
        message = "the package would take the place of the one that was issued"
        raise Refused(Problem(message, "give another folder for --out", file=str(out)))
    return read_issued(since)


def build(
    file: Path,
    out: Path,
    formats: tuple[str, ...] = ("docx", "html"),
    only: tuple[str, ...] = (),
    draft: bool = False,
    letterhead: Path | None = None,
    templates: Path | None = None,
    since: Path | None = None,
    tell_step: Tell = tell_nobody,
) -> BuiltPackage:
    """Write the package to `out`, whole or not at all; raises Refused where stops stand.

    A draft, and a document that lists the stops, are written in spite of them. What differs from the package in the
    folder `since` is marked. `tell_step` takes what is being done.
    """
    issued = _read_issued(since, out) if since is not None else None
    refuse_unfit_folder(out)  # before the work, as far as a look tells
    tell_step(f"judging {file}")
    case = check_from_here(file)
    if not draft:
        _refuse_unready(case, file, only)
    draft = draft or case.project.value(("package", "purpose")) == "design_draft"
    context = case.context
    tell_step("composing the documents")
    facts = (context.project, context.standards, case.judgment, context.resolve)
    home = file.resolve().parent
    told = case.records
    made = package.make_package(*facts, formats, only, draft, letterhead, templates, home, issued, tell_step, told)
    notes = tell_removed(out, made.files)
    if since is not None and issued is not None:
        notes += _tell_doubts(since, issued, str(context.project.value(("project", "name"))))
    built = BuiltPackage(tuple(made.files), draft, case.judgment, (*made.notes, *notes), made.standing, made.problems)
    tell_step(f"writing {count(len(made.files), 'file')} to {out}")
    write_package(out, made.files, made.about)  # last: whatever fails before it, nothing was written
    return built
