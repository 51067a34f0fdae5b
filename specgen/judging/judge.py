"""Judges a whole project: one call, one frozen judgment."""

from ..vocabulary.finding import Judgment
from .deviations import lifted
from .engine import Bench, judged
from .open_items import RINGS, open_items, owed_rings
from .rule import Rule
from .verdict import deciding, verdicts


def judge(bench: Bench, rules: tuple[Rule, ...]) -> Judgment:
    """The judgment of a project by the given rules."""
    project = bench.project
    findings, waiting = judged(bench, rules)
    findings = lifted(project, findings, rules)
    purpose = project.value(("package", "purpose"))
    owed = owed_rings(purpose)
    items = open_items(project, waiting, bench.look)
    later = {ring: sum(item.ring == ring for item in items) for ring in RINGS if ring not in owed}
    decided = deciding(project.members[("walls",)], findings)
    return Judgment(
        verdicts(decided, waiting),
        tuple(findings),
        tuple(i for i in items if i.ring in owed),
        tuple(waiting),
        {wall: tuple(f.code for f in found) for wall, found in decided.items()},
        stops_when_open=purpose != "design_draft",
        later_rings=later,
    )
