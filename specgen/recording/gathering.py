"""Sorts the entries of a site record by elevation and step, as far as they were written at a moment."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from functools import partial

from specgen.model.project import Project
from specgen.model.record import Entry, day_of
from specgen.model.standard import Standards
from specgen.model.status import END_OF_DAY, Moment, Remark
from specgen.model.suggest import suggest
from specgen.model.value_text import words
from specgen.recording.entry_kinds import is_on_mockup
from specgen.recording.site_entries import Decision, FaceEntries, Verdict, moment_of, to_decision, to_work
from specgen.scheduling.applying import list_steps

_DATED = ("log", "release", "inspection")


class Remarks:
    """What is to be told of entries, those of which the same is said together."""

    def __init__(self) -> None:
        self._told: dict[str, list[Entry]] = {}

    def add(self, text: str, *entries: Entry) -> None:
        """Tell of entries."""
        self._told.setdefault(text, []).extend(entries)

    def __iter__(self) -> Iterator[Remark]:
        return (Remark(text, tuple(entries)) for text, entries in self._told.items())


@dataclass
class Gathered:
    """The entries that count at a moment, by elevation; `at` is None where there are none and none was asked for."""

    at: datetime | None
    counted: int = 0
    faces: dict[str, FaceEntries] = field(default_factory=lambda: defaultdict(FaceEntries))
    remarks: Remarks = field(default_factory=Remarks)


def find_last_moment(project: Project) -> datetime | None:
    """The last moment that the entries of a project tell of; None where none tells any."""
    last: datetime | None = None
    for name in _DATED:
        for entry in project.records.of(name):
            began = moment_of(entry)
            ended = (entry.ended if "ended_at" in entry.values else None) or (began.at if began else None)
            if ended is not None and (last is None or ended > last):
                last = ended
    return last


def gather(project: Project, standards: Standards, at: datetime | None) -> Gathered:
    """The entries of a project until a moment, that of the last one where none is given, each at its elevation."""
    until = at or find_last_moment(project)
    gathered = Gathered(until)
    if until is not None:
        _Sorter(project, standards, gathered, until).sort()
        _add_acceptance(project, gathered, until)
    return gathered


class _Sorter:
    """Puts each entry where it belongs, and tells of those that belong nowhere."""

    def __init__(self, project: Project, standards: Standards, gathered: Gathered, until: datetime) -> None:
        self.project, self.standards, self.gathered, self.until = project, standards, gathered, until
        self.marks = project.members.get(("elevations",), ())
        self.walls = {mark: find_wall(project, mark) for mark in self.marks}
        walls = dict.fromkeys(self.walls.values())
        self.steps = {wall: {step.name for step in list_steps(project, standards, wall)} for wall in walls}
        self.points = set(project.schema.fields[("inspection", "step")].values)

    def sort(self) -> None:
        """Sort all entries, each list in the order of time."""
        for name in _DATED:
            for entry in self.project.records.of(name):
                self._sort_entry(entry)
        for face in self.gathered.faces.values():
            for works in face.works.values():
                works.sort(key=lambda work: (work.began.at, work.entry.number))
            for decisions in face.decisions.values():
                decisions.sort(key=lambda decision: decision.moment.at)

    def _sort_entry(self, entry: Entry) -> None:
        moment = moment_of(entry)
        if moment is None:
            self.gathered.remarks.add("not counted, as no day is told", entry)
        elif moment.at <= self.until:
            self.gathered.counted += self._place(entry, moment)
        elif not moment.timed and day_of(entry) == self.until.date():
            self.gathered.remarks.add("not counted, as no hour of that day is told", entry)

    def _place(self, entry: Entry, moment: Moment) -> bool:
        """Put an entry at its elevation; whether it counts."""
        step = str(entry.get("step") or "")
        if entry.collection == "log" and (not step or is_on_mockup(entry)):
            return True  # a reading of the weather, which belongs to the day and not to a step, or of the mockup
        if step not in self.points:
            told = f"{step!r} is not a step ({suggest(step, sorted(self.points))})" if step else "no step is told"
            self.gathered.remarks.add(f"not counted, as {told}", entry)
            return False
        lacking = []
        faces = list(self._find_faces(entry, step))
        for mark in faces:
            if step in self.standards.steps and step not in self.steps[self.walls[mark]]:
                lacking.append(f"wall {self.walls[mark]} of {mark}" if self.walls[mark] else mark)
            elif entry.collection == "log":
                self.gathered.faces[mark].works.setdefault(step, []).append(to_work(entry, moment, mark, self.until))
            else:
                self.gathered.faces[mark].decisions.setdefault(step, []).append(to_decision(entry, moment, mark))
        if lacking and len(lacking) == len(faces):
            self.gathered.remarks.add(f"not counted, as {lacking[0]} has no step {words(step)}", entry)
        return len(lacking) < len(faces)

    def _find_faces(self, entry: Entry, step: str) -> Iterable[str]:
        """The elevations that an entry is about: all of them where the step is carried out once."""
        told = entry.get("elevation")
        known = self.standards.steps.get(step)
        if known is not None and known.once:
            return self.marks
        if told in self.walls:
            return (told,)
        if told is None and len(self.marks) == 1:
            return self.marks
        reason = f"there is no elevation {told!r}" if told else "no elevation is told"
        self.gathered.remarks.add(f"not counted, as {reason}", entry)
        return ()


def find_wall(project: Project, elevation: str) -> str:
    """The mark of the wall of an elevation; an empty text where none is told."""
    wall = project.get(("elevations", elevation, "wall"))
    return "" if wall is None else str(wall.mark)


def _add_acceptance(project: Project, gathered: Gathered, until: datetime) -> None:
    """The acceptance of the mockup that the project file tells, as a decision on each elevation."""
    accepted = project.get(("mockup", "accepted_on"))
    moment = None if accepted is None else Moment(datetime.combine(accepted, END_OF_DAY), timed=False)
    if moment is None or moment.at > until:
        return
    decide = partial(Decision, moment, Verdict.GOOD, str(project.get(("mockup", "approver")) or ""))
    for mark in project.members.get(("elevations",), ()):
        decisions = gathered.faces[mark].decisions.setdefault("mockup", [])
        decisions.append(decide())
        decisions.sort(key=lambda decision: decision.moment.at)
