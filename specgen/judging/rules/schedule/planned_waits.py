"""A planned wait is as long as the step before it dries or cures.

Why: a coat over one that is not dry traps water, blisters, or pulls it off; the day won is lost with the wall.

passes
    primer: {dry_hours: 16}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 16}]}
fails SCH-03a at schedule.gaps.0.hours
    primer: {dry_hours: 16}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 8}]}
"""

from collections.abc import Iterator
from fractions import Fraction

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import Absent, all_known, read_all
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, PlannedWait
from specgen.quantities.comparison import less
from specgen.scheduling.drying import BETWEEN, DRYING, Drying, find_drying, list_applying

RULE = Rule(
    "SCH-03",
    "Planned waits and drying",
    remedy="Spread the steps: wait as long as the step before dries or cures.",
    steps="boards mesh second_pass smoothing_2 primer gloss",
    documents="D14 D12d",
)


@RULE.test(
    "a",
    STOP,
    "A wait of {found} h is planned; the step before it dries for a minimum of {wanted} h.",
    each="schedule.gaps",
    at="schedule.gaps.*.hours",
    basis="practice",
)
def shorter_than_drying(gap: PlannedWait, project: Description, standards: Standards) -> Violations:
    """A wait is planned that is shorter than the step before it dries; that before sealant is of SLT-07."""
    if not all_known(lambda: gap.from_step in {*DRYING, *BETWEEN}, lambda: gap.to_step != "sealant"):
        return
    planned, drying = read_all(lambda: gap.hours, lambda: _find_longest(project, standards, gap.from_step))
    if drying is not None and less(Fraction(planned), drying.hours):
        yield violation(planned, wanted=drying.hours, sources=(drying.in_force.source,) if drying.in_force else ())


def _find_longest(project: Description, standards: Standards, step: str) -> Drying | None:
    """The longest drying behind a step on any wall that takes it; none where nothing dries behind it."""
    return max(_list_drying(project, standards, step), key=lambda drying: drying.hours, default=None)


def _list_drying(project: Description, standards: Standards, step: str) -> Iterator[Drying]:
    pattern, facts = DRYING.get(step) or BETWEEN[step], project.project
    for wall in facts.marks(("walls",)) if pattern[0] == "walls" else ("",):
        paths = list_applying(facts, step, wall)
        drying = find_drying(facts, standards, step, wall) if paths else None
        if drying is not None:
            yield drying
        elif paths:
            raise Absent(*paths)
