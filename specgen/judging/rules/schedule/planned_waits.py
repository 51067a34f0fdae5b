"""Each step is planned and begun only when the step before it has dried or cured.

Why: a coat over one that is not dry traps water, blisters, or pulls it off; the day won is lost with the wall.

passes
    primer: {dry_hours: 16}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 16}]}
fails SCH-03a at schedule.gaps.0.hours
    primer: {dry_hours: 16}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 8}]}
passes
    elevations: {E1: {wall: W1}}
    log:
      - {step: second_pass, elevation: E1, date: 2027-06-01, started_at: 08:00, ended_at: "14:00"}
      - {step: smoothing_1, elevation: E1, date: 2027-06-02, started_at: "14:00"}
fails SCH-03b at log.1.started_at
    elevations: {E1: {wall: W1}}
    log:
      - {step: second_pass, elevation: E1, date: 2027-06-01, started_at: 08:00, ended_at: "14:00"}
      - {step: smoothing_1, elevation: E1, date: 2027-06-02, started_at: 07:00}
"""

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from typing import NamedTuple

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.site_work import hours_since, is_told_at
from specgen.model.absence import Absent, all_known, read_all
from specgen.model.source import Source
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, PlannedWait, SiteRecordEntry
from specgen.quantities.comparison import less
from specgen.recording.elapsed import hours_text
from specgen.recording.history import History
from specgen.resolving.drying import BETWEEN, DRYING, Drying, find_drying, list_applying, list_drying_paths
from specgen.scheduling.drying_before import list_drying_before

RULE = Rule(
    "SCH-03",
    "Planned waits and drying",
    remedy="Spread the steps: wait as long as the step before dries or cures.",
    steps="boards mesh second_pass smoothing_2 primer gloss",
    documents="D14 D12d",
)

# Work on what has dried; how long gloss dries before sealant is of SLT-07.
ON_DRY_WORK = ("boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass") + (
    ("smoothing_1", "smoothing_2", "primer", "gloss")
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


class _Wait(NamedTuple):
    """Hours between the step before and an entry, the least, and where that comes from."""

    hours: Fraction
    least: Fraction
    sources: tuple[Source, ...]


@RULE.test(
    "b",
    STOP,
    "This step was begun {found} after the step before it; minimum {wanted}.",
    at="log.started_at",
    basis="practice",
    remedy=(
        "Stop. Let both layers dry for the full time of the lower one, then sound and pull-test there before the next "
        "layer; replace what is hollow, soft, or blistered."
    ),
)
def begun_early(log: SiteRecordEntry, history: History, project: Description, standards: Standards) -> Violations:
    """A step was begun at a place before what was put on there last had dried."""
    if log.step not in ON_DRY_WORK or not is_told_at(log):
        return
    wait = next(_list_waits(log, history, project, standards), None)
    if wait is not None and wait.hours < wait.least:
        yield violation(hours_text(wait.hours), wanted=hours_text(wait.least), sources=wait.sources)


def _list_waits(log: SiteRecordEntry, history: History, project: Description, standards: Standards) -> Iterator[_Wait]:
    """The wait behind each step before that was done at the place of an entry, that of the nearest first."""
    wall, facts = log.elevation.wall.mark, project.project
    facts.value(("walls", wall, "attachment", "method"))  # without it nobody knows which steps the wall takes
    for step in list_drying_before(facts, standards, log.step, wall):
        hours = hours_since(log, step, history, project)
        if hours is None:
            continue
        drying = facts.remember(("drying", step, wall), partial(find_drying, facts, standards, step, wall))
        if drying is None:
            raise Absent(*list_drying_paths(facts, DRYING.get(step) or BETWEEN[step], wall))
        yield _Wait(hours, drying.hours, (drying.source,))
