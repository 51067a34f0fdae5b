"""The objects of `status --format json`."""

from collections.abc import Iterable
from datetime import datetime
from typing import Any

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.status import (
    AreaStatus,
    FaceStatus,
    Moment,
    NextStep,
    Owed,
    PanelHistory,
    Party,
    ProjectStatus,
    Remark,
    StepStatus,
    tell_moment,
)
from specgen.model.value_text import raw_text

# The keys, as the help of the command tells them.
KEYS = (
    "format, errors, at, entries, sound, elevations, remarks; each elevation: elevation, name, wall, steps, next, "
    "required, remarks; steps: step, title, point, state, early, until, hours, hours_source, released_by, missing, "
    "areas; areas: area, state, again, panels, crews, began, ended, until, coats, coats_due, released, by, reasons, "
    "pending, early, remarks; next: step, from, latest, latest_by_area, goes_on, correct, release_anew, "
    "after_release_of, by, areas; required: party, what, "
    "step, about, from; a party: role, name; a remark: text, entries"
)
PANEL_KEYS = (
    "format, errors, at, panel, elevation, in_layout, passes, masked, signed, nonconformances; passes: step, began, "
    "ended, recoat, entry, pails, readings; an entry: path, file, line, and its fields"
)


def status_to_data(
    status: ProjectStatus | None, faces: Iterable[FaceStatus], errors: Iterable[Any] = ()
) -> dict[str, Any]:
    """The object of the elevations asked for; `errors` is filled where the status could not be told."""
    return {
        "format": 1,
        "errors": list(errors),
        "at": _time(status.at) if status else None,
        "entries": status.counted if status else 0,
        "sound": status is not None and status.is_sound,
        "elevations": [_face(face) for face in faces],
        "remarks": _remarks((*status.failed, *status.remarks) if status else ()),
    }


def _time(moment: datetime | None) -> str | None:
    return None if moment is None else moment.isoformat(timespec="minutes")


def _moment(moment: Moment | None) -> str | None:
    return None if moment is None else tell_moment(moment).replace(" ", "T")


def _party(party: Party | None) -> dict[str, str] | None:
    return None if party is None else party._asdict()


def _remarks(remarks: Iterable[Remark]) -> list[dict[str, Any]]:
    return [{"text": one.text, "entries": [".".join(entry.path) for entry in one.entries]} for one in remarks]


def _face(face: FaceStatus) -> dict[str, Any]:
    return {
        "elevation": face.elevation,
        "name": face.name,
        "wall": face.wall,
        "steps": [_step(step) for step in face.steps],
        "next": [_next(one) for one in face.next],
        "required": [_owed(one) for one in face.owed],
        "remarks": _remarks(face.remarks),
    }


def _step(status: StepStatus) -> dict[str, Any]:
    return {
        "step": status.step.name,
        "title": status.step.title,
        "point": status.step.point,
        "state": status.state.value,
        "early": bool(status.early),
        "until": _time(status.until),
        "hours": float(status.hours.hours) if status.hours else None,
        "hours_source": status.hours.source if status.hours else None,
        "released_by": _party(status.releaser),
        "missing": list(status.missing),
        "areas": [_area(area) for area in status.areas],
    }


def _area(area: AreaStatus) -> dict[str, Any]:
    return {
        "area": area.area,
        "state": area.state.value,
        "again": area.again,
        "panels": list(area.panels),
        "crews": list(area.crews),
        "began": _moment(area.began),
        "ended": _time(area.ended),
        "until": _time(area.until),
        "coats": area.coats[0],
        "coats_due": area.coats[1],
        "released": _moment(area.released.moment) if area.released else None,
        "by": area.released.by if area.released else None,
        "reasons": _remarks(area.reasons),
        "pending": _remarks(area.pending),
        "early": _remarks(area.early),
        "remarks": _remarks(area.remarks),
    }


def _next(one: NextStep) -> dict[str, Any]:
    return {
        "step": one.step.name,
        "from": _time(one.start),
        "latest": _time(one.latest),
        "latest_by_area": {area: _time(latest) for area, latest in one.deadlines if area},
        "goes_on": one.goes_on,
        "correct": one.correct,
        "release_anew": one.release_anew,
        "after_release_of": one.hold.name if one.hold else None,
        "by": _party(one.releaser),
        "areas": list(one.areas),
    }


def _owed(one: Owed) -> dict[str, Any]:
    return {
        "party": _party(one.party),
        "what": one.what,
        "step": one.step.name,
        "about": one.about,
        "from": _time(one.since),
    }


def history_to_data(project: Project, history: PanelHistory) -> dict[str, Any]:
    """The object of a panel; values as they are written, in the unit system of the project."""
    return {
        "format": 1,
        "errors": [],
        "at": _time(history.at),
        "panel": history.panel,
        "elevation": history.elevation,
        "in_layout": history.in_layout,
        "passes": [
            {
                "step": one.step.name,
                "began": _moment(one.began),
                "ended": _time(one.ended),
                "recoat": one.again,
                "entry": _entry(project, one.entry),
                "pails": [_entry(project, entry) for entry in one.pails],
                "readings": [_entry(project, entry) for entry in one.readings],
            }
            for one in history.passes
        ],
        "masked": [_entry(project, entry) for entry in history.masked],
        "signed": [_entry(project, entry) for entry in history.signed],
        "nonconformances": _remarks(history.against),
    }


def _entry(project: Project, entry: Entry) -> dict[str, Any]:
    fields = project.schema.fields
    values = {
        name: raw_text(value, fields.get((entry.collection, name)), project.system)
        for name, value in entry.values.items()
    }
    return {"path": ".".join(entry.path), "file": entry.place.file, "line": entry.place.line, **values}
