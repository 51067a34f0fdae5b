"""Every wait between steps: the least hours behind a step, those planned, and those that the schedule gives."""

from collections.abc import Iterator
from datetime import timedelta
from fractions import Fraction
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.drying import tell_least_hours
from specgen.documents.schedule import find_schedule
from specgen.model.schedule import Activity
from specgen.scheduling.applying import applies
from specgen.scheduling.drying import BETWEEN, DRYING, find_drying
from specgen.standards import load_standards

_HEADER = ("Step that dries", "Minimum", "Planned wait", "In the schedule", "Result")
_LONG = 96  # hours, above which a wait is told in days


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each step that dries on a wall of the project, and for each planned wait."""
    walls = context.project.members.get(("walls",), ())
    lines: list[tuple[Any, ...]] = []
    for name, step in context.standards.steps.items():
        if name in (DRYING | BETWEEN) and any(applies(step.when, context.project, wall) for wall in walls):
            lines += _list_lines(context, name, step.title)
    return TableView(_HEADER, tuple(lines), (30, 18, 22, 16, 14))


def _list_lines(context: DocumentContext, name: str, title: str) -> Iterator[tuple[Any, ...]]:
    least, given = tell_least_hours(context, name), _find_given(context, name)
    plans = [mark for mark in _list_plans(context) if context.project.get((*mark, "from_step")) == name]
    if not plans:
        yield title, least, "none; minimum applies", _tell_scheduled(given), _judge(context, name, given)
    for plan in plans:
        to_step = context.project.get((*plan, "to_step"))
        until = context.standards.steps[to_step].title if to_step else "next step"
        hours = context.project.get((*plan, "hours"))
        planned = [context.display((*plan, "hours")), f", to {until[:1].lower()}{until[1:]}"]
        yield (
            title,
            least,
            planned,
            _tell_scheduled(given),
            _judge(context, name, [] if hours is None else [Fraction(hours)]),
        )
        title = ""


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
        ended = max((one.start for one in activities if one.step == name and one.kind == "drying"), default=None)
        later = [one.start for one in activities if one.kind == "work" and one.step != name]
        waited = [start - ended for start in later if ended and start > ended]
        if waited:
            found.append(Fraction(min(waited) // timedelta(minutes=1), 60))
    return found


def _tell_scheduled(given: list[Fraction]) -> str:
    """`21 to 64 h`, `38 days`."""
    if not given:
        return ""
    days = max(given) > _LONG
    least, most = (f"{int(hours // (24 if days else 1))}" for hours in (min(given), max(given)))
    return f"{least if least == most else f'{least} to {most}'} {'days' if days else 'h'}"


def _judge(context: DocumentContext, name: str, waits: list[Fraction]) -> Any:
    """How the waits lie to the least hours of every wall, and to the recoat time; nothing where one is not known."""
    found = [find_drying(context.project, load_standards(), name, wall) for wall in context.project.members[("walls",)]]
    known = [one.hours for one in found if one is not None]
    if not waits or not known:
        return ""
    short, most = max(known) - min(waits), ("primer", "most_recoat_hours")
    if short > 0:
        return f"{float(short):g} h short"
    latest = context.project.get(most) if name == "primer" else None
    return ["over the recoat time of ", context.display(most)] if latest and max(waits) > latest else "OK"
