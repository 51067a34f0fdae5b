"""The report of `record` as plain data for a program."""

from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS, Entry, day_of
from specgen.model.record_judgment import MockupCount, Nonconformance, ReadingsAlike, ReadingState
from specgen.recording.narrowing import ToldRecord, list_days
from specgen.terminal.record_report import RecordReport, tell_reading

_MOST_ROWS = 20  # of readings that end alike; the list that --out writes has all of them


def record_to_data(report: RecordReport | None, problems: Iterable[Problem] = ()) -> dict[str, Any]:
    """The object of `record --format json`; `errors` is filled if a file could not be read."""
    data: dict[str, Any] = {
        "format": 1,
        "project": None,
        "errors": [asdict(problem) for problem in problems],
        "part": None,
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
    if report is None:
        return data
    project, (records, judgment) = report.project, report.told
    days = [day.isoformat() for day in list_days(records)]
    data["project"] = project.get(("project", "name"))
    data["part"] = _part_to_data(report)
    data["days"] = {"first": next(iter(days), None), "last": next(reversed(days), None), "number": len(days)}
    data["files"] = [{"file": one.name, "entries": one.entries, "digest": one.digest} for one in records.files]
    data |= _count(report.told)
    data["open"] = len(judgment.open)
    data["nonconformances"] = [_to_data(project, one) for one in judgment.nonconformances]
    data["mockup"] = _mockup_to_data(judgment.mockup) if judgment.mockup.criteria else None
    unsettled = (ReadingState.MISSING, ReadingState.NOT_EVALUATED)
    data["unsettled"] = [_alike_to_data(one) for one in judgment.alike if one.state in unsettled]
    data["remarks"] = [asdict(remark) for remark in (*records.remarks, *judgment.unmatched, *judgment.unplaced)]
    return data


def _count(told: ToldRecord) -> dict[str, Any]:
    """The numbers of entries by collection, and of readings by state."""
    counts = told.judgment.counts
    return {
        "entries": {name: len(told.records.of(name)) for name in COLLECTIONS},
        "counts": {str(state): counts.get(state, 0) for state in ReadingState},
    }


def _part_to_data(report: RecordReport) -> dict[str, Any] | None:
    """Which part of the record is told, and the numbers of the whole; None where that is told."""
    part, whole = report.part, report.whole
    if part.is_whole:
        return None
    numbers = {"nonconformances": len(whole.judgment.nonconformances), **_count(whole)}
    day = None if part.on is None else part.on.isoformat()
    return {"elevation": part.elevation or None, "on": day, "of": numbers}


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
