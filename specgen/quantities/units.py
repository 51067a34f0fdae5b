"""The units a project may be written in: dimension, exact factor to the base unit, offset.

Base units are SI. Factors are exact: the inch of 1959 (25.4 mm), the avoirdupois pound, standard
gravity, the US gallon (231 cubic inches). Source: NIST SP 811 (2008), appendix B; values recalled,
`from memory`, and checked in the tests against a general units library.
"""

from fractions import Fraction
from typing import NamedTuple

INCH = Fraction(254, 10000)
POUND = Fraction(45359237, 10**8)
GRAVITY = Fraction(980665, 10**5)
GALLON = 231 * INCH**3
PSI = POUND * GRAVITY / INCH**2
BTU = Fraction("1055.05585262")
RANKINE = Fraction(5, 9)


class Unit(NamedTuple):
    """A unit: value in base units = number * factor + offset."""

    name: str
    dimension: str
    factor: Fraction
    system: str
    offset: Fraction


_ROWS: list[tuple[str, str, Fraction | int, str]] = [
    ("in", "length", INCH, "ip"),
    ("ft", "length", 12 * INCH, "ip"),
    ("yd", "length", 36 * INCH, "ip"),
    ("mil", "length", INCH / 1000, "ip"),
    ("m", "length", 1, "si"),
    ("cm", "length", Fraction(1, 100), "si"),
    ("mm", "length", Fraction(1, 1000), "si"),
    ("um", "length", Fraction(1, 10**6), "si"),
    ("ft2", "area", (12 * INCH) ** 2, "ip"),
    ("in2", "area", INCH**2, "ip"),
    ("m2", "area", 1, "si"),
    ("gal", "volume", GALLON, "ip"),
    ("fl oz", "volume", GALLON / 128, "ip"),
    ("qt", "volume", GALLON / 4, "ip"),
    ("L", "volume", Fraction(1, 1000), "si"),
    ("mL", "volume", Fraction(1, 10**6), "si"),
    ("in-lb", "energy", POUND * GRAVITY * INCH, "ip"),
    ("J", "energy", 1, "si"),
    ("psi", "pressure", PSI, "ip"),
    ("psf", "pressure", PSI / 144, "ip"),
    ("Pa", "pressure", 1, "si"),
    ("kPa", "pressure", 1000, "si"),
    ("MPa", "pressure", 10**6, "si"),
    ("bar", "pressure", 10**5, "si"),
    ("mph", "speed", 63360 * INCH / 3600, "ip"),
    ("ft/s", "speed", 12 * INCH, "ip"),
    ("in/s", "speed", INCH, "ip"),
    ("mm/s", "speed", Fraction(1, 1000), "si"),
    ("m/s", "speed", 1, "si"),
    ("km/h", "speed", Fraction(10, 36), "si"),
    ("kn", "speed", Fraction(1852, 3600), "si"),  # the international knot, 1852 m in an hour
    ("cfm", "flow", (12 * INCH) ** 3 / 60, "ip"),
    ("scfm", "flow", (12 * INCH) ** 3 / 60, "ip"),
    ("L/s", "flow", Fraction(1, 1000), "si"),
    ("L/min", "flow", Fraction(1, 60000), "si"),
    ("m3/min", "flow", Fraction(1, 60), "si"),
    ("m3/h", "flow", Fraction(1, 3600), "si"),
    ("W/m2", "irradiance", 1, "si"),
    ("Btu/h.ft2", "irradiance", BTU / 3600 / (12 * INCH) ** 2, "ip"),
    ("lx", "illuminance", 1, "si"),
    ("fc", "illuminance", 1 / (12 * INCH) ** 2, "ip"),
    ("W/(m2.K)", "heat_transfer", 1, "si"),
    ("Btu/(h.ft2.F)", "heat_transfer", BTU / 3600 / (12 * INCH) ** 2 / RANKINE, "ip"),
    ("mm2/s", "viscosity", Fraction(1, 10**6), "both"),
    ("deg", "angle", 1, "both"),
    # Rise in 12 of run, as roofs and ledges are drawn.
    ("in 12", "slope", Fraction(1, 12), "ip"),
    ("in 100", "slope", Fraction(1, 100), "si"),
    ("V", "voltage", 1, "both"),
    ("kV", "voltage", 1000, "both"),
    ("s", "time", 1, "both"),
    ("min", "time", 60, "both"),
    ("h", "time", 3600, "both"),
    ("d", "time", 86400, "both"),
    ("R", "thermal_resistance", (12 * INCH) ** 2 * 3600 * RANKINE / BTU, "ip"),
    ("RSI", "thermal_resistance", 1, "si"),
    ("oz/yd2", "area_mass", POUND / 16 / (36 * INCH) ** 2, "ip"),
    ("g/m2", "area_mass", Fraction(1, 1000), "si"),
    ("g/L", "density", 1, "both"),
    ("lb/gal", "density", POUND / GALLON, "ip"),
    ("perm", "permeance", Fraction("57.2135"), "ip"),
    ("ng/(Pa.s.m2)", "permeance", 1, "si"),
    ("ft2/gal", "spreading_rate", (12 * INCH) ** 2 / GALLON, "ip"),
    ("m2/L", "spreading_rate", 1000, "si"),
    ("ft2/h", "area_rate", (12 * INCH) ** 2 / 3600, "ip"),
    ("m2/h", "area_rate", Fraction(1, 3600), "si"),
    ("ft/h", "length_rate", 12 * INCH / 3600, "ip"),
    ("m/h", "length_rate", Fraction(1, 3600), "si"),
    ("/F", "expansion", 1 / RANKINE, "ip"),
    ("/C", "expansion", 1, "si"),
    ("/K", "expansion", 1, "si"),
    ("%/1000 ft", "derate", Fraction(1, 12000) / INCH, "ip"),
    ("%/300 m", "derate", Fraction(1, 300), "si"),
    ("F", "temperature", RANKINE, "ip"),
    ("C", "temperature", 1, "si"),
    ("K", "temperature", 1, "si"),
    # A difference of temperatures has the size of a degree and no zero point of its own.
    ("F apart", "temperature_difference", RANKINE, "ip"),
    ("C apart", "temperature_difference", 1, "si"),
]

# Where a scale of temperature has its zero, in kelvin.
_OFFSETS = {"F": Fraction("459.67") * RANKINE, "C": Fraction("273.15")}

UNITS = {
    name: Unit(name, dimension, Fraction(factor), system, _OFFSETS.get(name, Fraction(0)))
    for name, dimension, factor, system in _ROWS
}

_OTHER_SPELLINGS = {
    "in": ["inch", "inches", "in.", '"', "''"],
    "ft": ["foot", "feet", "ft.", "'", "lf", "lin ft", "linear feet"],
    "yd": ["yard", "yards"],
    "mil": ["mils"],
    "mm": ["millimeter", "millimeters", "millimetre", "millimetres"],
    "cm": ["centimeter", "centimeters"],
    "m": ["meter", "meters", "metre", "metres"],
    "um": ["µm", "μm", "micron", "microns"],
    "ft2": ["sq ft", "sq. ft.", "sq.ft.", "sqft", "sf", "ft^2", "ft²", "square feet", "square foot"],
    "m2": ["sq m", "sqm", "m^2", "m²", "square meters"],
    "in2": ["sq in", "in^2", "in²"],
    "gal": ["gallon", "gallons", "us gal"],
    "fl oz": ["floz", "fl. oz.", "fluid ounce", "fluid ounces"],
    "qt": ["quart", "quarts"],
    "L": ["l", "liter", "liters", "litre", "litres"],
    "mL": ["ml", "milliliters"],
    "psi": ["psig", "lb/in2", "lbf/in2"],
    "psf": ["lb/ft2", "lbf/ft2"],
    "kPa": ["kpa"],
    "MPa": ["mpa", "N/mm2"],
    "Pa": ["pa"],
    "mph": ["mi/h", "miles per hour"],
    "m/s": ["mps"],
    "km/h": ["kmh", "kph"],
    "kn": ["kt", "kts", "knot", "knots"],
    "ft/s": ["fps"],
    "cfm": ["ft3/min", "cu ft/min"],
    "L/s": ["l/s"],
    "L/min": ["l/min"],
    "m3/min": ["m³/min"],
    "m3/h": ["m³/h"],
    "W/m2": ["W/m²", "w/m2", "W/m^2"],
    "Btu/h.ft2": ["Btu/h·ft2", "Btu/h·ft²", "Btu/(h.ft2)", "Btu/(h·sq ft)", "btu/h.ft2"],
    "lx": ["lux"],
    "fc": ["footcandle", "footcandles", "foot-candles"],
    "W/(m2.K)": ["W/m2K", "W/m2·K", "W/m²·K", "W/(m²K)", "W/m2.K", "W/m²K", "W/(m²·K)", "W/(m2K)"],
    "Btu/(h.ft2.F)": ["Btu/h.ft2.F", "Btu/(h·ft²·°F)", "Btu/(h·sq ft·°F)"],
    "mm2/s": ["mm²/s", "cSt", "cst"],
    "V": ["volt", "volts"],
    "kV": ["kilovolt", "kilovolts"],
    "deg": ["°", "degree", "degrees"],
    "in 12": [":12"],
    "in 100": [":100", "%"],
    "s": ["sec", "second", "seconds"],
    "min": ["minute", "minutes"],
    "h": ["hr", "hrs", "hour", "hours"],
    "d": ["day", "days"],
    "oz/yd2": ["oz/yd²", "oz/sq yd", "oz per sq yd"],
    "g/m2": ["g/m²", "gsm"],
    "g/L": ["g/l"],
    "perm": ["perms"],
    "ng/(Pa.s.m2)": ["ng/Pa.s.m2", "ng/(Pa·s·m2)", "ng/(Pa·s·m²)"],
    "ft2/gal": ["sq ft/gal", "sqft/gal", "sf/gal", "ft²/gal"],
    "m2/L": ["m²/L", "m2/l"],
    "ft2/h": ["sq ft/h", "sq ft/hr", "sqft/h", "sqft/hr", "sf/h", "sf/hr", "ft2/hr", "ft²/h", "ft²/hr"],
    "m2/h": ["m²/h", "m2/hr", "m²/hr", "sq m/h"],
    "ft/h": ["ft/hr", "lf/h", "lf/hr", "lin ft/h", "lin ft/hr", "linear ft/h"],
    "m/h": ["m/hr", "lin m/h"],
    "%/1000 ft": ["%/1000ft", "%/1,000 ft", "% per 1000 ft", "percent per 1000 ft"],
    "%/300 m": ["%/300m", "% per 300 m", "percent per 300 m"],
    "/F": ["/°F", "1/F", "per F"],
    "/C": ["/°C", "1/C", "per C"],
    "/K": ["1/K"],
    "F": ["°F", "deg F", "degF", "fahrenheit", "° F"],
    "C": ["°C", "deg C", "degC", "celsius", "° C"],
    "RSI": ["m2.K/W", "m2K/W", "m²·K/W"],
}

# Ends the name of a unit that measures a difference of temperatures.
APART = " apart"

SPELLINGS = {name: name for name in UNITS}
SPELLINGS |= {other: name for name, others in _OTHER_SPELLINGS.items() for other in others}


def find_unit(text: str) -> str | None:
    """The name of the unit that a text spells, whatever its capitals; None where there is none."""
    return SPELLINGS.get(text) or SPELLINGS.get(text.lower())


# Dimensions of the field catalogue that are read in the units of another one.
SAME_UNITS = {"thickness": "length", "viscosity_time": "time", "duration": "time"}
