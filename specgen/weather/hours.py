"""Hourly weather as it was read: one slot for each hour from the first to the last, missing ones included."""

from dataclasses import dataclass, field
from datetime import datetime
from typing import NamedTuple

Column = list[float | None]
# What is read, in the unit it is kept in.
UNITS = {
    "air": "C",
    "humidity": "%",
    "wind": "m/s",
    "gust": "m/s",
    "rain": "mm",
    "surface": "C",
    "direct": "W/m2",
    "diffuse": "W/m2",
}


class Station(NamedTuple):
    """Where hourly data were taken: degrees north and east, and hours that its clock is ahead of universal time."""

    latitude: float
    longitude: float
    zone: float


@dataclass(frozen=True)
class HourlyData:
    """The hours of a file: their beginnings in its own local time, the rows they stand in, and what was read.

    A column that the file lacks is left out of `columns`; a reading that is missing or impossible is None. `row` is 0
    for an hour that the file lacks.
    """

    name: str
    starts: list[datetime]
    rows: list[int]
    columns: dict[str, Column]
    station: Station | None = None
    typical: bool = False  # a year made of months of different years, which are the file's own
    notes: tuple[str, ...] = ()  # what is to be told of how it was read
    missing: int = field(default=0)  # hours that the file lacks

    def __len__(self) -> int:
        return len(self.starts)

    def column(self, name: str) -> Column:
        """The readings of a column; none at all where the file lacks it."""
        return self.columns.get(name) or [None] * len(self.starts)


class Readings(NamedTuple):
    """The rows of a file as they stand in it, before they are put in order: times, row numbers, readings by column.

    `zones` are the minutes ahead of universal time where the file tells them.
    """

    starts: list[datetime]
    rows: list[int]
    columns: dict[str, Column]
    zones: list[int] | None = None
    station: Station | None = None
    notes: tuple[str, ...] = ()
