"""What an entry of the log is: work at the wall, a reading of the weather, or a pail; and what it owes as such."""

from collections.abc import Collection

from specgen.model.record import Entry

WEATHER = frozenset(("air", "surface", "humidity", "wind", "gust"))
_FORECAST = frozenset(("sun_on_wall", "rain", "forecast_rain", "forecast_low"))
_STIRRED = frozenset(("stirred", "strained"))  # of each pail, and often ticked beside a pass too
_PAIL = frozenset(("pail", "batch", "boxed_batches", "cup", "cup_time_before_water", "cup_time")) | frozenset(
    ("material_temperature", "water_added", "water")
)
# Any of them makes an entry one of work, whatever else stands in it. The coat does not: a pail is for one too.
_WORK = frozenset(("ended_at", "panels", "masked_panels", "stream_length", "distance", "pattern", "wet_film")) | (
    frozenset(("atomizing_pressure", "fluid_pressure", "equipment_cleaned"))
)
_OF_PASS = _WORK | {"tank_clean", "tank_lined", "lid_tight", "regulators_at_zero"}

# What an area begins with that is the mockup.
_MOCKUP = ("mockup", "mock-up", "mock up")


def is_reading(entry: Entry) -> bool:
    """Whether it gives a reading of the weather, be it beside other work."""
    return tells_weather(entry.values)


def is_work(entry: Entry) -> bool:
    """Whether it tells of work at the wall, and not of the weather or of a pail alone."""
    return tells_work(entry.values)


def is_pass(entry: Entry) -> bool:
    """Whether it tells when work at the wall began and ended."""
    return "ended_at" in entry.values and entry.began is not None


def is_on_mockup(entry: Entry) -> bool:
    """Whether it is of the mockup, which is no elevation: by the area that it names."""
    return not entry.get("elevation") and str(entry.get("area") or "").casefold().startswith(_MOCKUP)


def owes(given: Collection[str], name: str) -> bool:
    """Whether an entry that gives these fields is of a kind that owes another: a row of weather owes no pail."""
    if name in WEATHER:
        return tells_weather(given)
    if name in _FORECAST:
        return not (WEATHER.isdisjoint(given) and _FORECAST.isdisjoint(given))
    if name in _PAIL or name in _STIRRED:
        return not _PAIL.isdisjoint(given)
    if name in _OF_PASS:
        return tells_work(given)
    if name == "coat":
        return tells_work(given) or not _PAIL.isdisjoint(given)
    return name != "started_at" or _PAIL.isdisjoint(given)


def tells_weather(given: Collection[str]) -> bool:
    """Whether an entry that gives these fields gives a reading of the weather."""
    return not WEATHER.isdisjoint(given)


def tells_work(given: Collection[str]) -> bool:
    """Whether an entry that gives these fields tells of work at the wall, and not of weather or a pail alone."""
    if not _WORK.isdisjoint(given):
        return True
    return all(kind.isdisjoint(given) for kind in (WEATHER, _FORECAST, _PAIL, _STIRRED))
