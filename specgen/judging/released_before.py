"""Whether a point of the work was released before an entry of the site record began."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from typing import NamedTuple

from specgen.judging.site_work import is_told_at
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.field import Path
from specgen.model.record import Entry, day_of
from specgen.model.typed_views import SiteRecordEntry
from specgen.recording.history import History
from specgen.recording.timeline import end_of_day, order_of


class Point(NamedTuple):
    """What lets work go on: a release of one of these steps, or its acceptance at one of these points of inspection.

    Neither counts that is older than the work it is to release, the last pass of one of the steps `of`.
    """

    of: tuple[str, ...]
    releases: tuple[str, ...]
    inspections: tuple[str, ...]


def is_told_unreleased(log: SiteRecordEntry, point: Point, history: History) -> bool:
    """Whether work began at an entry before a point was released for its place; raises Absent.

    An inspection is told by its day alone and counts for all of it; a release counts from its time on. It is told at
    the first entry of a day. Time and number of an entry are asked only where its day does not settle it, so that the
    entries of a day are looked at once.
    """
    face, day = read_all(lambda: log.elevation, lambda: log.date)
    place = _Place(history, face.mark, if_given(lambda: log.area) or "", day)
    if place.is_released_before_day(point) or not is_told_at(log, history):
        return False
    return not place.is_released_on_day(point, log)


class _Place:
    """A place on a face, and a day."""

    def __init__(self, history: History, face: str, area: str, day: date) -> None:
        self.history, self.face, self.area, self.day = history, face, area, day
        self.start = datetime.combine(day, time())
        self.end = end_of_day(self.start)

    def is_released_before_day(self, point: Point) -> bool:
        """Whether it was released before a day, and nothing that is to be released was done on it; looked up once."""
        key = (point, self.face, self.area, self.day)
        if key not in self.history.released:
            since = self.find_work(point.of, self.end) or datetime.min
            signed = [*self.list_releases(point, self.start), *self.list_accepted(point)]
            self.history.released[key] = since < self.start and any(order_of(one).began >= since for one in signed)
        return self.history.released[key]

    def is_released_on_day(self, point: Point, log: SiteRecordEntry) -> bool:
        """Whether it was released up to the time of an entry; raises Absent."""
        at = if_given(lambda: log.started_at)
        began = self.end if at is None else datetime.combine(self.day, at)
        since = self.find_work(point.of, began) or datetime.min
        if any(order_of(one).began >= since for one in self.list_accepted(point)):
            return True
        missing = list(self.list_missing(point, began))
        for release in self.list_releases(point, began):
            if at is None and day_of(release) == self.day:
                missing.append((*log.path, "started_at"))
            elif order_of(release).began >= since:
                return True
        if missing:
            raise Absent(*dict.fromkeys(missing))
        return False

    def find_work(self, steps: Iterable[str], until: datetime) -> datetime | None:
        """The moment at which the last pass of these steps before a moment began here."""
        passes = (self.history.find_last_pass(self.face, step, until, self.area) for step in steps)
        return max((one.began for one in passes if one is not None and one.began is not None), default=None)

    def list_accepted(self, point: Point) -> Iterator[Entry]:
        """The last inspection of each point up to the day, where it was accepted."""
        for step in point.inspections:
            last = self.history.find_last("inspection", self.face, step, self.end)
            if last is not None and last.get("outcome") == "accepted":
                yield last

    def list_releases(self, point: Point, until: datetime) -> Iterator[Entry]:
        """The last release of each step up to a moment."""
        for step in point.releases:
            last = self.history.find_last("release", self.face, step, until, self.area)
            if last is not None:
                yield last

    def list_missing(self, point: Point, began: datetime) -> Iterator[Path]:
        """The fields that would tell whether another entry released it."""
        for step in point.inspections:
            last = self.history.find_last("inspection", self.face, step, self.end)
            if last is not None and "outcome" not in last.values:
                yield (*last.path, "outcome")
            yield from self._list_open("inspection", step, "done_on")
        for step in point.releases:
            late = self.history.find_last("release", self.face, step, self.end, self.area)
            if late is not None and late.began is None and day_of(late) == self.day and began < self.end:
                yield (*late.path, "time")
            yield from self._list_open("release", step, "date")

    def _list_open(self, collection: str, step: str, day: str) -> Iterator[Path]:
        """The fields that would tell the day or the face of an entry that tells none."""
        every = self.history.list_entries(collection, self.face, step)
        if every and day_of(every[-1]) is None:
            yield (*every[-1].path, day)
        unplaced = self.history.find_last(collection, "", step, self.end)
        if unplaced is not None:
            yield (*unplaced.path, "elevation")
