"""Quantities as people write them, against exact values, a general units library and a printed table."""

from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specgen.quantities.format import format_inches
from specgen.quantities.parse import QuantityError, parse_any_quantity, parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import SPELLINGS, UNITS

# Text, and what it is in inches by the definition 1 ft = 12 in. Odd signs are told by their numbers in Unicode:
# 2019 and 201d typographic quotes, 2032 and 2033 primes, 2044 and 2215 fraction slashes, 00bd and the like
# vulgar fractions, 00a0, 2009, 202f and 2007 spaces that do not break, 2212 minus, 2011 and 2013 dashes.
LENGTHS = [
    ("5'-6 1/2\"", "66.5"),
    ("5'-6-1/2\"", "66.5"),
    ("5' 6 1/2\"", "66.5"),
    ("5'6\"", "66"),
    ("5'6''", "66"),
    ("5' - 6\"", "66"),
    ("5'-0\"", "60"),
    ("5' 6.5\"", "66.5"),
    ("5 ft 6 1/2 in", "66.5"),
    ("5 ft 6-1/2 in", "66.5"),
    ("5 ft. 6 in.", "66"),
    ("5ft6in", "66"),
    ("5 feet 6 inches", "66"),
    ("-5'-6\"", "-66"),
    ("5'", "60"),
    ("6 1/2'", "78"),
    ("40 ft", "480"),
    ("40ft", "480"),
    ("  40 ft  ", "480"),
    ("1 foot", "12"),
    ("2 inches", "2"),
    ("8-in", "8"),
    ("2-foot", "24"),
    ("1,200 ft", "14400"),
    ("1,200,000 ft", "14400000"),
    ("1,000,000 in", "1000000"),
    ("1,200.5 ft", "14406"),
    ("2 yd", "72"),
    ("3/4 in", "3/4"),
    ("3/4in", "3/4"),
    ("1-1/2 in", "3/2"),
    ("1 1/2 in", "3/2"),
    ('1-1/2"', "3/2"),
    ('0.75"', "3/4"),
    (".75 in", "3/4"),
    ("3. in", "3"),
    ("+3 in", "3"),
    ("-1/8 in", "-1/8"),
    ("3 mil", "0.003"),
    ("5\u2019-6\u201d", "66"),
    ("5\u2032-6\u2033", "66"),
    ("5\u2032-6\u00bd\u2033", "66.5"),
    ("5\u2019 6 1\u20442\u201d", "66.5"),
    ("3\u20444 in", "3/4"),
    ("3\u22154 in", "3/4"),
    ("1\u00bd in", "3/2"),
    ("1 \u00bd in", "3/2"),
    ("1-\u00bd in", "3/2"),
    ("\u00be\u2033", "3/4"),
    ("\u00bc in", "1/4"),
    ("\u215b in", "1/8"),
    ("2\u215c in", "19/8"),
    ("\u215d in", "5/8"),
    ("\u215e in", "7/8"),
    ("\u2153 ft", "4"),
    ("3/4\u00a0in", "3/4"),
    ("3/4\u2009in", "3/4"),
    ("3/4\u202fin", "3/4"),
    ("3/4\u2007in", "3/4"),
    ("1\u20111/2 in", "3/2"),
    ("1\u20131/2 in", "3/2"),
    ("\u22121/8 in", "-1/8"),
]


@pytest.mark.parametrize(("text", "number"), LENGTHS)
def test_a_length_is_read_in_all_usual_ways(text: str, number: str) -> None:
    assert parse_quantity(text, "length").to("in") == Fraction(number)


# Text, dimension, unit, and the exact number in that unit. Conversions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg,
# 1 gal = 231 in3, NIST SP 811 (2008), appendix B; a degree F is 5/9 of a degree C, 32 F = 0 C, the same.
OTHERS = [
    ("1.2 m", "length", "mm", "1200"),
    ("25 mm", "length", "mm", "25"),
    ("25.4 mm", "length", "in", "1"),
    ("25 millimetres", "length", "mm", "25"),
    ("40 \u00b5m", "length", "um", "40"),
    ("40 \u03bcm", "length", "um", "40"),
    ("40 microns", "length", "um", "40"),
    ("50 F", "temperature", "F", "50"),
    ("50 F", "temperature", "C", "10"),
    ("50\u00b0F", "temperature", "C", "10"),
    ("50 deg F", "temperature", "C", "10"),
    ("10 \u00b0C", "temperature", "F", "50"),
    ("10\u00a0\u00b0C", "temperature", "F", "50"),
    ("-10 F", "temperature", "F", "-10"),
    ("-40 F", "temperature", "C", "-40"),
    ("\u221240 \u00b0C", "temperature", "F", "-40"),
    ("273.15 K", "temperature", "F", "32"),
    ("80 psi", "pressure", "psi", "80"),
    ("80 PSI", "pressure", "psi", "80"),
    ("1 bar", "pressure", "kPa", "100"),
    ("144 psf", "pressure", "psi", "1"),
    ("12 cfm", "flow", "cfm", "12"),
    ("12 scfm", "flow", "cfm", "12"),
    ("25 sq ft", "area", "ft2", "25"),
    ("25 ft\u00b2", "area", "ft2", "25"),
    ("25 sf", "area", "in2", "3600"),
    ("8e-6 /F", "expansion", "/F", "0.000008"),
    ("8e-6/\u00b0F", "expansion", "/C", "0.0000144"),
    ("8E-6 /F", "expansion", "/K", "0.0000144"),
    ("R-5.6", "thermal_resistance", "R", "5.6"),
    ("5.6 R", "thermal_resistance", "R", "5.6"),
    ("RSI-1.5", "thermal_resistance", "RSI", "1.5"),
    ("R\u20115.6", "thermal_resistance", "R", "5.6"),
    ("1 gal", "volume", "L", "3.785411784"),
    ("128 fl oz", "volume", "gal", "1"),
    ("4.5 oz/yd2", "area_mass", "oz/yd2", "4.5"),
    ("4.5 oz/sq yd", "area_mass", "oz/yd2", "4.5"),
    ("8 mph", "speed", "m/s", "3.57632"),
    ("250 g/L", "density", "g/L", "250"),
    ("780 W/m\u00b2", "irradiance", "W/m2", "780"),
    ("45 deg", "angle", "deg", "45"),
    ("45\u00b0", "angle", "deg", "45"),
    ("30 s", "viscosity_time", "s", "30"),
    ("24 h", "duration", "min", "1440"),
    ("3/4 in", "thickness", "mm", "19.05"),
    ("3.5 %/1000 ft", "derate", "%/1000 ft", "3.5"),
    ("1 perm", "permeance", "ng/(Pa.s.m2)", "57.2135"),
]


@pytest.mark.parametrize(("text", "dimension", "unit", "number"), OTHERS)
def test_other_quantities_are_read_and_converted_exactly(text: str, dimension: str, unit: str, number: str) -> None:
    assert parse_quantity(text, dimension).to(unit) == Fraction(number)


def test_a_quantity_keeps_the_words_and_the_unit_it_was_written_in() -> None:
    made = parse_quantity(" 3/4 in ", "length")
    assert (made.text, made.unit) == ("3/4 in", "in")


# Our unit, the same in the words of pint, and the base unit. pint takes 1055.056 J for the thermal unit, the
# rounded value of ISO 31-4; NIST SP 811 gives 1055.055 852 62 J, hence two parts in ten million for those.
EXACT, THERMAL = 1e-12, 2e-7
PINT = {
    "in": ("inch", "m", EXACT),
    "ft": ("foot", "m", EXACT),
    "yd": ("yard", "m", EXACT),
    "mil": ("thou", "m", EXACT),
    "m": ("m", "m", EXACT),
    "cm": ("cm", "m", EXACT),
    "mm": ("mm", "m", EXACT),
    "um": ("um", "m", EXACT),
    "ft2": ("foot**2", "m**2", EXACT),
    "in2": ("inch**2", "m**2", EXACT),
    "m2": ("m**2", "m**2", EXACT),
    "gal": ("gallon", "m**3", EXACT),
    "fl oz": ("fluid_ounce", "m**3", EXACT),
    "qt": ("quart", "m**3", EXACT),
    "L": ("liter", "m**3", EXACT),
    "mL": ("mL", "m**3", EXACT),
    "in-lb": ("force_pound*inch", "J", EXACT),
    "J": ("J", "J", EXACT),
    "psi": ("psi", "Pa", EXACT),
    "psf": ("force_pound/foot**2", "Pa", EXACT),
    "Pa": ("Pa", "Pa", EXACT),
    "kPa": ("kPa", "Pa", EXACT),
    "MPa": ("MPa", "Pa", EXACT),
    "bar": ("bar", "Pa", EXACT),
    "mph": ("mph", "m/s", EXACT),
    "ft/s": ("foot/s", "m/s", EXACT),
    "in/s": ("inch/s", "m/s", EXACT),
    "mm/s": ("mm/s", "m/s", EXACT),
    "m/s": ("m/s", "m/s", EXACT),
    "km/h": ("km/h", "m/s", EXACT),
    "kn": ("knot", "m/s", EXACT),
    "cfm": ("foot**3/min", "m**3/s", EXACT),
    "scfm": ("foot**3/min", "m**3/s", EXACT),
    "L/s": ("L/s", "m**3/s", EXACT),
    "L/min": ("L/min", "m**3/s", EXACT),
    "m3/min": ("m**3/min", "m**3/s", EXACT),
    "m3/h": ("m**3/h", "m**3/s", EXACT),
    "W/m2": ("W/m**2", "W/m**2", EXACT),
    "Btu/h.ft2": ("Btu/hour/foot**2", "W/m**2", THERMAL),
    "lx": ("lux", "lux", EXACT),
    "fc": ("lumen/foot**2", "lux", EXACT),
    "W/(m2.K)": ("W/m**2/kelvin", "W/m**2/kelvin", EXACT),
    "Btu/(h.ft2.F)": ("Btu/hour/foot**2/delta_degF", "W/m**2/kelvin", THERMAL),
    "mm2/s": ("mm**2/s", "m**2/s", EXACT),
    "deg": ("degree", "degree", EXACT),
    "in 12": ("inch / (12 inch)", "dimensionless", EXACT),
    "in 100": ("percent", "dimensionless", EXACT),
    "V": ("volt", "volt", EXACT),
    "kV": ("kilovolt", "volt", EXACT),
    "s": ("s", "s", EXACT),
    "min": ("min", "s", EXACT),
    "h": ("hour", "s", EXACT),
    "d": ("day", "s", EXACT),
    "R": ("delta_degF*foot**2*hour/Btu", "K*m**2/W", THERMAL),
    "RSI": ("K*m**2/W", "K*m**2/W", EXACT),
    "oz/yd2": ("ounce/yard**2", "kg/m**2", EXACT),
    "g/m2": ("g/m**2", "kg/m**2", EXACT),
    "g/L": ("g/L", "g/L", EXACT),
    "lb/gal": ("pound/gallon", "g/L", EXACT),
    "ng/(Pa.s.m2)": ("ng/(Pa*s*m**2)", "ng/(Pa*s*m**2)", EXACT),
    "ft2/gal": ("foot**2/gallon", "m**2/m**3", EXACT),
    "m2/L": ("m**2/L", "m**2/m**3", EXACT),
    "ft2/h": ("foot**2/hour", "m**2/s", EXACT),
    "m2/h": ("m**2/hour", "m**2/s", EXACT),
    "ft/h": ("foot/hour", "m/s", EXACT),
    "m/h": ("m/hour", "m/s", EXACT),
    "/F": ("1/delta_degF", "1/K", EXACT),
    "/C": ("1/delta_degC", "1/K", EXACT),
    "/K": ("1/K", "1/K", EXACT),
    "%/1000 ft": ("1/(1000*foot)", "1/m", EXACT),
    "%/300 m": ("1/(300*m)", "1/m", EXACT),
    "F apart": ("delta_degF", "K", EXACT),
    "C apart": ("delta_degC", "K", EXACT),
}
# Units with a zero point of their own, and units that pint lacks.
TEMPERATURES = {"F": "degF", "C": "degC", "K": "kelvin"}
# Factor as printed, base unit; the perm of 0 C is 5.721 35 e-11 kg/(Pa.s.m2), NIST SP 811 (2008), appendix B.8.
PRINTED_FACTORS = {"perm": (57.2135, "ng/(Pa.s.m2)")}


@pytest.fixture(scope="module")
def library() -> Any:
    return pint.UnitRegistry()


@pytest.mark.parametrize("name", PINT)
@pytest.mark.no_cover
def test_a_unit_has_the_size_that_a_general_library_gives_it(name: str, library: Any) -> None:
    words, base, tolerance = PINT[name]
    size = (1 * library(words)).to(base).magnitude
    assert float(Quantity.of(1, name).amount) == pytest.approx(size, rel=tolerance)


@pytest.mark.parametrize("name", TEMPERATURES)
@pytest.mark.parametrize("degrees", [-40, 0, 32, 98.6, 212])
def test_a_temperature_is_the_one_of_a_general_library(degrees: float, name: str, library: Any) -> None:
    theirs = library.Quantity(degrees, TEMPERATURES[name]).to("K").magnitude
    assert float(Quantity.of(repr(degrees), name).amount) == pytest.approx(theirs, abs=1e-9)


@pytest.mark.parametrize(("name", "factor", "base"), [(n, *row) for n, row in PRINTED_FACTORS.items()])
def test_a_unit_that_the_library_lacks_has_its_printed_factor(name: str, factor: float, base: str) -> None:
    assert Quantity.of(1, name).number(base) == pytest.approx(factor, rel=1e-6)


def test_every_unit_is_held_against_something_outside() -> None:
    assert {*PINT, *TEMPERATURES, *PRINTED_FACTORS} == set(UNITS)


@pytest.mark.parametrize("word", SPELLINGS)
def test_every_spelling_of_a_unit_is_read(word: str) -> None:
    unit = UNITS[SPELLINGS[word]]
    assert parse_quantity(f"3 {word}", unit.dimension) == Quantity.of(3, unit.name)
    assert parse_any_quantity(f"3 {word}") == Quantity.of(3, unit.name)


# Text, dimension, a part of what is said, a part of the hint. A rule of ours: no quantity is guessed.
REFUSED = [
    ("0,125 in", "length", "the comma of '0,125 in' does not separate thousands", "write 0.125 in"),
    ("40", "length", "'40' has no unit", "write 40 ft or 40 m"),
    ("3/4", "length", "'3/4' has no unit", "write 3/4 ft or 3/4 m"),
    ("40 inn", "length", "unit 'inn' is not known", "did you mean in?"),
    ("40 feets", "length", "unit 'feets' is not known", "write one of: in, ft, yd"),
    ("80 psj", "pressure", "unit 'psj' is not known", "did you mean ps"),
    ("50 f", "temperature", "unit 'f' is not known", "write one of: F, C, K"),
    ("40 psi", "length", "'psi' is not a unit of length", "write one of: in, ft"),
    ("40 ft", "area", "'ft' is not a unit of area", "did you mean ft2?"),
    ("50 F", "thermal_resistance", "'F' is not a unit of thermal resistance", "R"),
    ("5'-6\"", "pressure", "is not known", "write one of: psi"),
    ("R-5.6", "length", "is not a quantity", "write 40 ft or 40 m"),
    ("1/0 in", "length", "divides by zero", ""),
    ("1-1/0 in", "length", "divides by zero", ""),
    ("5'-1/0\"", "length", "divides by zero", ""),
    ("", "length", "'' is not a quantity", "write 40 ft or 40 m"),
    ("   ", "length", "is not a quantity", "write 40 ft or 40 m"),
    ("ft", "length", "'ft' is not a quantity", "write 40 ft or 40 m"),
    ("ten ft", "length", "the number of 'ten ft' is written in words", "write 10 ft"),
    ("two inches", "length", "is written in words", "write 2 inches"),
    ("half an inch", "length", "is written in words", "write 1/2 inch"),
    ("thirteen inches", "length", "is not a quantity", "write 40 ft or 40 m"),
    ("two psi", "length", "is not a quantity", "write 40 ft or 40 m"),
    ("9" * 400 + " ft", "length", "has more than 15 digits", "round it"),
    ("." + "9" * 400 + " ft", "length", "has more than 15 digits", "round it"),
    ("1e999 ft", "length", "the power of ten of '1e999 ft'", "without `e`"),
    ("1..2 ft", "length", "is not a number", "such as 1.5 or 1 1/2"),
    ("1/2/3 in", "length", "more digits follow the fraction", "one fraction"),
    ("5' 6'", "length", "is not known", ""),
    ("5'6", "length", 'the inches of "5\'6" have no sign', "write 5'-6\""),
    ("5'-6 1/2", "length", "have no sign", "write 5'-6 1/2\""),
    ("5'66", "length", "is not known", ""),
    ("5 ft, 6 in", "length", "is not known", ""),
    ("1,20 ft", "length", "does not separate thousands", "write 1.20 ft"),
    ("1,2000 ft", "length", "does not separate thousands", "write 1.2000 ft"),
    ("1 200 ft", "length", "is not known", ""),
    ("--5 in", "length", "is not a quantity", ""),
    ("3 to 4 in", "length", "'3 to 4 in' is a range; one figure stands here", "write 3 in or 4 in"),
    ("25-35 s", "viscosity_time", "is a range", "write 25 s or 35 s"),
    ("25 s - 35 s", "viscosity_time", "is a range", "write 25 s or 35 s"),
    ("5-6", "length", "may be feet and inches, or a range", "write 5'-6\" or 5 ft or 6 ft"),
    ("3 in x 4 in", "length", "two sizes stand in '3 in x 4 in'; each has a line of its own", "write 3 in or 4 in"),
    ("5ft x 5ft", "length", "two sizes", "write 5ft"),
    ("10 in +/- 1 in", "length", "a figure with its tolerance; the figure alone stands here", "write 10 in"),
    ("75 \u00b1 5 F", "temperature", "with its tolerance", "write 75 F"),
    ("< 8 mph", "speed", "more than a number and its unit stands in '< 8 mph'", "write 8 mph"),
    ("ca. 8 mph", "speed", "more than a number and its unit", "write 8 mph"),
    ("8 mph max.", "speed", "more than a number and its unit", "write 8 mph"),
    ("< 8", "speed", "is not a quantity", ""),
    ("nan in", "length", "is not a quantity", ""),
]


@pytest.mark.parametrize(("text", "dimension", "said", "hint"), REFUSED)
def test_what_is_no_quantity_is_told_with_what_would_be_right(text: str, dimension: str, said: str, hint: str) -> None:
    with pytest.raises(QuantityError) as raised:
        parse_quantity(text, dimension, ("ft", "m"))
    assert said in raised.value.message
    assert hint in raised.value.hint


@pytest.mark.parametrize("text", ["", "40", "40 inn", "R-", "in"])
def test_a_measure_of_any_dimension_needs_a_known_unit(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_any_quantity(text)


DIMENSIONS = sorted({unit.dimension for unit in UNITS.values()} | {"thickness", "duration", "viscosity_time"})
# Words made of what quantities are made of come nearer to the edges than letters at random.
PIECES = st.lists(
    st.sampled_from([*"0159.,/-+ '\"eER\u00bd\u2032\u2044\u00b0%", "ft", "in", "F", "RSI", "psi", "\u0663", "\u00b2"]),
    max_size=12,
).map("".join)


@given(st.one_of(st.text(max_size=40), PIECES), st.sampled_from(DIMENSIONS))
def test_any_text_is_a_quantity_of_the_dimension_or_refused(text: str, dimension: str) -> None:
    try:
        made = parse_quantity(text, dimension)
    except QuantityError as refused:
        assert refused.message
        return
    assert made.dimension == UNITS[made.unit].dimension
    assert any(sign.isnumeric() for sign in text)


@given(st.one_of(st.text(max_size=40), PIECES))
def test_any_text_is_a_measure_or_refused(text: str) -> None:
    try:
        made = parse_any_quantity(text)
    except QuantityError:
        return
    assert made == parse_quantity(text, made.dimension)


@given(st.integers(-4000, 4000), st.sampled_from([1, 2, 4, 8, 16, 32, 64, 128]))
def test_a_printed_inch_fraction_reads_back_as_itself(parts: int, divisor: int) -> None:
    number = Fraction(parts, divisor)
    assert parse_quantity(f"{format_inches(number)} in", "length").to("in") == number


@given(st.integers(0, 500), st.integers(0, 11), st.integers(0, 15))
def test_feet_and_inches_are_the_same_in_signs_and_in_words(feet: int, whole: int, sixteenths: int) -> None:
    part = format_inches(whole + Fraction(sixteenths, 16))
    wanted = 12 * feet + whole + Fraction(sixteenths, 16)
    for text in (f"{feet}'-{part}\"", f"{feet} ft {part} in", f"{feet}\u2032 {part}\u2033"):
        assert parse_quantity(text, "length").to("in") == wanted


@given(st.decimals("-99999", "99999", places=4), st.sampled_from(sorted(UNITS)))
def test_a_decimal_number_is_taken_exactly(number: Any, unit: str) -> None:
    assume(number != 0)
    assert parse_quantity(f"{number:f} {unit}", UNITS[unit].dimension).to(unit) == Fraction(number)
