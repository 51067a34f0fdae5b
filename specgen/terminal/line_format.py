"""One finding a line, as editors read it: `file:line:column: CODE severity message`."""

from collections.abc import Iterable, Iterator
from pathlib import PurePath

from specgen.judging.registry import load_rules
from specgen.model.finding import Finding, Judgment, Place, Severity
from specgen.model.forbidden_characters import show_unseen
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.value_text import words
from specgen.terminal.report_data import choose_findings

# The code of a fault of the file itself, which no rule has.
_OF_FILE = "FILE"


def format_lines(
    project: Project, judgment: Judgment, named: str, severity: Severity | None = None, rule: str = ""
) -> str:
    """A line for each place of each finding, and for each open item; `named` is the project as it was named."""
    lines = [line for f in choose_findings(judgment, severity, rule) for line in _list_finding(f, named)]
    lines += _list_open(project, judgment, named, severity, rule)
    return "".join(f"{show_unseen(line)}\n" for line in lines)


def format_problems(problems: Iterable[Problem], named: str) -> str:
    """A line for each fault of the files."""
    lines = []
    for one in problems:
        about = f"{one.path}: " if one.path else ""
        hint = f" ({one.hint})" if one.hint else ""
        place = Place(one.path, one.file, one.line, one.column)
        lines.append(f"{_tell_place(place, named)}: {_OF_FILE} error {about}{one.message}{hint}")
    return "".join(f"{show_unseen(line)}\n" for line in lines)


def _list_finding(finding: Finding, named: str) -> Iterator[str]:
    messages = {name: one.message for one in finding.told for name in one.subjects}
    seen = set()
    for name, place in zip(finding.subjects, finding.places, strict=True):
        message = messages[name]
        about = "" if name == "project" or name in message else f"{name}: "
        line = f"{_tell_place(place, named)}: {finding.code} {finding.severity} {about}{message}"
        if line not in seen:
            seen.add(line)
            yield line


def _list_open(project: Project, judgment: Judgment, named: str, severity: Severity | None, rule: str) -> Iterator[str]:
    """The open items by the clause that tells of them, as it weighs them for this purpose."""
    weight = Severity.STOP if judgment.stops_when_open else Severity.NOTE
    clauses = (clause for one in load_rules() for clause in one.clauses if clause.of_open_items)
    clause = next(one for one in clauses if one.severity is weight)
    if severity not in (None, weight) or rule not in ("", clause.rule.code, clause.code):
        return
    for item in judgment.open_items:
        place = _tell_place(project.place(tuple(item.path.split("."))), named)
        held = f"; holds up {', '.join(item.holds_up)}" if item.holds_up else ""
        yield f"{place}: {clause.code} {weight} {item.path} is open: {item.label} ({words(item.owed_by)}{held})"


def _tell_place(place: Place, named: str) -> str:
    """A place from the folder in which the command runs; the first line where the file says nothing of it."""
    return f"{find_beside(place.file, named)}:{place.line or 1}:{place.column or 1}"


def find_beside(file: str, named: str) -> str:
    """The way to a file that a project names, from where the project was named."""
    own = PurePath(named)
    return str(own.parent / file) if file and file != own.name else named
