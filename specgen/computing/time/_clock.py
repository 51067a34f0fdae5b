"""The clock of a site under the sun: its place and its offset from UTC on a day, and the lines that turn solar time."""

from datetime import date
from typing import NamedTuple

from specgen.computing.sun_clock import EQUATION, count_ahead, turn_near
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import InvalidValue
from specgen.reading.time_zones import find_offset, find_zone, is_far, suggest_zone, tell_far


class Clock(NamedTuple):
    """The clock of a site on a day."""

    zone: str  # its name in the IANA data
    longitude: float  # degrees east, as near to the meridian of the clock as whole turns bring it
    offset: float  # hours ahead of UTC, with summer time

    def count_ahead(self, day: int) -> float:
        """Hours by which solar time is ahead of it on a day of the year."""
        return count_ahead(day, self.longitude, self.offset)

    def rows(self) -> tuple[InputRow, ...]:
        """The lines of longitude and offset."""
        return (
            InputRow("G", "longitude of the site, east", self.longitude, "deg", "site.longitude"),
            InputRow("z", "clock ahead of UTC", self.offset, "h", f"time zone {self.zone}"),
        )


def read_zone(text: str) -> str:
    """The name of a time zone; raises InvalidValue for any other text."""
    if find_zone(text) is None:
        raise InvalidValue(f"{text!r} is not a time zone", suggest_zone(text))
    return text


def find_clock(longitude: Quantity | None, zone: str | None, day: date) -> Clock | None:
    """The clock at noon of a day; None where the place or the zone is not given."""
    known = find_zone(zone) if zone else None
    if zone is None or known is None or longitude is None:
        return None
    offset = find_offset(known, day)
    return Clock(zone, turn_near(float(longitude.number("deg")), offset), offset)


def require_near(clock: Clock) -> None:
    """Raises Refused where a longitude does not lie in the zone."""
    if is_far(clock.longitude, clock.offset):
        raise refuse(*tell_far((clock.longitude + 180) % 360 - 180, clock.zone))


def add_clock(working: WorkingBuilder) -> None:
    """Adds the steps to D, the hours of solar time before the clock."""
    working.step("v", "angle of the day", "360 * (N - 1) / 365", "deg")
    one, two = "0.001868 * cos(k * v) - 0.032077 * sin(k * v)", "0.014615 * cos(2 * k * v) - 0.040849 * sin(2 * k * v)"
    working.step("e", "equation of time, minutes", f"4 / k * (0.0000075 + {one} - {two})", "")
    working.step("D", "solar time ahead of the clock", "(4 * (G - 15 * z) + e) / 60", "h")


SOURCES = (EQUATION.quote("equation of time by the day, 4 min of time to a degree of longitude"),)
