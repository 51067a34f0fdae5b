"""What the schedule holds beside the drying of coats: ledges that cure, tape on the wall, days left before a recoat."""

from datetime import date, datetime, timedelta
from fractions import Fraction
from itertools import pairwise

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.documents.schedule import find_schedule
from specgen.model.calendar import MINUTE, WorkDays
from specgen.model.field import Path
from specgen.model.schedule import Activity
from specgen.model.typed_views import root_of
from specgen.scheduling.wall_work import MASKED

LONG = 96  # hours, above which a wait is told in days
_MOST_DAYS = 30  # working days; more are no news
_TOUCH = ("gloss", "touch_dry_hours")


def find_open_smoothing(context: DocumentContext) -> date | None:
    """The day of the first smoothing coat, where the last one stands open for days until the season of spraying.

    How long it may stand in the weather is then asked before it is applied.
    """
    if context.project.get(("schedule", "spray_start")) is None:
        return None
    opened, begun = False, list[date]()
    for activities in _list_faces(context).values():
        smoothed = [one.start for one in activities if one.step in ("smoothing_1", "smoothing_2")]
        dries = [one.start for one in activities if one.step == "smoothing_2" and one.kind == "drying"]
        sprayed = [one.start for one in activities if one.step in ("protection", "primer") and one.kind == "work"]
        if dries and sprayed:
            begun.append(min(smoothed).date())
            opened |= min(sprayed) - max(dries) > timedelta(hours=LONG)
    return min(begun) if opened else None


def list_ledge_cures(context: DocumentContext) -> dict[str, list[Fraction]]:
    """By its row the hours from the bonding of a ledge to the rasping of its slope."""
    found: dict[str, list[Fraction]] = {}
    for activities in _list_faces(context).values():
        for row in dict.fromkeys(one.row for one in activities if one.step == "rasp" and one.row):
            works = [one for one in activities if one.row == row and one.kind == "work"]
            found[row] = [_count(before.end, after.start) for before, after in pairwise(works)]
    return found


def list_tape_stays(context: DocumentContext, step: str) -> list[Fraction]:
    """The hours from the masking for a sprayed coat until it is dry to touch, or its spraying is over, on each face."""
    row, found = MASKED if step == "gloss" else "", list[Fraction]()
    after = Fraction(context.project.get(_TOUCH) or 0) if step == "gloss" else Fraction(0)
    for activities in _list_faces(context).values():
        masked = [one.start for one in activities if one.step == "protection" and one.row == row]
        sprayed = [one for one in activities if one.step == step and one.kind == "work"]
        for start, next_start in pairwise([*masked, datetime.max]):
            ends = [one.end for one in sprayed if start <= one.start < next_start]
            found += [_count(start, max(ends)) + after] if ends else []
    return found


def find_tape_path(context: DocumentContext) -> Path | None:
    """The field of the shortest stay of a masking tape; None where none is given."""
    paths = [("accessories", mark, "most_days") for mark in context.project.members.get(("accessories",), ())]
    told = [path for path in paths if context.project.get(path) is not None]
    return min(told, key=lambda path: Fraction(context.project.value(path)), default=None)


def count_days_left(context: DocumentContext, most: Fraction) -> int | None:
    """How many working days more can be lost on every face between primer and gloss; None where none is planned."""
    days = find_work_days(root_of(context.project.view(())))
    left = []
    for activities in _list_faces(context).values():
        primed = [one.end for one in activities if one.step == "primer" and one.kind == "work"]
        glossed = [one.start for one in activities if one.step == "gloss" and one.kind == "work"]
        if primed and glossed:
            left.append(_count_left(days, max(primed), min(glossed), most))
    return min(left, default=None)


def _count_left(days: WorkDays, primed: datetime, glossed: datetime, most: Fraction) -> int:
    """How many working days later a coat can begin at the same hour within so many hours."""
    lost, day = 0, glossed.date()
    while lost < _MOST_DAYS:
        day = days.find_day(day + timedelta(days=1))
        if _count(primed, datetime.combine(day, glossed.time())) > most:
            break
        lost += 1
    return lost


def _list_faces(context: DocumentContext) -> dict[str, list[Activity]]:
    """The activities of each elevation in the order of their start."""
    schedule = find_schedule(context)
    faces: dict[str, list[Activity]] = {}
    for one in schedule.activities if schedule else ():
        if one.elevation:
            faces.setdefault(one.elevation, []).append(one)
    return faces


def _count(start: datetime, end: datetime) -> Fraction:
    return Fraction((end - start) // MINUTE, 60)
