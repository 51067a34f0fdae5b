"""A number with words or a unit behind it, as people answer with one, to the bare number that a field takes."""

import re
from fractions import Fraction

from specgen.model.field import Field
from specgen.quantities.number import QuantityError, is_number, plain_text, read_number, tell_number
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS, find_unit
from specgen.reading.number_words import is_share

_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_PERCENT = {"%", "percent", "pct", "per cent"}
_WEEK = {"week", "weeks", "wk", "wks"}
_MONTH = {"month", "months", "mo", "mos"}
_YEAR = {"year", "years", "yr", "yrs"}
_IN_DAYS = 7
_PLUS_MINUS = re.compile(r"^(?:\u00b1|\+\s*/\s*-|\+-|plus or minus)\s*")
# Where the reason of a field tells the figure for it.
_NO_LIMIT = {"no limit", "unlimited", "none", "no maximum"}
# Words behind a number that change what it says.
_SAY_MORE = {"more", "less", "least", "most", "than", "over", "under", "about", "and", "per", "max", "maximum"}
_SAY_MORE |= {"minimum", "min", "to", "or", "in", "at", "of", "by", "not", "up", "above", "below", "between", "for"}


def read_count(text: str, field: Field) -> str:
    """The bare number that a text means for a field without a unit in its values; any other text as it is."""
    text = _PLUS_MINUS.sub("", text)
    if text.casefold() in _NO_LIMIT and f"{field.most} where" in field.why:
        return field.most
    if field.kind == "integer" and text.casefold() in _WORDS:
        return str(_WORDS.index(text.casefold()) + 1)
    try:
        read = read_number(plain_text(text))
    except QuantityError:
        return text
    if is_number(text.removesuffix("%") if field.kind == "percent" else text) or read is None or read.decimal_too:
        return text
    return _without(field, read.number, read.behind.strip(" -.").casefold()) or text


def _without(field: Field, number: Fraction, behind: str) -> str:
    """A number without what stands behind it; empty where that is not plain."""
    if behind in _PERCENT:
        return _read_percent(field, number)
    unit = find_unit(behind)
    own = UNITS.get(field.unit_ip)
    if unit is not None and own is not None and UNITS[unit].dimension == own.dimension:
        return tell_number(Quantity.of(number, unit).to(field.unit_ip))
    if behind in _WEEK and own is not None and own.dimension == "time":
        return tell_number(Quantity.of(number * _IN_DAYS, "d").to(field.unit_ip))
    spelled = behind in {"month": _MONTH, "year": _YEAR, "deg": {"deg", "degree", "degrees"}}.get(field.unit_ip, ())
    return tell_number(number) if spelled or _is_named(field, behind) else ""


def _read_percent(field: Field, number: Fraction) -> str:
    if field.kind == "percent":
        return f"{tell_number(number)}%"
    return tell_number(number) if "%" in field.asks and not is_share(field) else ""


def _is_named(field: Field, behind: str) -> bool:
    """Whether words only repeat what the field counts: `2 passes`."""
    named = {_bare(word) for word in re.findall(r"[a-z]+", f"{field.label} {field.asks} {field.unit_ip}".casefold())}
    said = behind.split()
    return bool(said) and all(word.isalpha() and word not in _SAY_MORE and _bare(word) in named for word in said)


def _bare(word: str) -> str:
    """A word without the ending of more than one."""
    return word.removesuffix("es") if word.endswith(("sses", "shes", "ches")) else word.rstrip("s")
