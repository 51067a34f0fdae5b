"""Judges a whole project: one call, one frozen judgment."""

from specgen.judging.context import JudgingContext
from specgen.judging.deviations import lift
from specgen.judging.engine import run_rules
from specgen.judging.open_items import RINGS, open_items, owed_rings
from specgen.judging.rule import Rule
from specgen.judging.verdict import find_deciding, find_undecided, verdict
from specgen.model.finding import Judgment


def judge(context: JudgingContext, rules: tuple[Rule, ...]) -> Judgment:
    """The judgment of a project by the given rules."""
    project = context.project
    findings, waiting, checks = run_rules(context, rules)
    findings = lift(project, findings, rules)
    purpose = project.value(("package", "purpose"))
    owed = owed_rings(purpose)
    items = open_items(project, waiting, context.look)
    later = {ring: sum(item.ring == ring for item in items) for ring in RINGS if ring not in owed}
    walls = project.members[("walls",)]
    decided, waits = find_deciding(walls, findings), find_undecided(walls, waiting)
    return Judgment(
        walls={wall: verdict(decided[wall], bool(waits[wall])) for wall in walls},
        findings=tuple(findings),
        open_items=tuple(i for i in items if i.ring in owed),
        not_judged=tuple(waiting),
        deciding={wall: tuple(f.code for f in found) for wall, found in decided.items()},
        undecided=waits,
        stops_when_open=purpose != "design_draft",
        later_rings=later,
        limit_checks=tuple(checks),
    )
