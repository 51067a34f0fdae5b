"""What the tests of the site record share: a small job of two faces, entries in a few words, and its status."""

import dataclasses
from collections.abc import Sequence
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

from specgen.model.project import Project
from specgen.model.record import Entry, EntryPlace, Records
from specgen.model.status import AreaStatus, FaceStatus, ProjectStatus, StepState, StepStatus
from specgen.recording.status import Asked, find_status
from specgen.standards import load_standards
from tests.support import merged, project_of

# Hours of our own, unlike each other, so that each until can be reckoned by hand.
JOB: dict[str, Any] = {
    "parties": {"applicator": {"name": "Larkwall"}, "inspector": {"name": "Plumb Line"}},
    "mockup": {"approver": "architect"},
    "walls": {
        "W1": {
            "wrb": {"kind": "none"},
            "base_coat": {"first_pass_dry_hours": 10, "cure_hours": 24},
        }
    },
    "elevations": {"E1": {"name": "South face"}, "E2": {}},
    "smoothing": {"dry_hours": 20, "between_hours": 4},
    "primer": {"dry_hours": 16},
    "gloss": {"coats": 2, "touch_dry_hours": 1, "dry_hours": 30},
}
_CLOCKS = ("started_at", "ended_at", "time")
_DAYS = ("date", "done_on")


def log(day: str, step: str, hours: str = "", elevation: str | None = "E1", **values: Any) -> dict[str, Any]:
    """An entry of the log: `log("2027-06-15", "primer", "07:00-09:00", area="left bay")`."""
    began, _, ended = hours.partition("-")
    clocks = {"started_at": began, "ended_at": ended}
    told = {name: clock for name, clock in clocks.items() if clock}
    return {"in": "log", "date": day, "step": step, "elevation": elevation, **told, **values}


def release(day: str, step: str, at: str = "", elevation: str = "E1", **values: Any) -> dict[str, Any]:
    """A release, signed by P. Line where nobody else is told."""
    clock = {"time": at} if at else {}
    return {"in": "release", "date": day, "step": step, "elevation": elevation, "by": "P. Line", **clock, **values}


def inspection(day: str, step: str, outcome: str = "accepted", elevation: str = "E1", **values: Any) -> dict[str, Any]:
    """An inspection, signed by P. Line where nobody else is told."""
    told = {"done_on": day, "step": step, "outcome": outcome, "elevation": elevation, "by": "P. Line"}
    return {"in": "inspection", **told, **values}


def records_of(entries: Sequence[dict[str, Any]], file: str = "log.csv") -> Records:
    """Entries as a reader gives them, in the order in which they are told."""
    made: dict[str, list[Entry]] = {}
    for line, told in enumerate(entries, 2):
        listed = made.setdefault(told["in"], [])
        values = {name: _convert(name, value) for name, value in told.items() if name != "in" and value is not None}
        listed.append(Entry(told["in"], len(listed), values, EntryPlace(file, line)))
    return Records({name: tuple(listed) for name, listed in made.items()})


def _convert(name: str, value: Any) -> Any:
    if name in _CLOCKS:
        return time.fromisoformat(value)
    return date.fromisoformat(value) if name in _DAYS else value


def job(folder: Path, *entries: dict[str, Any], change: Any = None) -> Project:
    """The small job with these entries."""
    return dataclasses.replace(project_of(folder, merged(JOB, change or {})), records=records_of(entries))


def status(folder: Path, *entries: dict[str, Any], at: str = "", change: Any = None, **asked: Any) -> ProjectStatus:
    """Where the small job stands by these entries."""
    moment = datetime.fromisoformat(at) if at else None
    return find_status(job(folder, *entries, change=change), load_standards(), Asked(at=moment, **asked))


def step_of(found: ProjectStatus, step: str, elevation: str = "E1") -> StepStatus:
    """The status of a step on an elevation."""
    return next(one for one in face_of(found, elevation).steps if one.step.name == step)


def face_of(found: ProjectStatus, elevation: str = "E1") -> FaceStatus:
    """The status of an elevation."""
    return next(face for face in found.faces if face.elevation == elevation)


def state_of(found: ProjectStatus, step: str, elevation: str = "E1") -> StepState:
    """The state of a step on an elevation."""
    return step_of(found, step, elevation).state


def area_of(found: ProjectStatus, step: str, area: str = "") -> AreaStatus:
    """The status of an area of a step on E1."""
    return next(one for one in step_of(found, step).areas if one.area == area)


def texts(remarks: Sequence[Any]) -> str:
    """What is remarked, a line each."""
    return "\n".join(remark.text for remark in remarks)
