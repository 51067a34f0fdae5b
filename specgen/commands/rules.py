"""`specgen rules`: the list of rules, the manual page of one, or those that tell of a word."""

import re
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence

from specgen.commands import Outcome
from specgen.commands._rule_code import find_rule_code
from specgen.judging.engine import clause_basis
from specgen.judging.registry import load_rules
from specgen.judging.rule import Rule
from specgen.model.figure_text import fill_figures
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.resolving.limits_in_force import figure_alone
from specgen.standards import load_standards
from specgen.terminal.columns import align_columns
from specgen.terminal.rule_page import format_rule, rule_tells_of, rule_to_data

HELP = "the rules, or the manual page of one"
ORDER = 48
EXAMPLES = (
    ("rules ATT-01", "the manual page: the reason, an example that passes and one that fails, each clause"),
    ("rules expansion joint", "every rule that tells of these words"),
    ("rules ATT --format json", "a group of rules as data"),
)
READ_ON = "specgen check FILE --rule ID tells one with the values of a project"
_JSON = (
    "text, or json: format, rules; of each code, title, manual, remedy and clauses; of each clause code, severity, "
    "says, lifted_by (deviation, never, or null), basis, remedy"
)
_CODE = re.compile(r"[a-z]{3}[-_ ]?\d+[a-z]?", re.I)


def arguments(parser: ArgumentParser) -> None:
    """Declare the code of a rule or clause, or words, which may be left out, and the form of the answer."""
    parser.add_argument("id", metavar="ID", nargs="*", help="the code of a rule or clause, or words to look for")
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)


def run(args: Namespace) -> Outcome:
    """List the rules, or those with all words, or tell one; raises Refused for an unknown code, and for no rule."""
    alone = len(args.id) == 1 and bool(_CODE.fullmatch(args.id[0]))
    found = [_find_rule(args.id[0])] if alone else _find_rules(args.id)
    if args.format == "text" and not alone:
        return Outcome(text=align_columns([rule.code, rule.title] for rule in found))
    rows = load_standards()

    def fill(text: str) -> str:
        return fill_figures(text, lambda name: figure_alone(None, rows.limits[name]))

    bases = [[clause_basis(clause, rows) for clause in rule.clauses] for rule in found]
    if args.format == "json":
        listed = [rule_to_data(rule, basis, fill) for rule, basis in zip(found, bases, strict=True)]
        return Outcome(data={"format": 1, "rules": listed})
    return Outcome(text=fill(format_rule(found[0], bases[0])))


def _find_rule(code: str) -> Rule:
    """The rule of a code, or of a clause; raises Refused with the nearest code."""
    found = find_rule_code(code)
    return next(rule for rule in load_rules() if found.startswith(rule.code))


def _find_rules(words: Sequence[str]) -> list[Rule]:
    """All rules, or those that tell of all the words; raises Refused for none."""
    found = [rule for rule in load_rules() if rule_tells_of(rule, words)]
    if not found:
        known = [rule.code for rule in load_rules()]
        raise refuse(f"no rule tells of {' '.join(words)!r}", suggest(" ".join(words), known))
    return found
