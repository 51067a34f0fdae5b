"""The head of a table of hourly data: which column is what, and in which unit, however they are named and ordered."""

import re
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.model.suggest import find_slip
from specgen.quantities.number import quote
from specgen.quantities.units import UNITS as KNOWN
from specgen.quantities.units import find_unit

# What each column is called in the heads of weather files; the first is the name we ask for.
NAMES = {
    "time": ("time", "datetime", "date time", "timestamp", "local time", "time local", "valid", "date/time"),
    "date": ("date", "day of record", "local date"),
    "year": ("year",),
    "month": ("month",),
    "day": ("day",),
    "hour": ("hour", "hr", "hour of day"),
    "air": (
        *("air", "air temperature", "air temp", "temperature", "temp", "temp air", "dry bulb", "dry bulb temperature"),
        *("drybulb", "dry bulb temp", "outdoor temperature", "outdoor air temperature", "outside temperature", "tmp"),
    ),
    "humidity": ("humidity", "relative humidity", "rh", "rhum", "relh", "rel humidity", "rel hum"),
    "wind": ("wind", "wind speed", "wspd", "windspeed", "mean wind", "average wind", "wind avg", "ws"),
    "gust": ("gust", "wind gust", "gusts", "peak gust", "peak wind", "gust speed", "wind gust speed"),
    "rain": (
        *("rain", "precipitation", "precip", "rainfall", "liquid precipitation depth", "lprecip depth", "hourly rain"),
        *("liquid precipitation", "precipitation depth", "rain amount"),
    ),
    "surface": ("surface", "surface temperature", "wall", "wall temperature", "wall surface", "surface temp"),
    "direct": (
        *("direct", "dni", "direct normal irradiance", "direct normal radiation", "direct irradiance", "beam"),
        "direct normal",
    ),
    "diffuse": (
        *("diffuse", "dhi", "diffuse horizontal irradiance", "diffuse horizontal radiation", "diffuse irradiance"),
        "diffuse horizontal",
    ),
}
TIMES = ("time", "date", "year", "month", "day", "hour")
_BY_NAME = {name: column for column, names in NAMES.items() for name in names}
_DIMENSIONS = {
    "air": "temperature",
    "surface": "temperature",
    "wind": "speed",
    "gust": "speed",
    "rain": "length",
    "direct": "irradiance",
    "diffuse": "irradiance",
}
_EXAMPLES = {"temperature": ("F", "C"), "speed": ("mph", "m/s"), "length": ("in", "mm"), "irradiance": ("W/m2",)}
_SPELLED = {"degf": "F", "degc": "C", "deg f": "F", "deg c": "C", "°f": "F", "°c": "C", "ms": "m/s", "ms-1": "m/s"}
_SPELLED |= {"m s-1": "m/s", "w/m^2": "W/m2", "wh/m2": "W/m2", "wh/m^2": "W/m2", "wm2": "W/m2", "w m-2": "W/m2"}
_SPELLED |= {"f": "F", "c": "C", "celsius": "C", "fahrenheit": "F", "wh/m²": "W/m2", "w/m²": "W/m2"}
_KNOT = ("kn", "kt", "kts", "knot", "knots")
_IN_METERS = 1852 / 3600  # a knot is a sea mile of 1852 m in an hour
_BRACKETED = re.compile(r"(.*?)[\s_]*[\(\[]\s*(.*?)\s*[\)\]]\s*")
_BEHIND = re.compile(r"(.*?)(?:,\s*|[\s_]+)([^\s_,]+)")


class ColumnPlace(NamedTuple):
    """A column of a table: what it is, where it stands, its head, and how a figure becomes one in our own unit."""

    name: str
    at: int
    head: str
    unit: str = ""
    factor: float = 1.0
    offset: float = 0.0


def find_columns(cells: list[str]) -> dict[str, ColumnPlace]:
    """The columns that a row of a table names, by what they are; empty where it is no head. Units are not yet asked.

    Of two columns that are the same thing the first counts.
    """
    found: dict[str, ColumnPlace] = {}
    for at, cell in enumerate(cells):
        name, unit = _part(cell)
        column = _BY_NAME.get(name)
        if column is not None and column not in found:
            found[column] = ColumnPlace(column, at, cell.strip(), unit)
    return found


def _part(cell: str) -> tuple[str, str]:
    """The name of a column in plain words, and the unit behind it; empty where none stands there."""
    text = cell.strip().strip("\ufeff").strip()
    bracketed = _BRACKETED.fullmatch(text)
    if bracketed:
        return _plain(bracketed[1]), bracketed[2]
    if _plain(text) in _BY_NAME:
        return _plain(text), ""
    words, unit = text, ""
    behind = _BEHIND.fullmatch(text)
    while behind and _plain(words) not in _BY_NAME:
        words, unit = behind[1], text[len(behind[1]) :].strip(" _,")
        behind = _BEHIND.fullmatch(words)
    return _plain(words), unit


def _plain(name: str) -> str:
    return " ".join(re.sub(r"[_\-.]+", " ", name).lower().split())


def add_unit(place: ColumnPlace, row: int, shown: str) -> ColumnPlace:
    """The column with the factor and offset to our own unit; raises Refused where its head names none."""
    dimension = _DIMENSIONS.get(place.name)
    if place.name == "humidity":
        if place.unit in ("", "%", "percent", "pct"):
            return place._replace(unit="%")
        raise _refuse(place, row, shown, f"{quote(place.unit)} is not a unit of humidity", "write humidity %")
    if dimension is None or (place.name == "rain" and _says_yes(place.unit)):
        return place
    examples = " or ".join(f"{NAMES[place.name][0]} {unit}" for unit in _EXAMPLES[dimension])
    if not place.unit:
        raise _refuse(place, row, shown, f"column {quote(place.head)} has no unit", f"write {examples}")
    if dimension == "speed" and place.unit.lower() in _KNOT:
        return place._replace(factor=_IN_METERS)
    unit = _SPELLED.get(place.unit.lower()) or find_unit(place.unit) or find_unit(place.unit.lower())
    if unit is None or KNOWN[unit].dimension != dimension:
        raise _refuse(place, row, shown, f"{quote(place.unit)} is not a unit of {place.name}", f"write {examples}")
    factor, offset = float(KNOWN[unit].factor), float(KNOWN[unit].offset)
    if dimension == "temperature":
        offset -= float(KNOWN["C"].offset)
    return place._replace(unit=unit, factor=factor * (1000 if dimension == "length" else 1), offset=offset)


def _says_yes(unit: str) -> bool:
    return unit.lower() in ("", "yes/no", "y/n")


def _refuse(place: ColumnPlace, row: int, shown: str, message: str, hint: str) -> Refused:
    return Refused(Problem(message, hint, file=shown, line=row, column=place.at + 1))


def tell_near(cells: list[str], wanted: str) -> str:
    """The head that is a column but for a slip of the pen: `did you mean humidity by 'humidty %'?`; empty for none."""
    for cell in cells:
        if find_slip(_part(cell)[0], NAMES[wanted]) or find_slip(_plain(cell), NAMES[wanted]):
            return f"did you mean {wanted} by {quote(cell.strip())}?"
    return ""
