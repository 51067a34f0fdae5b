"""`specgen check`: a project, validated and judged; or many, each in one line."""

import os
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome
from specgen.commands._many import Asked, CheckedFile, check_files, refuse_file
from specgen.commands._package import answer_package
from specgen.commands._project_file import FILE_HELP, find_project_file
from specgen.commands._rule_code import find_rule_code
from specgen.commands._side_file import answer_side_file
from specgen.commands._watch import watch_project
from specgen.judging.explain import explain
from specgen.model.finding import Severity
from specgen.model.problem import Refused, refuse
from specgen.pipeline import JudgedProject, check_from_here
from specgen.reading.project_files import FoundFiles, find_project_files
from specgen.reading.side_file import SideFileGiven
from specgen.terminal.many_projects import ProjectReport, format_projects
from specgen.terminal.progress import show_progress
from specgen.terminal.report import format_report, report_to_data
from specgen.terminal.rule_page import format_explained_rule

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
    parser.add_argument("--severity", choices=[str(s) for s in Severity], help="only findings of this severity")
    parser.add_argument(
        "--format",
        choices=["text", "json"],
        default="text",
        help="text, or json: one object for a project, a list for many",
    )


def run(args: Namespace) -> Outcome:
    """Judge the project, with --watch again after each change."""
    return watch_project(args, _run) if args.watch else _run(args)


def _run(args: Namespace) -> Outcome:
    """Judge the project; a program that reads the data gets its object also where the check is refused."""
    if args.package is not None:
        return answer_package(args)
    many = len(args.files) > 1 or any(map(os.path.isdir, args.files))  # no error without rights
    try:
        return _check_many(args) if many else _check(args)
    except Refused as refused:
        data = [] if many else report_to_data(None, None, refused.problems)
        return Outcome(NOT_DONE, data=data if args.format == "json" else None, problems=refused.problems)


def _check(args: Namespace) -> Outcome:
    try:
        case = check_from_here(find_project_file(*(args.files or [None])))
    except SideFileGiven as given:
        return answer_side_file(given, args.format == "json")
    code = AGAINST if case.judgment.stopped else DONE
    severity = Severity(args.severity) if args.severity else None
    rule = find_rule_code(args.rule) if args.rule else ""
    if args.format == "json":
        return Outcome(code, data=report_to_data(case.project, case.judgment, (), severity, rule))
    if rule:
        return Outcome(code, _explain_rule(case, rule))
    return Outcome(code, format_report(case.project, case.judgment, severity))


def _check_many(args: Namespace) -> Outcome:
    """A line or an object for each project in the order in which it was named, and the totals.

    Raises Refused for what can be asked of one project only.
    """
    listed = args.format == "json"
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
