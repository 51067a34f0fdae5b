"""The days of the mockup: what dries by the clock, and the next step in the shift behind it."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, time, timedelta
from fractions import Fraction
from math import ceil

from specgen.computing.calendars import find_work_days, to_stretch
from specgen.computing.time.minimum_elapsed import is_on_mockup
from specgen.model.absence import Absent
from specgen.model.calendar import WorkCalendar, WorkDays, add_clock_time
from specgen.model.project import Project
from specgen.model.typed_views import Description
from specgen.resolving.drying import BETWEEN, DRYING, count_coats_within, list_applying, list_drying_paths

# The steps behind which something dries before the first coat in the color, in the order of the work.
_BEFORE_PRIMER = ("wrb", "boards", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2")
# The shift where none is given: common practice, no source.
USUAL_START, USUAL_HOURS = time(7), 8
_DAY = 24  # hours
UNTOLD_BARRIER = Fraction(_DAY)  # hours for a coat of the barrier whose manufacturer alone tells them


def find_mockup_calendar(project: Description, *, dated: bool) -> WorkCalendar:
    """The working calendar of the mockup, with the usual shift where none is given; undated, every day is worked.

    Raises Refused.
    """
    start, hours = (project.schedule.get(name) for name in ("shift_start", "shift_hours"))
    days = find_work_days(project) if dated else WorkDays(frozenset())
    shift = to_stretch(Fraction(hours)) if hours else timedelta(hours=USUAL_HOURS)
    return WorkCalendar(days, start or USUAL_START, shift)


def find_start_behind(calendar: WorkCalendar, moment: datetime, hours: Fraction) -> datetime:
    """When the next step can begin behind so many hours of drying, which go on through nights and days off.

    In the shift under way where they end in it; else so many begun days later, as the hour of the work is not planned.
    """
    ready = add_clock_time(moment, to_stretch(hours))
    if ready < calendar.find_shift(moment).end or not hours:
        return ready
    return calendar.find_start(add_clock_time(moment, timedelta(days=ceil(hours / _DAY))))


def find_mockup_drying(project: Project, step: str, walls: Iterable[str]) -> Fraction | None:
    """The longest hours given that dry behind one coat of a step on these walls: 0 where nothing does.

    None where they are not given.
    """
    longest, pattern = Fraction(0), DRYING.get(step) or BETWEEN.get(step) or ()
    for wall in walls if pattern else ():
        paths = list_drying_paths(project, pattern, wall)
        given = [Fraction(project.value(path)) for path in paths if project.get(path) is not None]
        if not given and _may_dry(project, step, wall):
            return None
        longest = max([longest, *given])
    return longest


def has_adhesive_pulls(project: Project, walls: Iterable[str]) -> bool:
    """Whether adhesive is pulled off the concrete of one of these walls before boards are set, once it has cured."""
    kinds = {wall: project.get(("walls", wall, "substrate", "kind")) for wall in walls}
    methods = (
        project.get(("walls", wall, "attachment", "method")) for wall, kind in kinds.items() if kind == "concrete"
    )
    return any(method not in (None, "mechanical") for method in methods)


def _may_dry(project: Project, step: str, wall: str) -> bool:
    """Whether something dries behind a step on a wall, or whether that is not known; a barrier, if it is told fluid."""
    if step == "wrb":
        return bool(project.get(("walls", wall, "wrb", "kind")) == "fluid_applied")
    try:
        return bool(list_applying(project, step, wall))
    except Absent:
        return True


def count_days_to_primer(project: Description, start: date) -> int | None:
    """The days from the start of the mockup to its first coat of primer, by what dries before it.

    None where drying times or the walls of the mockup are not given. Raises Refused.
    """
    walls = [wall.mark for wall in project.walls if is_on_mockup(wall)] if project.walls.is_given() else []
    calendar = find_mockup_calendar(project, dated=True)
    first = moment = datetime.combine(start, calendar.shift_start)
    for hours in _list_waits(project, walls):
        if hours is None:
            return None
        moment = find_start_behind(calendar, moment, hours)
    return (moment.date() - first.date()).days if walls else None


def require_drying_to_primer(project: Description) -> None:
    """Raises Absent for the hours without which nobody can tell when the mockup takes its first coat of primer."""
    walls = [wall.mark for wall in project.walls if is_on_mockup(wall)]
    for step in _BEFORE_PRIMER:
        if step == "wrb" or not _count_coats(project, step, walls) or find_mockup_drying(project.project, step, walls):
            continue
        pattern = DRYING.get(step) or BETWEEN[step]
        for path in (path for wall in walls for path in list_drying_paths(project.project, pattern, wall)):
            raise Absent(path)


def _list_waits(project: Description, walls: list[str]) -> Iterator[Fraction | None]:
    """The hours behind each coat before the primer, coat by coat, and behind adhesive that is pulled before boards."""
    if has_adhesive_pulls(project.project, walls):
        yield find_mockup_drying(project.project, "boards", walls)
    for step in _BEFORE_PRIMER:
        hours = find_mockup_drying(project.project, step, walls)
        hours = UNTOLD_BARRIER if hours is None and step == "wrb" else hours
        for _ in range(_count_coats(project, step, walls)):
            yield hours


def _count_coats(project: Description, step: str, walls: list[str]) -> int:
    """How many coats of a step are each dry before what follows; of smoothing all but the last are the first step."""
    if step in BETWEEN:
        return max((project.smoothing.get("coats") or 0) - 1, 0)
    return max((count_coats_within(project.project, step, wall) for wall in walls), default=1) if step in DRYING else 0
