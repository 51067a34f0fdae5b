"""`specgen check`: a project, validated and judged."""

from argparse import ArgumentParser, Namespace

from specgen.commands import AGAINST, DONE, NOT_DONE, Outcome, read_file_name
from specgen.commands._package import answer_package
from specgen.commands._rule_code import find_rule_code
from specgen.judging.explain import explain
from specgen.model.finding import Severity
from specgen.model.problem import Refused, refuse
from specgen.pipeline import JudgedProject, check
from specgen.terminal.report import format_report, report_to_data
from specgen.terminal.rule_page import format_explained_rule

HELP = "validate and judge a project"
ORDER = 20


def arguments(parser: ArgumentParser) -> None:
    """Declare the file, what of the findings is asked for, and the form of the answer."""
    parser.add_argument("file", metavar="FILE", nargs="?")
    parser.add_argument("--package", metavar="DIR", help="whether a package is as written, and from FILE as it stands")
    parser.add_argument("--rule", metavar="ID", help="only this rule or clause")
    parser.add_argument("--severity", choices=[str(s) for s in Severity], help="only findings of this severity")
    parser.add_argument("--format", choices=["text", "json"], default="text")


def run(args: Namespace) -> Outcome:
    """Judge the project; a program that reads the data gets its object also where the check is refused."""
    if args.package is not None:
        return answer_package(args)
    if args.file is None:
        raise refuse("FILE must be given", "specgen check --help tells what there is")
    try:
        return _check(args)
    except Refused as refused:
        data = report_to_data(None, None, refused.problems) if args.format == "json" else None
        return Outcome(NOT_DONE, data=data, problems=refused.problems)


def _check(args: Namespace) -> Outcome:
    case = check(read_file_name(args.file))
    code = AGAINST if case.judgment.stopped else DONE
    severity = Severity(args.severity) if args.severity else None
    rule = find_rule_code(args.rule) if args.rule else ""
    if args.format == "json":
        return Outcome(code, data=report_to_data(case.project, case.judgment, (), severity, rule))
    if rule:
        return Outcome(code, _explain_rule(case, rule))
    return Outcome(code, format_report(case.project, case.judgment, severity))


def _explain_rule(case: JudgedProject, code: str) -> str:
    """A rule or clause with this project's numbers, subject by subject."""
    rule = next(rule for rule in case.rules if code.startswith(rule.code))
    lifted = {finding.code: finding.lifted_by for finding in case.judgment.findings if finding.lifted_by}
    return case.context.fill(format_explained_rule(rule, explain(case.context, rule, code), lifted))
