"""The air of a mean day by the hour, between its daily low and high."""

from itertools import pairwise

from specgen.computing.sunlight import Hours
from specgen.model.source import Kind, Source

PROFILE = Source(
    Kind.MEMORY, "ASHRAE Handbook, Fundamentals, 2009, chapter 14: fraction of the daily temperature range by hour"
)
# What the air lies below the daily high at hours 0 to 24 of solar time, in parts of the daily range.
_BELOW_HIGH = (
    *(0.82, 0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23),
    *(0.13, 0.05, 0.00, 0.00, 0.06, 0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82),
)


def list_air_hours(daily: tuple[float, float], allowed: tuple[float, float]) -> Hours:
    """The hours of solar time in which air between a mean daily low and high lies within two temperatures."""
    low, high = daily
    air = [high - part * (high - low) for part in _BELOW_HIGH]
    found: list[tuple[float, float]] = []
    for hour, (before, after) in enumerate(pairwise(air)):
        start, end = _clip(before, after, allowed)
        if start < end:
            joined = bool(found) and found[-1][1] == hour + start
            found[-1:] = [(found[-1][0], hour + end)] if joined else [*found[-1:], (hour + start, hour + end)]
    return tuple(found)


def _clip(before: float, after: float, allowed: tuple[float, float]) -> tuple[float, float]:
    """The part of an hour, from 0 to 1, in which what changes evenly from one figure to another lies between two."""
    least, most = allowed
    if before == after:
        return (0.0, 1.0) if least <= before <= most else (0.0, 0.0)
    ends = sorted(((least - before) / (after - before), (most - before) / (after - before)))
    return max(ends[0], 0.0), min(ends[1], 1.0)
