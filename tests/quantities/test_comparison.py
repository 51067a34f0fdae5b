"""A value against a limit: the limit is within, a conversion's rounding is equal, a small limit is not swallowed."""

import datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.quantities.comparison import Outcome, Sense, compare, equal, find_slack, less, more
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity

# Value, limit, what the one is to the other. The slack is a rule of this program, no published one: half a unit of the
# last digit typed, less than 1/64 in, 0.1 F, 0.05 psi or 0.05 psf and a sixteenth of the limit, and none within one
# unit. Pairs of inches and millimeters that the trade takes for the same size: common practice, no source.
PAIRS = [
    ("3/4 in", "3/4 in", "equal"),
    ("19 mm", "3/4 in", "equal"),
    ("3/4 in", "19 mm", "equal"),
    ("13 mm", "1/2 in", "equal"),
    ("6 mm", "1/4 in", "equal"),
    ("1.6 mm", "1/16 in", "equal"),
    # 3/4 in is 19.05 mm, which may be rounded either way.
    ("19.0 mm", "3/4 in", "equal"),
    ("19.1 mm", "3/4 in", "equal"),
    ("18.9 mm", "3/4 in", "less"),
    ("19.05 mm", "3/4 in", "equal"),
    ("0.75 in", "19.05 mm", "equal"),
    ("25 mm", "1 in", "less"),
    ("100 mm", "4 in", "less"),
    ("12 mm", "1/2 in", "less"),
    ("150 mm", "6 in", "less"),
    ("3/64 in", "1/32 in", "more"),
    ("3/64 in", "1/16 in", "less"),
    ("1 mm", "1/32 in", "more"),
    # Within one unit there is no slack.
    ("97/128 in", "3/4 in", "more"),
    ("0.749 in", "3/4 in", "less"),
    ("33/512 in", "1/16 in", "more"),
    ("1/512 in", "0 in", "more"),
    ("50.1 F", "50 F", "more"),
    ("49.9 F", "50 F", "less"),
    ("10 C", "50 F", "equal"),
    ("32 C", "90 F", "less"),
    ("32.2 C", "90 F", "equal"),
    ("4 C", "40 F", "less"),
    ("4.4 C", "40 F", "equal"),
    ("0.1 F", "0 F", "more"),
    ("5.1 F apart", "5 F apart", "more"),
    ("3 C apart", "5 F apart", "more"),
    ("2.78 C apart", "5 F apart", "equal"),
    # An expert's cases: 31.8 psf passes no limit of 30, a pull of 14.1 psi none of 15, a margin of 9.2 F none of 10.
    ("31.8 psf", "30 psf", "more"),
    ("14.1 psi", "15 psi", "less"),
    ("9.2 F apart", "10 F apart", "less"),
    ("345 kPa", "50 psi", "equal"),
    ("344 kPa", "50 psi", "less"),
    ("1.436 kPa", "30 psf", "equal"),
    ("1.44 kPa", "30 psf", "more"),
    # No slack where conversions are not the custom.
    ("25.1 ft2", "25 ft2", "more"),
    ("2.32 m2", "25 ft2", "less"),
    ("11.9 cfm", "12 cfm", "less"),
    ("24.9 s", "25 s", "less"),
]


@pytest.mark.parametrize(("value", "limit", "outcome"), PAIRS)
def test_a_value_is_held_against_a_limit_within_the_rounding_of_a_conversion(
    value: str, limit: str, outcome: str
) -> None:
    one, other = parse_any_quantity(value), parse_any_quantity(limit)
    assert {"equal": equal(one, other), "less": less(one, other), "more": more(one, other)} == {
        name: name == outcome for name in ("equal", "less", "more")
    }


IN, F = parse_any_quantity("1 in"), parse_any_quantity("50 F")
EIGHT, NINE = datetime.date(2027, 3, 8), datetime.date(2027, 3, 9)


@pytest.mark.parametrize(
    ("value", "sense", "limit", "outcome"),
    [
        (None, Sense.AT_LEAST, 2, Outcome.MISSING),
        (None, Sense.RANGE, (1, 2), Outcome.MISSING),
        (2, Sense.AT_LEAST, 2, Outcome.WITHIN),
        (3, Sense.AT_LEAST, 2, Outcome.WITHIN),
        (1, Sense.AT_LEAST, 2, Outcome.OUTSIDE),
        (2, Sense.AT_MOST, 2, Outcome.WITHIN),
        (1, Sense.AT_MOST, 2, Outcome.WITHIN),
        (3, Sense.AT_MOST, 2, Outcome.OUTSIDE),
        (2, Sense.EXACTLY, 2, Outcome.WITHIN),
        (3, Sense.EXACTLY, 2, Outcome.OUTSIDE),
        (1, Sense.EXACTLY, 2, Outcome.OUTSIDE),
        (1, Sense.RANGE, (1, 5), Outcome.WITHIN),
        (5, Sense.RANGE, (1, 5), Outcome.WITHIN),
        (0, Sense.RANGE, (1, 5), Outcome.OUTSIDE),
        (6, Sense.RANGE, (1, 5), Outcome.OUTSIDE),
        (0, Sense.AT_MOST, 2, Outcome.WITHIN),
        (0, Sense.AT_LEAST, 0, Outcome.WITHIN),
        ("oval", Sense.EXACTLY, "oval", Outcome.WITHIN),
        ("round", Sense.EXACTLY, "oval", Outcome.OUTSIDE),
        (EIGHT, Sense.AT_MOST, NINE, Outcome.WITHIN),
        (NINE, Sense.AT_MOST, EIGHT, Outcome.OUTSIDE),
        (parse_any_quantity("25.4 mm"), Sense.AT_LEAST, IN, Outcome.WITHIN),
        (parse_any_quantity("25 mm"), Sense.EXACTLY, parse_any_quantity("25.4 mm"), Outcome.OUTSIDE),
        (parse_any_quantity("10 C"), Sense.EXACTLY, F, Outcome.WITHIN),
        (parse_any_quantity("49.9 F"), Sense.AT_LEAST, F, Outcome.OUTSIDE),
        (parse_any_quantity("49 F"), Sense.AT_LEAST, F, Outcome.OUTSIDE),
        (parse_any_quantity("10.0 C"), Sense.RANGE, (parse_any_quantity("40 F"), F), Outcome.WITHIN),
    ],
)
def test_a_comparison_has_one_outcome(value: Any, sense: Sense, limit: Any, outcome: Outcome) -> None:
    assert compare(value, sense, limit) is outcome


def test_two_dimensions_do_not_compare() -> None:
    for compared in (less, more):
        with pytest.raises(TypeError):
            compared(parse_any_quantity("1 in"), parse_any_quantity("1 psi"))
    assert parse_any_quantity("1 in") != parse_any_quantity("1 psi")
    with pytest.raises(TypeError):
        parse_any_quantity("1 in") + parse_any_quantity("1 psi")


def test_equal_quantities_are_one_key_of_a_table() -> None:
    assert {parse_any_quantity("1 in"): 1}[parse_any_quantity("25.4 mm")] == 1
    assert {parse_any_quantity("12 in"), parse_any_quantity("1 ft"), parse_any_quantity("304.8 mm")} == {
        parse_any_quantity("1 ft")
    }


@given(st.fractions(0, 10, max_denominator=64), st.fractions(0, 10, max_denominator=64))
def test_a_value_is_below_on_or_above_a_limit_and_only_one_of_them(value: Fraction, limit: Fraction) -> None:
    one, other = Quantity.of(value, "in"), Quantity.of(limit, "in")
    assert [less(one, other), equal(one, other), more(one, other)].count(True) == 1
    assert (compare(one, Sense.AT_LEAST, other) is Outcome.OUTSIDE) == less(one, other)
    assert (compare(one, Sense.AT_MOST, other) is Outcome.OUTSIDE) == more(one, other)


LENGTHS = ("in", "mm", "m", "ft", "mil")


@given(
    st.decimals(0, 1000, places=2), st.sampled_from(LENGTHS), st.decimals(0, 1000, places=2), st.sampled_from(LENGTHS)
)
def test_the_slack_is_small_and_the_same_both_ways(value: Decimal, unit: str, limit: Decimal, other: str) -> None:
    one, two = parse_any_quantity(f"{value} {unit}"), parse_any_quantity(f"{limit} {other}")
    assert 0 <= find_slack(one, two) <= min(two.amount / 16, Fraction("0.0254") / 64)
    assert unit != other or find_slack(one, two) == 0


@given(st.fractions(1, 1000, max_denominator=1000))
def test_a_result_of_a_sum_is_held_against_a_limit_to_the_last_digit(number: Fraction) -> None:
    limit = Quantity.of(number, "psf")
    assert equal(Quantity.of(float(number), "psf"), limit)
    assert more(Quantity.of(float(number) * (1 + 1e-6), "psf"), limit)
