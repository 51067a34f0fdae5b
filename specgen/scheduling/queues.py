"""Work that waits for the same crews: what it is ready from, and which of it is taken next.

Each piece of work is moved a few times only, so that many elevations that share a crew are placed in linear time.
"""

import heapq
from bisect import insort
from dataclasses import dataclass, field
from datetime import datetime
from typing import NamedTuple

from specgen.model.hour_calendar import MonthHours
from specgen.scheduling.tasks import Clock, Task


class Kinship(NamedTuple):
    """What work has in common that waits in the same queue.

    Its crews, its hours, whether a shift must hold it, and whether it is done while no other crew works.
    """

    crews: tuple[str, ...]
    in_one_shift: bool
    hours: MonthHours
    alone: bool


def kinship_of(task: Task) -> Kinship:
    """The queue that a task waits in."""
    return Kinship(tuple(offer.crew for offer in task.offers), task.in_one_shift, task.hours, task.alone)


@dataclass
class Queue:
    """Work by the moment from which it is ready, and what is ready in the order in which it was told."""

    later: list[tuple[datetime, int, str]] = field(default_factory=list)  # a heap
    due: list[tuple[int, str, datetime]] = field(default_factory=list)  # in order, ready by `filled`
    waits_until: datetime = datetime.min  # where a crew is free before anything is ready: what is due, is ready then

    def add(self, ready: datetime, order: int, mark: str) -> None:
        """Takes in work that is ready from a moment on; what was to be begun only later is looked at again."""
        heapq.heappush(self.later, (ready, order, mark))
        if ready < self.waits_until:
            for order, mark, ready in self.due:
                heapq.heappush(self.later, (ready, order, mark))
            self.due.clear()

    def find_next(self, free: datetime, tasks: dict[str, Task], clock: Clock) -> str:
        """The mark of what can start first when a crew is free from a moment on; empty where nothing waits.

        Of what can start at the same moment it is that told first; what a shift must hold, if it fits in what is left.
        """
        if not self.due and not self.later:
            return ""
        start = clock.next_start(free if self.due else max(free, self.later[0][0]))
        if not self.due and self.later[0][0] > free:
            self.waits_until = start
        elif free >= self.waits_until:
            self.waits_until = datetime.min
        while self.later and self.later[0][0] <= start:
            ready, order, mark = heapq.heappop(self.later)
            insort(self.due, (order, mark, ready))
        left = clock.left_of_shift(start)
        fitting = (mark for _, mark, _ in self.due if min(offer.length for offer in tasks[mark].offers) <= left)
        first = self.due[0][1]
        return next(fitting, first) if tasks[first].in_one_shift else first

    def remove(self, mark: str) -> None:
        """Takes out work that has been placed."""
        self.due = [one for one in self.due if one[1] != mark]
        if any(one[2] == mark for one in self.later):
            self.later = [one for one in self.later if one[2] != mark]
            heapq.heapify(self.later)
