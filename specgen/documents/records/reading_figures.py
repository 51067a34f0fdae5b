"""The figures of readings in words: `74` of `74 GU`, and the mean of several."""

from collections.abc import Sequence

from specgen.quantities.format import format_decimal
from specgen.quantities.number import NumberRead, QuantityError, plain_text, read_number


def read_figure(text: str) -> float | None:
    """The number of a reading in words; None where it begins with none, or can be read in two ways."""
    found = _read(text)
    return None if found is None else float(found.number)


def tell_mean(readings: Sequence[str]) -> str:
    """The mean of readings to three digits; empty where one of them is no figure, or their units differ."""
    found = [_read(text) for text in readings]
    figures = [one for one in found if one is not None]
    units = {one.behind.replace(",", " ").split()[0] for one in figures if one.behind.strip()}
    if not figures or len(figures) < len(found) or len(units) > 1:
        return ""
    return format_decimal(sum(one.number for one in figures) / len(figures), 3, 2)


def _read(text: str) -> NumberRead | None:
    try:
        found = read_number(plain_text(text))
    except QuantityError:
        return None
    return None if found is None or found.decimal_too else found
