"""What is told of a text that is not a bare number, and of a percentage for a share of 1: each with what to write."""

import re
from fractions import Fraction

from specgen.model.field import Field
from specgen.quantities.format import format_decimal
from specgen.quantities.number import (
    QuantityError,
    is_number,
    parse_number,
    plain_text,
    quote,
    read_number,
    tell_number,
)
from specgen.quantities.slips import find_slip
from specgen.quantities.units import find_unit
from specgen.reading.time_words import counts_time, names_time, spell_minutes, tell_time, write_time

# The year of an edition, with the name of what is edited before it.
_NAMED_YEAR = re.compile(r"[A-Za-z][A-Za-z ]*[ -](\d{4})")


def explain_number(field: Field, text: str, error: QuantityError) -> tuple[str, str]:
    """Message and hint for a text that is no number of a field; `error` is what the reader of numbers says."""
    if counted := counts_time(field):
        return _explain_time(field, text, counted, error)
    plain = plain_text(text)
    slip = find_slip(plain, lambda meant: _may_stand(field, meant))
    if slip is not None:
        return slip.message, slip.hint
    if year := _NAMED_YEAR.fullmatch(plain):
        return error.message, f"write {year[1]}, without a word before it"
    try:
        read = read_number(plain)
    except QuantityError:
        read = None
    behind = read.behind.strip(" -") if read is not None and not read.decimal_too else ""
    if read is None or not behind:
        return error.message, error.hint
    if behind in ("%", "percent") and is_share(field):
        return tell_share(text, read.number)
    return error.message, _tell_bare(field, read.number, behind) or error.hint


def _explain_time(field: Field, text: str, counted: str, error: QuantityError) -> tuple[str, str]:
    """Message and hint for a text in a field that counts time, whose unit is never dropped."""
    told = tell_time(field, text)
    if told is not None:
        return told
    spelled = spell_minutes(plain_text(text))
    slip = find_slip(spelled, lambda meant: bool(_bare_time(field, meant)))
    if slip is not None:
        meant = " or ".join(_bare_time(field, meant) for meant in slip.meant)
        return slip.message.replace(quote(spelled), quote(text)), f"write {meant}, the bare number of {counted}"
    bare = error.hint == "write a bare number, without a unit"
    return error.message, f"write the bare number of {counted}, without a unit" if bare else error.hint


def _bare_time(field: Field, text: str) -> str:
    return text if is_number(text) else write_time(field, text)


def _may_stand(field: Field, text: str) -> bool:
    """Whether a text is a number that a field may take: half a percent is not offered for a half."""
    return is_number(text) and not (field.kind == "percent" and parse_number(text) < 1)


def is_share(field: Field) -> bool:
    """Whether a field holds a share of 1, such as a reflectance."""
    return field.kind == "number" and field.most == "1"


def tell_share(text: str, percent: Fraction) -> tuple[str, str]:
    """What is told of a percentage where a share of 1 stands."""
    message = f"{quote(text)} may be a percentage; this is a share of 1"
    return message, f"write {format_decimal(percent / 100, 6)}"


def tell_percent(text: str, share: Fraction) -> tuple[str, str]:
    """What is told of a bare number below 1 where a percentage stands; `text` is without its sign."""
    return f"{quote(text)} may be a share or a percentage", f"write {format_decimal(share * 100, 6)}% or {text}%"


def _tell_bare(field: Field, number: Fraction, behind: str) -> str:
    """What to write for a number with a word behind it; empty where the word is a unit, which is not dropped."""
    if field.kind == "percent":
        return f"write {tell_number(number)}%" if behind.lower() in ("percent", "pct", "per cent") else ""
    if find_unit(behind) is not None or names_time(behind):
        return ""
    return f"write {tell_number(number)}, without a word after it" if behind.replace(" ", "").isalpha() else ""
