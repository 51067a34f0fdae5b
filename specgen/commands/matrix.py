"""`specgen matrix`: substrate by attachment, as the attachment rules judge them."""

from argparse import ArgumentParser, Namespace
from typing import Any

from specgen.commands import Outcome
from specgen.model.field import Path
from specgen.model.finding import Severity
from specgen.model.project import Project
from specgen.pipeline import judge_project
from specgen.reading.schema import project_schema
from specgen.terminal.matrix import PairAnswer, format_matrix, matrix_to_data

HELP = "substrate by attachment: yes, measure, no"
ORDER = 70
EXAMPLES = (("matrix", "which board attachment each substrate may have, and the rule that says so"),)
READ_ON = "specgen rules CODE tells the reason; specgen check FILE judges a wall with all that is known of it"
_JSON = "text, or json: format, substrates; of each, by attachment: answer (yes, measure, no), rule and measure or null"
_ANSWERS = {Severity.STOP: "no", Severity.CAUTION: "measure"}  # the first that a finding has
# What a new wall is taken to have where the matrix asks only for its kind.
_TYPICAL = {("wrb", "kind"): "fluid_applied", ("substrate", "condition"): (), ("substrate", "coating_removed"): False}


def arguments(parser: ArgumentParser) -> None:
    """Declare the form of the answer."""
    parser.add_argument("--format", choices=["text", "json"], default="text", help=_JSON)


def run(args: Namespace) -> Outcome:
    """Judge every substrate with every attachment."""
    fields = project_schema().fields
    substrates = fields[("walls", "*", "substrate", "kind")].values
    methods = fields[("walls", "*", "attachment", "method")].values
    answers = {substrate: [_judge_pair(substrate, method) for method in methods] for substrate in substrates}
    data = matrix_to_data(methods, answers) if args.format == "json" else None
    return Outcome(text=format_matrix(methods, answers), data=data)


def _judge_pair(substrate: str, method: str) -> PairAnswer:
    """Yes, measure or no for one wall, with the clause that decides it."""
    given = _TYPICAL | {("substrate", "kind"): substrate, ("attachment", "method"): method}
    values: dict[Path, Any] = {("walls", "W1", *path): value for path, value in given.items()}
    values[("package", "purpose")] = "design_draft"
    judgment = judge_project(Project(project_schema(), values, {("walls",): ("W1",)})).judgment
    found = [finding for finding in judgment.findings if finding.rule.startswith("ATT")]
    for severity, word in _ANSWERS.items():
        for finding in found:
            if finding.severity is severity:
                return PairAnswer(word, finding.code, finding.remedy)
    return PairAnswer("yes")
