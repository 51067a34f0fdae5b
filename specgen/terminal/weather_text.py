"""Hourly weather judged, as text: limits with their sources, counts by month and elevation, windows."""

from collections.abc import Iterator
from datetime import datetime
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.value_text import count
from specgen.terminal.screen import Line
from specgen.terminal.site_limit_text import tell_limit, tell_source
from specgen.weather.hours import HourlyData
from specgen.weather.limits import StepLimits
from specgen.weather.summary import MonthCount, Summary, Window

_MOST_WINDOWS = 40
_SURFACES = {"air": "taken as warm as the air", "reading": "as read in the file", "model": "modeled"}


class FaceSummary(NamedTuple):
    """What the hours of an elevation come to; an empty mark stands for the whole site."""

    mark: str
    name: str  # of the elevation, as it is headed
    limits: StepLimits
    causes: list[int]
    summary: Summary


class WeatherReport(NamedTuple):
    """All that is told of a file and a step."""

    project: Project
    data: HourlyData
    step: str
    surface: str
    all_hours: bool
    faces: tuple[FaceSummary, ...]
    whole: Summary  # an hour in which any elevation is fit
    left_out: tuple[str, ...]
    notes: tuple[str, ...]


def format_weather(report: WeatherReport) -> Iterator[Line]:
    """The lines of a report."""
    yield from _head(report)
    yield Line()
    yield from _limits(report)
    for alike in _group(report.faces):
        yield Line()
        yield from _faces(alike)
    if report.left_out or report.notes:
        yield Line()
        for note in (*report.left_out, *report.notes):
            yield Line(f"note: {note}", 6)


def _head(report: WeatherReport) -> Iterator[Line]:
    data = report.data
    name = report.project.get(("project", "name"))
    yield Line(f"Fit hours for {report.step}, {name}", style="bold")
    spanned = f"{_tell_day(data.starts[0])} to {_tell_day(data.starts[-1])}"
    missing = f", {count(data.missing, 'hour')} missing" if data.missing else ""
    yield Line(f"{data.name}: {count(len(data) - data.missing, 'hour')} read{missing}, {spanned}", 2)
    scope = "every hour of the day" if report.all_hours else "hours of the shift, with daylight and shade"
    yield Line(f"Judged: {scope}. Wall: {_SURFACES[report.surface]}.", 2)
    whole = report.whole
    fit = f"{whole.fit:,} h fit of {whole.worked:,} h, on {count(whole.fit_days, 'day')}"
    anywhere = ", at one elevation or more" if len(report.faces) > 1 else ""
    unknown = f"; {whole.unknown:,} h not known" if whole.unknown else ""
    yield Line(f"{fit}{anywhere}{unknown}", 2, style="bold")
    yield from (Line(f"NOT IN IT: {told}", 2, "NOT IN IT", "caution") for told in list_not_in_it(report))


def list_not_in_it(report: WeatherReport) -> list[str]:
    """What the step has a limit for and the fit hours leave out, as the file has no column for it."""
    limits, columns = report.faces[0].limits, report.data.columns
    why = "--surface air" if "surface" in columns else "no column surface; --surface model works it out"
    lacking = {
        f"a wall warmer than the air ({why})": (report.surface == "air" and limits.find("surface", "most") is not None),
        "gusts (no column gust): the wind alone is held against the limit": (
            limits.reads("gust") and "gust" not in columns
        ),
        "rain (no column rain): look at the sky and the forecast": limits.reads("rain") and "rain" not in columns,
    }
    return [told for told, is_lacking in lacking.items() if is_lacking]


def _limits(report: WeatherReport) -> Iterator[Line]:
    limits = report.faces[0].limits
    judged = [one for one in limits.limits if one.reading != "sun" or not report.all_hours]
    yield Line("Limits, each inclusive:")
    for limit in judged:
        told = f"  {tell_limit(limit, report.project.system)} ({tell_source(report.project, limit.source)})"
        is_read = limit.reading not in ("gust", "rain") or limit.reading in report.data.columns
        yield Line(told if is_read else f"{told}: not judged", 4)
    for field in limits.unset:
        yield Line(f"  {field} is not set in the project", 4)


def _group(faces: tuple[FaceSummary, ...]) -> list[list[FaceSummary]]:
    """The elevations, those of the same hours together."""
    groups: list[list[FaceSummary]] = []
    for face in faces:
        same = next((group for group in groups if group[0].causes == face.causes), None)
        if same is None:
            groups.append([face])
        else:
            same.append(face)
    return groups


def _faces(alike: list[FaceSummary]) -> Iterator[Line]:
    """The counts and windows of elevations of the same hours."""
    summary, names = alike[0].summary, ", ".join(face.name for face in alike)
    head = f"{names}: " if names else ""
    yield Line(f"{head}{summary.fit:,} h fit of {summary.worked:,} h{_tell_tent(alike[0].limits)}", 2, names, "bold")
    for month, counted in summary.months.items():
        if counted.worked:
            yield Line(f"  {month}  {_tell_month(counted)}", 11)
    yield from _windows(summary.windows)


def _tell_tent(limits: StepLimits) -> str:
    if limits.heated:
        return "; in a heated tent: rain and cold outside are not counted"
    return "; in a tent: rain is not counted" if limits.tented else ""


def _tell_month(month: MonthCount) -> str:
    """`112 h fit of 300; lost: wind 40, humid 20; not known 24`."""
    parts = [f"{month.fit} h fit of {month.worked}"]
    if month.lost:
        lost = sorted(month.lost.items(), key=lambda pair: -pair[1])
        parts.append(f"lost: {', '.join(f'{cause} {hours}' for cause, hours in lost)}")
    if month.unknown:
        parts.append(f"not known {month.unknown}")
    return "; ".join(parts)


def _windows(windows: tuple[Window, ...]) -> Iterator[Line]:
    if not windows:
        yield Line("  no window")
        return
    yield Line("  windows:")
    for window in windows[:_MOST_WINDOWS]:
        hours = f"{window.hours} h"
        span = f"{window.start:%Y-%m-%d %H:%M} to {_tell_end(window.start, window.end)}"
        yield Line(f"  {span}  {hours:>5}  ended by: {window.ended_by}", 6)
    left = len(windows) - _MOST_WINDOWS
    if left > 0:
        yield Line(f"  and {count(left, 'more window')}: --format json lists them all")


def _tell_end(start: datetime, end: datetime) -> str:
    return f"{end:%H:%M}           " if start.date() == end.date() else f"{end:%Y-%m-%d %H:%M}"


def _tell_day(day: datetime) -> str:
    return f"{day:%Y-%m-%d}"
