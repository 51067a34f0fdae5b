"""By when the test beads of sealant are placed on each elevation: they cure before their pull and before sealing."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.mockup_days import find_pull_cure
from specgen.documents.mockup_tests import BEADED
from specgen.documents.schedule import find_schedule, tell_day


def list_bead_days(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """`E1 Thu Aug 12; E2 Wed Aug 18`: so many days of cure before the first sealing of each; nothing without beads."""
    cure = find_pull_cure(context)
    days = {mark: day - timedelta(days=float(cure.raw)) for mark, day in _find_sealing(context).items()}
    told = "; ".join(f"{mark} {tell_day(day, 0)}" for mark, day in days.items())
    if told:
        yield "Sealant test beads placed, latest", [f"{told}; ", cure, " of cure before the pull and sealing"]


def _find_sealing(context: DocumentContext) -> dict[str, date]:
    """The day on which each elevation is first sealed that has a joint with a test bead."""
    schedule = find_schedule(context)
    found: dict[str, date] = {}
    for one in schedule.activities if schedule else ():
        if one.step == "sealant" and one.kind == "work" and _has_bead(context, one.elevation):
            found[one.elevation] = min(found.get(one.elevation, date.max), one.start.date())
    return {mark: found[mark] for mark in context.project.members.get(("elevations",), ()) if mark in found}


def _has_bead(context: DocumentContext, elevation: str) -> bool:
    project = context.project
    mine = (
        mark
        for mark in project.members.get(("joints",), ())
        if str(project.get(("joints", mark, "elevation")) or elevation) == elevation
    )
    return any(project.get(("joints", mark, "kind")) in BEADED for mark in mine)
