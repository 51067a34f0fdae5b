"""The hours of a shift in which a face can be sprayed, and what takes the others."""

from datetime import time
from typing import NamedTuple

from specgen.computing.sunlight import Hours, count_hours, find_daylight, find_sun_on_wall, leave_out, meet
from specgen.model.schedule import Span

DAY, MINUTES = 24, 60


class Face(NamedTuple):
    """A face on a day: its place under the sun, the shift, and what is known of shade and light."""

    latitude: float  # degrees
    day: int  # of the year
    facing: float | None  # degrees from north; None where cloth or a tent keeps the sun off
    start: float  # of the shift, hours of the clock
    hours: float  # its length
    shade: Hours | None = None  # its own shade as given, by the clock, in place of what latitude and facing say
    lamp: bool = False  # whether work goes on by lamp in the dark
    ahead: float = 0.0  # hours of solar time before the clock; none where the clock is taken for the sun's

    def find_light(self) -> Hours:
        """Sunrise to sunset by the clock."""
        return self._tell(find_daylight(self.latitude, self.day))

    def find_sun(self) -> Hours:
        """The hours by the clock in which the sun stands before the face."""
        if self.facing is None:
            return ()
        if self.shade is not None:
            # What is given counts; the night is no sun, whatever was written of it.
            return leave_out(self.find_light(), self.shade)
        return self._tell(find_sun_on_wall(self.latitude, self.day, self.facing))

    def _tell(self, solar: Hours) -> Hours:
        return tuple((start - self.ahead, end - self.ahead) for start, end in solar)


class Split(NamedTuple):
    """A shift by what it is good for, in hours; one that runs past midnight goes on above 24."""

    usable: Hours
    dark: float
    sunny: float
    set_up: float


def split_shift(face: Face, set_up: float) -> Split:
    """The shift of a face: dark hours first, then those in direct sun, then what setup and cleanup take of the rest.

    Half of `set_up` stands at the start of the shift, half at its end; where it is dark or sunny then, it costs
    nothing more.
    """
    end = face.start + face.hours
    shift: Hours = ((face.start, end),)
    light = shift if face.lamp else meet(shift, repeat(face.find_light()))
    shaded = leave_out(light, repeat(face.find_sun()))
    usable = meet(shaded, ((face.start + set_up / 2, end - set_up / 2),))
    lit, shady, left = map(count_hours, (light, shaded, usable))
    return Split(usable, face.hours - lit, lit - shady, shady - left)


def repeat(hours: Hours) -> Hours:
    """The hours of a day on the day before, on this one, and on the next."""
    return tuple((start + day, end + day) for day in (-DAY, 0, DAY) for start, end in hours)


def name_spans(hours: Hours) -> tuple[Span, ...]:
    """The hours as times of the day, each to the minute."""
    return tuple(Span(tell_time(start), tell_time(end)) for start, end in hours)


def tell_time(hour: float) -> time:
    """An hour as a time of the day, to the minute."""
    whole, minute = divmod(round(hour * MINUTES), MINUTES)
    return time(whole % DAY, minute)


def count_day(at: time) -> float:
    """A time of the day in hours after midnight."""
    return at.hour + at.minute / MINUTES
