"""The time zone of the site: a name of the IANA time zone data, as the standard library finds it."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import suggest

AT = ("site", "time_zone")
_LONGITUDE = ("site", "longitude")
# More hours than these between sun and clock has no zone: in the west of China they are three.
_MOST_APART = 4.0
_ANY_DAY = date(2027, 3, 1)


def find_zone(name: str) -> ZoneInfo | None:
    """The time zone of a name; None where there is none of this name."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def suggest_zone(name: str) -> str:
    """The names most like one that is none."""
    known = sorted(zone for zone in available_timezones() if "/" in zone and not zone.startswith("Etc/"))
    near = suggest(name, known)
    return near if near.startswith("did") else "write a name such as America/Denver or Europe/Berlin"


def find_offset(zone: ZoneInfo, day: date) -> float:
    """Hours by which the clock of a zone is ahead of UTC at noon of a day, with summer time."""
    noon = datetime.combine(day, time(12))
    return (noon.replace(tzinfo=UTC) - noon.replace(tzinfo=zone)) / timedelta(hours=1)


def is_far(longitude: float, offset: float) -> bool:
    """Whether a longitude in degrees cannot lie in a zone that is so many hours ahead of UTC."""
    return abs((longitude - 15 * offset + 180) % 360 - 180) > 15 * _MOST_APART


def tell_far(longitude: float, zone: str) -> tuple[str, str]:
    """What is wrong with a longitude that does not lie in a zone, and what would be right."""
    return f"longitude {longitude:g}° does not lie in {zone}", "write degrees east of Greenwich, minus west of it"


def zone_problems(project: Project) -> Iterator[Problem]:
    """What is wrong with the time zone of a project, and the names most like it; and a longitude far from it."""
    name, longitude = project.values[AT], project.values.get(_LONGITUDE)
    zone, place = find_zone(name), project.place(AT)
    if zone is None:
        yield Problem(
            f"{name!r} is not a time zone", suggest_zone(name), place.path, place.file, place.line, place.column
        )
    elif longitude is not None and is_far(east := float(longitude.number("deg")), find_offset(zone, _ANY_DAY)):
        place = project.place(_LONGITUDE)
        yield Problem(*tell_far(east, name), place.path, place.file, place.line, place.column)
