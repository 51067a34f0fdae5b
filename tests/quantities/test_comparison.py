"""A value against a limit: the limit is within, a conversion's rounding is equal, a small limit is not swallowed."""

import datetime
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.quantities.comparison import Outcome, Sense, compare, equal, find_slack, less, more
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity

# Value, limit, what the one is to the other. The slack is a rule of this program, no published one: less than
# 1/64 in, 1 F or 1 psi, and never more than a sixteenth of the limit. Pairs of inches and millimeters that the
# trade takes for the same size: common practice, no source.
PAIRS = [
    ("3/4 in", "3/4 in", "equal"),
    ("19 mm", "3/4 in", "equal"),
    ("3/4 in", "19 mm", "equal"),
    ("13 mm", "1/2 in", "equal"),
    ("6 mm", "1/4 in", "equal"),
    ("1.6 mm", "1/16 in", "equal"),
    ("100 mm", "4 in", "less"),
    ("12 mm", "1/2 in", "less"),
    ("3/64 in", "1/32 in", "more"),
    ("3/64 in", "1/16 in", "less"),
    ("1 mm", "1/32 in", "more"),
    ("0.05 in", "1/16 in", "less"),
    ("1/32 in", "1/16 in", "less"),
    # 1/64 in is the slack and no longer within it; a sixteenth of 1/16 in is 1/256 in.
    ("49/64 in", "3/4 in", "more"),
    ("97/128 in", "3/4 in", "equal"),
    ("17/256 in", "1/16 in", "more"),
    ("33/512 in", "1/16 in", "equal"),
    ("1/512 in", "0 in", "more"),
    ("50.9 F", "50 F", "equal"),
    ("49.1 F", "50 F", "equal"),
    ("51 F", "50 F", "more"),
    ("49 F", "50 F", "less"),
    ("10 C", "50 F", "equal"),
    ("32 C", "90 F", "equal"),
    ("4 C", "40 F", "equal"),
    ("0.9 F", "0 F", "equal"),
    ("5.9 F apart", "5 F apart", "equal"),
    ("3 C apart", "5 F apart", "equal"),
    ("6 F apart", "5 F apart", "more"),
    ("49.1 psi", "50 psi", "equal"),
    ("50.9 psi", "50 psi", "equal"),
    ("49 psi", "50 psi", "less"),
    ("51 psi", "50 psi", "more"),
    ("345 kPa", "50 psi", "equal"),
    ("14 psi", "15 psi", "less"),
    ("14.1 psi", "15 psi", "equal"),
    ("14.05 psi", "15 psi", "less"),
    ("16 psi", "15 psi", "more"),
    # No slack where conversions are not the custom.
    ("25.1 ft2", "25 ft2", "more"),
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
        (parse_any_quantity("49.5 F"), Sense.AT_LEAST, F, Outcome.WITHIN),
        (parse_any_quantity("49 F"), Sense.AT_LEAST, F, Outcome.OUTSIDE),
        (parse_any_quantity("50.5 F"), Sense.RANGE, (parse_any_quantity("40 F"), F), Outcome.WITHIN),
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


@given(st.fractions(0, 1000, max_denominator=64), st.sampled_from(["in", "psi", "mm", "kPa"]))
def test_the_slack_is_never_more_than_a_sixteenth_of_the_limit(number: Fraction, unit: str) -> None:
    limit = Quantity.of(number, unit)
    assert 0 <= find_slack(limit) <= limit.amount / 16
