"""The grammar of numbers, against exact arithmetic of the standard library; what can be read in two ways is asked back.

Which texts are numbers is a rule of ours. A fraction beside inches is less than one, and inches behind feet are less
than twelve: common practice, no source.
"""

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specgen.quantities.format import format_inches
from specgen.quantities.number import QuantityError, is_number, parse_number, quote, tell_number
from specgen.quantities.parse import parse_quantity

VULGAR = {
    "\u00bd": "1/2",
    "\u00bc": "1/4",
    "\u00be": "3/4",
    "\u2153": "1/3",
    "\u2154": "2/3",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
}

# Text, and what is offered in its place: each of the two readings, counted by hand.
DOUBTFUL = [
    ("11/2 in", "write 1 1/2 in or 5 1/2 in"),
    ('11/2"', 'write 1 1/2" or 5 1/2"'),
    ("61/2 in", "write 6 1/2 in or 30 1/2 in"),
    ("115/16 in", "write 1 15/16 in or 7 3/16 in"),
    ("3/2 in", "write 1 1/2 in"),
    ("8/4 in", "write 2 in"),
    ("4/4 in", "write 1 in"),
    ("1 3/2 in", "write 6 1/2 in or 2 1/2 in"),
    ("1-3/2 in", "write 6 1/2 in or 2 1/2 in"),
    ("5'-61/2\"", "write 5'-6-1/2\" or 7'-6-1/2\""),
    ("5'-66\"", "write 5'-6\" or 10'-6\""),
    ("-5'-66\"", "write -5'-6\" or -10'-6\""),
    ("5 ft 12 in", "write 5'-1\" or 6'-0\""),
    ("5'-12.5\"", "write 5'-1\" or 6'-1/2\""),
    ("1'500 in", "write 1500 in or 42'-8\""),
    ("2'000 in", "write 2000 in or 2'-0\""),
    ("1\u00bd5 in", "write one fraction"),
    ("\u00bd5 in", "write one fraction"),
    ("\u00bd\u00bd in", "write one fraction"),
    ("\u00bd1/2 in", "write one fraction"),
    ("1/2\u00bd in", "write one fraction"),
    ("1/2 5 in", "write one fraction"),
    ("1 1/2.5 in", "write one fraction"),
    ("1.5\u00bd in", "write one number"),
    ("1.2.3 in", "write one number"),
    ("12 1/2e1 in", "without `e`"),
    ("1/2e1 in", "without `e`"),
    ("\u00bde1 in", "without `e`"),
    ("1,500 m", "write 1500 m or 1.500 m"),
    ("-1,500 mm", "write -1500 mm or -1.500 mm"),
    ("1,5 m", "write 1.5 m"),
    ("1,500e3 ft", "write 1.500e3 ft"),
    ("1,2,3 ft", "without commas"),
    ("1e99999999 in", "without `e`"),
    ("1e-999999999 in", "without `e`"),
]


@pytest.mark.parametrize(("text", "hint"), DOUBTFUL, ids=[row[0] for row in DOUBTFUL])
def test_what_may_be_a_slip_is_asked_back_with_its_readings(text: str, hint: str) -> None:
    with pytest.raises(QuantityError) as raised:
        parse_quantity(text, "length")
    assert hint in raised.value.hint
    assert quote(text) in raised.value.message


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1,500 ft", 18000),  # 12 in a foot
        ("1,500,000 mm", Fraction(1_500_000 * 10, 254)),  # 25.4 mm in an inch
        ("1,500.5 mm", Fraction(15005, 254)),
        ("5'-11 15/16\"", Fraction(1151, 16)),
        ("0'-6\"", 6),
    ],
)
def test_what_can_be_read_in_one_way_only_is_taken(text: str, inches: Fraction) -> None:
    assert parse_quantity(text, "length").to("in") == inches


@pytest.mark.parametrize(
    "text", ["3_6", "1__0", "_1", "0x10", "1e", "e5", "1e+", "\u0663", "\uff11", "1 2", "", " ", "-"]
)
def test_what_other_grammars_take_for_a_number_is_none(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_number(text)


PLAIN = st.decimals("-999999", "999999", places=6, allow_nan=False)


@given(PLAIN, st.integers(-99, 99))
def test_a_decimal_number_is_the_one_of_the_decimal_module(number: Decimal, power: int) -> None:
    assert parse_number(f"{number:f}") == Fraction(number)
    assert parse_number(f"{number:f}e{power}") == Fraction(number) * Fraction(10) ** power


@given(st.integers(0, 10**9), st.integers(1, 999), st.integers(2, 1000), st.sampled_from([" ", "-"]))
def test_a_fraction_is_the_one_of_the_fractions_module(whole: int, over: int, under: int, joint: str) -> None:
    assume(over < under)
    assert parse_number(f"{over}/{under}") == Fraction(over, under)
    assert parse_number(f"{whole}{joint}{over}/{under}") == whole + Fraction(over, under)
    assert parse_number(f"-{whole}{joint}{over}/{under}") == -whole - Fraction(over, under)


@given(st.integers(0, 999), st.sampled_from(sorted(VULGAR)), st.sampled_from(["", " ", "-"]))
def test_a_vulgar_fraction_is_the_same_as_its_digits(whole: int, sign: str, joint: str) -> None:
    assert parse_number(sign) == Fraction(VULGAR[sign])
    assert parse_number(f"{whole}{joint}{sign}") == whole + Fraction(VULGAR[sign])
    with pytest.raises(QuantityError, match="more digits follow"):
        parse_number(f"{whole}{joint}{sign}{whole}")


@given(st.integers(1, 10**6), st.integers(1, 10**6), st.integers(0, 99))
def test_no_fraction_of_one_or_more_is_taken(over: int, under: int, whole: int) -> None:
    assume(over >= under)
    for text in (f"{over}/{under}", f"{whole} {over}/{under}", f"{whole}-{over}/{under}"):
        with pytest.raises(QuantityError, match="is 1 or more"):
            parse_number(text)


@given(st.fractions(-(10**9), 10**9, max_denominator=10**5))
def test_a_number_that_is_told_reads_back_as_itself(number: Fraction) -> None:
    assert parse_number(tell_number(number)) == number


@given(st.integers(0, 5000), st.integers(0, 12 * 64 - 1))
def test_no_inches_behind_feet_are_read_as_another_length(feet: int, parts: int) -> None:
    inches = Fraction(parts, 64)
    text = f"{feet}'-{format_inches(inches)}\""
    assert parse_quantity(text, "length").to("in") == 12 * feet + inches
    with pytest.raises(QuantityError, match="are 12 or more"):
        parse_quantity(f"{feet}'-{format_inches(inches + 12)}\"", "length")


# The grammar written down a second time, by hand, in other words: what fits neither line is not a number.
GRAMMAR = [
    r"[+-]? *([0-9]{1,15}(\.[0-9]{0,15})?|\.[0-9]{1,15})([eE][+-]?[0-9]{1,2})?",
    r"[+-]? *[1-9][0-9]{0,2}(,[0-9]{3}){2,4}(\.[0-9]{0,15})?",
    r"[+-]? *[1-9][0-9]{0,2},[0-9]{3}\.[0-9]{0,15}",
    r"[+-]? *([0-9]{1,15}[ -])?[0-9]{1,15}/[0-9]{1,15}",
    r"[+-]? *([0-9]{1,15}( *|-))?[\u00bd\u00bc]",
]
PIECES = st.lists(st.sampled_from([*"0019.,/-+ eE_", "\u00bd", "\u00bc", "\u0663", "123", "500"]), max_size=9)


@given(PIECES.map("".join))
def test_a_text_that_is_not_of_the_grammar_is_refused(text: str) -> None:
    try:
        number = parse_number(text)
    except QuantityError as refused:
        assert refused.message
        assert refused.hint
        return
    assert any(re.fullmatch(line, text.strip()) for line in GRAMMAR)
    assert is_number(text)
    if not set(text) & set("/\u00bd\u00bc"):
        assert number == Fraction(Decimal(text.strip().replace(",", "").replace(" ", "")))


@given(PIECES.map("".join))
def test_a_text_of_the_plain_grammar_is_taken(text: str) -> None:
    if any(re.fullmatch(line, text.strip()) for line in GRAMMAR[:3]):
        assert parse_number(text) == Fraction(Decimal(text.strip().replace(",", "").replace(" ", "")))
