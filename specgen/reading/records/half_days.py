"""A time without am or pm in a column whose other times have one: it may be twelve hours off, and is told."""

import re
from collections.abc import Iterator, Mapping
from datetime import time
from typing import Any, NamedTuple

from specgen.model.project import Project
from specgen.reading.clock_text import read_clock

_HALVES = re.compile(r"\d\s*[ap]\.?(?:m\.?)?", re.IGNORECASE)
_BARE = re.compile(r"(?:[1-9]|1[0-2])[:.]\d{2}")  # 07:10 is of a clock of 24 hours
_DAY, _HALF = 24 * 60, 12 * 60


class Doubt(NamedTuple):
    """A time that may be meant of the other half of the day: its row, and what is told of it."""

    row: int
    message: str
    hint: str


class _Shift(NamedTuple):
    """The hours worked, in minutes: where they begin, and how many there are."""

    start: int
    length: int

    def holds(self, minutes: int) -> bool:
        return (minutes - self.start) % _DAY <= self.length


def list_doubts(project: Project, texts: Mapping[Any, int]) -> Iterator[Doubt]:
    """The doubtful times of a column, by the row of each text in it.

    Where the project tells its shift, only those outside it that would lie in it twelve hours later.
    """
    told = [text for text in texts if isinstance(text, str)]
    if not any(_HALVES.search(text) for text in told):
        return
    shift = _find_shift(project)
    for text in told:
        if _BARE.fullmatch(text.strip()):
            read = time.fromisoformat(read_clock(text.strip()))
            minutes = read.hour * 60 + read.minute
            later = (minutes + _HALF) % _DAY
            if shift is None or (shift.holds(later) and not shift.holds(minutes)):
                outside = "" if shift is None else ", outside the shift"
                message = f"{text.strip()} has no am or pm, as others of its column have; it is read as {read:%H:%M}"
                yield Doubt(texts[text], f"{message}{outside}", f"write {text.strip()} am or {text.strip()} pm")


def _find_shift(project: Project) -> _Shift | None:
    start, hours = (project.get(("schedule", name)) for name in ("shift_start", "shift_hours"))
    if start is None or hours is None:
        return None
    return _Shift(start.hour * 60 + start.minute, round(float(hours) * 60))
