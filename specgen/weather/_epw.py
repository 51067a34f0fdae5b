"""Hourly data as EPW, an open text format of weather data for building work.

Eight lines of head, of which the first is LOCATION (city, state, country, data, station number, latitude, longitude,
hours ahead of universal time, altitude), then a row for each hour of 35 cells: year, month, day, hour 1 to 24, minute,
flags, dry bulb C, dew point C, humidity %, pressure, three radiations, global, direct normal and diffuse horizontal
radiation in Wh/m2 of the hour that ends, four of light, wind direction, wind speed m/s, sky covers, visibility,
ceiling, present weather (0 observed, 9 not), its nine codes, of which the second is rain and the third drizzle (9
none), and behind others liquid precipitation in mm and the hours that it fell in. Source: the data dictionary of the
format in the reference of its keeper on auxiliary programs, U.S. Department of Energy, 2024, with the figures that
stand for a missing reading (99.9 for temperature, 999 for humidity, wind and precipitation, 9999 for radiation).
"""

from datetime import date

from specgen.model.problem import Problem, Refused
from specgen.quantities.number import quote
from specgen.weather._bounds import BOUNDS, Faults, tell_bounds
from specgen.weather._times import read_times
from specgen.weather.hours import UNITS, Column, Readings, Station

MARK = "LOCATION,"
_HEAD_LINES = 8
_CELLS = 34  # the last cell, the hours of the precipitation, is not always there
# Where each reading stands, and the figure from which on it is missing.
_PLACES = {
    "air": (6, 99.9),
    "humidity": (8, 999.0),
    "wind": (21, 999.0),
    "direct": (14, 9999.0),
    "diffuse": (15, 9999.0),
}
_OBSERVED, _CODES, _DEPTH, _MISSING_DEPTH = 26, 27, 33, 999.0
_LIGHT_RAIN = 0.01  # mm, which stands for rain that codes tell and no depth does


def read_epw(text: str, shown: str) -> Readings:
    """The readings of an EPW file named `shown`; raises Refused with the row of what cannot be read."""
    lines = text.splitlines()
    station = _read_station(lines[0].split(","), shown)
    taken = [(number, line.split(",")) for number, line in enumerate(lines, 1) if number > _HEAD_LINES and line.strip()]
    notes: list[str] = []
    if taken and len(taken[-1][1]) < _CELLS and not text.endswith(("\n", "\r")):
        notes.append(f"row {taken[-1][0]} is cut short and was left out: the file was still being written")
        taken.pop()
    if not taken:
        raise Refused(Problem("the file has no hours below its head", "give a whole EPW file", file=shown))
    for number, cells in taken:
        if len(cells) < _CELLS:
            message = f"the row has {len(cells)} cells; an hour of EPW has 35"
            raise Refused(Problem(message, "give the file as it was issued", file=shown, line=number))
    days = [f"{cells[0].strip()}-{cells[1].strip()}-{cells[2].strip()}" for _, cells in taken]
    hours = [cells[3].strip() for _, cells in taken]
    numbers = [number for number, _ in taken]
    _check_hours(days, hours, numbers, shown)
    times = read_times(days, hours, numbers, shown, ends=True)
    faults = Faults()
    columns = {name: _read(name, taken, shown, faults) for name in _PLACES}
    columns["rain"] = [_read_rain(cells, number, shown) for number, cells in taken]
    columns = {name: column for name, column in columns.items() if any(value is not None for value in column)}
    told = (*times.notes, *notes, *faults.notes())
    return Readings(times.starts, numbers, columns, None, station, told)


def _read_station(cells: list[str], shown: str) -> Station:
    try:
        latitude, longitude, zone = (float(cells[at]) for at in (6, 7, 8))
    except (IndexError, ValueError):
        hint = "LOCATION has latitude, longitude and time zone as its cells 7 to 9"
        raise Refused(Problem("the first line tells no place", hint, file=shown, line=1)) from None
    if not (-90 <= latitude <= 90 and -180 <= longitude <= 180 and -12 <= zone <= 14):
        hint = "latitude lies from -90 to 90, longitude from -180 to 180, time zone from -12 to 14"
        raise Refused(Problem("the first line tells no place on earth", hint, file=shown, line=1))
    return Station(latitude, longitude, zone)


def _check_hours(days: list[str], hours: list[str], rows: list[int], shown: str) -> None:
    for day, hour, row in zip(days, hours, rows, strict=True):
        try:
            date(*(int(part) for part in day.split("-")))
            fits = 1 <= int(hour) <= 24
        except ValueError:
            fits = False
        if not fits:
            message = f"{quote(f'{day} hour {hour}')} is not an hour of EPW"
            raise Refused(Problem(message, "year, month, day, and an hour from 1 to 24", file=shown, line=row))


def _read(name: str, taken: list[tuple[int, list[str]]], shown: str, faults: Faults) -> Column:
    at, missing = _PLACES[name]
    least, most = BOUNDS[name]
    readings: Column = []
    for row, cells in taken:
        value = _number(cells[at], name, row, at, shown)
        if value is not None and value >= missing:
            value = None
        if value is not None and not least <= value <= most:
            faults.add(row, name, cells[at].strip(), f"is not possible ({tell_bounds(name, 1, 0, UNITS[name])})")
            value = None
        readings.append(value)
    return readings


def _read_rain(cells: list[str], row: int, shown: str) -> float | None:
    """The precipitation of an hour in mm: its depth, else by the codes of the observer; None where neither is there."""
    depth = _number(cells[_DEPTH], "rain", row, _DEPTH, shown) if len(cells) > _DEPTH else None
    if depth is not None and 0 <= depth < _MISSING_DEPTH:
        return depth
    codes = cells[_CODES].strip().strip("'").zfill(9)
    if cells[_OBSERVED].strip() != "0" or len(codes) != 9:
        return None
    return 0.0 if codes[1] == codes[2] == "9" else _LIGHT_RAIN


def _number(text: str, name: str, row: int, at: int, shown: str) -> float | None:
    if not text.strip():
        return None
    try:
        return float(text)
    except ValueError:
        message = f"{quote(text.strip())} is not a reading of {name}"
        raise Refused(Problem(message, "write a number", file=shown, line=row, column=at + 1)) from None
