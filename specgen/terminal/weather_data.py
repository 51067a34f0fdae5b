"""Hourly weather judged, as data for programs."""

from typing import Any

from specgen.terminal.site_limit_text import limit_to_data
from specgen.terminal.weather_text import FaceSummary, WeatherReport, list_not_in_it
from specgen.weather.summary import Summary


def weather_to_data(report: WeatherReport) -> dict[str, Any]:
    """The counts of all elevations together, then those of each; times are ISO text in the local time of the file."""
    data = report.data
    about = {
        "format": 1,
        "project": report.project.get(("project", "name")),
        "step": report.step,
        "surface": report.surface,
        "all_hours": report.all_hours,
        "file": {
            "name": data.name,
            "hours": len(data),
            "hours_read": len(data) - data.missing,
            "first": data.starts[0].isoformat(timespec="minutes"),
            "last": data.starts[-1].isoformat(timespec="minutes"),
            "missing_hours": data.missing,
            "typical_year": data.typical,
        },
        "limits": [limit_to_data(report.project, limit) for limit in report.faces[0].limits.limits],
    }
    each = {"by_elevation": {face.mark: _face(face) for face in report.faces if face.mark}}
    return (
        about
        | _count(report.whole)
        | each
        | {"not_in_it": list_not_in_it(report), "notes": [*report.left_out, *report.notes]}
    )


def _face(face: FaceSummary) -> dict[str, Any]:
    return {"tented": face.limits.tented, "heated": face.limits.heated} | _count(face.summary)


def _count(summary: Summary) -> dict[str, Any]:
    months = summary.months
    return {
        "hours": summary.worked,
        "fit_hours": summary.fit,
        "fit_days": summary.fit_days,
        "unknown_hours": summary.unknown,
        "by_month": {month: counted.fit for month, counted in months.items()},
        "lost_by_month": {month: counted.lost for month, counted in months.items()},
        "unknown_by_month": {month: counted.unknown for month, counted in months.items()},
        "windows": [
            {
                "start": window.start.isoformat(timespec="minutes"),
                "end": window.end.isoformat(timespec="minutes"),
                "hours": window.hours,
                "ended_by": window.ended_by,
            }
            for window in summary.windows
        ],
    }
