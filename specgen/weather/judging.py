"""Judges the hours of a file by the limits of a step: each is fit, lost with its causes, or not known.

Limits are inclusive. Warmth and dryness hold through this hour and each of those of the hold that follow, so that the
last hours of a file are not known, whatever they were. An hour that breaks a limit is lost even where another reading
is missing; where only missing readings stand between it and fitness it is not known, and never fit.
"""

from collections.abc import Iterable

from specgen.computing.dew import find_dew_point
from specgen.model.value_text import count
from specgen.quantities.quantity import Quantity
from specgen.weather.hours import Column, HourlyData
from specgen.weather.limits import SiteLimit, StepLimits

# What can take an hour, one bit each, in the order in which one of several is named.
CAUSES = (
    *("outside shift", "dark", "direct sun", "rain", "rain in hold", "frost before", "air cold", "cold in hold"),
    *("wall cold", "wall hot", "humid", "near dew point", "wind", "gust", "end of file", "reading missing"),
)
BIT = {cause: 1 << place for place, cause in enumerate(CAUSES)}
OUTSIDE = BIT["outside shift"]
UNKNOWN = BIT["end of file"] | BIT["reading missing"]
_LAST, _GONE = BIT["end of file"], BIT["reading missing"]
_LIMITS = {
    ("air", "least"): "air cold",
    ("surface", "least"): "wall cold",
    ("surface", "most"): "wall hot",
    ("humidity", "most"): "humid",
    ("margin", "least"): "near dew point",
    ("wind", "most"): "wind",
    ("gust", "most"): "gust",
}
_UNITS = {"air": "C", "surface": "C", "wind": "m/s", "gust": "m/s", "margin": "C apart"}
_SLACK = 1e-6  # for what a conversion of units leaves over
_FREEZING = 0.0
_FAR = 1 << 60


def first_cause(bits: int) -> str:
    """The cause by which an hour is counted: shift first, then the end of the file, then in order."""
    if bits & OUTSIDE:
        return "outside shift"
    if bits & _LAST:
        return "end of file"
    return next(cause for cause, bit in BIT.items() if bits & bit)


def list_causes(bits: int) -> list[str]:
    """All causes of an hour, in order."""
    return [cause for cause, bit in BIT.items() if bits & bit]


def judge_weather(data: HourlyData, limits: StepLimits, surface: Column) -> list[int]:
    """The causes of each hour in the weather alone; `surface` is the wall in °C.

    In a tent rain is no cause, in a heated one no cold either.
    """
    length = len(data)
    causes = [0] * length
    readings = {name: data.column(name) for name in ("air", "humidity", "wind", "rain")}
    readings |= {"surface": surface, "gust": data.column("gust")}
    if limits.reads("margin"):
        readings["margin"] = find_margins(readings["air"], readings["humidity"], surface)
    for limit in limits.limits:
        name = _LIMITS.get((limit.reading, limit.sense))
        warm = limits.heated and name in ("air cold", "wall cold")
        if name is None or warm or (limit.reading == "gust" and "gust" not in data.columns):
            continue
        _mark(causes, readings[limit.reading], limit, BIT[name], blank=limit.reading != "gust")
    _mark_holds(causes, data, limits)
    return causes


def find_margins(air: Column, humidity: Column, surface: Column) -> Column:
    """The wall above the dew point of the air, in °C apart; None where one of the three is missing."""
    return [
        None if t is None or rh is None or wall is None else wall - find_dew_point(t, min(rh, 100.0))
        for t, rh, wall in zip(air, humidity, surface, strict=True)
    ]


def _number(limit: SiteLimit) -> float:
    return limit.value.number(_UNITS[limit.reading]) if isinstance(limit.value, Quantity) else float(limit.value)


def _mark(causes: list[int], readings: Column, limit: SiteLimit, bit: int, blank: bool) -> None:
    """Mark the hours that break a limit, and those whose reading is missing; a blank gust is none that was told."""
    figure, gone = _number(limit), _GONE if blank else 0
    if limit.sense == "least":
        figure -= _SLACK
        for at, value in enumerate(readings):
            if value is None:
                causes[at] |= gone
            elif value < figure:
                causes[at] |= bit
        return
    figure += _SLACK
    for at, value in enumerate(readings):
        if value is None:
            causes[at] |= gone
        elif value > figure:
            causes[at] |= bit


def _mark_holds(causes: list[int], data: HourlyData, limits: StepLimits) -> None:
    """Mark rain and cold now and through the hold, frost before, and the hours whose hold the file does not reach."""
    air, rain = data.column("air"), data.column("rain")
    hold = 0
    for limit in limits.limits:
        if limit.reading == "rain" and not limits.tented:
            if "rain" in data.columns:
                wet = [None if depth is None else depth > 0 for depth in rain]
                _mark_now(causes, wet, BIT["rain"])
                _mark_ahead(causes, wet, limit.hold, BIT["rain in hold"])
            hold = max(hold, limit.hold)
        elif limit.reading == "air" and limit.hold and not limits.heated:
            least = _number(limit) - _SLACK
            _mark_ahead(causes, [None if t is None else t < least for t in air], limit.hold, BIT["cold in hold"])
            hold = max(hold, limit.hold)
        elif limit.reading == "frost":
            frozen = [None if t is None else t <= _FREEZING + _SLACK for t in air]
            behind = causes[::-1]
            _mark_ahead(behind, frozen[::-1], limit.hold, BIT["frost before"], gone=0)
            causes[:] = behind[::-1]
    for at in range(max(0, len(causes) - hold), len(causes)):
        causes[at] |= _LAST


def _mark_now(causes: list[int], found: Iterable[bool | None], bit: int) -> None:
    for at, here in enumerate(found):
        if here or here is None:
            causes[at] |= bit if here else _GONE


def _mark_ahead(causes: list[int], found: list[bool | None], hold: int, bit: int, gone: int = _GONE) -> None:
    """Mark the hours that have what is found, or a missing reading, in one of the hours of the hold behind them."""
    nearest = missing = _FAR
    for at in range(len(found) - 1, -1, -1):
        if nearest - at <= hold:
            causes[at] |= bit
        if missing - at <= hold:
            causes[at] |= gone
        if found[at]:
            nearest = at
        elif found[at] is None:
            missing = at


def settle(causes: list[int]) -> list[int]:
    """The causes of each hour without a missing reading where a limit is broken all the same."""
    return [bits & ~_GONE if bits & ~(_GONE | _LAST) else bits for bits in causes]


def tell_missing(data: HourlyData) -> list[str]:
    """How many hours that the file has lack a reading that it has a column for."""
    lacking = {
        name: sum(value is None and row > 0 for value, row in zip(column, data.rows, strict=True))
        for name, column in data.columns.items()
    }
    return [
        f"{name} is missing in {count(hours, 'hour')}" for name, hours in lacking.items() if hours and name != "gust"
    ]
