"""The time zone of the site: a name of the IANA time zone data, as the standard library finds it."""

from collections.abc import Iterator
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import suggest

AT = ("site", "time_zone")


def find_zone(name: str) -> ZoneInfo | None:
    """The time zone of a name; None where there is none of this name."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def zone_problems(project: Project) -> Iterator[Problem]:
    """What is wrong with the time zone of a project, and the names most like it."""
    name = project.values[AT]
    if find_zone(name) is None:
        known = sorted(zone for zone in available_timezones() if "/" in zone and not zone.startswith("Etc/"))
        near = suggest(name, known)
        hint = near if near.startswith("did") else "write a name such as America/Denver or Europe/Berlin"
        place = project.place(AT)
        yield Problem(f"{name!r} is not a time zone", hint, place.path, place.file, place.line, place.column)
