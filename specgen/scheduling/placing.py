"""Places tasks in time: what can start first is placed first, no crew is at two, and what has slack is told.

Of tasks that can start at the same moment the one told first is placed first, so that elevations follow one another in
the order of the file. Spraying, during which no other crew works, goes before what would still be under way when it
begins. The slack is that of the order so found: a pass back from the end, by the same calendar.
"""

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from specgen.model.schedule import Activity
from specgen.scheduling.queues import Kinship, Queue, kinship_of
from specgen.scheduling.tasks import NOBODY, Clock, Offer, Task

_SHIFTS_HELD = 10  # a longer break than this no tape is held back for


class Placed(NamedTuple):
    """A task in time, by whom, and the tasks before it that keep its crew from an earlier start."""

    task: Task
    offer: Offer
    start: datetime
    end: datetime
    before: tuple[str, ...] = ()
    driven_by: str = ""

    @property
    def waits_for(self) -> tuple[str, ...]:
        """The marks of all that must be over first: of the same crew, and what is worked at alone, too."""
        return (*self.task.after, *self.before)


class _Placing:
    """Tasks that are being placed, one after the other."""

    def __init__(self, tasks: Iterable[Task], clock: Clock) -> None:
        self.clock = clock
        self.tasks = {task.mark: task for task in tasks}
        self.order = {mark: number for number, mark in enumerate(self.tasks)}
        self.placed: dict[str, Placed] = {}
        self.last: dict[str, str] = {}  # by crew the mark of the task it was at last
        self.bound: dict[str, str] = {}  # by crew the mark of the task that it goes on to
        self.queues: dict[Kinship, Queue] = {}
        self.followers: dict[str, list[str]] = {mark: [] for mark in self.tasks}
        self.open = {mark: len(task.after) for mark, task in self.tasks.items()}
        for mark, task in self.tasks.items():
            for other in task.after:
                self.followers[other].append(mark)

    def run(self) -> dict[str, Placed]:
        """All tasks in the order in which they were placed; each stands behind those it waits for."""
        self._release([mark for mark, left in self.open.items() if not left])
        while found := self._choose(list(self._list_next())):
            mark, crew = found.task.mark, found.offer.crew
            self.queues[kinship_of(found.task)].remove(mark)
            self.placed[mark] = found
            self.last[crew] = mark
            self._bind(found)
            if found.task.alone:
                self.clock = self.clock.keep_off(found.task, found.start, found.end)
            self._release(self._list_released(mark))
        return self.placed

    def _bind(self, found: Placed) -> None:
        """Keeps a crew to what follows a task that it goes on from, where it is the crew for it too."""
        mark, crew = found.task.mark, found.offer.crew
        self.bound = {other: next_mark for other, next_mark in self.bound.items() if next_mark != mark}
        for other in self._list_work_behind(mark) if found.task.goes_on else ():
            if any(offer.crew == crew for offer in self.tasks[other].offers):
                self.bound[crew] = other

    def _list_work_behind(self, mark: str) -> Iterator[str]:
        """The next work behind a task, past what dries and what is released."""
        for other in self.followers[mark]:
            if self.tasks[other].offers[0].crew == NOBODY:
                yield from self._list_work_behind(other)
            else:
                yield other

    def _choose(self, candidates: list[Placed]) -> Placed | None:
        """What starts first; what is done alone by another crew, where the first would still be under way by then."""

        def rank(one: Placed) -> tuple[datetime, int]:
            return one.start, self.order[one.task.mark]

        first = min(candidates, key=rank, default=None)
        if first is None or first.task.alone:
            return first
        kept_off = [one for one in candidates if one.task.alone and one.start < first.end]
        return min((one for one in kept_off if one.offer.crew != first.offer.crew), key=rank, default=first)

    def _release(self, marks: list[str]) -> None:
        """Places what needs no crew as soon as it may begin, and all that follows it; queues the work of crews."""
        while marks:
            mark = marks.pop()
            task = self.tasks[mark]
            if task.offers[0].crew != NOBODY:
                kinship = kinship_of(task)
                queue = self.queues.setdefault(kinship, Queue())
                queue.add(self._find_ready(task), self.order[mark], mark)
                continue
            self.placed[mark] = self._offer(task, task.offers[0])
            marks += self._list_released(mark)

    def _list_released(self, mark: str) -> list[str]:
        """What waited for a task that is placed now, and for nothing else."""
        for other in self.followers[mark]:
            self.open[other] -= 1
        return [other for other in self.followers[mark] if not self.open[other]]

    def _list_next(self) -> Iterator[Placed]:
        """What each queue would place next, by the crew that is done with it first, and what a crew goes on to."""
        for kinship, queue in self.queues.items():
            crews = [crew for crew in kinship.crews if crew not in self.bound]
            if not crews:
                continue
            free = min(self._free_from(self._list_before(crew, kinship.alone)) for crew in crews)
            narrow = self.clock.narrow if kinship.alone else self.clock.beside_spraying
            clock = narrow(kinship.hours)
            mark = queue.find_next(free, self.tasks, clock)
            if mark:
                task = self.tasks[mark]
                offers = (self._offer(task, offer) for offer in task.offers if offer.crew in crews)
                yield min(offers, key=lambda found: found.end)
        for crew, mark in self.bound.items():
            if not self.open[mark]:
                task = self.tasks[mark]
                yield next(self._offer(task, offer) for offer in task.offers if offer.crew == crew)

    def _list_before(self, crew: str, alone: bool) -> tuple[str, ...]:
        """The marks of the tasks that a crew waits for: what it was at last, and to work alone what all others were."""
        if alone:
            return tuple(self.last.values())
        return (self.last[crew],) if crew in self.last else ()

    def _free_from(self, before: Iterable[str]) -> datetime:
        return max((self.placed[mark].end for mark in before), default=datetime.min)

    def _find_ready(self, task: Task) -> datetime:
        ends = [self.placed[mark].end for mark in task.after]
        return max([*ends, *([task.not_before.moment] if task.not_before else [])])

    def _offer(self, task: Task, offer: Offer) -> Placed:
        before = self._list_before(offer.crew, task.alone)
        waits = {mark: self.placed[mark].end for mark in (*task.after, *before)}
        moment = max(self._find_ready(task), self._free_from(before))
        start = first = self.clock.first_start(task, moment, offer.length)
        if task.within is not None:
            start = self._hold_back(task, offer, first, task.within)
        driver = max(waits, key=lambda mark: waits[mark], default="")
        drives = driver and self.clock.first_start(task, waits[driver], offer.length) == first
        end = self.clock.end(task, start, offer.length)
        return Placed(task, offer, start, end, before, driver if drives else "")

    def _hold_back(self, task: Task, offer: Offer, first: datetime, within: timedelta) -> datetime:
        """The first start from which a task and what its crew goes on to are over in time; the first of all if none is.

        Nights and days off count: masked before a weekend the wall would stand under tape until it is over.
        """
        behind = (self.tasks[mark] for mark in self._list_work_behind(task.mark))
        lengths = ((other, one.length) for other in behind for one in other.offers if one.crew == offer.crew)
        on, length = next(lengths, (task, timedelta()))
        start = first
        for _ in range(_SHIFTS_HELD):
            begun = self.clock.first_start(on, self.clock.end(task, start, offer.length), length)
            if self.clock.end(on, begun, length) - start <= within:
                return start
            start = self.clock.first_start(task, self.clock.end_of_shift(task, start), offer.length)
        return first


def place(tasks: Iterable[Task], clock: Clock) -> dict[str, Placed]:
    """Each task in time by its mark, in the order of placing; a task without others before it has a `not_before`.

    Raises Refused where the work runs past the calendar.
    """
    return _Placing(tasks, clock).run()


def find_last_starts(placed: dict[str, Placed], clock: Clock) -> dict[str, datetime]:
    """The last start of each task that leaves the end of all where it is."""
    end = max(one.end for one in placed.values())
    for one in placed.values():
        clock = clock.keep_off(one.task, one.start, one.end) if one.task.alone else clock
    last_end, starts = dict.fromkeys(placed, end), dict[str, datetime]()
    for mark, one in reversed(placed.items()):
        starts[mark] = clock.last_start(one.task, last_end[mark], one.offer.length)
        for other in one.waits_for:
            last_end[other] = min(last_end[other], starts[mark])
    return starts


def list_activities(placed: dict[str, Placed], clock: Clock) -> tuple[Activity, ...]:
    """The activities in order of their start, with the time by which each can move."""
    last = find_last_starts(placed, clock)
    made = (_make_activity(one, max(timedelta(), last[mark] - one.start)) for mark, one in placed.items())
    return tuple(sorted(made, key=lambda activity: (activity.start, activity.end)))


def _make_activity(one: Placed, spare: timedelta) -> Activity:
    task = one.task
    return Activity(
        mark=task.mark,
        title=task.title,
        kind=task.kind,
        start=one.start,
        end=one.end,
        elevation=task.elevation,
        step=task.step,
        crew=one.offer.crew,
        after=task.after,
        driven_by=one.driven_by,
        spare=spare,
        source=task.source,
        row=task.row,
    )


def find_chain(placed: dict[str, Placed]) -> tuple[str, ...]:
    """The marks from the first task to the last that set the end, each driven by the one before it."""
    # Of those that end last the one placed last, which is behind the others.
    mark = max(reversed(placed), key=lambda one: placed[one].end)
    chain = [mark]
    while mark := placed[mark].driven_by:
        chain.append(mark)
    return tuple(reversed(chain))
