"""Entries of the site record as work and decisions: what was done where and when, what was signed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import Enum
from typing import Any, NamedTuple

from specgen.model.record import Entry, day_of
from specgen.model.status import END_OF_DAY, Moment
from specgen.model.value_text import words

# What only a pass has; an entry that has nothing but readings of the weather or of a pail begins no work by itself.
_OF_PASSES = ("ended_at", "panels", "wet_film")
_READINGS = ("air", "surface", "humidity", "wind", "gust", "pail", "cup_time", "cup_time_before_water")


class Verdict(Enum):
    """What a release or an inspection says."""

    GOOD = "good"
    FAILED = "failed"
    UNSIGNED = "unsigned"


class Work(NamedTuple):
    """An entry of the log that tells of a step."""

    entry: Entry
    area: str  # folded, so that two ways of writing it are one; empty for the whole face
    began: Moment
    ended: datetime | None  # None while it goes on, or where no end is written
    is_pass: bool  # whether it tells of work, not of readings alone

    @property
    def coat(self) -> int:
        """The coat of the step; the first where none is told."""
        return int(self.entry.get("coat") or 1)

    @property
    def panels(self) -> tuple[str, ...]:
        """The marks of the panels that it names."""
        return tuple(self.entry.get("panels") or ())


class Decision(NamedTuple):
    """A release or an inspection; without an entry the acceptance that the project file tells."""

    moment: Moment
    verdict: Verdict
    by: str
    area: str = ""
    is_release: bool = False
    hours_dry: Any = None
    about: str = ""  # its faults, or what it lacks
    entry: Entry | None = None


@dataclass
class FaceEntries:
    """The entries of an elevation by step, each list in the order of time."""

    works: dict[str, list[Work]] = field(default_factory=dict)
    decisions: dict[str, list[Decision]] = field(default_factory=dict)


def fold_area(area: str, elevation: str) -> str:
    """An area as it is compared: `E1 left bay` and `Left  bay` of E1 are one, and E1 itself is the whole face."""
    said = area.casefold().split()
    return " ".join(said[1:] if said and said[0] == elevation.casefold() else said)


def moment_of(entry: Entry) -> Moment | None:
    """When an entry began, or was signed; None where it has no day."""
    began, day = entry.began, day_of(entry)
    if began is not None:
        return Moment(began)
    if day is None:
        return None
    end = entry.get("ended_at")
    return Moment(datetime.combine(day, end)) if end is not None else _end_of(day)


def _end_of(day: date) -> Moment:
    return Moment(datetime.combine(day, END_OF_DAY), timed=False)


def to_work(entry: Entry, began: Moment, elevation: str, until: datetime) -> Work:
    """An entry of the log as work, of which only what happened until a moment is known."""
    values = entry.values
    ended = entry.ended if "ended_at" in values else None if began.timed else began.at
    if "ended_at" in values and ended is None:
        ended = began.at
    is_pass = any(name in values for name in _OF_PASSES) or not any(name in values for name in _READINGS)
    known = ended if ended is not None and ended <= until else None
    return Work(entry, fold_area(str(values.get("area") or ""), elevation), began, known, is_pass)


def to_decision(entry: Entry, moment: Moment, elevation: str) -> Decision:
    """A release or an inspection as a decision."""
    by, is_release = str(entry.get("by") or ""), entry.collection == "release"
    verdict, about = _read_release(entry.values) if is_release else _read_inspection(entry.values)
    if verdict is Verdict.GOOD and not by:
        verdict, about = Verdict.UNSIGNED, "signature"
    area = fold_area(str(entry.get("area") or ""), elevation)
    return Decision(moment, verdict, by, area, is_release, entry.get("hours_dry"), about, entry)


def _read_release(values: Mapping[str, Any]) -> tuple[Verdict, str]:
    faults = [words(str(fault)) for fault in values.get("defects") or ()]
    faults += [
        told for name, told in (("wall_dry", "wall not dry"), ("even_look", "uneven look")) if values.get(name) is False
    ]
    return (Verdict.FAILED, f"released with faults: {', '.join(faults)}") if faults else (Verdict.GOOD, "")


def _read_inspection(values: Mapping[str, Any]) -> tuple[Verdict, str]:
    outcome = str(values.get("outcome") or "")
    if outcome == "refused":
        return Verdict.FAILED, "inspection refused"
    return (Verdict.GOOD, "") if outcome else (Verdict.UNSIGNED, "outcome")


def hours_after(moment: datetime, hours: Any) -> datetime:
    """The moment so many hours later, by the clock."""
    return moment + timedelta(hours=float(hours))
