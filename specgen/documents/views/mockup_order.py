"""The steps of the mockup in order: the earliest day, what each waits for, hold or witness point."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import ceil
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.steps import StepPage, steps
from specgen.model.dates import days_after
from specgen.model.evaluation import evaluate
from specgen.model.field import Path

# The mockup cannot wait for itself, and the meeting is held once for the whole job.
_LEFT_OUT = {"site_conditions", "mockup"}
# The hours that each of these steps dries or cures before the next; of several walls the longest count.
_DRYING = {
    "boards": ("walls", "*", "attachment", "cure_hours"),
    "heavy_mesh": ("walls", "*", "mesh", "layers", "*", "dry_hours"),
    "mesh": ("walls", "*", "base_coat", "first_pass_dry_hours"),
    "second_pass": ("walls", "*", "base_coat", "cure_hours"),
    "smoothing_2": ("smoothing", "dry_hours"),
    "primer": ("primer", "dry_hours"),
    # The gloss dries while the equipment is cleaned.
    "clean_equipment": ("gloss", "dry_hours"),
}
_DAY = 24  # hours
_YEAR = 366  # days
_WEEKEND = ("sat", "sun")
_NONE = "–"
_FOLLOWS = "follows"
_LAST_COAT = "the last gloss coat"
# Said once above the table.
_LONGER = re.compile(r", or longer in cool or damp weather(?: per its manufacturer)?")


@dataclass(frozen=True)
class _Line:
    """A row of the table; `days` lie between it and the next, None where a drying time is not given."""

    title: str
    wait: str
    point: str
    days: int | None = 0


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row per step: number, earliest day, what it waits for, title, hold or witness point."""
    lines = list(_lines(context, composer))
    cells = [
        (
            str(number),
            day,
            composer.inlines(_LONGER.sub("", line.wait)) if line.wait else _NONE,
            line.title,
            line.point or _NONE,
        )
        for number, (line, day) in enumerate(zip(lines, _days(context, lines), strict=True), 1)
    ]
    header = ("No.", "Earliest day", "Do not begin until", "Step", "Point")
    return TableView(header, tuple(cells), (5, 19, 30, 25, 21))


def _lines(context: DocumentContext, composer: Composer) -> Iterator[_Line]:
    """The steps of the work, and behind the gloss what only a mockup shows; acceptance last, after the sealant."""
    ordered = [step for step in steps(context, composer) if step.name not in _LEFT_OUT]
    ordered.sort(key=lambda step: step.name == "acceptance")
    shown = context.project.get(("mockup", "includes")) or ()
    recoat, stop = "recoat_patch" in shown, "day_stop" in shown
    finished = False
    for step in ordered:
        wait = step.wait.replace(_LAST_COAT, "the recoated panel") if finished else step.wait
        if step.name == "acceptance" and any(other.name == "sealant" for other in ordered):
            wait = f"the sealant has cured per its manufacturer's written instructions; {wait}"
        stopped = stop and step.name == "gloss"
        yield _Line(step.title, wait, _point(step), 1 if stopped else _days_of(context, step.name))
        if stopped:
            yield _Line(f"{step.title}, beyond the end-of-day stop", "the next working day", "")
        if recoat and step.name == "clean_equipment":
            yield _Line("Recoated panel", ordered[-1].wait, "", _days_of(context, step.name))
            finished = True


def _point(step: StepPage) -> str:
    return f"{step.point} ({step.point_of})" if step.point_of and step.point else step.point


def _days_of(context: DocumentContext, step: str) -> int | None:
    """The days between a step and the next; a fluid-applied WRB is given one."""
    if step == "board_layout":
        return int(evaluate("walls.*.wrb.kind = fluid_applied", context.project))
    path = _DRYING.get(step)
    hours = _longest(context, path) if path else 0.0
    return None if hours is None else ceil(hours / _DAY)


def _days(context: DocumentContext, lines: list[_Line]) -> Iterator[str | DisplayValue]:
    """The day on which each step can begin by the drying before it; open at the first drying time not given."""
    start = context.project.get(("mockup", "planned_on"))
    off = context.project.get(("schedule", "days_off")) or _WEEKEND
    day: int | None = 0
    untold: str | DisplayValue = DisplayValue("[Drying time]", open=True)
    for line in lines:
        if day is None:
            yield untold
            untold = _FOLLOWS
            continue
        yield f"Day {day + 1}{_tell_date(days_after(start, day)) if start else ''}"
        day = None if line.days is None else day + line.days
        if start and line.days and day is not None:
            day = _working_day(start, day, off)


def _tell_date(day: date) -> str:
    return f", {day:%a} {day:%b} {day.day}"


def _working_day(start: date, day: int, off: tuple[str, ...]) -> int:
    """This day or the first working day after it; itself where a year has none."""
    later = range(day, day + _YEAR)
    return next((one for one in later if not _is_off(days_after(start, one), off)), day)


def _is_off(day: date, off: tuple[str, ...]) -> bool:
    """Whether no work is done on a day: a day of the week, or a date."""
    return f"{day:%a}".lower() in off or day.isoformat() in off


def _longest(context: DocumentContext, path: Path) -> float | None:
    """The longest drying time of a step in hours; None where none is given."""
    project = context.project
    places: list[Path] = [()]
    for name in path:
        places = [
            (*place, mark) for place in places for mark in (project.members.get(place, ()) if name == "*" else (name,))
        ]
    given: list[Any] = [project.get(place) for place in places]
    return max((float(hours) for hours in given if hours is not None), default=None)
