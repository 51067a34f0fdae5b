"""Entries in the order of time, searched by bisection."""

from bisect import bisect_left, bisect_right
from collections.abc import Callable
from datetime import datetime
from functools import cached_property
from itertools import accumulate
from typing import NamedTuple

from specgen.model.record import Entry, day_of


class Order(NamedTuple):
    """When an entry began, and its place in the files among those of one moment."""

    began: datetime
    number: int


def order_of(entry: Entry) -> Order:
    """The order of an entry: one without a time stands at the end of its day, one without a day behind all others."""
    began = entry.began
    if began is not None:
        return Order(began, entry.number)
    day = day_of(entry)
    late = datetime.max if day is None else end_of_day(datetime(day.year, day.month, day.day))
    return Order(late, entry.number)


def end_of_day(moment: datetime) -> datetime:
    """The last second of the day of a moment."""
    return moment.replace(hour=23, minute=59, second=59, microsecond=0)


class Timeline:
    """Entries sorted by `order_of`."""

    def __init__(self, entries: tuple[Entry, ...], find_order: Callable[[Entry], Order] = order_of) -> None:
        self.entries, self._find_order = entries, find_order

    @cached_property
    def _orders(self) -> list[Order]:
        return [self._find_order(entry) for entry in self.entries]

    @cached_property
    def _began(self) -> list[datetime]:
        return [order.began for order in self._orders]

    @cached_property
    def _ended_last(self) -> list[Entry]:
        """For each entry the one that ended last of all up to it."""
        return list(accumulate(self.entries, _later_end))

    def find_last(self, until: datetime) -> Entry | None:
        """The last entry that began at or before a moment."""
        end = bisect_right(self._began, until)
        return self.entries[end - 1] if end else None

    def find_next(self, since: datetime) -> Entry | None:
        """The first entry that began at or after a moment."""
        start = bisect_left(self._began, since)
        return self.entries[start] if start < len(self.entries) else None

    def find_before(self, entry: Entry) -> Entry | None:
        """The entry before this one."""
        end = bisect_left(self._orders, order_of(entry))
        return self.entries[end - 1] if end else None

    def find_ended_last(self, until: datetime) -> Entry | None:
        """Of those that began before a moment, the one that ended last."""
        end = bisect_left(self._began, until)
        return self._ended_last[end - 1] if end else None


def _later_end(one: Entry, other: Entry) -> Entry:
    return other if _end(other) >= _end(one) else one


def _end(entry: Entry) -> datetime:
    return entry.ended or datetime.min
