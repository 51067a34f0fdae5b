"""Quantities as they are printed: fractions of an inch, both unit systems, digits rounded half up."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.quantities.format import (
    format_both,
    format_decimal,
    format_inches,
    format_quantity,
    format_unit,
    raise_power,
)
from specgen.quantities.parse import parse_any_quantity, parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS

# Text, unit, print. Fractions and abbreviations: common practice, no source. Conversions: 1 in = 25.4 mm,
# 1 psi = 6.894757 kPa, 1 mph = 0.44704 m/s, NIST SP 811 (2008), appendix B.8.
PRINTS = [
    ("1.5 in", "in", "1-1/2 in"),
    ("0.75 in", "in", "3/4 in"),
    ("2 in", "in", "2 in"),
    ("0 in", "in", "0 in"),
    ("-1/8 in", "in", "-1/8 in"),
    ("-1.5 in", "in", "-1-1/2 in"),
    ("1/128 in", "in", "1/128 in"),
    ("0.886 in", "in", "0.886 in"),
    ("1/3 in", "in", "0.333 in"),
    ("16 mm", "in", "0.63 in"),
    ("19.05 mm", "in", "3/4 in"),
    ("5 ft", "ft", "5 ft"),
    ("5.5 ft", "ft", "5 ft 6 in"),
    ("66.5 in", "ft", "5 ft 6-1/2 in"),
    ("-66.5 in", "ft", "-5 ft 6-1/2 in"),
    ("7.3 ft", "ft", "7.3 ft"),
    ("60-3/16 in", "ft", "5 ft 0-3/16 in"),
    ("-60-3/16 in", "ft", "-5 ft 0-3/16 in"),
    ("7.2 m", "ft", "23 ft 7-7/16 in"),
    ("1/4 in", "mm", "6.4 mm"),
    ("1 in", "mm", "25.4 mm"),
    ("40 ft", "m", "12.2 m"),
    ("12 um", "mil", "0.472 mil"),
    ("50 F", "F", "50 \u00b0F"),
    ("50 F", "C", "10 \u00b0C"),
    ("90 F", "C", "32.2 \u00b0C"),
    ("-10 F", "C", "-23.3 \u00b0C"),
    ("5 F apart", "C apart", "2.8 \u00b0C"),
    ("80 psi", "kPa", "552 kPa"),
    ("15 mph", "m/s", "6.7 m/s"),
    ("25 ft2", "ft2", "25 sq ft"),
    ("25 ft2", "m2", "2.32 m\u00b2"),
    ("1 gal", "L", "3.79 L"),
    ("45 deg", "deg", "45\u00b0"),
    ("R-7.2", "R", "R-7.2"),
    ("8e-6 /F", "/F", "8e-6/\u00b0F"),
    ("8e-6 /F", "/C", "1.44e-5/\u00b0C"),
    ("4.5 oz/yd2", "oz/yd2", "4.5 oz/sq yd"),
    ("40 um", "um", "40 \u00b5m"),
]


@pytest.mark.parametrize(("text", "unit", "shown"), PRINTS)
def test_a_quantity_prints_as_the_trade_writes_it(text: str, unit: str, shown: str) -> None:
    assert format_quantity(parse_any_quantity(text), unit) == shown


# Text, the two units, the system printed first, print.
BOTH = [
    ("5/8 in", "in", "mm", "ip", "5/8 in (15.9 mm)"),
    ("16 mm", "in", "mm", "si", "16 mm (0.63 in)"),
    ("24 ft", "ft", "m", "ip", "24 ft (7.32 m)"),
    ("9 in", "ft", "m", "ip", "9 in (229 mm)"),
    ("0.2 m", "ft", "m", "si", "200 mm (7.87 in)"),
    ("0 ft", "ft", "m", "ip", "0 ft (0 m)"),
    # A foot is 0.3048 m (NIST SP 811, B.8): beside meters as many digits as these have, three at least.
    ("1585 m", "ft", "m", "si", "1585 m (5200 ft)"),
    ("12.2 m", "ft", "m", "si", "12.2 m (40 ft)"),
    ("12.35 m", "ft", "m", "si", "12.35 m (40.52 ft)"),
    ("6 m", "ft", "m", "si", "6 m (19.7 ft)"),
    ("7200 mm", "ft", "m", "si", "7.2 m (23.6 ft)"),
    ("20 ft", "ft", "m", "si", "6.1 m (20 ft)"),
    ("7.2 m", "ft", "m", "ip", "23 ft 7-7/16 in (7.2 m)"),
    ("50 F", "F", "C", "ip", "50 \u00b0F (10 \u00b0C)"),
    ("10 C", "F", "C", "si", "10 \u00b0C (50 \u00b0F)"),
    ("30 s", "s", "s", "ip", "30 s"),
]


@pytest.mark.parametrize(("text", "unit_ip", "unit_si", "first", "shown"), BOTH)
def test_both_systems_print_the_one_of_the_project_first(
    text: str, unit_ip: str, unit_si: str, first: str, shown: str
) -> None:
    assert format_both(parse_any_quantity(text), unit_ip, unit_si, first) == shown


def test_a_quantity_is_not_printed_in_a_unit_of_another_kind() -> None:
    with pytest.raises(ValueError, match="length cannot be printed in psi"):
        format_both(parse_any_quantity("1 in"), "psi", "kPa")
    with pytest.raises(ValueError, match="length cannot be given in psi"):
        format_quantity(parse_any_quantity("1 in"), "psi")


# Number, digits, places, print; rounding half away from zero, as on paper.
ROUNDED = [
    (Fraction(635, 100), 2, None, "6.4"),
    (0.125, 2, None, "0.13"),
    (0.0, 3, None, "0"),
    (1234.5, 3, None, "1235"),
    (0.00036, 3, None, "3.6e-4"),
    (3.6e-6, 6, None, "3.6e-6"),
    (-2.5, 1, None, "-3"),
    (-0.04, 3, 1, "0"),
    (99.96, 3, None, "100"),
    (1e-3, 3, None, "0.001"),
    (0.1 + 0.2, 8, None, "0.3"),
    (2.675, 8, 2, "2.68"),
    (100, 3, None, "100"),
]


@pytest.mark.parametrize(("number", "digits", "places", "shown"), ROUNDED)
def test_a_number_is_rounded_half_up_to_its_digits(number: Any, digits: int, places: int | None, shown: str) -> None:
    assert format_decimal(number, digits, places) == shown


@given(st.fractions(Fraction(1, 10**6), 10**6), st.integers(2, 8))
def test_a_rounded_number_lies_within_half_of_its_last_digit(number: Fraction, digits: int) -> None:
    # The relative error of n significant digits is at most half of 10^(1 - n).
    assert abs(Fraction(format_decimal(number, digits)) - number) <= number * Fraction(1, 2) / 10 ** (digits - 1)


@given(st.integers(-9999, 9999), st.sampled_from([1, 2, 4, 8, 16, 32, 64, 128]))
def test_a_fraction_of_an_inch_is_printed_in_lowest_terms(parts: int, divisor: int) -> None:
    number = Fraction(parts, divisor)
    shown = format_inches(number)
    assert "." not in shown
    assert parse_any_quantity(f"{shown} in") == Quantity.of(number, "in")
    if "/" in shown:
        assert int(shown.rpartition("/")[2]) == number.denominator


# A difference of temperatures has the sign of a temperature, and the sign of RSI is for paper alone.
READ_BACK = [name for name in UNITS if name not in ("F apart", "C apart", "RSI")]


@pytest.mark.parametrize("unit", READ_BACK)
def test_what_is_printed_in_any_unit_reads_back_as_itself(unit: str) -> None:
    made = Quantity.of("2.5", unit)
    assert parse_quantity(format_quantity(made, unit), UNITS[unit].dimension) == made


def test_a_difference_of_temperatures_prints_like_a_temperature() -> None:
    assert format_unit("F apart") == format_unit("F") == "\u00b0F"
    assert format_quantity(Quantity.of(10, "F apart"), "F apart") == "10 \u00b0F"


# Units under no name of their own: powers raised as the SI brochure writes them (from memory); other digits kept.
@pytest.mark.parametrize(
    ("unit", "shown"),
    [("W/(m2·K4)", "W/(m²·K⁴)"), ("lb/ft3", "lb/ft³"), ("in H2O", "in H2O"), ("g/m2", "g/m²"), ("coats", "coats")],
)
def test_a_power_of_a_unit_is_raised(unit: str, shown: str) -> None:
    assert format_unit(unit) == shown


# A power of ten stands behind a multiplication sign, NIST SP 811; from memory.
@pytest.mark.parametrize(
    ("text", "shown"),
    [("8e-6", "8\u00a0×\u00a010⁻⁶"), ("1e-9", "10⁻⁹"), ("-2.5e12", "-2.5\u00a0×\u00a010¹²"), ("0.54", "0.54")],
)
def test_a_power_of_ten_is_raised(text: str, shown: str) -> None:
    assert raise_power(text) == shown
