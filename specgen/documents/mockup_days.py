"""The steps of the mockup and the day on which each can begin, by what dries and cures before it."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import ceil
from typing import Any

from specgen.computing.calendars import find_work_days
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import list_fluid_walls, list_mockup_walls
from specgen.documents.steps import StepPage, steps
from specgen.model.dates import days_after
from specgen.model.field import Path
from specgen.model.typed_views import root_of
from specgen.resolving.drying import DRYING, count_coats_within

# The mockup cannot wait for itself and has no parapet; equipment is cleaned at the end of the coats that name it.
_LEFT_OUT = {"mockup", "clean_equipment", "metal_caps", "final_viewing"}
_CLEANED = {"primer": ", then cleaning of spray equipment", "gloss": ", cleaning after each coat"}
# What is done once more before each coat of the gloss.
_AGAIN = {"protection": ", again before each coat", "setup": ", again before each coat"}
_DAY = 24  # hours
UNTOLD, _FOLLOWS = "Drying time", "follows"
_LAST_COAT = "the last gloss coat"
# Said once above the table.
_LONGER = re.compile(r", or longer in cool or damp weather(?: per its manufacturer)?")


@dataclass(frozen=True)
class MockupLine:
    """A step of the mockup; `days` lie between it and the next, None where a drying time is not given."""

    title: str
    wait: str
    point: str
    days: int | None = 0


def list_lines(context: DocumentContext, composer: Composer) -> tuple[MockupLine, ...]:
    """The steps for the walls of the mockup: access first, what only a mockup shows, acceptance last."""
    taken = steps(context, composer, list_mockup_walls(context))
    ordered = sorted((step for step in taken if step.name not in _LEFT_OUT), key=_rank)
    return tuple(_lines(context, composer, ordered))


def _rank(step: StepPage) -> int:
    return {"site_conditions": 0, "acceptance": 2}.get(step.name, 1)


def _lines(context: DocumentContext, composer: Composer, ordered: list[StepPage]) -> Iterator[MockupLine]:
    last_coat = "the recoated panel" if _shows(context, "recoat_patch") else _LAST_COAT
    sealed = any(step.name == "sealant" for step in ordered)
    for step in ordered:
        wait = _LONGER.sub("", step.wait)
        if step.name == "gloss":
            yield from _gloss(context, composer, step, wait, _LONGER.sub("", ordered[-1].wait))
            continue
        if step.name == "wrb" and list_fluid_walls(context):
            yield from _fluid(context, composer, step)
            continue
        if step.name == "sealant":
            yield from _sealant(context, composer, step, wait.replace(_LAST_COAT, last_coat))
            continue
        if step.name == "acceptance" and sealed:
            wait = ""  # for the pull that stands before it
        yield MockupLine(
            f"{step.title}{_CLEANED.get(step.name, '')}{_AGAIN.get(step.name, '')}",
            wait.replace(_LAST_COAT, last_coat),
            _point(step),
            _days_of(context, step.name),
        )


def _fluid(context: DocumentContext, composer: Composer, step: StepPage) -> Iterator[MockupLine]:
    """The barrier, and its release when it has dried, as its thickness is read dry."""
    hours = _longest(context, DRYING["wrb"])
    coats = max(count_coats_within(context.project, "wrb", wall) for wall in list_fluid_walls(context))
    dried = f"a minimum of {hours:g} h" if hours is not None else "per its manufacturer's written instructions"
    each = "each coat of the WRB" if coats > 1 else "the WRB"
    yield MockupLine(step.title, step.wait, "", coats if hours is None else ceil(coats * hours / _DAY))
    yield MockupLine("Release of the WRB", f"{each} has dried {dried}", _point(step))


def _sealant(context: DocumentContext, composer: Composer, step: StepPage, wait: str) -> Iterator[MockupLine]:
    """The sealant, and the hand pull that releases it when it has cured."""
    cure = composer.token(_sealant_cure(context))
    yield MockupLine(step.title, wait, "", _days_of(context, step.name))
    yield MockupLine("Sealant hand pull", f"the sealant has cured a minimum of {cure}", _point(step))


def _gloss(context: DocumentContext, composer: Composer, step: StepPage, wait: str, dried: str) -> Iterator[MockupLine]:
    """The gloss, what is sprayed on the day after its stop, and the panel that is recoated when it has dried."""
    title, days = f"{step.title}{_CLEANED['gloss']}", _days_of(context, "gloss")
    stop = _shows(context, "day_stop")
    yield MockupLine(title, wait, _point(step), 1 if stop else days)
    if stop:
        yield MockupLine("Gloss beyond the end-of-day stop, then cleaning", "the next working day", "", days)
    if _shows(context, "recoat_patch"):
        yield MockupLine("Recoated panel, then cleaning", f"{dried}{_tell_window(context, composer)}", "", days)


def _tell_window(context: DocumentContext, composer: Composer) -> str:
    """What a panel needs that is recoated later than its gloss allows."""
    most = ("gloss", "most_recoat_hours")
    if not context.project.is_given(most):
        return ""
    by = context.project.get(("gloss", "instructions"))
    how = f"{by}" if by else "the manufacturer's written instructions"
    return f"; after {composer.token(context.display(most))}, it is prepared per {how}"


def _shows(context: DocumentContext, detail: str) -> bool:
    return detail in (context.project.get(("mockup", "includes")) or ())


def _point(step: StepPage) -> str:
    return f"{step.point} ({step.point_of})" if step.point_of and step.point else step.point


def _sealant_cure(context: DocumentContext) -> DisplayValue:
    """The longest cure of any sealant before its hand pull; the usual one where no sealant is named."""
    sealants = context.project.members.get(("sealants",), ())
    given = [context.display(("sealants", mark, "pull_cure_days")) for mark in sealants]
    return max(given, key=lambda days: float(days.raw), default=context.limit("sealant.pull_cure"))


def _days_of(context: DocumentContext, step: str) -> int | None:
    """The days between a step and the next."""
    if step == "wrb":
        return 0
    if step == "sealant":
        return ceil(float(_sealant_cure(context).raw))
    path = DRYING.get(step)
    hours = _longest(context, path) if path else 0.0
    return None if hours is None else ceil(hours / _DAY)


def list_days(context: DocumentContext, lines: tuple[MockupLine, ...]) -> Iterator[str | DisplayValue]:
    """The day on which each step can begin as it prints; open at the first drying time not given."""
    start = context.project.get(("mockup", "planned_on"))
    untold: str | DisplayValue = DisplayValue(f"[{UNTOLD}]", open=True)
    for day in _count_days(context, lines):
        if day is None:
            yield untold
            untold = _FOLLOWS
            continue
        yield f"Day {day}{_tell_date(days_after(start, day - 1)) if start else ''}"


def list_drying_owners(context: DocumentContext, composer: Composer) -> list[str]:
    """The roles that owe the drying times which the days of the mockup wait for, each once."""
    taken = [step.name for step in steps(context, composer, list_mockup_walls(context)) if step.name in DRYING]
    owed = [DRYING[name] for name in taken if _longest(context, DRYING[name]) is None]
    return list(dict.fromkeys(context.project.schema.fields[path].owed_by for path in owed))


def find_last_day(context: DocumentContext, composer: Composer) -> int | None:
    """The number of the day on which the mockup can be accepted; None where a drying time is not given."""
    return [*_count_days(context, list_lines(context, composer))][-1]


def find_day(context: DocumentContext, composer: Composer, step: str) -> date | None:
    """The day on which a step of the mockup can begin; None where its start or a drying time before it is open."""
    start, lines = context.project.get(("mockup", "planned_on")), list_lines(context, composer)
    titles = [one.title for one in steps(context, composer, list_mockup_walls(context)) if one.name == step]
    days = [day for line, day in zip(lines, _count_days(context, lines), strict=True) if line.title in titles]
    return days_after(start, days[0] - 1) if start and days and days[0] is not None else None


def _count_days(context: DocumentContext, lines: tuple[MockupLine, ...]) -> Iterator[int | None]:
    """The number of the day on which each step can begin, from 1; None behind a drying time that is not given."""
    start = context.project.get(("mockup", "planned_on"))
    days = find_work_days(root_of(context.project.root()))
    day: int | None = 0
    for line in lines:
        yield None if day is None else day + 1
        day = None if day is None or line.days is None else day + line.days
        if start and line.days and day is not None:
            day = (days.find_day(days_after(start, day)) - start).days


def _tell_date(day: date) -> str:
    return f", {day:%a} {day:%b} {day.day}"


def _longest(context: DocumentContext, path: Path) -> float | None:
    """The longest drying time of a step in hours on the walls of the mockup; None where none is given."""
    project, walls = context.project, list_mockup_walls(context)
    places: list[Path] = [()]
    for name in path:
        places = [
            (*place, mark)
            for place in places
            for mark in ((name,) if name != "*" else walls if place == ("walls",) else project.members.get(place, ()))
        ]
    given: list[Any] = [project.get(place) for place in places]
    return max((float(hours) for hours in given if hours is not None), default=None)
