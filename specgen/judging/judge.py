"""Judges a whole project: one call, one frozen judgment."""

from specgen.judging.context import JudgingContext
from specgen.judging.deviations import lift
from specgen.judging.engine import run_rules
from specgen.judging.open_items import leave_out_told, open_items, owed_rings
from specgen.judging.rule import Rule
from specgen.judging.verdict import judge_walls
from specgen.model.finding import Judgment
from specgen.model.stage import STAGES


def judge(context: JudgingContext, rules: tuple[Rule, ...]) -> Judgment:
    """The judgment of a project by the given rules; what was written on site changes no verdict of a wall."""
    project = context.project
    findings, waiting, checks = run_rules(context, rules, entries=False)
    findings = lift(project, findings, rules)
    purpose = project.value(("package", "purpose"))
    owed = owed_rings(purpose)
    items = open_items(project, waiting, context.look)
    later = {ring: sum(item.ring == ring for item in items) for ring in STAGES if ring not in owed}
    owed_now = [item for item in items if item.ring in owed]
    paths = {item.path for item in owed_now}
    return Judgment(
        walls=judge_walls(project.members[("walls",)], findings, waiting, paths, rules),
        findings=tuple(findings),
        open_items=leave_out_told(owed_now, findings),
        not_judged=tuple(waiting),
        stops_when_open=purpose != "design_draft",
        later_rings=later,
        limit_checks=tuple(checks),
    )
