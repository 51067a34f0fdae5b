"""The steps of the mockup in order: the earliest day, what each waits for, hold or witness point."""

from collections.abc import Iterator
from math import ceil
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.steps import StepPage, steps
from specgen.model.block import Blank
from specgen.model.dates import days_after
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
_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row per step: number, earliest day, what it waits for, title, hold or witness point."""
    ordered = _in_order(context, composer)
    lines = [
        (
            str(number),
            day or Blank(f"Day of {step.title}"),
            composer.inlines(step.wait) if step.wait else _NONE,
            step.title,
            f"{step.point} ({step.point_of})" if step.point_of and step.point else step.point or _NONE,
        )
        for number, (step, day) in enumerate(zip(ordered, _days(context, ordered), strict=True), 1)
    ]
    header = ("No.", "Earliest day", "Do not begin until", "Step", "Point")
    return TableView(header, tuple(lines), (6, 15, 34, 24, 21))


def _in_order(context: DocumentContext, composer: Composer) -> list[StepPage]:
    """The steps of the work, with acceptance last, after the sealant joint."""
    mockup_steps = [step for step in steps(context, composer) if step.name not in _LEFT_OUT]
    return sorted(mockup_steps, key=lambda step: step.name == "acceptance")


def _days(context: DocumentContext, ordered: list[StepPage]) -> Iterator[str]:
    """The day on which each step can begin by the drying before it; empty from the first drying time not given on."""
    start, hours = context.project.get(("mockup", "planned_on")), 0.0
    known = True
    for step in ordered:
        day = ceil(hours / _DAY)
        date = f", {days_after(start, day):%b} {days_after(start, day).day}" if start else ""
        yield f"Day {day + 1}{date}" if known else ""
        if step.name in _DRYING:
            drying = _longest(context, step.name)
            known, hours = known and drying is not None, hours + (drying or 0.0)


def _longest(context: DocumentContext, step: str) -> float | None:
    """The longest drying time of a step in hours; None where none is given."""
    project = context.project
    places: list[Path] = [()]
    for name in _DRYING[step]:
        places = [
            (*place, mark) for place in places for mark in (project.members.get(place, ()) if name == "*" else (name,))
        ]
    given: list[Any] = [project.get(place) for place in places]
    return max((float(hours) for hours in given if hours is not None), default=None)
