"""Where the work of a project stands at a moment, by what is recorded on site."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime

from specgen.model.finding import Severity
from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.standard import Standards
from specgen.model.status import FaceStatus, NextStep, Owed, ProjectStatus, Remark
from specgen.recording.gathering import Gathered, find_wall, gather
from specgen.recording.next_step import NextStart, by_the_clock, find_next
from specgen.recording.owing import Parties, find_parties, list_owed
from specgen.recording.site_entries import moment_of
from specgen.recording.step_facts import StepFacts, list_facts
from specgen.recording.step_states import Failing, judge_steps, list_missing, name_areas, summarize
from specgen.recording.together import tell_crews_together, tell_shared_panels

ListPanels = Callable[[str], Sequence[str]]


def _list_none(elevation: str) -> Sequence[str]:  # noqa: ARG001  (as a ListPanels)
    return ()


@dataclass(frozen=True)
class Asked:
    """What a status is asked of: the moment, None for the last one recorded, and what others know.

    `panels` tells the marks of the panels of an elevation, none where it is not laid out; `next_start` the first moment
    of work at or after one.
    """

    judgment: RecordJudgment = RecordJudgment()
    at: datetime | None = None
    panels: ListPanels = _list_none
    next_start: NextStart = by_the_clock


def find_status(project: Project, standards: Standards, asked: Asked) -> ProjectStatus:
    """Where the work of a project stands, each elevation by itself."""
    marks = project.members.get(("elevations",), ())
    gathered = gather(project, standards, asked.at)
    facts = {wall: list_facts(project, standards, wall) for wall in {find_wall(project, mark) for mark in marks}}
    finder = _FaceFinder(project, gathered, asked, find_parties(project))
    faces = tuple(finder.find(mark, facts[find_wall(project, mark)]) for mark in marks)
    failed = tuple(_list_elsewhere(asked.judgment, gathered.at))
    return ProjectStatus(gathered.at, gathered.counted, faces, tuple(gathered.remarks), failed)


class _FaceFinder:
    """Finds where the work on each elevation stands."""

    def __init__(self, project: Project, gathered: Gathered, asked: Asked, parties: Parties) -> None:
        self.project, self.gathered, self.asked, self.parties = project, gathered, asked, parties
        self.failing = _list_failing(asked.judgment)

    def find(self, mark: str, facts: Sequence[StepFacts]) -> FaceStatus:
        """The status of an elevation."""
        face, at = self.gathered.faces[mark], self.gathered.at
        records = judge_steps(face, facts, at or datetime.max, self.failing, mark)
        names = name_areas(face)
        missing = list_missing(records, self.asked.panels(mark), names)
        steps = tuple(summarize(record, missing.get(record.facts.step.name, ())) for record in records)
        if at is None:
            following = NextStep(steps[0].step, None) if steps else None
        else:
            following = find_next(steps, facts, at, self.asked.next_start)
        return FaceStatus(
            elevation=mark,
            name=str(self.project.get(("elevations", mark, "name")) or ""),
            wall=find_wall(self.project, mark),
            steps=steps,
            next=following,
            owed=list_owed(mark, steps, records, face, self.parties, at) if at else self._list_first(mark, following),
            remarks=(*tell_crews_together(face), *tell_shared_panels(face, [one.step for one in facts], names)),
        )

    def _list_first(self, mark: str, following: NextStep | None) -> tuple[Owed, ...]:
        """The first entry, where nothing is recorded."""
        return () if following is None else (Owed(self.parties.applicator, "entry", following.step, mark),)


def _stands(one: Nonconformance) -> bool:
    return one.severity is Severity.STOP and one.lifted_by is None


def _tell(one: Nonconformance) -> str:
    return f"nonconformance {one.number}, {one.code}: {one.message}"


def _list_failing(judgment: RecordJudgment) -> Failing:
    """What stands against each entry, by its collection and number."""
    told: dict[tuple[str, int], str] = {}
    for one in filter(_stands, judgment.nonconformances):
        key = (one.entry.collection, one.entry.number)
        told[key] = f"{told[key]}; {_tell(one)}" if key in told else _tell(one)
    return told


def _list_elsewhere(judgment: RecordJudgment, at: datetime | None) -> list[Remark]:
    """What stands against entries that belong to no step: readings of the weather, results of the mockup."""
    return [
        Remark(_tell(one), (one.entry,))
        for one in judgment.nonconformances
        if _stands(one) and _is_loose(one.entry, at)
    ]


def _is_loose(entry: Entry, at: datetime | None) -> bool:
    moment = moment_of(entry)
    is_over = moment is None or at is None or moment.at <= at
    return is_over and (entry.collection == "result" or not entry.get("step"))
