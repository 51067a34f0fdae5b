"""`specgen rules`: the list of rules, or the manual page of one."""

from argparse import ArgumentParser, Namespace

from specgen.commands import Outcome
from specgen.commands._rule_code import find_rule_code
from specgen.judging.engine import clause_basis
from specgen.judging.registry import load_rules
from specgen.model.figure_text import fill_figures
from specgen.resolving.limits_in_force import figure_alone
from specgen.standards import load_standards
from specgen.terminal.columns import align_columns
from specgen.terminal.rule_page import format_rule

HELP = "the rules, or the manual page of one"
ORDER = 40


def arguments(parser: ArgumentParser) -> None:
    """Declare the code of a rule or clause, which may be left out."""
    parser.add_argument("id", metavar="ID", nargs="?")


def run(args: Namespace) -> Outcome:
    """List the rules or tell one; raises Refused for an unknown code."""
    rules = load_rules()
    if args.id is None:
        return Outcome(text=align_columns([rule.code, rule.title] for rule in rules))
    code = find_rule_code(args.id)
    rule = next(rule for rule in rules if code.startswith(rule.code))
    rows = load_standards()
    page = format_rule(rule, [clause_basis(clause, rows) for clause in rule.clauses])
    return Outcome(text=fill_figures(page, lambda name: figure_alone(None, rows.limits[name])))
