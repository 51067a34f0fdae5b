"""The schedule of a project: its tasks gathered, placed by calendar and crews, and what is to be told of it."""

from collections.abc import Iterator
from datetime import timedelta
from typing import NamedTuple

from specgen.computing.air_of_day import PROFILE
from specgen.computing.calendars import find_calendar, is_weekend_taken
from specgen.computing.coats.day_area import BETWEEN, SET_UP
from specgen.computing.shaded_hours import LEAST, SETTING, find_unshaded_months
from specgen.computing.time.usable_hours import is_by_clock
from specgen.model.absence import Absent, read_all
from specgen.model.calendar import WEEKEND_TAKEN, WorkCalendar
from specgen.model.field import Path, dotted_path
from specgen.model.schedule import Schedule
from specgen.model.typed_views import Description, Elevation
from specgen.model.value_text import long_date
from specgen.resolving.provider import Ask
from specgen.scheduling.before_work import ACCEPTANCE, find_given_day, list_main_orders, list_tasks_before, order_mark
from specgen.scheduling.ledges import LEAST as LEAST_LEDGE
from specgen.scheduling.placing import find_chain, list_activities, place
from specgen.scheduling.spray_hours import find_spray_hours
from specgen.scheduling.tasks import Clock, Task, take
from specgen.scheduling.wall_work import MASKED, SUNLESS, ElevationWork
from specgen.standards import load_standards

WEATHER = "weather"  # the mark of the days kept for weather
_DURATIONS = (
    "Working time of each coat: net area of the face divided by the crew's output, returns included in it; of heavy "
    "mesh, the area of its zone; of flashings and caps, their length; of sealant, that of "
    "the joints."
)
_MASKING = (
    "Preparation for gloss: the output of preparation for spraying, for the whole face again, as tape comes off after "
    "the primer; no face is primed before the last one is glossed where the primer has a maximum before recoating."
)
_LEDGES = (
    f"Ledges of added board: a minimum of {LEAST_LEDGE / timedelta(hours=1):g} h each to bond, and to rasp: "
    "common practice, no source."
)
_SET_UP = f"Each day of primer or gloss adds setup and cleanup, {SET_UP:g} h: common practice, no source."
_GLOSS = (
    f"A day with two coats of gloss also adds cleanup and setup between them, {BETWEEN:g} h, and the first coat's "
    "drying to touch where longer than its spraying: common practice, no source."
)
_SHADED = (
    "Coats that bear no direct sun until set (Document D08): only while the face is out of it, to "
    f"{SETTING:g} h before the sun is back on it (setting to touch: common practice, no source)"
)
_UNSHADED = "with under {:g} h of the shift out of the sun, shade the face until the coat is set"
_SPRAYING = "Primer and gloss: only in the usable spray hours of face and month"
_SEALED_WITHIN = (
    "Sealing: only out of direct sun, while the air of the mean day is within the sealing temperatures of the joints; "
    f"air by the hour between mean daily low and high: {PROFILE.reference}, from memory."
)
_SEALING = "Sealing: no hours are taken off for joint surfaces hotter or colder than Document D08 allows."
_HOLDS = "Inspection time at "
# How what the dates do not contain is told.
NOT_INCLUDED = (_SEALING, _HOLDS)
EARLIEST = "The end is the earliest: no time is included for "
_SCAFFOLDS = ("frame_scaffold", "system_scaffold")
_DOWN, _TIES, _REPAIR = "taking down the scaffold", "sealing tie places", "and repair"


class _Gathered(NamedTuple):
    """Tasks, the fields for want of which others are left out, what is to be told, and what takes no time."""

    tasks: list[Task]
    missing: list[Path]
    notes: list[str]
    untimed: dict[str, None]  # titles of what takes no time, for want of an output


def make_schedule(project: Description, ask: Ask) -> Schedule:
    """The schedule of a project, as far as it is known; raises Absent where no activity is, Refused."""
    before = _gather_before(project, ask)
    calendar, work = _gather_work(project, ask, before)
    notes = before.notes + work.notes
    gathered = _Gathered(before.tasks + work.tasks, before.missing + work.missing, notes, work.untimed)
    missing = tuple(dict.fromkeys(gathered.missing))
    if not gathered.tasks:
        raise Absent(*missing)
    clock = Clock(calendar)
    placed = place(gathered.tasks, clock)
    end, chain = max(one.end for one in placed.values()), find_chain(placed)
    told = (*_tell_first(placed[chain[0]].task), *notes)
    return Schedule(list_activities(placed, clock), chain, end, told, missing, tuple(gathered.untimed))


def _tell_first(task: Task) -> Iterator[str]:
    """The date given that the chain begins with."""
    if task.not_before is not None:
        day, field = long_date(task.not_before.moment.date()), dotted_path(task.not_before.path)
        where = f", {task.elevation}" if task.elevation else ""
        yield f"{task.title}{where}: not before {day} ({field})."


def _gather_before(project: Description, ask: Ask) -> _Gathered:
    """Review, colors and mockup; where they are not known, what they wait for."""
    try:
        return _Gathered(list(list_tasks_before(project, ask("earliest-start"))), [], [], {})
    except Absent as absent:
        told = ", ".join(map(dotted_path, absent.paths))
        return _Gathered([], list(absent.paths), [f"Review and mockup are not dated; add {told}."], {})


def _gather_work(project: Description, ask: Ask, before: _Gathered) -> tuple[WorkCalendar | None, _Gathered]:
    """The work on each elevation of which all is known, and the days kept for weather behind it."""
    work = _Gathered([], [], [], {})
    orders = list(list_main_orders(project))
    try:
        calendar, elevations = _read_calendar(project, dated=bool(before.tasks))
    except Absent as absent:
        work.missing.extend(absent.paths)
        work.notes.append(f"Work on the wall is not dated; add {', '.join(map(dotted_path, absent.paths))}.")
        # What its steps lack is asked for with it, not once the dates are given.
        lacking = _Gathered([], work.missing, [], {})
        for elevation in project.elevations if project.elevations.is_given() else ():
            _add_elevation(_work_on(project, elevation, ask, (), orders, {}), lacking)
        return None, work
    for elevation in elevations:
        behind = (ACCEPTANCE,) if before.tasks else ()
        one = _work_on(project, elevation, ask, behind, orders, work.untimed)
        _add_elevation(one, work)
    if work.tasks:
        work.tasks[:0] = orders
        work.tasks.extend(_list_weather_days(project, calendar, work.tasks))
        work.untimed.update(dict.fromkeys(_tell_untimed_view(project, work.tasks)))
        work.notes.extend(_tell_shaded(elevations, work.tasks))
        work.notes.extend(_tell_sun(elevations))
        work.notes.extend(_tell(project, calendar, work))
    return calendar, work


def _read_calendar(project: Description, *, dated: bool) -> tuple[WorkCalendar, list[Elevation]]:
    """The calendar and the elevations; raises Absent with all that they lack, the first day of an undated work too."""
    begin = project.schedule.get if dated else project.schedule.__getitem__
    calendar, elevations, _ = read_all(
        lambda: find_calendar(project), lambda: list(project.elevations), lambda: begin("work_start")
    )
    return calendar, elevations


def _work_on(
    project: Description,
    elevation: Elevation,
    ask: Ask,
    behind: tuple[str, ...],
    orders: list[Task],
    untimed: dict[str, None],
) -> ElevationWork:
    """The work on an elevation, with the deliveries it waits for and the days planned for its start."""
    color = elevation.get("color")
    wanted = [task.mark for task in orders if color is None or task.mark == order_mark(color.mark)]
    start, spray = (find_given_day(project, ("schedule", name)) for name in ("work_start", "spray_start"))
    later = max(filter(None, (start, spray)), key=lambda day: day.moment, default=None)
    return ElevationWork(elevation, load_standards(), ask, behind, tuple(wanted), start, later, untimed)


def _add_elevation(one: ElevationWork, work: _Gathered) -> None:
    try:
        work.tasks.extend(one.list_tasks())
    except Absent as absent:
        work.missing.extend(absent.paths)
        told = ", ".join(map(dotted_path, absent.paths))
        work.notes.append(f"{one.elevation.mark} is not scheduled; add {told}.")


def _list_weather_days(project: Description, calendar: WorkCalendar, tasks: list[Task]) -> Iterator[Task]:
    """The days kept for weather, as shifts behind all else that nothing follows."""
    days = project.schedule.get("weather_days")
    if days:
        followed = {mark for task in tasks for mark in task.after}
        last = tuple(task.mark for task in tasks if task.mark not in followed)
        title = f"Weather days: {days}"
        yield Task(WEATHER, title, "weather", take(calendar.shift * days), last)


def _tell_untimed_view(project: Description, tasks: list[Task]) -> Iterator[str]:
    """What lies before a final viewing and takes no time: the scaffold without an output, ties where there are any."""
    viewed = [task.kind for task in tasks if task.step == "final_viewing"]
    if viewed:
        tied = any(one.get("kind") in _SCAFFOLDS and one.get("tie_location") != "none" for one in project.access)
        parts = [] if "work" in viewed else [_DOWN]
        parts += [_TIES] if tied else []
        yield f"{', '.join(parts)}{', ' if len(parts) > 1 else ' ' if parts else ''}{_REPAIR}".removeprefix("and ")


def _tell_shaded(elevations: list[Elevation], tasks: list[Task]) -> Iterator[str]:
    """That coats are held out of the sun, and what is done where the face has too little shade of its own."""
    held = {task.elevation for task in tasks if task.hours and task.step in SUNLESS}
    if held:
        unshaded = any(find_unshaded_months(one) for one in elevations if one.mark in held)
        yield f"{_SHADED}{f'; {_UNSHADED.format(LEAST)}' if unshaded else ''}."


def _tell_sun(elevations: list[Elevation]) -> Iterator[str]:
    """Where primer and gloss keep to the usable hours, and where the sun on the face is not known."""
    hours = {elevation.mark: find_spray_hours(elevation) for elevation in elevations}
    if any(one.usable for one in hours.values()):
        yield f"{_SPRAYING}{'' if is_by_clock(elevations[0].project) else ', solar time taken as clock time'}."
    unknown = [mark for mark, one in hours.items() if not one.usable]
    if unknown:
        missing = dict.fromkeys(dotted_path(path) for mark in unknown for path in hours[mark].missing)
        yield f"Direct sun is not considered on {', '.join(unknown)}; add {', '.join(missing)}."


def _tell(project: Description, calendar: WorkCalendar, work: _Gathered) -> Iterator[str]:
    yield _DURATIONS
    if any(task.row == MASKED for task in work.tasks):
        yield _MASKING
    if any(task.row and task.step == "rasp" for task in work.tasks):
        yield _LEDGES
    if any(task.in_one_shift for task in work.tasks):
        yield _SET_UP
    if any(task.in_one_shift and task.step == "gloss" for task in work.tasks) and project.gloss.coats == 2:
        yield _GLOSS
    sealing = [task for task in work.tasks if task.step == "sealant" and task.kind == "work"]
    if sealing:
        yield _SEALED_WITHIN if all(task.hours for task in sealing) else _SEALING
    told = "hold points" if project.schedule.get("viewing_hours") is None else "other hold points"
    yield f"{_HOLDS}{told} is not included."
    if work.untimed:
        yield f"{EARLIEST}{', '.join(map(_lower, work.untimed))}."
    if is_weekend_taken(project):
        yield WEEKEND_TAKEN
    code = project.schedule.get("holidays")
    if code:
        yield f"Public holidays of {code} are days off, and the days on which they are observed."
    if calendar.runs_past_midnight and not project.schedule.get("night_work"):
        yield "The shift runs past midnight, and no night work is planned in schedule.night_work."
    if project.schedule.get("weather_days") is None:
        yield "No weather days are planned."


def _lower(title: str) -> str:
    return title[:1].lower() + title[1:]
