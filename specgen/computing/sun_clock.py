"""How many hours solar time is ahead of the clock, by longitude, by the clock's offset from UTC and by the day."""

from math import cos, pi, sin

from specgen.standards import find_source

EQUATION = find_source("equation_of_time")


def find_equation(day: float) -> float:
    """The equation of time on a day of the year, in minutes: the sun's time less the mean of the year."""
    turn = 2 * pi * (day - 1) / 365
    series = 0.001868 * cos(turn) - 0.032077 * sin(turn) - 0.014615 * cos(2 * turn) - 0.040849 * sin(2 * turn)
    return 720 / pi * (0.0000075 + series)


def turn_near(longitude: float, offset: float) -> float:
    """The longitude in degrees, by whole turns of the earth nearest to the meridian of the clock."""
    meridian = 15 * offset
    return meridian + (longitude - meridian + 180) % 360 - 180


def count_ahead(day: float, longitude: float, offset: float) -> float:
    """Hours by which solar time is ahead of a clock that is `offset` hours ahead of UTC on that day."""
    return (4 * (turn_near(longitude, offset) - 15 * offset) + find_equation(day)) / 60
