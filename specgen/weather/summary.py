"""What the hours of a face come to: windows with what ended them, counts by month with the cause of each lost hour."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import NamedTuple

from specgen.weather.hours import HourlyData
from specgen.weather.judging import OUTSIDE, UNKNOWN, first_cause, list_causes

_HOUR = timedelta(hours=1)
# What ended a window, as it is told; any other cause is told by its own words.
_ENDS = {"outside shift": "end of shift", "reading missing": "missing reading"}
END = "end of file"


class Window(NamedTuple):
    """Fit hours that follow each other: from the beginning of the first to the end of the last, and what ended them."""

    start: datetime
    end: datetime
    hours: int
    ended_by: str


@dataclass
class MonthCount:
    """The hours of a month: those looked at, fit, not known, and lost by the first of their causes."""

    worked: int = 0  # within the shift, or all
    fit: int = 0
    unknown: int = 0
    lost: dict[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class Summary:
    """The windows of a face, and its counts by month, `2027-06`, in the order of the file."""

    windows: tuple[Window, ...]
    months: dict[str, MonthCount]
    fit_days: int  # days with a fit hour

    @property
    def fit(self) -> int:
        """All fit hours."""
        return sum(month.fit for month in self.months.values())

    @property
    def unknown(self) -> int:
        """All hours that are not known."""
        return sum(month.unknown for month in self.months.values())

    @property
    def worked(self) -> int:
        """All hours looked at."""
        return sum(month.worked for month in self.months.values())


def summarize(data: HourlyData, causes: list[int]) -> Summary:
    """The windows and counts of a face."""
    return Summary(tuple(find_windows(data.starts, causes)), count_months(data.starts, causes), _days(data, causes))


def join_faces(faces: list[list[int]]) -> list[int]:
    """The causes of hours that are fit where any of several faces is; else those of all of them together.

    An hour is not known where one of the faces is not, and outside the shift where all are.
    """
    joined: list[int] = []
    for several in zip(*faces, strict=True):
        if 0 in several:
            joined.append(0)
            continue
        bits = 0
        for one in several:
            bits |= one
        unsettled = [one for one in several if not one & ~UNKNOWN]
        joined.append(unsettled[0] if unsettled else bits if all(one & OUTSIDE for one in several) else bits & ~OUTSIDE)
    return joined


def find_windows(starts: list[datetime], causes: list[int]) -> list[Window]:
    """The runs of fit hours; one that runs to the last hour of the file is ended by it."""
    windows: list[Window] = []
    first = None
    for at, bits in enumerate([*causes, UNKNOWN]):
        if not bits and first is None:
            first = at
        elif bits and first is not None:
            ended = END if at == len(causes) else _tell_end(bits)
            windows.append(Window(starts[first], starts[at - 1] + _HOUR, at - first, ended))
            first = None
    return windows


def _tell_end(bits: int) -> str:
    if bits & OUTSIDE:
        return _ENDS["outside shift"]
    causes = [first_cause(bits)] if first_cause(bits) == END else list_causes(bits)
    return ", ".join(_ENDS.get(cause, cause) for cause in causes)


def count_months(starts: list[datetime], causes: list[int]) -> dict[str, MonthCount]:
    """The hours of each month by what they are."""
    months: dict[str, MonthCount] = {}
    keys: dict[tuple[int, int], MonthCount] = {}
    for start, bits in zip(starts, causes, strict=True):
        key = (start.year, start.month)
        month = keys.get(key)
        if month is None:
            month = keys[key] = months[f"{start:%Y-%m}"] = MonthCount()
        if bits & OUTSIDE:
            continue
        month.worked += 1
        if not bits:
            month.fit += 1
            continue
        cause = first_cause(bits)
        if cause == END or not bits & ~UNKNOWN:
            month.unknown += 1
        else:
            month.lost[cause] = month.lost.get(cause, 0) + 1
    return months


def _days(data: HourlyData, causes: list[int]) -> int:
    return len({start.date() for start, bits in zip(data.starts, causes, strict=True) if not bits})
