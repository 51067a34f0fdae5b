"""May a step go on now: readings at the wall held against the limits in force, with what was not told.

What an instrument reads and a limit of the step needs must be told: without it the answer is no. Rain, sun, gusts and
the forecast are told or are left to be looked at before work begins; where they are told, they count.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.computing.dew import find_dew_point
from specgen.quantities.quantity import Quantity
from specgen.weather.limits import SiteLimit, StepLimits

# What a step cannot go on without, as far as it has a limit for it.
MEASURED = ("air", "surface", "humidity", "wind")


@dataclass(frozen=True)
class SiteReadings:
    """What was read at the wall, and what is forecast for the hold; None for what was not told."""

    air: Quantity | None = None
    surface: Quantity | None = None
    humidity: Fraction | int | None = None  # percent
    wind: Quantity | None = None
    gust: Quantity | None = None
    rain: bool | None = None
    sun: bool | None = None
    forecast_low: Quantity | None = None
    forecast_rain: bool | None = None

    def find_dew_point(self) -> Quantity | None:
        """The dew point of the air over water; None where air or humidity was not told, or is 0 %."""
        if self.air is None or not self.humidity:
            return None
        return Quantity.of(find_dew_point(self.air.number("C"), float(self.humidity)), "C")

    def find_margin(self) -> Quantity | None:
        """The wall above the dew point; None where either is not known."""
        dew_point = self.find_dew_point()
        if dew_point is None or self.surface is None:
            return None
        return Quantity.of(self.surface.number("C") - dew_point.number("C"), "C apart")


class Held(NamedTuple):
    """A reading held against a limit; `ahead` is whether it is of the hold, and no reading of now."""

    limit: SiteLimit
    value: Any
    fails: bool
    ahead: bool = False


class Look(NamedTuple):
    """What must be looked at first; `value` is the figure that stands for the braces in `said`."""

    said: str
    value: Any = None


class Before(NamedTuple):
    """The hold point before the step: what is released, and how it stands by the site record.

    `released` is None where the record does not tell it, or where there is none.
    """

    what: str
    told: str = ""
    released: bool | None = None


@dataclass(frozen=True)
class GoAnswer:
    """Whether the step may go on, what was held, what it needs and was not told, and what must be looked at first."""

    limits: StepLimits
    readings: SiteReadings
    held: tuple[Held, ...]
    not_told: tuple[str, ...]  # of MEASURED
    look_first: tuple[Look, ...]
    not_read: tuple[str, ...] = ()  # told, and no limit of the step
    before: Before | None = None

    @property
    def goes(self) -> bool:
        """Whether nothing fails and nothing measured is missing: as far as told."""
        held_up = self.before is not None and self.before.released is False
        return not self.not_told and not held_up and not any(one.fails for one in self.held)

    @property
    def is_sure(self) -> bool:
        """Whether it goes, and nothing is left to be looked at."""
        return self.goes and not self.look_first


def judge_go(limits: StepLimits, readings: SiteReadings, before: Before | None = None) -> GoAnswer:
    """The answer for a step with these readings. In a tent no rain counts, in a heated one no cold forecast."""
    held: list[Held] = []
    look: list[Look] = []
    if before is not None and before.released is None:
        look.append(Look(f"{before.what}{f' ({before.told})' if before.told else ''}"))
    for limit in limits.limits:
        held += _hold_now(limit, limits, readings)
        held += _hold_ahead(limit, limits, readings)
        look += _list_looks(limit, limits, readings)
    missing = [name for name in MEASURED if getattr(readings, name) is None and _needs(limits, name)]
    unread = tuple(name for name in ("wind", "gust", "sun") if _is_unread(limits, readings, name))
    return GoAnswer(limits, readings, tuple(held), tuple(missing), tuple(dict.fromkeys(look)), unread, before)


def _is_unread(limits: StepLimits, readings: SiteReadings, name: str) -> bool:
    return getattr(readings, name) is not None and not any(limit.reading == name for limit in limits.limits)


def _needs(limits: StepLimits, name: str) -> bool:
    if name in ("air", "surface", "humidity") and limits.reads("margin"):
        return True
    return any(limit.reading == name for limit in limits.limits)


def _hold_now(limit: SiteLimit, limits: StepLimits, readings: SiteReadings) -> list[Held]:
    if limit.reading == "frost" or (limit.reading == "rain" and limits.tented):
        return []
    if limit.reading == "margin":
        margin = readings.find_margin()
        # In the unit of its limit: a result was typed by nobody, and no rounding excuses it.
        value = margin and Quantity.of(margin.number(limit.value.unit), limit.value.unit)
    else:
        value = getattr(readings, limit.reading)
    return [] if value is None else [Held(limit, value, limit.breaks(value))]


def _hold_ahead(limit: SiteLimit, limits: StepLimits, readings: SiteReadings) -> list[Held]:
    """The forecast held against a limit that holds after the work too."""
    if not limit.hold or limit.reading == "frost":
        return []
    if limit.reading == "rain":
        value: Any = None if limits.tented else readings.forecast_rain
    else:
        value = None if limits.heated else readings.forecast_low
    return [] if value is None else [Held(limit, value, limit.breaks(value), ahead=True)]


def _list_looks(limit: SiteLimit, limits: StepLimits, readings: SiteReadings) -> list[Look]:
    """What a limit asks to be looked at, where it was not told."""
    looks: list[Look] = []
    if limit.reading == "frost":
        looks.append(Look(f"no frost on the wall in the last {limit.hold} h"))
    elif limit.reading == "gust" and readings.gust is None:
        looks.append(Look("gusts maximum {}", limit.value))
    elif limit.reading == "sun" and readings.sun is None:
        looks.append(Look("no direct sun on the wall"))
    elif limit.reading == "rain" and not limits.tented:
        if readings.rain is None:
            looks.append(Look("no rain"))
        if limit.hold and readings.forecast_rain is None:
            looks.append(Look(f"no rain forecast for {limit.hold} h"))
    if limit.hold and limit.reading == "air" and not limits.heated and readings.forecast_low is None:
        looks.append(Look(f"forecast low for {limit.hold} h minimum {{}}", limit.value))
    return looks
