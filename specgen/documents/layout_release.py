"""By when the joint layout must be released: the first work that its lines bind, on the mockup or on the wall."""

from datetime import date
from typing import NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.mockup_days import find_mockup_day
from specgen.documents.schedule import find_schedule
from specgen.model.value_text import long_date

LAID_OUT = "board_layout"  # the step that nobody begins before the release
# The steps that need the lines, as they are told.
_BOUND = {
    LAID_OUT: "first board layout",
    "boards": "first boards",
    "aesthetic_joints": "first cut of aesthetic joints",
}


class LayoutRelease(NamedTuple):
    """The last day for the release, and what it is needed for."""

    latest: date
    follows: str


def tell_layout_release(context: DocumentContext) -> str:
    """`April 15, 2027 (first cut of aesthetic joints, on the mockup)`; empty where no work that needs it is dated."""
    release = find_layout_release(context)
    return f"{long_date(release.latest)} ({release.follows})" if release else ""


def find_layout_release(context: DocumentContext) -> LayoutRelease | None:
    """The last day for the release of the joint layout; None where no work that needs it is dated.

    Board joints keep clear of its lines, on the mockup as on the wall.
    """
    return context.project.remember((find_layout_release,), lambda: _look_up(context))


def _look_up(context: DocumentContext) -> LayoutRelease | None:
    found = []
    if context.project.get(("mockup", "accepted_on")) is None:
        days = ((find_mockup_day(context, Composer(), step), told) for step, told in _BOUND.items())
        found += [LayoutRelease(day, f"{told}, on the mockup") for day, told in days if day]
    schedule = find_schedule(context)
    works = [one for one in schedule.activities if one.kind == "work"] if schedule else []
    for step, told in _BOUND.items():
        begun = [one.start for one in works if one.step == step]
        if begun:
            found.append(LayoutRelease(min(begun).date(), f"{told}, on the wall"))
    return min(found, key=lambda one: one.latest, default=None)
