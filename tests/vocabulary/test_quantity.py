"""Quantities as people write them, against exact values and a general units library; and printed again."""

from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.vocabulary.comparison import Outcome, Sense, compare, equal, less, more
from specgen.vocabulary.quantity import Quantity
from specgen.vocabulary.quantity_print import both, decimal, inches, printed
from specgen.vocabulary.quantity_text import QuantityError, measure, parse_quantity
from specgen.vocabulary.units import UNITS

# Text and what it is in inches; by the definition of the foot and the inch.
LENGTHS = [
    ("5'-6 1/2\"", "66.5"),
    ("5' 6 1/2\"", "66.5"),
    ("5'6\"", "66"),
    ("5 ft 6 1/2 in", "66.5"),
    ("5 ft 6-1/2 in", "66.5"),
    ("5 ft. 6 in.", "66"),
    ("3/4 in", "3/4"),
    ("1-1/2 in", "3/2"),
    ("1 1/2 in", "3/2"),
    ('0.75"', "3/4"),
    (".75 in", "3/4"),
    ("5\u2032-6\u00bd\u2033", "66.5"),
    ("5\u2019 6\u00bd\u201d", "66.5"),
    ("1\u00bd in", "3/2"),
    ("\u00be in", "3/4"),
    ("3\u20444 in", "3/4"),
    ("1\u202f200\u00a0ft".replace("\u202f", ","), "14400"),
    ("40 ft", "480"),
    ("40ft", "480"),
    ("1,200 ft", "14400"),
    ("-1/8 in", "-1/8"),
    ("\u22121/8 in", "-1/8"),
    ("2 inches", "2"),
    ("1 foot", "12"),
    ("3 mil", "0.003"),
]


@pytest.mark.parametrize(("text", "number"), LENGTHS)
def test_a_length_is_read_in_all_usual_ways(text: str, number: str) -> None:
    assert parse_quantity(text, "length").to("in") == Fraction(number)


# Exact: 1 in = 25.4 mm, NIST SP 811 (2008), appendix B.
OTHERS = [
    ("1.2 m", "length", "mm", "1200"),
    ("25 mm", "length", "in", "125/127"),
    ("50 F", "temperature", "C", "10"),
    ("10 \u00b0C", "temperature", "F", "50"),
    ("-40 F", "temperature", "C", "-40"),
    ("80 psi", "pressure", "psi", "80"),
    ("12 cfm", "flow", "cfm", "12"),
    ("12 scfm", "flow", "cfm", "12"),
    ("25 sq ft", "area", "ft2", "25"),
    ("25 ft\u00b2", "area", "ft2", "25"),
    ("8e-6 /F", "expansion", "/C", "0.0000144"),
    ("R-5.6", "thermal_resistance", "R", "5.6"),
    ("1 gal", "volume", "L", "3.785411784"),
    ("4.5 oz/yd2", "area_mass", "oz/yd2", "4.5"),
    ("8 mph", "speed", "m/s", "3.57632"),
    ("40 \u00b5m", "length", "um", "40"),
    ("30 s", "viscosity_time", "s", "30"),
    ("250 g/L", "density", "g/L", "250"),
    ("780 W/m\u00b2", "irradiance", "W/m2", "780"),
]


@pytest.mark.parametrize(("text", "dimension", "unit", "number"), OTHERS)
def test_other_quantities_are_read_and_converted_exactly(text: str, dimension: str, unit: str, number: str) -> None:
    assert parse_quantity(text, dimension).to(unit) == Fraction(number)


# Our unit and base unit in the words of pint, a general units library.
PINT = {
    "in": ("inch", "m"),
    "ft": ("foot", "m"),
    "yd": ("yard", "m"),
    "mil": ("thou", "m"),
    "m": ("m", "m"),
    "cm": ("cm", "m"),
    "mm": ("mm", "m"),
    "um": ("um", "m"),
    "ft2": ("foot**2", "m**2"),
    "in2": ("inch**2", "m**2"),
    "m2": ("m**2", "m**2"),
    "gal": ("gallon", "m**3"),
    "fl oz": ("fluid_ounce", "m**3"),
    "qt": ("quart", "m**3"),
    "L": ("liter", "m**3"),
    "mL": ("mL", "m**3"),
    "psi": ("psi", "Pa"),
    "psf": ("force_pound/foot**2", "Pa"),
    "Pa": ("Pa", "Pa"),
    "kPa": ("kPa", "Pa"),
    "MPa": ("MPa", "Pa"),
    "bar": ("bar", "Pa"),
    "mph": ("mph", "m/s"),
    "ft/s": ("foot/s", "m/s"),
    "m/s": ("m/s", "m/s"),
    "km/h": ("km/h", "m/s"),
    "cfm": ("foot**3/min", "m**3/s"),
    "scfm": ("foot**3/min", "m**3/s"),
    "L/s": ("L/s", "m**3/s"),
    "L/min": ("L/min", "m**3/s"),
    "m3/min": ("m**3/min", "m**3/s"),
    "m3/h": ("m**3/h", "m**3/s"),
    "W/m2": ("W/m**2", "W/m**2"),
    "Btu/h.ft2": ("Btu/hour/foot**2", "W/m**2"),
    "deg": ("degree", "degree"),
    "s": ("s", "s"),
    "min": ("min", "s"),
    "h": ("hour", "s"),
    "d": ("day", "s"),
    "R": ("delta_degF*foot**2*hour/Btu", "K*m**2/W"),
    "RSI": ("K*m**2/W", "K*m**2/W"),
    "oz/yd2": ("ounce/yard**2", "kg/m**2"),
    "g/m2": ("g/m**2", "kg/m**2"),
    "g/L": ("g/L", "g/L"),
    "lb/gal": ("pound/gallon", None),
    "ft2/gal": ("foot**2/gallon", "m**2/m**3"),
    "m2/L": ("m**2/L", "m**2/m**3"),
    "ft2/h": ("foot**2/hour", "m**2/s"),
    "m2/h": ("m**2/hour", "m**2/s"),
    "/F": ("1/delta_degF", "1/K"),
    "/C": ("1/delta_degC", "1/K"),
    "/K": ("1/K", "1/K"),
    "%/1000 ft": ("1/(1000*foot)", "1/m"),
    "%/300 m": ("1/(300*m)", "1/m"),
    "F apart": ("delta_degF", "K"),
    "C apart": ("delta_degC", "K"),
}


@pytest.mark.parametrize("name", [n for n, (_, base) in PINT.items() if base])
def test_a_unit_has_the_size_that_a_general_library_gives_it(name: str) -> None:
    words, base = PINT[name]
    size = pint.UnitRegistry()(words).to(base).magnitude
    # Four parts in a million: the thermal unit of the table differs in its last digits between libraries.
    assert float(UNITS[name].factor) == pytest.approx(size, rel=4e-6)


@pytest.mark.parametrize("degrees", [-40, 0, 32, 98.6, 212])
def test_temperatures_agree_with_a_general_library(degrees: float) -> None:
    theirs = pint.UnitRegistry().Quantity(degrees, "degF").to("K").magnitude
    assert float(Quantity.of(repr(degrees), "F").amount) == pytest.approx(theirs, abs=1e-9)


def test_a_perm_is_its_published_size() -> None:
    # 1 perm (23 C) = 5.745e-11, (0 C) = 5.721 35e-11 kg/(Pa.s.m2): NIST SP 811 (2008), appendix B.8.
    assert float(Quantity.of(1, "perm").to("ng/(Pa.s.m2)")) == pytest.approx(57.2135)


@pytest.mark.parametrize(
    ("text", "dimension", "said", "hint"),
    [
        ("40", "length", "has no unit", "write 40 ft"),
        ("40 feets", "length", "not known", ""),
        ("40 inn", "length", "not known", "did you mean in?"),
        ("40 psi", "length", "no unit of length", ""),
        ("1/0 in", "length", "divides by zero", ""),
        ("", "length", "is no quantity", ""),
        ("ft", "length", "is no quantity", ""),
        ("9" * 400 + " ft", "length", "is no", ""),
        ("1..2 ft", "length", "", ""),
        ("5' 6'", "length", "", ""),
    ],
)
def test_what_is_no_quantity_is_told_with_what_would_be_right(text: str, dimension: str, said: str, hint: str) -> None:
    with pytest.raises(QuantityError) as raised:
        parse_quantity(text, dimension, ("ft", "m"))
    assert said in raised.value.message
    assert hint in raised.value.hint


@given(st.text(max_size=40), st.sampled_from(["length", "temperature", "pressure", "thermal_resistance"]))
def test_any_text_is_a_quantity_or_told(text: str, dimension: str) -> None:
    try:
        parse_quantity(text, dimension)
    except QuantityError:
        return
    assert any(c.isdigit() or c.isnumeric() for c in text)


@given(st.integers(0, 4000), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_a_printed_inch_fraction_reads_back_as_itself(sixty: int, divisor: int) -> None:
    number = Fraction(sixty, divisor)
    assert parse_quantity(f"{inches(number)} in", "length").to("in") == number


@pytest.mark.parametrize(
    ("text", "unit", "shown"),
    [
        ("1.5 in", "in", "1-1/2 in"),
        ("0.886 in", "in", "0.886 in"),
        ("5 ft", "ft", "5 ft"),
        ("66.5 in", "ft", "5 ft 6-1/2 in"),
        ("1/4 in", "mm", "6.4 mm"),
        ("50 F", "C", "10 \u00b0C"),
        ("90 F", "C", "32.2 \u00b0C"),
        ("25 ft2", "ft2", "25 sq ft"),
        ("R-7.2", "R", "R-7.2"),
        ("8e-6 /F", "/F", "8e-6/\u00b0F"),
        ("-1/8 in", "in", "-1/8 in"),
        ("12 um", "mil", "0.472 mil"),
    ],
)
def test_a_quantity_prints_as_the_trade_writes_it(text: str, unit: str, shown: str) -> None:
    assert printed(measure(text), unit) == shown


def test_both_systems_print_the_projects_first() -> None:
    assert both(measure("5/8 in"), "in", "mm") == "5/8 in (15.9 mm)"
    assert both(measure("16 mm"), "in", "mm", "si") == "16 mm (0.63 in)"
    assert both(measure("9 in"), "ft", "m") == "9 in (229 mm)"
    assert both(measure("30 s"), "s", "s") == "30 s"


@pytest.mark.parametrize(
    ("number", "digits", "shown"),
    [
        (Fraction(635, 100), 2, "6.4"),
        (0.125, 2, "0.13"),
        (0.0, 3, "0"),
        (1234.5, 3, "1235"),
        (0.00036, 3, "3.6e-4"),
        (-2.5, 1, "-3"),
        (99.96, 3, "100"),
        (1e-3, 3, "0.001"),
    ],
)
def test_a_number_is_rounded_half_up_to_its_digits(number: Any, digits: int, shown: str) -> None:
    assert decimal(number, digits) == shown


# A limit is within; a conversion's rounding is equal; a small limit is not swallowed by it.
PAIRS = [
    ("19 mm", "3/4 in", "equal"),
    ("13 mm", "1/2 in", "equal"),
    ("6 mm", "1/4 in", "equal"),
    ("12 mm", "1/2 in", "less"),
    ("3/64 in", "1/32 in", "more"),
    ("3/64 in", "1/16 in", "less"),
    ("1 mm", "1/32 in", "more"),
    ("0.05 in", "1/16 in", "less"),
    ("50.5 F", "50 F", "equal"),
    ("51 F", "50 F", "more"),
    ("10 C", "50 F", "equal"),
    ("49.5 psi", "50 psi", "equal"),
    ("49 psi", "50 psi", "less"),
    ("14 psi", "15 psi", "less"),
    ("14.5 psi", "15 psi", "equal"),
    ("25.1 ft2", "25 ft2", "more"),
]


@pytest.mark.parametrize(("value", "limit", "outcome"), PAIRS)
def test_a_value_is_held_against_a_limit_within_the_rounding_of_a_conversion(
    value: str, limit: str, outcome: str
) -> None:
    one, other = measure(value), measure(limit)
    assert {"equal": equal(one, other), "less": less(one, other), "more": more(one, other)} == {
        name: name == outcome for name in ("equal", "less", "more")
    }


@pytest.mark.parametrize(
    ("value", "sense", "limit", "outcome"),
    [
        (None, Sense.AT_LEAST, 2, Outcome.MISSING),
        (2, Sense.AT_LEAST, 2, Outcome.WITHIN),
        (1, Sense.AT_LEAST, 2, Outcome.OUTSIDE),
        (3, Sense.AT_MOST, 2, Outcome.OUTSIDE),
        (2, Sense.EXACTLY, 2, Outcome.WITHIN),
        (3, Sense.EXACTLY, 2, Outcome.OUTSIDE),
        (5, Sense.RANGE, (1, 5), Outcome.WITHIN),
        (6, Sense.RANGE, (1, 5), Outcome.OUTSIDE),
    ],
)
def test_a_comparison_has_one_outcome(value: Any, sense: Sense, limit: Any, outcome: Outcome) -> None:
    assert compare(value, sense, limit) is outcome


def test_two_dimensions_do_not_compare() -> None:
    with pytest.raises(TypeError):
        assert measure("1 in") < measure("1 psi")
