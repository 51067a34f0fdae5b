"""Lengths on drawings, retyped as a drawing shows them."""

from fractions import Fraction

import pytest

from specgen.documents.figures.dimension_text import write_length

INCH = Fraction(254, 10_000)


@pytest.mark.parametrize(
    ("inches", "written"),
    [
        ("54", "4′-6″"),
        ("60.125", "5′-0⅛″"),
        ("0.5", "0′-0½″"),
        ("7.75", "0′-7¾″"),
        ("0", "0′-0″"),
        ("-9", "-0′-9″"),
        ("12", "1′-0″"),
        ("11.999", "1′-0″"),
        ("59.0551181", "4′-11.06″"),
    ],
)
def test_feet_and_inches(inches, written):
    assert write_length(Fraction(inches) * INCH, "ip") == written


@pytest.mark.parametrize(("meters", "written"), [("1.5", "1500"), ("0.0125", "12.5"), ("13.7160", "13716"), ("0", "0")])
def test_millimeters(meters, written):
    assert write_length(Fraction(meters), "si") == written
