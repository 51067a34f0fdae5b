"""Where the work of a project stands at a moment, by what is recorded on site."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime

from specgen.model.project import Project
from specgen.model.record_judgment import RecordJudgment
from specgen.model.standard import Standards
from specgen.model.status import FaceStatus, NextStep, Owed, ProjectStatus
from specgen.recording.gathering import Gathered, find_wall, gather
from specgen.recording.next_step import NextStart, by_the_clock, list_next
from specgen.recording.owing import Parties, find_parties, list_owed
from specgen.recording.standing import list_elsewhere, list_failing
from specgen.recording.step_facts import StepFacts, list_facts
from specgen.recording.step_states import judge_steps, list_missing, name_areas, summarize
from specgen.recording.together import names_panels, tell_crews_together, tell_shared_panels, tell_unknown_panels

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
    failed = tuple(list_elsewhere(asked.judgment, asked.at))
    return ProjectStatus(gathered.at, gathered.counted, faces, tuple(gathered.remarks), failed)


class _FaceFinder:
    """Finds where the work on each elevation stands."""

    def __init__(self, project: Project, gathered: Gathered, asked: Asked, parties: Parties) -> None:
        self.project, self.gathered, self.asked, self.parties = project, gathered, asked, parties
        self.failing = list_failing(asked.judgment, gathered.at)

    def find(self, mark: str, facts: Sequence[StepFacts]) -> FaceStatus:
        """The status of an elevation."""
        face, at = self.gathered.faces[mark], self.gathered.at
        records = judge_steps(face, facts, at or datetime.max, self.failing, mark)
        names = name_areas(face)
        panels = self.asked.panels(mark) if names_panels(face) else ()
        missing = list_missing(records, panels, names)
        steps = tuple(summarize(record, missing.get(record.facts.step.name, ())) for record in records)
        if at is None:
            following = tuple(NextStep(step.step, None) for step in steps[:1])
        else:
            following = list_next(steps, facts, at, self.asked.next_start)
        if at is None or not self.gathered.counted:
            owed = self._list_first(mark, following)
        else:
            owed = list_owed(mark, steps, records, face, self.parties, at)
        return FaceStatus(
            elevation=mark,
            name=str(self.project.get(("elevations", mark, "name")) or ""),
            wall=find_wall(self.project, mark),
            steps=steps,
            next=following,
            owed=owed,
            remarks=(
                *tell_crews_together(face),
                *tell_shared_panels(face, [one.step for one in facts], names),
                *tell_unknown_panels(face, mark, panels, self._find_face),
            ),
        )

    def _find_face(self, panel: str) -> str:
        """The elevation in whose layout a panel stands; empty for none."""
        marks = self.project.members.get(("elevations",), ())
        return next((mark for mark in marks if panel in self.asked.panels(mark)), "")

    def _list_first(self, mark: str, following: Sequence[NextStep]) -> tuple[Owed, ...]:
        """The first entry, where nothing is recorded."""
        return tuple(Owed(self.parties.applicator, "entry", one.step, mark) for one in following)
