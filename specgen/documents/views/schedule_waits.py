"""Every wait between steps: the least hours behind a step, those planned, and those that the schedule gives."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, timedelta
from fractions import Fraction
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.drying import tell_least_hours
from specgen.documents.schedule import SPRAYED, find_schedule, list_between_coats
from specgen.documents.schedule_beside import (
    LONG,
    count_days_left,
    find_open_smoothing,
    find_tape_path,
    list_ledge_cures,
    list_tape_stays,
)
from specgen.model.field import Path
from specgen.model.schedule import Activity
from specgen.model.source import Kind
from specgen.model.typed_views import root_of
from specgen.model.value_text import count
from specgen.resolving.drying import BETWEEN, DRYING, count_coats_within, find_drying
from specgen.scheduling.applying import applies
from specgen.scheduling.waits import find_sealant_cure
from specgen.standards import load_standards

_WIDTHS = (26, 13, 13, 18, 14, 16)
_HOURS_OF_DAY = 24
_MOST = {"primer": ("primer", "most_recoat_hours")}  # the last hour of the next coat
_AGAIN = ("gloss", "most_recoat_hours")
_OPEN = ("smoothing", "most_open_days")
_LONGEST = {**_MOST, "smoothing_2": _OPEN}  # what the column of maximums says
_BARRIER, _COVER = "wrb", "boards"
_EXPOSED = ("wrb", "most_exposure_days")
_CURE = "sealant.pull_cure"  # the row of the limits
_TOUCH = ("gloss", "touch_dry_hours")
Line = tuple[Any, ...]  # step, minimum, maximum, planned wait, in the schedule, result


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each step that dries on a wall of the project, and for each planned wait."""
    walls = context.project.members.get(("walls",), ())
    lines: list[Line] = []
    for name, step in context.standards.steps.items():
        dries = name == "sealant" or name in (DRYING | BETWEEN)
        if dries and any(applies(step.when, context.project, wall) for wall in walls):
            if any(count_coats_within(context.project, name, wall) > 1 for wall in walls):
                given = list_between_coats(context, name)
                least = tell_least_hours(context, name)
                result = _judge(context, name, given)
                lines.append((f"{step.title}, between coats", least, "", "", _tell_scheduled(given), result))
            lines += _list_lines(context, name, step.title)
            lines += _list_beside(context, name)
    header: tuple[str, ...] = ("Step that dries", "Minimum", "Maximum", "Planned wait", "In the schedule", "Result")
    widths: tuple[int, ...] = _WIDTHS
    if not any(line[3] for line in lines):  # a column that says nothing
        header, widths = (*header[:3], *header[4:]), (*widths[:3], *widths[4:])
        lines = [(*line[:3], *line[4:]) for line in lines]
    return TableView(header, tuple(lines), widths)


def _list_lines(context: DocumentContext, name: str, title: str) -> Iterator[Line]:
    if name == "sealant":
        wait = find_sealant_cure(root_of(context.project.view(())), context.standards)
        hours = wait.length / timedelta(hours=1)
        source = wait.source if wait.source and wait.source.kind is not Kind.PROJECT else None
        row = _CURE if source else ""
        cure = DisplayValue(_tell_length(hours), hours, source, about="Cure of the sealant", row=row)
        cured = _find_cured(context)
        yield title, cure, "", "", _tell_scheduled(cured), _tell_kept(Fraction(hours), cured)
        return
    if name == "gloss" and context.project.get(("gloss", "coats")) != 1:
        given = list_between_coats(context, name)
        least, most = (context.project.get(path) for path in (_TOUCH, _AGAIN))
        result: Any = "" if least is None else _tell_kept(Fraction(least), given)
        if most is not None and given and max(given) > most:
            result = _tell_over(context, _AGAIN)
        told = _tell_scheduled(given)
        yield f"{title}, between coats", context.display(_TOUCH), _tell_most(context, _AGAIN), "", told, result
    least, given = tell_least_hours(context, name), _find_given(context, name)
    longest = _find_exposure(context) if name == _BARRIER else _LONGEST.get(name)
    most = _tell_most(context, longest) if longest else ""
    plans = [mark for mark in _list_plans(context) if context.project.get((*mark, "from_step")) == name]
    if not plans:
        told = _tell_scheduled(given, in_hours=name in _MOST and bool(most))
        yield title, least, most, "", told, _tell_result(context, name, given)
    for plan in plans:
        to_step = context.project.get((*plan, "to_step"))
        until = context.standards.steps[to_step].title if to_step else "next step"
        hours = context.project.get((*plan, "hours"))
        planned = [context.display((*plan, "hours")), f", to {until[:1].lower()}{until[1:]}"]
        result = _judge(context, name, [] if hours is None else [Fraction(hours)])
        yield title, least, most, planned, _tell_scheduled(given), _leave_open(context, name, result)
        title = ""


def _list_beside(context: DocumentContext, name: str) -> Iterator[Line]:
    """What is told by itself behind a step: the cure of ledges added to boards, and tape before a sprayed coat."""
    for row, given in list_ledge_cures(context).items() if name == "boards" else ():
        yield row, tell_least_hours(context, name), "", "", _tell_scheduled(given), _judge(context, name, given)
    stays, path = list_tape_stays(context, name) if name in SPRAYED else [], find_tape_path(context)
    if stays and path is not None:
        most = Fraction(context.project.value(path)) * _HOURS_OF_DAY
        result = "OK" if max(stays) <= most else "over it: take the tape off, and mask again"
        title = f"Masking tape before {'gloss' if name == 'gloss' else 'primer'}, until off"
        yield title, "", context.display(path), "", _tell_scheduled(stays), result


def _leave_open(context: DocumentContext, name: str, result: Any) -> Any:
    """The result, which a draft leaves open while it asks for the longest wait."""
    asks = context.is_marked and name in _MOST and context.project.get(_MOST[name]) is None
    return "minimum kept; maximum pending, D19" if asks and result == "OK" else result


def _tell_margin(context: DocumentContext, name: str) -> Any:
    """That waits are kept, and how many working days more can be lost before the last hour of the next coat."""
    most = context.project.get(_MOST[name])
    if most is None:
        return _leave_open(context, name, "OK")
    left = count_days_left(context, Fraction(most))
    return "OK" if left is None else f"OK; {count(left, 'more working day')} can be lost before gloss"


def _tell_most(context: DocumentContext, path: Path) -> Any:
    """The longest wait that the manufacturer allows; nothing where none is given."""
    return "" if context.project.get(path) is None else context.display(path)


def _find_cured(context: DocumentContext) -> list[Fraction]:
    """The hours of cure behind each sealant in the schedule."""
    schedule = find_schedule(context)
    every = schedule.activities if schedule else ()
    cures = [one.end - one.start for one in every if one.step == "sealant" and one.kind == "drying"]
    return [Fraction(cure // timedelta(minutes=1), 60) for cure in cures]


def _tell_length(hours: float) -> str:
    return count(round(hours / 24), "day") if hours > LONG else f"{hours:g} h"


def _list_plans(context: DocumentContext) -> Iterator[tuple[str, ...]]:
    for mark in context.project.members.get(("schedule", "gaps"), ()):
        yield "schedule", "gaps", mark


def _find_given(context: DocumentContext, name: str) -> list[Fraction]:
    """The hours from the end of a step to the next work on the same elevation, on each of them."""
    schedule = find_schedule(context)
    by_face: dict[str, list[Activity]] = {}
    for one in schedule.activities if schedule else ():
        by_face.setdefault(one.elevation, []).append(one)
    found = []
    for activities in by_face.values():
        dries = (one.start for one in activities if one.step == name and one.kind == "drying" and not one.row)
        ended = max(dries, default=None)
        # A coat is recoated at the next coat, not when it is read and masked for its release.
        between = {name, *(step.name for step in context.standards.steps.values() if step.releases == name)}
        later = [one.start for one in activities if one.kind == "work" and one.step not in between and not one.row]
        waited = [start - ended for start in later if ended and start > ended]
        if waited:
            found.append(Fraction(min(waited) // timedelta(minutes=1), 60))
    return found


def _tell_scheduled(given: list[Fraction], *, in_hours: bool = False) -> str:
    """`21 to 64 h`, `38 days`, to the nearest; what is short stands in hours, as its minimum does."""
    if not given:
        return ""
    (least, unit), (most, other) = map(_tell_rounded, (min(given), max(given)))
    if unit != other or in_hours:  # a range, and what a maximum in hours is held against, has one unit
        least, most, unit = f"{round(min(given))}", f"{round(max(given))}", "h"
    return f"{least if least == most else f'{least} to {most}'} {unit}"


def _tell_rounded(hours: Fraction) -> tuple[str, str]:
    days = hours > LONG
    return f"{round(hours / 24) if days else round(hours)}", "days" if days else "h"


def _tell_result(context: DocumentContext, name: str, given: list[Fraction]) -> Any:
    """How the waits lie to their hours; of a last smoothing coat that stands open for days, what it waits for."""
    result, begins = _judge(context, name, given), ("schedule", "spray_start")
    if name == _BARRIER and result == "OK":
        return _tell_covered(context)
    opened = name == "smoothing_2" and find_open_smoothing(context) is not None
    if not opened or result != "OK":
        return _tell_margin(context, name) if result == "OK" and name in _MOST else result
    # The least wait is kept; how long the coat may stand in the weather, its maker says or is asked.
    told: list[Any] = ["minimum kept; open until spraying, from ", context.display(begins)]
    if context.project.get(_OPEN) is None:
        if context.is_marked:
            return [*told, "; ", context.ask(_OPEN)]
        return [*told, ": obtain in writing, before the first smoothing coat, how long it may be"]
    over = max(given) / _HOURS_OF_DAY > context.project.get(_OPEN)
    return [*told, ", over the maximum of " if over else ", within ", context.display(_OPEN)]


def _find_exposure(context: DocumentContext) -> Path | None:
    """The field of the shortest time that a water-resistive barrier may stand in the weather; None where none is told.

    Board covers it.
    """
    paths = [("walls", mark, *_EXPOSED) for mark in context.project.members[("walls",)]]
    told = [path for path in paths if context.project.get(path) is not None]
    return min(told, key=lambda path: int(context.project.value(path)), default=None)


def _tell_covered(context: DocumentContext) -> Any:
    """Whether board covers the barrier of each elevation in time, as the schedule has it."""
    schedule = find_schedule(context)
    ends: dict[str, dict[str, datetime]] = defaultdict(dict)
    for one in schedule.activities if schedule else ():
        if one.kind == "work" and one.step in (_BARRIER, _COVER):
            ends[one.elevation][one.step] = max(one.end, ends[one.elevation].get(one.step, one.end))
    for mark, face in ends.items():
        wall = context.project.value(("elevations", mark, "wall"))
        path = ("walls", wall.mark, *_EXPOSED)
        most = context.project.get(path)
        if most is not None and len(face) > 1 and face[_COVER] - face[_BARRIER] > timedelta(days=int(most)):
            return [f"{mark}: over the maximum of ", context.display(path)]
    return "OK"


def _judge(context: DocumentContext, name: str, waits: list[Fraction]) -> Any:
    """How the waits lie to the least hours of every wall, and to the recoat time; nothing where one is not known."""
    found = [find_drying(context.project, load_standards(), name, wall) for wall in context.project.members[("walls",)]]
    known = [one.hours for one in found if one is not None]
    if not waits or not known:
        return ""
    latest = context.project.get(_MOST[name]) if name in _MOST else None
    if latest and max(waits) > latest and max(known) <= min(waits):
        return _tell_over(context, _MOST[name])
    return _tell_kept(max(known), waits)


def _tell_kept(least: Fraction, waits: list[Fraction]) -> str:
    """Whether every wait is as long as the least; nothing where none is known."""
    if not waits:
        return ""
    short = least - min(waits)
    return f"{float(short):g} h short" if short > 0 else "OK"


def _tell_over(context: DocumentContext, most: Path) -> list[Any]:
    return ["over the recoat time of ", context.display(most)]
