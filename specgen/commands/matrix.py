"""`specgen matrix`: substrate by attachment, as the attachment rules judge them."""

from argparse import ArgumentParser, Namespace
from typing import Any

from specgen.commands import Outcome
from specgen.model.field import Path
from specgen.model.finding import Verdict
from specgen.model.project import Project
from specgen.pipeline import judge_project
from specgen.reading.schema import project_schema
from specgen.terminal.matrix import format_matrix

HELP = "substrate by attachment: yes, measure, no"
ORDER = 70
# What a new wall is taken to have where the matrix asks only for its kind.
_TYPICAL = {("wrb", "kind"): "fluid_applied", ("substrate", "condition"): (), ("substrate", "coating_removed"): False}


def arguments(parser: ArgumentParser) -> None:
    """Declare nothing: there is one matrix."""


def run(args: Namespace) -> Outcome:
    """Judge every substrate with every attachment."""
    fields = project_schema().fields
    substrates = fields[("walls", "*", "substrate", "kind")].values
    methods = fields[("walls", "*", "attachment", "method")].values
    answers = {substrate: [_judge_pair(substrate, method) for method in methods] for substrate in substrates}
    return Outcome(text=format_matrix(methods, answers))


def _judge_pair(substrate: str, method: str) -> str:
    """Yes, measure or no for one wall, with the clause that decides it."""
    given = _TYPICAL | {("substrate", "kind"): substrate, ("attachment", "method"): method}
    values: dict[Path, Any] = {("walls", "W1", *path): value for path, value in given.items()}
    values[("package", "purpose")] = "design_draft"
    judgment = judge_project(Project(project_schema(), values, {("walls",): ("W1",)})).judgment
    codes = [f.code for f in judgment.findings if f.rule.startswith("ATT")]
    word = {Verdict.NO: "no", Verdict.WITH_MEASURES: "measure"}.get(judgment.walls["W1"].verdict, "yes")
    return f"{word} {codes[0]}" if codes else word
