"""When work is done: shift, days off, holidays that fall within the schedule, night work, days kept for weather."""

import re
from collections.abc import Iterator
from datetime import date, datetime, timedelta
from typing import Any, cast

from specgen.computing.calendars import find_calendar, find_work_days, is_weekend_taken
from specgen.computing.sealing_hours import find_sealing_hours
from specgen.computing.shaded_hours import find_shaded_hours, find_unshaded_months
from specgen.computing.shading import find_shade, is_covered
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.schedule import find_schedule, tell_day
from specgen.documents.shade_cloth import list_cloths
from specgen.documents.views._bead_days import list_bead_days
from specgen.model.calendar import WEEK, WEEKEND, WEEKEND_TAKEN
from specgen.model.hour_calendar import MonthHours, Stretch
from specgen.model.schedule import UsableMonth
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.model.value_text import words
from specgen.scheduling.schedule import EARLIEST, NOT_INCLUDED
from specgen.scheduling.viewing_hours import VIEWED, list_viewing_months
from specgen.scheduling.wall_work import SUNLESS, TAKEN_DOWN
from specgen.weather.heat import find_sunless

_NAMES = dict(zip(WEEK, ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"), strict=True))
_FIELD = re.compile(r" \([a-z_]+(?:\.[\w*]+)+\)")  # where a date stands in the project file
_VIEWING = ("schedule", "viewing_hours")
_LEFT_OUT = (*NOT_INCLUDED, EARLIEST)
_UNDER_CLOTH = "under cloth, or before or after the shift"
_OUTSIDE = "on that day before or after the shift, or on an overcast day"
_USUAL = ", common practice; confirm with the general contractor"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each line of the calendar."""
    project = root_of(context.project.view(()))
    lines: list[tuple[str, Any]] = [("Shift", _tell_shift(context)), ("Days off each week", _tell_week(project))]
    lines += [("Further days off", told) for told in [_list_dates(context, project)] if told]
    if not project.schedule.get("holidays") and not find_work_days(project).dates_off:
        lines.append(("Public holidays", "none taken off; confirm with the general contractor"))
    lines.append(("Night work", _tell_nights(context)))
    lines.append(("Weather days, after the last activity", context.display(("schedule", "weather_days"))))
    if context.project.get(_VIEWING) is not None:
        lines.append(("Each acceptance of the finish, each final viewing", context.display(_VIEWING)))
    lines += _list_outputs(context)
    lines += [(f"Shade cloth, {', '.join(marks)}", told) for marks, told in list_cloths(context)]
    lines += _list_shaded(context)
    lines += _list_sealing(context)
    lines += list_bead_days(context)
    lines += _list_viewings(context)
    lines += [(head, told) for head, told in _tell_notes(context) if told]
    return TableView(("Calendar", "As planned"), tuple(lines), (35, 65))


def _list_outputs(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """What each crew gets done in an hour, by the step, in the order of the work."""
    for crew in context.project.members.get(("crews",), ()):
        given = context.project.members.get(("crews", crew, "rates"), ())
        told: list[Any] = []
        for name in (name for name in context.standards.steps if name in given):
            title = TAKEN_DOWN.get(name) or context.standards.steps[name].title
            told += ["; " if told else "", f"{title[:1].lower()}{title[1:]} "]
            told.append(context.display(("crews", crew, "rates", name)))
        if told:
            yield f"Output, crew {crew}", told


def _list_shaded(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """The hours of coats that bear no sun until set, on faces with sun in the shift, in the months of these coats."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for mark in context.project.members.get(("elevations",), ()):
        alike.setdefault(_list_sunless(context, mark), []).append(mark)
    planned = {coats: _find_months(context, coats) for coats in alike}
    for coats, mark in ((coats, mark) for coats, marks in alike.items() for mark in marks):
        face = cast(Elevation, context.project.view(("elevations", mark)))
        hours, unshaded = find_shaded_hours(face), find_unshaded_months(face)
        months = planned[coats].get(mark, [])
        if hours and months:
            shaded = {
                month: "shade the face" if month.month in unshaded else _tell_hours(hours, month) for month in months
            }
            ends = dict.fromkeys(context.standards.steps[step].title for step in (coats[0], coats[-1]))
            named = " to ".join(f"{title[:1].lower()}{title[1:]}" for title in ends)
            yield f"Out of direct sun, {mark}: {named}", _join_months(shaded)


def _list_sunless(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The steps on an elevation whose coats the sun is kept off until they are set."""
    wall = context.project.get(("elevations", mark, "wall"))
    marks = (wall.mark,) if wall is not None else context.project.members[("walls",)]
    return tuple(step for step in SUNLESS if find_sunless(context.project, step, marks) is not None)


def _list_sealing(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """The hours in which each elevation is sealed, in the months in which it is planned."""
    for mark, months in _find_months(context, ("sealant",)).items():
        hours = find_sealing_hours(cast(Elevation, context.project.view(("elevations", mark))))
        cloth = _tell_cover(context, mark)
        if hours:
            yield f"Sealing, {mark}", _join_months({month: f"{cloth}{_tell_hours(hours, month)}" for month in months})


def _find_months(context: DocumentContext, steps: tuple[str, ...]) -> dict[str, list[date]]:
    """The months in which some steps are planned, by elevation."""
    schedule = find_schedule(context)
    work = [one for one in schedule.activities if one.step in steps and one.kind == "work"] if schedule else []
    moments = {(one.elevation, at.date().replace(day=1)) for one in work for at in (one.start, one.end)}
    marks = context.project.members.get(("elevations",), ())
    found = {mark: sorted(month for face, month in moments if face == mark) for mark in marks}
    return {mark: months for mark, months in found.items() if months}


def _tell_hours(hours: MonthHours, month: date) -> str:
    return " and ".join(map(_tell_stretch, hours[month.month - 1]))


def _join_months(told: dict[date, str]) -> str:
    """`June, July: 06:00 to 09:15; August: 06:00 to 10:00`."""
    alike: dict[str, list[date]] = {}
    for month, hours in told.items():
        alike.setdefault(hours, []).append(month)
    return "; ".join(f"{', '.join(f'{month:%B}' for month in same)}: {hours}" for hours, same in alike.items())


def _tell_cover(context: DocumentContext, mark: str) -> str:
    """`under shade cloth, `; nothing where no cloth or tent covers the elevation."""
    face = cast(Elevation, context.project.view(("elevations", mark)))
    return f"under {words(find_shade(face.project, mark))}, " if is_covered(face) else ""


def _tell_stretch(stretch: Stretch) -> str:
    start, end = (datetime.min + at for at in stretch)
    return f"{start:%H:%M} to {end:%H:%M}"


def _list_viewings(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """The hours without direct sun in the month of each viewing, in which it is planned."""
    schedule = find_schedule(context)
    held = [one for one in schedule.activities if one.kind == "hold" and one.step in VIEWED] if schedule else []
    for mark in dict.fromkeys(one.elevation for one in held):
        face = cast(Elevation, context.project.view(("elevations", mark)))
        told = [
            f"{context.standards.steps[one.step].title[:1].lower()}{context.standards.steps[one.step].title[1:]}, "
            f"{one.start:%B}: {_tell_viewing(context, face, one.step, months[one.start.month - 1])}"
            for one in held
            if one.elevation == mark and (months := list_viewing_months(face, one.step))
        ]
        if told:
            yield f"Viewing without direct sun, {mark}", "; ".join(told)


def _tell_viewing(context: DocumentContext, face: Elevation, step: str, month: UsableMonth) -> str:
    """`under shade cloth, 06:00 to 16:00`; what is to be done where the shift has no such hour."""
    spans = " and ".join(f"{start:%H:%M} to {end:%H:%M}" for start, end in month.spans)
    if not spans:
        return f"no hour of the shift; view {_UNDER_CLOTH if VIEWED[step] else _OUTSIDE}"
    return f"{_tell_cover(context, face.mark) if VIEWED[step] else ''}{spans}"


def _tell_week(project: Description) -> str:
    off = WEEKEND if is_weekend_taken(project) else [day for day in WEEK if day in project.schedule.days_off]
    told = " and ".join(_NAMES[day] for day in off) or "none"
    return f"{told}{_USUAL if is_weekend_taken(project) else ''}"


def _list_dates(context: DocumentContext, project: Description) -> str:
    """The dates and public holidays without work, from the first activity to the last or the end of spraying."""
    schedule, days = find_schedule(context), find_work_days(project)
    if schedule is None:
        return ""
    first, season = schedule.activities[0].start.date(), project.schedule.get("spray_end")
    last = max(schedule.end.date(), season or first)
    every = (first + timedelta(days=number) for number in range((last - first).days + 1))
    off = [day for day in every if not days.is_worked(day) and WEEK[day.weekday()] not in days.weekdays_off]
    code = project.schedule.get("holidays")
    behind = f"; public holidays ({code}) as observed" if code else ""
    return f"{', '.join(_tell(day) for day in off)}{behind}" if off else ""


def _tell(day: date) -> str:
    return tell_day(day, 0)


def _tell_notes(context: DocumentContext) -> Iterator[tuple[str, str]]:
    """How working time is reckoned, and for what none is included; what is still to be given stands elsewhere."""
    schedule = find_schedule(context)
    notes = schedule.notes if schedule else ()
    told = [_FIELD.sub("", note) for note in notes if note != WEEKEND_TAKEN and "; add " not in note]
    yield "Basis", " ".join(note for note in told if not note.startswith(_LEFT_OUT))
    yield "Not included", " ".join(note for note in told if note.startswith(_LEFT_OUT))


def _tell_shift(context: DocumentContext) -> Any:
    """Start, end and length of the shift; in brackets what of it is not given."""
    start, hours = (context.display(("schedule", name)) for name in ("shift_start", "shift_hours"))
    if start.open or hours.open:
        return ["start ", start, ", length ", hours]
    shift = find_calendar(root_of(context.project.view(())))
    begins = datetime.combine(date.min, shift.shift_start)
    return [f"{begins:%H:%M} to {begins + shift.shift:%H:%M}, ", hours]


def _tell_nights(context: DocumentContext) -> str:
    planned = context.project.get(("schedule", "night_work"))
    return "by lamp" if planned else "none" if planned is False else "none planned"
