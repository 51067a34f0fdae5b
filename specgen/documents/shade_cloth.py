"""Shade cloth as it is hung for each day of a coat: by whom, from when, and until when, beside its hours of work."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from specgen.computing.calendars import find_calendar
from specgen.computing.shaded_hours import SETTING
from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.typed_views import root_of

_NO_DAY = date(2001, 1, 1)  # of hours alone, so that it is not printed


def list_cloths(context: DocumentContext) -> Iterator[tuple[list[str], str]]:
    """The elevations under cloth that is hung alike, and how: those alone whose time to hang it is given."""
    alike: dict[str, list[str]] = {}
    for mark in context.project.members.get(("shade",), ()):
        elevation, told = context.project.get(("shade", mark, "elevation")), _tell_cloth(context, mark)
        if elevation is not None and told:
            alike.setdefault(told, []).append(elevation.mark)
    yield from ((marks, told) for told, marks in alike.items())


def _tell_cloth(context: DocumentContext, mark: str) -> str:
    """When cloth is hung and taken down; nothing where the time that it takes, or the shift, is not given."""
    kind, minutes, persons = (
        context.project.get(("shade", mark, name)) for name in ("kind", "rig_minutes", "rigged_by")
    )
    if kind != "shade_cloth" or minutes is None:
        return ""
    try:
        calendar = find_calendar(root_of(context.project.view(())))
    except Absent:
        return ""
    start = datetime.combine(_NO_DAY, calendar.shift_start)
    rig = timedelta(minutes=float(minutes))
    last = start + calendar.shift + timedelta(hours=SETTING)
    by = f", by {persons}" if persons else ""
    return (
        f"each day of a coat or of sealing: hung from {start - rig:%H:%M} to {start:%H:%M}{by}; left up until the last "
        f"coat is set, {last:%H:%M} at the latest ({SETTING:g} h after the shift: common practice, no source); down by "
        f"{last + rig:%H:%M}. These hours are in addition to the shift, and not in the outputs"
    )
