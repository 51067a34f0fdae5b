"""Whether a point of the work was released before an entry of the site record began."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime, time
from typing import NamedTuple, cast

from specgen.judging.entry_view import EntryView
from specgen.judging.site_work import area_of
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.record import Entry, day_of
from specgen.model.typed_views import SiteRecordEntry
from specgen.recording.history import History, history_of
from specgen.recording.timeline import end_of_day, order_of


class Point(NamedTuple):
    """What lets work go on: a release of one of these steps, or its acceptance at one of these points of inspection.

    Neither counts that is older than the work it is to release, the last pass of one of the steps `of`.
    """

    of: tuple[str, ...]
    releases: tuple[str, ...]
    inspections: tuple[str, ...]


# An entry that lets work go on, or the field that would tell whether one does.
Signed = Entry | Path


class Lapse(NamedTuple):
    """The first work on an elevation before a point was released, and on how many days such work went on.

    Where it is not known whether it was, the fields that would tell.
    """

    days: int = 0
    missing: tuple[Path, ...] = ()


def find_unreleased(project: Project, point: Point, steps: tuple[str, ...]) -> Mapping[int, Lapse]:
    """The lapses of some steps, by the number of the entry at which each is told; looked for once."""
    return project.remember(("unreleased", point, steps), lambda: _find_lapses(project, point, steps))


def _find_lapses(project: Project, point: Point, steps: tuple[str, ...]) -> dict[int, Lapse]:
    found: dict[int, Lapse] = {}
    days: dict[str, dict[date, int]] = {}  # by elevation, each with its first entry
    history = history_of(project)
    for entry in map(project.records.of("log").__getitem__, history.firsts_of_work):
        if entry.values.get("step") in steps and "elevation" in entry.values:
            try:
                if not is_released(cast(SiteRecordEntry, EntryView(project, entry)), point, history):
                    days.setdefault(entry.values["elevation"], {}).setdefault(entry.values["date"], entry.number)
            except Absent as absent:
                found[entry.number] = Lapse(missing=absent.paths)
    for told in days.values():
        found[next(iter(told.values()))] = Lapse(len(told))
    return found


def is_released(log: SiteRecordEntry, point: Point, history: History) -> bool:
    """Whether a point was released for the place of an entry before it began; raises Absent.

    An inspection is told by its day alone and counts for all of it; a release counts from its time on.
    """
    face, _ = read_all(lambda: log.elevation, lambda: log.date)
    place = _Place(log, face.mark, history)
    since = place.find_work(point.of)
    missing: list[Path] = []
    for signed in (*_look_up(place.find_inspection, point.inspections), *_look_up(place.find_release, point.releases)):
        if not isinstance(signed, Entry):
            missing.append(signed)
        elif since is None or order_of(signed).began >= since:
            return True
    if missing:
        raise Absent(*dict.fromkeys(missing))
    return False


def _look_up(find: Callable[[str], Iterator[Signed]], steps: tuple[str, ...]) -> Iterator[Signed]:
    for step in steps:
        yield from find(step)


class _Place:
    """The place of an entry, and the moment at which its work began: the end of its day where no time is told."""

    def __init__(self, log: SiteRecordEntry, face: str, history: History) -> None:
        self.log, self.face, self.history, self.area = log, face, history, area_of(log)
        self.day, at = log.date, if_given(lambda: log.started_at)
        self.day_end = end_of_day(datetime.combine(self.day, time()))
        self.timed, self.began = at is not None, self.day_end if at is None else datetime.combine(self.day, at)

    def find_work(self, steps: tuple[str, ...]) -> datetime | None:
        """The moment at which the last pass of these steps began here."""
        passes = (self.history.find_last_pass(self.face, step, self.began, self.area) for step in steps)
        return max((one.began for one in passes if one is not None and one.began is not None), default=None)

    def find_inspection(self, step: str) -> Iterator[Signed]:
        """The last inspection of a point up to the day, where it was accepted."""
        last = self.history.find_last("inspection", self.face, step, self.day_end)
        if last is not None and "outcome" not in last.values:
            yield (*last.path, "outcome")
        elif last is not None and last.values["outcome"] == "accepted":
            yield last
        yield from self._find_open("inspection", step, "done_on")

    def find_release(self, step: str) -> Iterator[Signed]:
        """The last release of a step before the work, and what would tell whether others came before."""
        last = self.history.find_last("release", self.face, step, self.began, self.area)
        if last is not None and not self.timed and day_of(last) == self.day:
            yield (*self.log.path, "started_at")
        elif last is not None:
            yield last
        late = self.history.find_last("release", self.face, step, self.day_end, self.area)
        if late is not None and late is not last and late.began is None:
            yield (*late.path, "time")
        yield from self._find_open("release", step, "date")

    def _find_open(self, collection: str, step: str, day: str) -> Iterator[Path]:
        """The fields that would tell the day or the face of an entry that tells none."""
        every = self.history.list_entries(collection, self.face, step)
        if every and day_of(every[-1]) is None:
            yield (*every[-1].path, day)
        unplaced = self.history.find_last(collection, "", step, self.day_end)
        if unplaced is not None:
            yield (*unplaced.path, "elevation")
