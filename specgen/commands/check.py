"""`specgen check`: a project, validated and judged; or many, each in one line."""

import os
import re
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._many import Asked, CheckedFile, check_files, refuse_file
from specgen.commands._package import answer_package
from specgen.commands._project_file import FILE_HELP, USUAL, find_project_file
from specgen.commands._rule_code import find_rule_code
from specgen.commands._side_file import answer_side_file
from specgen.commands._watch import watch_project
from specgen.judging.explain import explain
from specgen.model.finding import Severity
from specgen.model.problem import Refused, refuse
from specgen.model.project import Project
from specgen.pipeline import JudgedProject, check, told_from_here
from specgen.reading.file_text import FileText, read_source
from specgen.reading.project_files import FoundFiles, find_project_files
from specgen.reading.side_file import SideFileGiven
from specgen.terminal.line_format import find_beside, format_lines, format_problems
from specgen.terminal.many_projects import ProjectReport, format_projects
from specgen.terminal.open_text import format_open
from specgen.terminal.progress import show_progress
from specgen.terminal.report import format_report, no_mark
from specgen.terminal.report_data import report_to_data
from specgen.terminal.rule_page import format_explained_rule
from specgen.terminal.screen import Line, Screen, find_screen, show_lines
from specgen.terminal.source_mark import mark_place

_LINE_END = re.compile("\r\n|\r|\n")
HELP = "validate and judge a project"
ORDER = 20
EXAMPLES = (
    ("check project.yaml", "the verdict on each wall, what stands against the package, what is still open"),
    ("check project.yaml --rule ATT-01", "one rule with the values of this project"),
    ("check project.yaml --watch", "the same again whenever the file is saved, while you write it"),
    ("check jobs", "every project in a folder, a line each"),
    ("check --package out project.yaml", "whether the package is as written, and still that of this file"),
)
ENDS = {
    DONE: "checked, and nothing stops the package",
    AGAINST: "checked, and something stops it; with --package: something differs",
    NOT_DONE: "not checked; what is wrong with the file is told with its line",
}
READ_ON = "specgen rules ID tells the reason of a rule, specgen fields PATH what a field takes"


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, what of the findings is asked for, and the form of the answer."""
    parser.add_argument(
        "files", metavar="FILE", nargs="*", help=f"{FILE_HELP}; of several files, or of a folder, a line each"
    )
    parser.add_argument("--package", metavar="DIR", help="whether a package is as written, and from FILE as it stands")
    parser.add_argument("--watch", action="store_true", help="checks again whenever the file is saved, until Ctrl-C")
    parser.add_argument("--rule", metavar="ID", help="only this rule or clause")
    severity = "only findings of this severity, numbered; with the stops the open items that stop the package"
    parser.add_argument("--severity", choices=[str(s) for s in Severity], help=severity)
    waited = "every field still needed, by the party that owes it, with an example; of PARTY alone where given"
    parser.add_argument("--open", metavar="PARTY", nargs="?", const="", help=waited)
    form = "json is an object for a project, a list for many; line a finding a line, as editors read it"
    parser.add_argument("--format", choices=["text", "json", "line"], default="text", help=form)
    parser.add_argument("--color", choices=["auto", "always", "never"], default="auto", help="auto is on a terminal")


def run(args: Namespace) -> Outcome:
    """Judge the project, with --watch again after each change."""
    return watch_project(args, _run) if args.watch else _run(args)


def _run(args: Namespace) -> Outcome:
    """Judge the project; a program that reads the data gets its object also where the check is refused."""
    if args.package is not None:
        return answer_package(args)
    _take_file(args)
    many = len(args.files) > 1 or any(map(os.path.isdir, args.files))  # no error without rights
    try:
        return _check_many(args) if many else _check(args)
    except Refused as refused:
        if args.format == "line" and not many:
            return Outcome(NOT_DONE, format_problems(refused.problems, *(args.files or [USUAL])))
        data = [] if many else report_to_data(None, None, refused.problems)
        return Outcome(NOT_DONE, data=data if args.format == "json" else None, problems=refused.problems)


def _take_file(args: Namespace) -> None:
    """What stands behind --open is a party, unless it is a file that there is, or looks like the name of one."""
    word = args.open or ""
    if word and (word == "-" or "." in word or os.path.exists(word)):  # noqa: PTH110  (no error)
        args.files, args.open = [word, *args.files], ""


def _check(args: Namespace) -> Outcome:
    file = find_project_file(*(args.files or [None]))
    args.files = [str(file)]
    with told_from_here(file):
        try:
            case = check(file)
        except SideFileGiven as given:
            return answer_side_file(given, args.format == "json")
    left = _list_left(case)
    code = AGAINST if case.judgment.stopped or left else DONE
    severity = Severity(args.severity) if args.severity else None
    rule = find_rule_code(args.rule) if args.rule else ""
    if args.format == "json":
        data = report_to_data(case.project, case.judgment, (), severity, rule)
        return Outcome(code, data=data | {"closeout": left} if left else data)
    if args.format == "line":
        return Outcome(code, format_lines(case.project, case.judgment, args.files[0], severity, rule))
    screen = find_screen(args.color)
    if rule:
        return Outcome(code, show_lines(map(_fold, _explain_rule(case, rule).splitlines()), screen))
    text = _report(case, args, severity, screen, left)
    return Outcome(code, text, painted=screen.painted)


def _list_left(case: JudgedProject) -> list[str]:
    """What keeps the closeout from being written, each with who owes it; nothing before the closeout."""
    if case.project.value(("package", "purpose")) != "closeout":
        return []
    from specgen.building import list_left  # imported here: documents load more than judging needs

    return [f"{one.what} ({one.by})" for one in list_left(case)]


def _report(case: JudgedProject, args: Namespace, severity: Severity | None, screen: Screen, left: list[str]) -> str:
    """The report, or what is open, on the screen that it goes to."""
    file = args.files[0]
    if args.open is not None:
        return format_open(case.project, case.judgment, args.open, screen, file)
    mark = partial(mark_place, read=_LinesOf(case.project, file), width=screen.width) if screen.is_terminal else no_mark
    records = case.records if any(case.project.records.entries.values()) else None
    return format_report(case.project, case.judgment, severity, screen, file, mark, records, left)


def _fold(text: str) -> Line:
    """A line of a page about a rule, which goes on two blanks further in."""
    return Line(text, len(text) - len(text.lstrip(" ")) + 2)


class _LinesOf:
    """The lines of the files of a project, each read once more where one is to be shown, and still as it was."""

    def __init__(self, project: Project, named: str) -> None:
        self.digests = {one.name: one.digest for one in project.inputs}
        self.named, self.known = named, dict[str, list[str]]()

    def __call__(self, file: str) -> list[str]:
        """The lines of a file; none where it cannot be read again, or has changed."""
        if file not in self.known:
            try:
                source = read_source(Path(find_beside(file, self.named)), file)
            except Refused:
                source = FileText("", "")
            same = source.digest == self.digests.get(file, source.digest)
            self.known[file] = _LINE_END.split(source.text) if same else []
        return self.known[file]


def _check_many(args: Namespace) -> Outcome:
    """A line or an object for each project in the order in which it was named, and the totals.

    Raises Refused for what can be asked of one project only.
    """
    listed = args.format == "json"
    if args.format == "line" or args.open is not None:
        raise refuse("--open and --format line tell of one project", "name one file")
    if "-" in args.files:
        raise refuse("standard input is not one of several projects", "name files or folders")
    if not listed and (args.rule or args.severity):
        raise refuse("--rule and --severity tell of one project", "name one file, or add --format json")
    rule = find_rule_code(args.rule) if args.rule else ""
    found = find_project_files(args.files)
    asked = Asked(Severity(args.severity) if args.severity else None, rule, listed)
    with show_progress(args.quiet, ticking=False) as tell:
        done = [*_join_faults(check_files(found.files, asked, tell), found)]
    code = max(one.code for one in done)
    messages = tuple(_tell_left_out(found))
    if listed:
        return Outcome(code, data=[{"file": one.file} | one.data for one in done], messages=messages)
    reports = [ProjectReport(one.file, one.code == AGAINST, one.data) for one in done]
    return Outcome(code, format_projects(reports), messages=messages)


def _join_faults(checked: list[CheckedFile], found: FoundFiles) -> Iterator[CheckedFile]:
    """What was checked, and the folders that gave nothing where they were named."""
    for place in range(len(checked) + 1):
        yield from (refuse_file(fault.file, fault) for at, fault in found.faults if at == place)
        yield from checked[place : place + 1]


def _tell_left_out(found: FoundFiles) -> Iterator[str]:
    if found.left_out:
        yield f"left out, as no project files: {', '.join(found.left_out)}"
    if found.repeated:
        yield f"named more than once, checked once: {', '.join(found.repeated)}"


def _explain_rule(case: JudgedProject, code: str) -> str:
    """A rule or clause with this project's numbers, subject by subject."""
    rule = next(rule for rule in case.rules if code.startswith(rule.code))
    lifted = {finding.code: finding.lifted_by for finding in case.judgment.findings if finding.lifted_by}
    return case.context.fill(format_explained_rule(rule, explain(case.context, rule, code), lifted))
