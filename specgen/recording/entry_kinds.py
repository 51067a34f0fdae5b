"""What an entry of the log is: work at the wall, a reading of the weather, or a pail."""

from specgen.model.record import Entry

WEATHER = frozenset(("air", "surface", "humidity", "wind", "gust"))
_FORECAST = frozenset(("sun_on_wall", "rain", "forecast_rain", "forecast_low"))
_PAIL = frozenset(("pail", "batch", "boxed_batches", "cup", "cup_time_before_water", "cup_time")) | frozenset(
    ("material_temperature", "water_added", "water", "stirred", "strained")
)
# Any of them makes an entry one of work, whatever else stands in it.
_WORK = frozenset(
    ("ended_at", "coat", "panels", "masked_panels", "stream_length", "distance", "pattern", "wet_film")
) | (frozenset(("atomizing_pressure", "fluid_pressure", "equipment_cleaned")))

# What an area begins with that is the mockup.
_MOCKUP = ("mockup", "mock-up", "mock up")


def is_reading(entry: Entry) -> bool:
    """Whether it gives a reading of the weather, be it beside other work."""
    return not WEATHER.isdisjoint(entry.values)


def is_work(entry: Entry) -> bool:
    """Whether it tells of work at the wall, and not of the weather or of a pail alone."""
    given = entry.values
    if not _WORK.isdisjoint(given):
        return True
    return WEATHER.isdisjoint(given) and _FORECAST.isdisjoint(given) and _PAIL.isdisjoint(given)


def is_pass(entry: Entry) -> bool:
    """Whether it tells when work at the wall began and ended."""
    return "ended_at" in entry.values and entry.began is not None


def is_on_mockup(entry: Entry) -> bool:
    """Whether it is of the mockup, which is no elevation: by the area that it names."""
    return not entry.get("elevation") and str(entry.get("area") or "").casefold().startswith(_MOCKUP)
