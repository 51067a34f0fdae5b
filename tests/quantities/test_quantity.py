"""Rounding of computed quantities: of two equally near, the greater in magnitude (ISO 80000-1, from memory)."""

from fractions import Fraction

import pytest

from specgen.quantities.quantity import Quantity, round_quantity


@pytest.mark.parametrize(
    ("number", "rounded"),
    [("81/8", "10.13"), ("80.99/8", "10.12"), ("45/8", "5.625"), ("20005/1000", "20.01"), ("1/8000000", "0.000000125")],
)
def test_a_half_is_rounded_up_as_it_prints(number: str, rounded: str) -> None:
    over, _, under = number.partition("/")
    exact = Fraction(over) / Fraction(under)
    assert round_quantity(Quantity.of(exact, "ft2")) == Quantity.of(rounded, "ft2")


def test_below_zero_a_half_goes_away_from_zero() -> None:
    assert round_quantity(Quantity.of(Fraction(-81, 8), "psf")) == Quantity.of("-10.13", "psf")
