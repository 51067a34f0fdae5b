"""The report of `record` as plain data for a program."""

from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS, Entry, day_of
from specgen.model.record_judgment import MockupCount, Nonconformance, ReadingsAlike, ReadingState, RecordJudgment
from specgen.terminal.record_report import list_days, tell_reading

_MOST_ROWS = 20  # of readings that end alike; the list that --out writes has all of them


def record_to_data(
    project: Project | None, judgment: RecordJudgment | None, problems: Iterable[Problem] = ()
) -> dict[str, Any]:
    """The object of `record --format json`; `errors` is filled if a file could not be read."""
    data: dict[str, Any] = {
        "format": 1,
        "project": None,
        "errors": [asdict(problem) for problem in problems],
        "days": {"first": None, "last": None, "number": 0},
        "files": [],
        "entries": dict.fromkeys(COLLECTIONS, 0),
        "counts": {str(state): 0 for state in ReadingState},
        "open": 0,
        "nonconformances": [],
        "mockup": None,
        "unsettled": [],
        "remarks": [],
    }
    if project is None or judgment is None:
        return data
    days = [day.isoformat() for day in list_days(project.records)]
    data["project"] = project.get(("project", "name"))
    data["days"] = {"first": next(iter(days), None), "last": next(reversed(days), None), "number": len(days)}
    data["files"] = [{"file": one.name, "entries": one.entries, "digest": one.digest} for one in project.records.files]
    data["entries"] = {name: len(project.records.of(name)) for name in COLLECTIONS}
    data["counts"] = {str(state): judgment.counts.get(state, 0) for state in ReadingState}
    data["open"] = len(judgment.open)
    data["nonconformances"] = [_to_data(project, one) for one in judgment.nonconformances]
    data["mockup"] = _mockup_to_data(judgment.mockup) if judgment.mockup.criteria else None
    unsettled = (ReadingState.MISSING, ReadingState.NOT_EVALUATED)
    data["unsettled"] = [_alike_to_data(one) for one in judgment.alike if one.state in unsettled]
    data["remarks"] = [asdict(remark) for remark in (*project.records.remarks, *judgment.unmatched, *judgment.unplaced)]
    return data


def _to_data(project: Project, one: Nonconformance) -> dict[str, Any]:
    day, at = day_of(one.entry), one.entry.values.get("started_at", one.entry.values.get("time"))
    return {
        "number": one.number,
        "code": one.code,
        "severity": str(one.severity),
        "date": None if day is None else day.isoformat(),
        "time": None if at is None else at.strftime("%H:%M"),
        "elevation": one.entry.get("elevation"),
        "area": one.entry.get("area"),
        "collection": one.entry.collection,
        "step": one.entry.get("step") or one.entry.get("criterion"),
        "field": one.field,
        "reading": tell_reading(project, one),
        "limit": one.wanted,
        "message": one.message,
        "basis": str(one.basis),
        "remedy": one.remedy,
        "documents": list(one.documents),
        "lifted_by": one.lifted_by,
        "settled": one.is_settled,
        "disposition": None if one.disposition is None else _disposition_to_data(one.disposition),
        **_place_to_data(one.entry),
    }


def _mockup_to_data(counted: MockupCount) -> dict[str, Any]:
    missing = [{"criterion": one.criterion, "line": one.number, "title": one.title} for one in counted.missing]
    return {"criteria": counted.criteria, "recorded": counted.recorded, "missing": missing}


def _disposition_to_data(entry: Entry) -> dict[str, Any]:
    told = {name: entry.get(name) for name in ("decision", "by", "note")}
    return {**told, "decided_on": entry.values["decided_on"].isoformat(), **_place_to_data(entry)}


def _alike_to_data(one: ReadingsAlike) -> dict[str, Any]:
    return {
        "collection": one.collection,
        "step": one.step or None,
        "field": one.field,
        "state": str(one.state),
        "reason": one.reason,
        "readings": len(one.entries),
        "first": [_place_to_data(entry) for entry in one.entries[:_MOST_ROWS]],
    }


def _place_to_data(entry: Entry) -> dict[str, Any]:
    """Where an entry stands: `line` is that of a text or the row of a sheet, `row` that of a form."""
    place = entry.place
    return {"file": place.file, "sheet": place.sheet or None, "line": place.line or None, "row": place.row or None}
