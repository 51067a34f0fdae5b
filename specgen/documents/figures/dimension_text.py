"""Lengths as they stand on a drawing: feet and inches with fractions to 1/8 in, or millimeters."""

from fractions import Fraction
from functools import lru_cache

from specgen.quantities.format import format_decimal

_FOOT, _INCH, _MM = Fraction(3048, 10_000), Fraction(254, 10_000), Fraction(1, 1000)
_EIGHTHS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")


def write_length(meters: Fraction, system: str) -> str:
    """`4′-6½″` or `1372`; what is no whole eighth of an inch, or no whole millimeter, has decimals."""
    return _write(*meters.as_integer_ratio(), system)


@lru_cache(4096)
def _write(over: int, under: int, system: str) -> str:
    """The same of a ratio of whole numbers, which is found again faster than a fraction."""
    meters = Fraction(over, under)
    if system == "si":
        return format_decimal(meters / _MM, 8, 1)
    sign, length = ("-" if meters < 0 else ""), abs(meters)
    feet, rest = divmod(length, _FOOT)
    inches = rest / _INCH
    if (inches * 8).denominator != 1:
        # Rounded to hundredths, 11.999 in is a foot.
        hundredths = round(length / _INCH * 100)
        feet, over = divmod(hundredths, 1200)
        return f"{sign}{feet}′-{format_decimal(Fraction(over, 100), 8, 2)}″"
    whole, part = divmod(inches, 1)
    return f"{sign}{feet}′-{whole}{_EIGHTHS[int(part * 8)]}″"
