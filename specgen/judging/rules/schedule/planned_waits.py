"""Each step begins only when the step before it has dried or cured.

Why: a coat over one that is not dry traps water, blisters, or pulls it off; the day won is lost with the wall.

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
from typing import NamedTuple

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.site_work import hours_since, is_told_at
from specgen.model.absence import Absent
from specgen.model.project import Project
from specgen.model.source import Source
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.recording.elapsed import hours_text
from specgen.recording.history import History
from specgen.resolving.limits_in_force import plan_source
from specgen.scheduling.drying import BETWEEN, DRYING, Drying, find_drying, list_drying_paths
from specgen.scheduling.wall_steps import list_drying_before

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
    if log.step not in ON_DRY_WORK or not is_told_at(log, history):
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
        drying = find_drying(facts, standards, step, wall)
        if drying is None:
            raise Absent(*list_drying_paths(facts, DRYING.get(step) or BETWEEN[step], wall))
        yield _Wait(hours, drying.hours, (_source_of(drying, facts, standards),))


def _source_of(drying: Drying, facts: Project, standards: Standards) -> Source:
    """Where the hours behind a step come from: the row of the trade, or the field with its own source."""
    if drying.in_force is not None:
        return drying.in_force.source
    field = facts.schema.field_at(drying.path)
    assert field is not None
    return plan_source(facts, drying.path, field, standards)
