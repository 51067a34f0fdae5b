"""The schedule as documents show it: found once, its activities gathered by elevation and step, moments in words."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.computing.coats.day_area import BETWEEN, SET_UP
from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.calendar import MINUTE
from specgen.model.field import Path
from specgen.model.problem import Refused
from specgen.model.schedule import Activity, Schedule
from specgen.model.stage import PURPOSES
from specgen.scheduling.wall_work import TAKEN_DOWN

SPRAYED = ("primer", "gloss")  # steps
# Kinds of activities that are told in whole days.
BEFORE_WORK = ("review", "delivery", "mockup")
_QUARTER = timedelta(minutes=15)  # nothing on a wall is planned closer


class StepRow(NamedTuple):
    """What one step takes on an elevation, or an activity of the whole project."""

    elevation: str  # its mark; empty for the whole project
    title: str
    crew: str
    activities: tuple[Activity, ...]
    governs: bool  # whether one of them sets the end, or cannot move without moving it

    @property
    def start(self) -> datetime:
        """When its first activity begins."""
        return min(one.start for one in self.activities)

    @property
    def end(self) -> datetime:
        """When its last activity is over, drying and release included."""
        return max(one.end for one in self.activities)

    @property
    def spare(self) -> timedelta:
        """By how much it can move without moving the end."""
        return min(one.spare for one in self.activities)

    def span(self, *kinds: str) -> tuple[datetime, datetime] | None:
        """From the start of the first activity of these kinds to the end of the last."""
        found = [one for one in self.activities if one.kind in kinds]
        return (min(one.start for one in found), max(one.end for one in found)) if found else None


def find_schedule(context: DocumentContext) -> Schedule | None:
    """The schedule of the project; None where no activity can be dated."""
    return context.remember(_look_up)[0]


def list_untold(context: DocumentContext) -> tuple[Path, ...]:
    """The fields that must still be given before all of the schedule is known."""
    return context.remember(_look_up)[1]


def tell_refusal(context: DocumentContext) -> str:
    """Why the schedule cannot be made from what is given; empty where it can."""
    return context.remember(_look_up)[2]


def _look_up(context: DocumentContext) -> tuple[Schedule | None, tuple[Path, ...], str]:
    try:
        found: Schedule = context.resolve((), "schedule")
    except Absent as absent:
        return None, absent.paths, ""
    except Refused as refused:
        first = refused.problems[0]
        return None, (), f"{first.message}{f': {first.hint}' if first.hint else ''}"
    return found, found.missing, ""


def is_short(context: DocumentContext) -> bool:
    """Whether the package is for the mockup alone, so that only the dates up to it are owed."""
    return bool(context.project.get(("package", "purpose")) == PURPOSES["mockup"])


def list_step_rows(schedule: Schedule, context: DocumentContext) -> tuple[StepRow, ...]:
    """What belongs to the whole project, then each elevation in the order of the file, its steps by their start."""
    rows: dict[tuple[str, str], list[Activity]] = {}
    for one in schedule.activities:
        rows.setdefault((one.elevation, one.row or (one.step if one.elevation else one.mark)), []).append(one)
    order = {mark: number for number, mark in enumerate(context.project.members.get(("elevations",), ()), 1)}
    last = len(order) + 1
    chain = set(schedule.chain)
    made = [_make_row(context, key[0], activities, chain) for key, activities in rows.items()]
    weather = [row for row in made if row.activities[0].kind == "weather"]
    others = [row for row in made if row not in weather]
    others.sort(key=lambda row: (order.get(row.elevation, last) if row.elevation else 0, row.start))
    return (*others, *weather)


def _make_row(context: DocumentContext, elevation: str, activities: list[Activity], chain: set[str]) -> StepRow:
    first = activities[0]
    crews = dict.fromkeys(one.crew for one in activities if one.crew)
    if not crews and first.step not in TAKEN_DOWN:
        crews = dict.fromkeys(_list_named(context, first.step))
    governs = bool([one for one in activities if one.mark in chain or not one.spare])
    step = context.standards.steps.get(first.step) if elevation else None
    title = first.row or (first.title if step is None else step.title)
    return StepRow(elevation, title, ", ".join(crews), tuple(activities), governs)


def _list_named(context: DocumentContext, step: str) -> Iterable[str]:
    """The crews that name a step among theirs."""
    crews = context.project.members.get(("crews",), ())
    return [mark for mark in crews if step in (context.project.get(("crews", mark, "steps")) or ())]


def list_between_coats(context: DocumentContext, step: str) -> list[Fraction]:
    """The hours from a coat of a step to the next at the same place, on each elevation where the step has several."""
    schedule = find_schedule(context)
    of_face: dict[str, list[Activity]] = {}
    for one in schedule.activities if schedule else ():
        if one.step == step and one.elevation and one.kind in ("work", "drying"):
            of_face.setdefault(one.elevation, []).append(one)
    return [hours for activities in of_face.values() for hours in _list_between(context, activities)]


def _list_between(context: DocumentContext, activities: list[Activity]) -> Iterator[Fraction]:
    """From the end of each coat to the next one; within a day area, from its first pass to the second."""
    works = [one for one in activities if one.kind == "work"]
    dried = {one.start for one in activities if one.kind == "drying"}
    for one, behind in pairwise(works):
        if one.end in dried:
            yield Fraction((behind.start - one.end) // MINUTE, 60)
    touch_dry = context.project.get(("gloss", "touch_dry_hours"))
    if touch_dry is None or context.project.get(("gloss", "coats")) != 2 or any(one.end in dried for one in works[:-1]):
        return
    for one in works if works[0].step == "gloss" else ():
        passes = Fraction((one.end - one.start) // MINUTE, 60) - Fraction(SET_UP + BETWEEN)
        yield Fraction(BETWEEN) + max(Fraction(touch_dry), passes / 2)


def tell_moment(moment: datetime, year: int) -> str:
    """`Mon Jul 12, 06:00`, at the next quarter of an hour; the year beside the day where it is another."""
    moment = moment + (datetime.min - moment) % _QUARTER
    return f"{tell_day(moment.date(), year)}, {moment:%H:%M}"


def tell_day(day: date, year: int = 0) -> str:
    """`Mon Jul 12`; with the year where it is another than this one."""
    return f"{day:%a} {day:%b} {day.day}{f', {day.year}' if day.year != year else ''}"
