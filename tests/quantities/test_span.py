"""Limits in words as spans, and which of two limits is stricter.

What is a span and what is not is common practice, no source: a limit of several figures is never cut into one.
"""

from fractions import Fraction

import pytest

from specgen.quantities.quantity import Quantity
from specgen.quantities.span import Span, Strictness, compare_limits, read_span, span_of, strip_count, take_side

STRICTER, SAME, LOOSER = Strictness.STRICTER, Strictness.SAME, Strictness.LOOSER
# An inch is 25.4 mm exactly: NIST Special Publication 811, appendix B.8.
EIGHTH = Fraction(254, 10_000) / 8


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("12", Span(Fraction(12), Fraction(12))),
        ("12 or less", Span(None, Fraction(12))),
        ("at most 12", Span(None, Fraction(12))),
        ("<= 12", Span(None, Fraction(12))),
        ("MAX. 8 %", Span(None, Fraction(8))),
        ("12 or more", Span(Fraction(12), None)),
        ("62 within 5", Span(Fraction(57), Fraction(67))),
        ("75 +/- 5 GU", Span(Fraction(70), Fraction(80))),
        ("62 ± 5 gloss units", Span(Fraction(57), Fraction(67))),
        ("1/8 in", Span(EIGHTH, EIGHTH, "length")),
        ("maximum 1/8 in", Span(None, EIGHTH, "length")),
        ("1/8 in max", Span(None, EIGHTH, "length")),
        ("27 s to 33 s", Span(Fraction(27), Fraction(33), "time")),
        ("27 to 33 s", Span(Fraction(27), Fraction(33), "time")),
        ("minimum 16 h", Span(Fraction(16 * 3600), None, "time")),
    ],
)
def test_a_limit_of_one_figure_or_one_span_is_read(text: str, span: Span) -> None:
    assert read_span(text) == span


@pytest.mark.parametrize(
    "text",
    [
        "",
        "even",
        "1/8 in in 10 ft",
        "1/8 in in 10 ft and 1/16 in in 24 in",
        "cup 27 s to 33 s, same water in each pail",
        "difference of 2",
        "27 s and 33 s",
        "33 s to 27 s",
        "27 s to 1/8 in",
        "70 F within 5 F",
        "at most 5, 6",
        "at most " + "1" * 60,
    ],
)
def test_words_that_hold_more_or_less_than_a_figure_are_no_span(text: str) -> None:
    assert read_span(text) is None


def test_a_span_between_values_keeps_the_open_end() -> None:
    assert span_of(None, Quantity.of(27, "s")) == Span(None, Fraction(27), "time")
    assert span_of(Fraction(3), None) == Span(Fraction(3), None)


@pytest.mark.parametrize(
    ("own", "others", "outcome"),
    [
        ("1/16 in", ["maximum 1/8 in"], STRICTER),
        ("1/4 in", ["maximum 1/8 in"], LOOSER),
        ("3.175 mm", ["maximum 1/8 in"], SAME),
        ("2 mil", ["minimum 1.5 mil"], STRICTER),
        ("1 mil", ["minimum 1.5 mil"], LOOSER),
        ("62 within 3", ["62 within 5"], STRICTER),
        ("62 within 8", ["62 within 5"], LOOSER),
        ("65 within 5", ["62 within 5"], None),  # neither lies in the other
        ("62", ["62 within 5"], None),  # no tolerance is given
        ("28 s to 32 s", ["27 s to 33 s", "25 s to 35 s"], STRICTER),
        ("26 s to 34 s", ["27 s to 33 s", "25 s to 35 s"], None),
        ("24 s to 36 s", ["27 s to 33 s", "25 s to 35 s"], LOOSER),
        ("12", ["maximum 1/8 in"], None),
        ("minimum 1/16 in", ["maximum 1/8 in"], None),
    ],
)
def test_the_stricter_limit_is_the_one_that_lies_in_the_others(
    own: str, others: list[str], outcome: Strictness | None
) -> None:
    spans = tuple(span for span in map(read_span, others) if span)
    limit = read_span(own)
    assert limit is not None
    assert compare_limits(limit, spans) is outcome


def test_a_limit_beside_none_has_no_side() -> None:
    assert take_side(Span(Fraction(1), Fraction(1)), ()) is None
    assert compare_limits(Span(Fraction(1), Fraction(1)), ()) is None
    assert take_side(Span(Fraction(1), Fraction(1)), (Span(None, Fraction(2)),)) == Span(None, Fraction(1))


def test_the_name_of_what_is_counted_falls_off() -> None:
    assert strip_count("62 within 5 gloss units") == "62 within 5"
    assert strip_count(" 1/8 in ") == "1/8 in"
